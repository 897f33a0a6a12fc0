// The values of a way back: its tries with their steps, what remains where there is none, and why.
#pragma once

#include <array>
#include <concepts>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/choices.hpp"
#include "levigate/describe.hpp"
#include "levigate/plan/at_wheel.hpp"
#include "levigate/plan/caution.hpp"
#include "levigate/recover/diagnosis.hpp"
#include "levigate/recover/leg.hpp"
#include "levigate/recover/policy.hpp"
#include "levigate/stack/finding.hpp"

namespace levigate::inline v0 {

/// A step of a try.
struct TryStep {
  std::string sheet;
  double removal_um = 0;
  double minutes = 0;
  std::optional<AtWheel> wheel{};

  friend bool operator==(const TryStep&, const TryStep&) = default;
};

template <std::same_as<TryStep> Value>
inline constexpr auto described<Value> =
    describe<Value>("TryStep", "A step of a try.", member<&Value::sheet>("sheet", "its id"),
                    member<&Value::removal_um>("removal_um", at_least(0), "to take off with it"),
                    member<&Value::minutes>("minutes", at_least(0), "sanding, without the change"),
                    member<&Value::wheel>("wheel", "its passes, where it is work at a wheel"));

/// One try: back to a sheet and up again.
struct Try {
  std::vector<TryStep> steps;
  double removal_um = 0;
  double minutes = 0;
  double gone_chance = 0;

  friend bool operator==(const Try&, const Try&) = default;
};

template <std::same_as<Try> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Try", "Back to a sheet and up again.",
    member<&Value::steps>("steps", "the sheet gone back to, then those after it as in the plan")
        .not_empty(),
    member<&Value::removal_um>("removal_um", at_least(1e-9), "that they take off in all"),
    member<&Value::minutes>("minutes", at_least(0), "in all, with changing, washing and looking"),
    member<&Value::gone_chance>("gone_chance", chance_range,
                                "that the mark is gone after it, given that it was not before"));

/// What going back to one sheet takes.
struct Reentry {
  std::string sheet;
  Climb climb;
  double removal_um = 0;

  friend bool operator==(const Reentry&, const Reentry&) = default;
};

template <std::same_as<Reentry> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Reentry", "What going back to one sheet takes.", member<&Value::sheet>("sheet", "its id"),
    member<&Value::removal_um>(
        "removal_um", at_least(0),
        "that it takes off where it is climbed through: the scratches before it"),
    member<&Value::climb>("climb", "minutes and depths of it").flat());

/// Why there is no way back.
enum class NoWay {
  witness_line,  ///< the last round is sanded through
  bottom_shows,  ///< the film is, as its rounds melt together
  unexplained,   ///< no step explains the mark, so how deep it is is not known
  out_of_reach,  ///< no sheet that worked the zone takes out so much
  film_short,    ///< the film does not afford the least that may do
  not_worth,     ///< the chance that the film is enough does not pay for the try
};

constexpr std::string_view to_string(NoWay why) noexcept {
  switch (why) {
    case NoWay::witness_line: return "witness_line";
    case NoWay::bottom_shows: return "bottom_shows";
    case NoWay::unexplained: return "unexplained";
    case NoWay::out_of_reach: return "out_of_reach";
    case NoWay::film_short: return "film_short";
    case NoWay::not_worth: return "not_worth";
  }
  return "";
}

template <>
inline constexpr auto choices<NoWay> = std::to_array({NoWay::witness_line, NoWay::bottom_shows,
                                                      NoWay::unexplained, NoWay::out_of_reach,
                                                      NoWay::film_short, NoWay::not_worth});

/// What can still be done where there is no way back.
enum class Remedy {
  spot_repair,    ///< the spot is levelled and sprayed again
  another_round,  ///< the whole zone is
};

constexpr std::string_view to_string(Remedy remedy) noexcept {
  switch (remedy) {
    case Remedy::spot_repair: return "spot_repair";
    case Remedy::another_round: return "another_round";
  }
  return "";
}

template <>
inline constexpr auto choices<Remedy> = std::to_array({Remedy::spot_repair, Remedy::another_round});

/// The way back, or why there is none: sentence() of text/sentences.hpp says that.
struct WayBack {
  bool found = false;
  Diagnosis diagnosis;
  std::vector<Reentry> reentries;
  std::vector<Try> tries;
  std::vector<Leg> legs;
  std::optional<double> patch_minutes;
  double zone_minutes = 0;
  double expected_minutes = 0;
  double round_minutes = 0;
  double gone_chance = 0;
  std::optional<double> film_um;
  std::optional<NoWay> no_way;
  std::vector<Remedy> remedies;
  std::vector<Caution> cautions;
  std::vector<Finding> findings{};

  friend bool operator==(const WayBack&, const WayBack&) = default;
};

template <std::same_as<WayBack> Value>
inline constexpr auto described<Value> = describe<Value>(
    "WayBack", "Which step made a mark, and where to go back to.",
    member<&Value::found>("found", "whether there is a way back"),
    member<&Value::diagnosis>("diagnosis", "which step made the mark"),
    member<&Value::tries>("tries", "the second is for when the mark is seen again, and so on"),
    member<&Value::legs>("legs", "the same as a hand works it, on a patch or on the whole zone"),
    member<&Value::patch_minutes>(
        "patch_minutes", at_least(0),
        "expected of legs on a patch; none where the mark is no spot or the patch does not fit"),
    member<&Value::zone_minutes>("zone_minutes", at_least(0), "expected of legs on the whole zone"),
    member<&Value::reentries>("reentries", "each sheet one can go back to, coarse to fine"),
    member<&Value::expected_minutes>("expected_minutes", at_least(0),
                                     "of the tries, another round included where it comes to that"),
    member<&Value::round_minutes>("round_minutes", at_least(0),
                                  "of another round with all steps again"),
    member<&Value::gone_chance>("gone_chance", chance_range,
                                "that one of the tries removes the mark"),
    member<&Value::film_um>("film_um", at_least(0),
                            "that may still come off here; none on a solid"),
    member<&Value::no_way>("no_way", "why there is no way back"),
    member<&Value::remedies>("remedies", "what can still be done then"),
    member<&Value::cautions>("cautions", "what can hurt"),
    member<&Value::findings>("findings", "what to know of the journal, and of machines at an edge")
        .optional());

}  // namespace levigate
