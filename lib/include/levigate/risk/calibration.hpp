// What to measure before a day of work: each way, what it takes, and how far it narrows the minutes of the day.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/choices.hpp"
#include "levigate/describe.hpp"
#include "levigate/plan/caution.hpp"
#include "levigate/risk/patch_table.hpp"
#include "levigate/risk/simulation.hpp"

namespace levigate::inline v0 {

/// A patch as it is proposed: its area [cm2], how long it is worked [min], and the spots that a gauge reads before and after.
/// The numbers and their sources stand in data/profiles/patch.json.
inline constexpr double patch_area_cm2 = patch_table[0].area_cm2.value;

inline constexpr double patch_minutes = patch_table[0].sanding_minutes.value;

inline constexpr int patch_spots = static_cast<int>(patch_table[0].spots.value);

/// Minutes that a measurement takes beside the work [min].
inline constexpr double gauging_minutes = patch_table[0].gauging_minutes.value;

inline constexpr double weighing_minutes = patch_table[0].weighing_minutes.value;

inline constexpr double noting_minutes = patch_table[0].noting_minutes.value;

inline constexpr double loupe_minutes = patch_table[0].loupe_minutes.value;

/// What can be measured before a day of work.
enum class MeasurementKind {
  patch_gauged,    ///< a patch, with a gauge at the same spots before and after
  patch_weighed,   ///< a patch on a part that is weighed dry before and after
  patch_levelled,  ///< a patch of a zone, until its shiny spots are gone
  scratch_read,    ///< the width of a sheet's usual scratches, by loupe
  first_step,      ///< the whole first step, by the clock
};

constexpr std::string_view to_string(MeasurementKind kind) noexcept {
  switch (kind) {
    case MeasurementKind::patch_gauged: return "patch gauged";
    case MeasurementKind::patch_weighed: return "patch weighed";
    case MeasurementKind::patch_levelled: return "patch levelled";
    case MeasurementKind::scratch_read: return "scratch read";
    case MeasurementKind::first_step: return "first step";
  }
  return "";
}

template <>
inline constexpr auto choices<MeasurementKind> = std::to_array(
    {MeasurementKind::patch_gauged, MeasurementKind::patch_weighed, MeasurementKind::patch_levelled,
     MeasurementKind::scratch_read, MeasurementKind::first_step});

/// A measurement that one may make.
struct Measurement {
  MeasurementKind kind = MeasurementKind::patch_gauged;
  std::string sheet;
  std::string tool;
  std::string zone;
  double area_cm2 = 0;
  double sanding_minutes = 0;
  double removal_um = 0;
  double minutes = 0;
  double log_sd = 0;
  std::optional<double> overcut{};
  Interval minutes_before{};
  Interval minutes_after{};
  double fold_before = 1;
  double fold_after = 1;
  double gain_per_hour = 0;

  friend bool operator==(const Measurement&, const Measurement&) = default;
};

template <std::same_as<Measurement> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Measurement", "A measurement that narrows the minutes of a day.",
    member<&Value::kind>("kind", "what is measured"),
    member<&Value::sheet>("sheet", "id of the sheet that works"),
    member<&Value::tool>("tool", "name of its block or pad; empty where the plan says it"),
    member<&Value::zone>("zone", "of a patch that is levelled; else empty"),
    member<&Value::area_cm2>("area_cm2", at_least(0), "of the patch; 0 where there is none"),
    member<&Value::sanding_minutes>("sanding_minutes", at_least(0),
                                    "of the patch, at usual numbers where it is levelled"),
    member<&Value::removal_um>("removal_um", at_least(0),
                               "film that the patch takes off at usual numbers"),
    member<&Value::minutes>("minutes", at_least(0), "that it takes beside the day's own work"),
    member<&Value::log_sd>("log_sd", at_least(0), "standard error of the reading's logarithm"),
    member<&Value::overcut>("overcut", Within{1, 20},
                            "of the first step, where the plan says more than the rules"),
    member<&Value::minutes_before>(
        "minutes_before",
        "of what is left of the plan without it; of what the first step leaves, for that one"),
    member<&Value::minutes_after>("minutes_after", "the same with it, as is to be expected"),
    member<&Value::fold_before>("fold_before", at_least(1), "P90 over P10 of minutes_before"),
    member<&Value::fold_after>("fold_after", at_least(1), "the same of minutes_after"),
    member<&Value::gain_per_hour>("gain_per_hour",
                                  "ln(fold_before / fold_after) for each hour it takes"));

/// What to measure, best first.
struct Calibration {
  std::string job;
  Interval minutes;
  std::vector<Measurement> measurements;
  std::vector<Caution> cautions;

  friend bool operator==(const Calibration&, const Calibration&) = default;
};

template <std::same_as<Calibration> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Calibration", "What to measure before a day of work, best first.",
    member<&Value::job>("job", "its name"),
    member<&Value::minutes>("minutes", "of what is left of the plan, before any of these"),
    member<&Value::measurements>("measurements", "each kind once, by gain_per_hour"),
    member<&Value::cautions>("cautions", "of the plan, most serious first"));

}  // namespace levigate
