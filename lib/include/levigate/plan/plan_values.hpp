// The values of a plan: what it is for, its steps zone by zone, and what they add up to.
// All that a card or a program needs stands here; job and stack are not needed beside it.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/choices.hpp"
#include "levigate/describe.hpp"
#include "levigate/plan/caution.hpp"
#include "levigate/plan/change.hpp"
#include "levigate/plan/cure_wait.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/local.hpp"
#include "levigate/plan/planned_zone.hpp"
#include "levigate/plan/reading.hpp"
#include "levigate/plan/reliance.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/tool_step.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/source.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/wheel/standing_still.hpp"

namespace levigate::inline v0 {

/// Which way the strokes of a step run.
enum class StrokeWay {
  one_way,           ///< any one way: nothing is there to cross
  across_scratches,  ///< across the scratches that the work carries
  across_before,     ///< across the step before
  along_grain,       ///< along the grain of the wood
  across_grain,      ///< across the grain of the wood
  curls,             ///< no way: a machine's pad makes curls or arcs
};

template <>
inline constexpr auto choices<StrokeWay> =
    std::to_array({StrokeWay::one_way, StrokeWay::across_scratches, StrokeWay::across_before,
                   StrokeWay::along_grain, StrokeWay::across_grain, StrokeWay::curls});

constexpr std::string_view to_string(StrokeWay way) noexcept {
  switch (way) {
    case StrokeWay::one_way: return "one way";
    case StrokeWay::across_scratches: return "across the scratches";
    case StrokeWay::across_before: return "across the step before";
    case StrokeWay::along_grain: return "along the grain";
    case StrokeWay::across_grain: return "across the grain";
    case StrokeWay::curls: return "curls";
  }
  return "";
}

/// What one sees when a step is done, beside that the scratches it takes out are gone.
enum class DoneSign {
  no_shiny_spot,       ///< no shiny low spot is left
  scratches_one_way,   ///< all scratches run one way
  scratches_your_way,  ///< all scratches run your way
  even_sheen,          ///< only an even sheen is left under a low light
  even_curls,          ///< only curls of one size are left: no direction tells the steps apart
};

template <>
inline constexpr auto choices<DoneSign> =
    std::to_array({DoneSign::no_shiny_spot, DoneSign::scratches_one_way,
                   DoneSign::scratches_your_way, DoneSign::even_sheen, DoneSign::even_curls});

constexpr std::string_view to_string(DoneSign sign) noexcept {
  switch (sign) {
    case DoneSign::no_shiny_spot: return "no shiny spot";
    case DoneSign::scratches_one_way: return "scratches one way";
    case DoneSign::scratches_your_way: return "scratches your way";
    case DoneSign::even_sheen: return "even sheen";
    case DoneSign::even_curls: return "even curls";
  }
  return "";
}

/// Why a step passes a zone by.
enum class PassedBy {
  not_levelled,  ///< the levelling step keeps off edges, and off flats that are to be left
  fine_already,  ///< its own grade is too fine for this sheet to be a step
};

template <>
inline constexpr auto choices<PassedBy> = std::to_array({PassedBy::not_levelled,
                                                         PassedBy::fine_already});

constexpr std::string_view to_string(PassedBy why) noexcept {
  switch (why) {
    case PassedBy::not_levelled: return "not levelled";
    case PassedBy::fine_already: return "fine already";
  }
  return "";
}

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
  Reading reading_20{};
  Reading reading_60{};
  Reading reading_85{};
  std::optional<double> film_left_um;
  std::optional<double> cut_through;
  std::optional<double> strokes_left{};
  std::optional<double> left_s{};
  std::optional<double> passes_left{};
  std::optional<double> comes_back_um{};
  std::string tool{};
  std::optional<PassedBy> passed_by{};
  std::optional<double> film_used{};
  std::optional<double> passes{};
  std::optional<double> pass_s{};
  double marks = 0;

  friend bool operator==(const ZoneStep&, const ZoneStep&) = default;
};

template <std::same_as<ZoneStep> Value>
inline constexpr auto described<Value> = describe<Value>(
    "ZoneStep", "What a step does in one zone.", member<&Value::zone>("zone", "its name"),
    member<&Value::worked>("worked", "false: the step passes it by and leaves it unchanged"),
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
    member<&Value::reading_20>("reading_20", "what a glossmeter reads at 20 degrees"),
    member<&Value::reading_60>("reading_60", "the same at 60 degrees"),
    member<&Value::reading_85>("reading_85", "the same at 85 degrees"),
    member<&Value::film_left_um>("film_left_um",
                                 "above the deepest scratch, on the mean; none on a solid"),
    member<&Value::cut_through>("cut_through", Within{0, 1},
                                "chance of cutting through somewhere in the zone; none on a solid"),
    member<&Value::strokes_left>(
        "strokes_left", at_least(0),
        "strokes along the edge that the film still allows; none where levelled, at a wheel, or "
        "on a solid"),
    member<&Value::left_s>(
        "left_s", at_least(0),
        "at a wheel: time under the face that the film of the edge still allows; none as "
        "strokes_left"),
    member<&Value::passes_left>("passes_left", at_least(0),
                                "at a wheel: whole passes that this is; none as strokes_left"),
    member<&Value::tool>("tool", "name of the block, pad or wheel in use here"),
    member<&Value::passed_by>("passed_by", "why the step passes it by; none where it works it"),
    member<&Value::film_used>(
        "film_used", at_least(0),
        "share of the zone's budget that is used after this step; none on a solid")
        .with_infinity("no budget"),
    member<&Value::comes_back_um>(
        "comes_back_um", at_least(0),
        "of removal_um: what comes back after levelling and is taken off once more"),
    member<&Value::passes>(
        "passes", at_least(0),
        "at a wheel: whole passes over every spot; 0 where the step passes it by"),
    member<&Value::pass_s>("pass_s", at_least(0), "at a wheel: one pass over the whole zone"),
    member<&Value::marks>("marks", at_least(0),
                          "spots of 1 cm2 that are expected to show, in the end, a mark that this "
                          "step should have taken out"));

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
  double reading_gu = 0;
  std::vector<ZoneStep> zones;
  std::vector<Caution> cautions{};
  std::string maker{};
  Basis size_basis = Basis::user;
  bool levels = false;
  StrokeWay way = StrokeWay::one_way;
  std::vector<std::string> takes_out{};
  DoneSign done = DoneSign::scratches_your_way;
  std::optional<double> done_gloss_gu{};
  std::optional<double> done_gloss_high_gu{};
  std::optional<double> done_angle_deg{};
  std::optional<double> rinse_every_strokes{};
  std::optional<double> rinse_every_minutes{};
  std::optional<double> change_every_minutes{};
  std::optional<WheelStep> wheel{};
  std::optional<MachineStep> machine{};
  std::optional<double> overcut{};
  bool fragile = false;
  std::optional<double> rest_h{};

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
    member<&Value::reading_gu>("reading_gu", at_least(0),
                               "of the zone with least, as a glossmeter takes it at 60 degrees"),
    member<&Value::zones>("zones", "in the order of the job"),
    member<&Value::cautions>("cautions", "that this step needs beside those of the plan"),
    member<&Value::maker>("maker", "of the sheet; may be empty"),
    member<&Value::size_basis>("size_basis", "what size_um rests on"),
    member<&Value::levels>("levels", "whether it takes the orange peel down"),
    member<&Value::way>("way", "which way its strokes run"),
    member<&Value::takes_out>("takes_out", "labels of the grades whose scratches it takes out"),
    member<&Value::done>("done", "what one sees when it is done"),
    member<&Value::done_gloss_gu>(
        "done_gloss_gu", at_least(0),
        "least that a glossmeter must then read; only at the end, for a sheen"),
    member<&Value::done_gloss_high_gu>("done_gloss_high_gu", at_least(0),
                                       "most that it may read, of a band"),
    member<&Value::done_angle_deg>("done_angle_deg", Within{20, 85}, "at which it is read"),
    member<&Value::rinse_every_strokes>("rinse_every_strokes", at_least(0),
                                        "strokes between two rinses of the sheet; none at a wheel"),
    member<&Value::rinse_every_minutes>(
        "rinse_every_minutes", at_least(0),
        "work between two rinses with the first zone's tool; none at a wheel"),
    member<&Value::change_every_minutes>(
        "change_every_minutes", at_least(0),
        "work that one piece lasts with the first zone's tool; none at a wheel"),
    member<&Value::wheel>("wheel", "its numbers, where it is work at a buffing wheel"),
    member<&Value::machine>("machine", "its numbers, where a hand-held machine works a zone")
        .only_where_told(),
    member<&Value::overcut>("overcut", at_least(1),
                            "removed over the scratch depth before it; none where it finds none"),
    member<&Value::fragile>("fragile",
                            "whether it breaks max_ratio at an end of the band of a size"),
    member<&Value::rest_h>("rest_h", at_least(0),
                           "to wait after levelling until what comes back is there; no work"));

/// What a plan adds up to.
struct Totals {
  double minutes = 0;
  std::optional<double> film;
  std::size_t steps = 0;
  double cost = 0;
  double depth_um = 0;
  double back_minutes = 0;
  double clean_chance = 1;

  friend bool operator==(const Totals&, const Totals&) = default;
};

template <std::same_as<Totals> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Totals", "What a plan adds up to.",
    member<&Value::minutes>("minutes", at_least(0), "all of it as planned"),
    member<&Value::film>("film", at_least(0),
                         "share of its budget that the worst zone has used; none on a solid")
        .with_infinity("no budget"),
    member<&Value::steps>("steps", "how many"),
    member<&Value::cost>("cost", at_least(0), "of the sheets used"),
    member<&Value::depth_um>("depth_um", at_least(0), "of the deepest zone"),
    member<&Value::back_minutes>("back_minutes", at_least(0),
                                 "that going back for marks is expected to take beside them"),
    member<&Value::clean_chance>("clean_chance", Within{0, 1},
                                 "that the first look in the sun finds no mark in any zone"));

/// A plan, or the reason why there is none.
struct Plan {
  bool found = false;
  std::optional<CureWait> wait{};
  std::string job;
  std::string coating;
  bool one_round = false;
  std::string scratched_by;
  Target target;
  double reserve_um = 0;
  double cut_through_limit = 0;
  double overcut = 1;
  std::vector<PlannedZone> zones;
  std::vector<LocalStep> before;
  std::vector<Step> steps;
  Totals total;
  Sequence exact;
  std::vector<Plan> tradeoff;
  std::vector<Finding> findings;
  std::vector<Caution> cautions;
  std::vector<Reliance> relies_on;
  std::optional<Why> why;
  std::optional<LearnedChange> change{};

  friend bool operator==(const Plan&, const Plan&) = default;
};

/// A plan as a point of a trade-off, where the rest of its members is empty.
template <std::same_as<Plan> Value>
inline constexpr auto described_point = describe<Value>(
    "PlanPoint", "One point of the trade-off.", member<&Value::job>("job", "its name"),
    member<&Value::coating>("coating", "its name"),
    member<&Value::scratched_by>("scratched_by",
                                 "label of the grade the job starts with; empty: as sprayed"),
    member<&Value::target>("target", "what ends the sequence"),
    member<&Value::reserve_um>("reserve_um", at_least(0), "film that must stay everywhere"),
    member<&Value::cut_through_limit>(
        "cut_through_limit", Within{0, 1},
        "chance of less than that in a zone, by which budgets are set"),
    member<&Value::overcut>("overcut", at_least(1),
                            "least that a step takes off over the scratch depth before it"),
    member<&Value::zones>("zones", "as the plan finds them, in the order of the job"),
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
    member<&Value::wait>("wait", "how long the coat must stand before it; none where it is cured"),
    member<&Value::job>("job", "its name"), member<&Value::coating>("coating", "its name"),
    member<&Value::one_round>("one_round",
                              "whether rounds melt together: films are those of all rounds"),
    member<&Value::scratched_by>("scratched_by",
                                 "label of the grade the job starts with; empty: as sprayed"),
    member<&Value::target>("target", "what ends the sequence"),
    member<&Value::reserve_um>("reserve_um", at_least(0), "film that must stay everywhere"),
    member<&Value::cut_through_limit>(
        "cut_through_limit", Within{0, 1},
        "chance of less than that in a zone, by which budgets are set"),
    member<&Value::overcut>("overcut", at_least(1),
                            "least that a step takes off over the scratch depth before it"),
    member<&Value::zones>("zones", "as the plan finds them, in the order of the job"),
    member<&Value::before>("before", "work on defects, before the first step"),
    member<&Value::steps>("steps", "in order"),
    member<&Value::total>("total", "what they add up to"),
    member<&Value::findings>("findings", "rules broken, and what to know of the drawer"),
    member<&Value::cautions>("cautions", "most serious first"),
    member<&Value::relies_on>(
        "relies_on",
        "inputs that the figures rest on, most influential first; only of a whole plan"),
    member<&Value::why>("why", "why there is none, where none was found"),
    member<&Value::change>(
        "change", "how it differs from the plan without what was learned; none: not at all")
        .optional(),
    member<&Value::tradeoff>("tradeoff",
                             "all plans that no other equals or beats in expected minutes, film, "
                             "cost and fragile steps together, by expected minutes")
        .as(kind_with<std::vector<Value>, described_point<Value>>),
    member<&Value::exact>("exact", "what the search decided by").optional());

}  // namespace levigate
