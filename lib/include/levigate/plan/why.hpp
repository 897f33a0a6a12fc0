// Why there is no plan: what is in the way, and what would help.
#pragma once

#include <array>
#include <concepts>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/wheel/standing_still.hpp"

namespace levigate::inline v0 {

/// A step that the rules do not allow, but the way past them needs.
struct Gap {
  std::string coarse;
  std::string fine;
  double coarse_um = 0;
  double fine_um = 0;
  double ratio = 0;
  std::vector<Bridge> bridges;

  friend bool operator==(const Gap&, const Gap&) = default;
};

template <std::same_as<Gap> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Gap", "A step that the rules do not allow.",
    member<&Value::coarse>("coarse", "id, or the label of the grade the work carries"),
    member<&Value::fine>("fine", "id"),
    member<&Value::coarse_um>("coarse_um", at_least(0), "grain size"),
    member<&Value::fine_um>("fine_um", at_least(0), "grain size"),
    member<&Value::ratio>("ratio", at_least(0), "of the sizes"),
    member<&Value::bridges>("bridges", "one per system that has any"));

/// A sheet that runs out.
struct PaperShort {
  std::string sheet;
  double needed = 0;
  double on_hand = 0;

  friend bool operator==(const PaperShort&, const PaperShort&) = default;
};

template <std::same_as<PaperShort> Value>
inline constexpr auto described<Value> =
    describe<Value>("PaperShort", "A sheet that runs out.", member<&Value::sheet>("sheet", "id"),
                    member<&Value::needed>("needed", at_least(0), "sheets"),
                    member<&Value::on_hand>("on_hand", at_least(0), "sheets"));

/// What film a zone needs for a plan.
struct FilmNeeded {
  std::string zone;
  double film_um = 0;
  std::optional<double> needed_um{};
  std::optional<double> dry_um_per_coat{};
  std::optional<double> coats{};
  std::optional<double> on_flat_um{};

  friend bool operator==(const FilmNeeded&, const FilmNeeded&) = default;
};

template <std::same_as<FilmNeeded> Value>
inline constexpr auto described<Value> = describe<Value>(
    "FilmNeeded", "What film a zone needs for a plan.", member<&Value::zone>("zone", "its name"),
    member<&Value::film_um>("film_um", at_least(0), "film that it has on the mean"),
    member<&Value::needed_um>(
        "needed_um", at_least(0),
        "least mean that allows a plan, in whole um, the other zones as told; "
        "none: no film does with its spread and its errors"),
    member<&Value::dry_um_per_coat>("dry_um_per_coat", at_least(0),
                                    "dry film of a coat; none: not known")
        .in_unit("um"),
    member<&Value::coats>("coats", at_least(0), "whole coats that leave needed_um"),
    member<&Value::on_flat_um>(
        "on_flat_um", at_least(0),
        "film on the flat that leaves needed_um on this edge, by its radius"));

/// The limit in the way. Where lifting one of several is enough, the first in this order.
enum class Blocker {
  done,     ///< nothing: every zone already meets the target
  target,   ///< no sheet meets the target
  ratio,    ///< max_ratio, or min_ratio
  scratch,  ///< a compound's reach
  film,     ///< a zone's film
  paper,    ///< the sheets on hand
  several,  ///< more than one at once
};

constexpr std::string_view to_string(Blocker blocker) noexcept {
  switch (blocker) {
    case Blocker::done: return "done";
    case Blocker::target: return "target";
    case Blocker::ratio: return "ratio";
    case Blocker::scratch: return "scratch";
    case Blocker::film: return "film";
    case Blocker::paper: return "paper";
    case Blocker::several: return "several";
  }
  return "";
}

template <>
inline constexpr auto choices<Blocker> = std::to_array({Blocker::done, Blocker::target,
                                                        Blocker::ratio, Blocker::scratch,
                                                        Blocker::film, Blocker::paper,
                                                        Blocker::several});

/// What to say of the limits.
enum class WhyKind {
  done,              ///< nothing to do
  no_sheets,         ///< the stack is empty
  out_of_reach,      ///< no sheet meets the target; nearest says how near one comes
  one_limit,         ///< each reported lift is enough alone
  several_limits,    ///< each is reported with the others lifted
  different_limits,  ///< each way breaks more than one limit, and not the same ones; see sheets
  carried_finer,     ///< no sheet that meets the target is finer than what the work carries
  compounds_only,    ///< only compounds meet the target, and they cannot level
};

constexpr std::string_view to_string(WhyKind kind) noexcept {
  switch (kind) {
    case WhyKind::done: return "done";
    case WhyKind::no_sheets: return "no_sheets";
    case WhyKind::out_of_reach: return "out_of_reach";
    case WhyKind::one_limit: return "one_limit";
    case WhyKind::several_limits: return "several_limits";
    case WhyKind::different_limits: return "different_limits";
    case WhyKind::carried_finer: return "carried_finer";
    case WhyKind::compounds_only: return "compounds_only";
  }
  return "";
}

template <>
inline constexpr auto choices<WhyKind> =
    std::to_array({WhyKind::done, WhyKind::no_sheets, WhyKind::out_of_reach, WhyKind::one_limit,
                   WhyKind::several_limits, WhyKind::different_limits, WhyKind::carried_finer,
                   WhyKind::compounds_only});

/// The sheet that comes nearest to a target that none meets, in the zone where it is furthest off.
struct Nearest {
  std::string sheet;
  std::string zone;
  double size_um = 0;
  double reading_gu = 0;
  bool too_near_to_work = false;
  bool wheel_refused = false;
  bool too_heavy = false;
  std::optional<StandingStill> still{};

  friend bool operator==(const Nearest&, const Nearest&) = default;
};

template <std::same_as<Nearest> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Nearest", "The sheet that comes nearest to a target that none meets.",
    member<&Value::sheet>("sheet", "id"),
    member<&Value::zone>("zone", "name of the zone where it is furthest off"),
    member<&Value::size_um>("size_um", at_least(0), "of the grain that the zone then carries"),
    member<&Value::reading_gu>(
        "reading_gu", at_least(0),
        "that a glossmeter then takes of the zone at the angle of the target"),
    member<&Value::too_near_to_work>("too_near_to_work", "it passes that zone by"),
    member<&Value::wheel_refused>("wheel_refused",
                                  "its wheel or machine is too fast or too hot for the coat"),
    member<&Value::too_heavy>("too_heavy", "the piece is too heavy to hold to its wheel")
        .only_where_told(),
    member<&Value::still>("still", "what standing still at its wheel costs; none without one"));

/// The reason for no plan, as facts: sentence() of text/sentences.hpp says it. What does not apply is empty.
struct Why {
  Blocker blocked_by = Blocker::target;
  WhyKind kind = WhyKind::out_of_reach;
  Target target;
  std::optional<Nearest> nearest;
  std::optional<double> most_gu{};
  std::string carried;
  std::vector<std::string> sheets;
  std::optional<double> smallest_max_ratio;
  std::optional<double> largest_min_ratio;
  std::vector<Gap> gaps;
  std::string compound;
  std::optional<double> too_deep_um;
  std::string zone;
  std::optional<double> film_short_um;
  std::optional<double> budget_um;
  std::vector<PaperShort> paper;
  std::vector<FilmNeeded> films{};

  friend bool operator==(const Why&, const Why&) = default;
};

template <std::same_as<Why> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Why", "Which limit is in the way, by how much, and what would help.",
    member<&Value::blocked_by>("blocked_by", "the limit"),
    member<&Value::kind>("kind", "what to say of the limits"),
    member<&Value::target>("target", "that was asked for"),
    member<&Value::nearest>("nearest", "what comes nearest to it, where no sheet meets it"),
    member<&Value::most_gu>("most_gu", at_least(0),
                            "that a glossmeter reads of a surface without a scratch, where that is "
                            "too little")
        .optional(),
    member<&Value::carried>("carried", "label of the coarsest grade that the work carries")
        .optional(),
    member<&Value::sheets>("sheets",
                           "ids of a sequence to evaluate, where different limits are in the way"),
    member<&Value::smallest_max_ratio>("smallest_max_ratio",
                                       "that allows a plan, all else unchanged"),
    member<&Value::largest_min_ratio>("largest_min_ratio",
                                      "that allows a plan, all else unchanged"),
    member<&Value::gaps>("gaps", "the steps above max_ratio, at smallest_max_ratio"),
    member<&Value::compound>("compound", "id of a compound that meets scratches beyond its reach")
        .optional(),
    member<&Value::too_deep_um>("too_deep_um", at_least(0),
                                "excess of the scratches over its reach, at least"),
    member<&Value::zone>("zone", "name of the zone that runs out of film").optional(),
    member<&Value::film_short_um>("film_short_um", at_least(0),
                                  "depth beyond its budget, at least; what to spray is in films"),
    member<&Value::budget_um>("budget_um", at_least(0), "of that zone"),
    member<&Value::paper>("paper", "sheets that run out, in the plan with least missing"),
    member<&Value::films>("films", "what each zone needs that is short of film"));

}  // namespace levigate
