// Why there is no plan: what stands in the way, and what would help.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/stack/check.hpp"

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

/// The limit that stands in the way. Where lifting one of several would do, the first in this order.
enum class Blocker {
  done,     ///< nothing: every zone meets the target as it stands
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

/// The reason for no plan. What does not apply is empty.
struct Why {
  Blocker blocked_by = Blocker::target;
  std::string message;
  std::optional<double> smallest_max_ratio;
  std::optional<double> largest_min_ratio;
  std::vector<Gap> gaps;
  std::string compound;
  std::optional<double> too_deep_um;
  std::string zone;
  std::optional<double> film_short_um;
  std::vector<PaperShort> paper;

  friend bool operator==(const Why&, const Why&) = default;
};

template <std::same_as<Why> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Why", "Which limit stands in the way, by how much, and what would help.",
    member<&Value::blocked_by>("blocked_by", "the limit"),
    member<&Value::message>("message", "all of it in words"),
    member<&Value::smallest_max_ratio>("smallest_max_ratio", "that would do, all else as it is"),
    member<&Value::largest_min_ratio>("largest_min_ratio", "that would do, all else as it is"),
    member<&Value::gaps>("gaps", "the steps above max_ratio, at smallest_max_ratio"),
    member<&Value::compound>("compound", "id of a compound that meets scratches beyond its reach")
        .optional(),
    member<&Value::too_deep_um>("too_deep_um", at_least(0), "by at least so much"),
    member<&Value::zone>("zone", "name of the zone that runs out of film").optional(),
    member<&Value::film_short_um>("film_short_um", at_least(0), "by at least so much"),
    member<&Value::paper>("paper", "sheets that run out, in the plan with least missing"));

}  // namespace levigate
