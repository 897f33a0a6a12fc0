// The values of a plan: its steps zone by zone, and what they add up to.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/plan/caution.hpp"
#include "levigate/plan/local.hpp"
#include "levigate/plan/reliance.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/stack/finding.hpp"

namespace levigate::inline v0 {

/// What a step does in one zone.
struct ZoneStep {
  std::string zone;
  bool worked = true;
  double removal_um = 0;
  double scratch_um = 0;
  double depth_um = 0;
  double minutes = 0;
  double travel_m = 0;
  double sheets_used = 0;
  double gloss_gu = 0;
  double gloss_20_gu = 0;
  double gloss_85_gu = 0;
  std::optional<double> film_left_um;
  std::optional<double> cut_through;
  std::optional<double> strokes_left{};

  friend bool operator==(const ZoneStep&, const ZoneStep&) = default;
};

template <std::same_as<ZoneStep> Value>
inline constexpr auto described<Value> = describe<Value>(
    "ZoneStep", "What a step does in one zone.", member<&Value::zone>("zone", "its name"),
    member<&Value::worked>("worked", "false: the step passes it by, and it stands as before"),
    member<&Value::removal_um>("removal_um", at_least(0), "lowered by this step"),
    member<&Value::scratch_um>("scratch_um", at_least(0), "depth of the scratches it leaves"),
    member<&Value::depth_um>("depth_um", at_least(0), "all removal so far and these scratches"),
    member<&Value::minutes>("minutes", at_least(0), "sanding, without the change"),
    member<&Value::travel_m>("travel_m", at_least(0), "of the block"),
    member<&Value::sheets_used>("sheets_used", at_least(0), "sheets used up in this zone"),
    member<&Value::gloss_gu>("gloss_gu", at_least(0),
                             "at 60 degrees, a lower bound of a glossmeter's reading"),
    member<&Value::gloss_20_gu>("gloss_20_gu", at_least(0), "the same at 20 degrees"),
    member<&Value::gloss_85_gu>("gloss_85_gu", at_least(0), "the same at 85 degrees"),
    member<&Value::film_left_um>("film_left_um",
                                 "above the deepest scratch, on the mean; none on a solid"),
    member<&Value::cut_through>("cut_through", Within{0, 1},
                                "chance of cutting through somewhere in the zone; none on a solid"),
    member<&Value::strokes_left>(
        "strokes_left", at_least(0),
        "strokes along the edge that the film still affords; none where levelled, or on a solid"));

/// One step of a plan.
struct Step {
  std::string sheet;
  std::string label;
  double size_um = 0;
  std::optional<double> size_ratio;
  double minutes = 0;
  double sheets_used = 0;
  double cost = 0;
  double gloss_gu = 0;
  std::vector<ZoneStep> zones;
  std::vector<Caution> cautions{};

  friend bool operator==(const Step&, const Step&) = default;
};

template <std::same_as<Step> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Step", "One sheet in all zones.", member<&Value::sheet>("sheet", "its id"),
    member<&Value::label>("label", "of the grade, as read"),
    member<&Value::size_um>("size_um", at_least(0), "median grain size"),
    member<&Value::size_ratio>(
        "size_ratio", at_least(0),
        "to the coarsest grain whose scratches it finds; none where it finds none"),
    member<&Value::minutes>("minutes", at_least(0), "all zones, with the change"),
    member<&Value::sheets_used>("sheets_used", at_least(0), "sheets used up in all zones"),
    member<&Value::cost>("cost", at_least(0), "of the sheets used"),
    member<&Value::gloss_gu>("gloss_gu", at_least(0),
                             "of the zone with least, at 60 degrees, a lower bound"),
    member<&Value::zones>("zones", "in the order of the job"),
    member<&Value::cautions>("cautions", "that this step needs beside those of the plan"));

/// What a plan adds up to.
struct Totals {
  double minutes = 0;
  std::optional<double> film;
  std::size_t steps = 0;
  double cost = 0;
  double depth_um = 0;

  friend bool operator==(const Totals&, const Totals&) = default;
};

template <std::same_as<Totals> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Totals", "What a plan adds up to.",
    member<&Value::minutes>("minutes", at_least(0), "all of it"),
    member<&Value::film>("film", at_least(0),
                         "share of its budget that the worst zone has used; none on a solid"),
    member<&Value::steps>("steps", "how many"),
    member<&Value::cost>("cost", at_least(0), "of the sheets used"),
    member<&Value::depth_um>("depth_um", at_least(0), "of the deepest zone"));

/// A plan, or the reason why there is none.
struct Plan {
  bool found = false;
  std::vector<LocalStep> before;
  std::vector<Step> steps;
  Totals total;
  Sequence exact;
  std::vector<Plan> tradeoff;
  std::vector<Finding> findings;
  std::vector<Caution> cautions;
  std::vector<Reliance> relies_on;
  std::optional<Why> why;

  friend bool operator==(const Plan&, const Plan&) = default;
};

/// A plan as a point of a trade-off, where the rest of its members is empty.
template <std::same_as<Plan> Value>
inline constexpr auto described_point = describe<Value>(
    "PlanPoint", "One point of the trade-off.",
    member<&Value::before>("before", "work on defects, before the first step"),
    member<&Value::steps>("steps", "in order"),
    member<&Value::total>("total", "what they add up to"),
    member<&Value::findings>("findings", "rules broken, and what to know of the drawer"),
    member<&Value::found>("found", "whether there is a plan").optional(),
    member<&Value::exact>("exact", "what the search decided by").optional());

template <std::same_as<Plan> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Plan", "A plan, or why there is none.",
    member<&Value::found>("found", "whether there is a plan"),
    member<&Value::before>("before", "work on defects, before the first step"),
    member<&Value::steps>("steps", "in order"),
    member<&Value::total>("total", "what they add up to"),
    member<&Value::findings>("findings", "rules broken, and what to know of the drawer"),
    member<&Value::cautions>("cautions", "most serious first"),
    member<&Value::relies_on>(
        "relies_on",
        "inputs that the figures rest on, most influential first; only of a whole plan"),
    member<&Value::why>("why", "why there is none, where none was found"),
    member<&Value::tradeoff>("tradeoff",
                             "all plans that no other equals or beats in minutes, film and cost "
                             "together, by minutes")
        .as(kind_with<std::vector<Value>, described_point<Value>>),
    member<&Value::exact>("exact", "what the search decided by").optional());

}  // namespace levigate
