// Sentences from facts that are set by hand: each kind of finding and reason has its own.
#include "levigate/text/sentences.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>
#include <string>
#include <utility>
#include <vector>

#include "levigate/journal/learn.hpp"
#include "levigate/journal/report.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/recover/go_back.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/wheel/finding.hpp"

namespace {

using namespace levigate;

const Named coarse{"sheet", "a", "P400", 35.0};
const Named fine{"sheet", "b", "P1000", 18.3};

/// A finding of a kind with its names and numbers; a zone where there is one to name.
Finding about(FindingKind kind, std::vector<Named> names, std::vector<Quantity> numbers = {},
              std::string zone = "") {
  return {.kind = kind,
          .sheets = {},
          .zone = std::move(zone),
          .about = std::move(names),
          .numbers = std::move(numbers)};
}

TEST(Sentences, OfAStack) {
  using enum FindingKind;
  Finding unread = about(unknown_label, {{"sheet", "c", "P650"}});
  unread.error = "no such grade";
  EXPECT_EQ(sentence(unread), "c: no such grade");
  unread.kind = ambiguous_label;
  EXPECT_EQ(sentence(unread), "c: no such grade");
  EXPECT_EQ(sentence(about(extrapolated_size, {coarse})),
            "a (P400, 35.0 um) has no published size; this one is extrapolated. Give size_um if "
            "the maker states it");
  EXPECT_EQ(sentence(about(misleading_numbers, {coarse, fine},
                           {{"coarse_number", 600}, {"fine_number", 600}})),
            "b (P1000, 18.3 um) is finer than a (P400, 35.0 um) though both bear the same number");
  EXPECT_EQ(sentence(about(misleading_numbers, {coarse, fine},
                           {{"coarse_number", 800}, {"fine_number", 600}})),
            "b (P1000, 18.3 um) is finer than a (P400, 35.0 um) though its number is lower");
  EXPECT_EQ(
      sentence(about(near_duplicate, {coarse, fine}, {{"ratio", 1.03}, {"min_ratio", 1.15}})),
      "a (P400, 35.0 um) and b (P1000, 18.3 um) are a ratio of 1.03 apart, below min_ratio 1.15: "
      "one of them is enough");
  EXPECT_EQ(sentence(about(coarse_tail, {coarse, fine},
                           {{"coarse_tail_um", 38.1}, {"fine_tail_um", 43.0}})),
            "b (P1000, 18.3 um) may hold stray grain up to 43.0 um, coarser than the 38.1 um of a "
            "(P400, 35.0 um): it can scratch deeper than the step before it");
  EXPECT_EQ(sentence(about(paper_short, {coarse}, {{"on_hand", 0}})),
            "a (P400, 35.0 um) is used up: none on hand");
}

TEST(Sentences, OfAGapNameTheGradesThatBridgeIt) {
  Finding gap = about(FindingKind::gap, {coarse, fine}, {{"ratio", 1.9126}, {"max_ratio", 1.6}});
  EXPECT_EQ(sentence(gap),
            "from a (P400, 35.0 um) to b (P1000, 18.3 um) is a ratio of 1.91, above max_ratio "
            "1.60; no standard grade bridges it");
  gap.bridges = {{System::fepa_p, {"P500", "P600"}}, {System::cami, {"CAMI 400"}}};
  EXPECT_EQ(bridges_text(gap.bridges), "P500 and P600 or CAMI 400");
  EXPECT_EQ(sentence(gap),
            "from a (P400, 35.0 um) to b (P1000, 18.3 um) is a ratio of 1.91, above max_ratio "
            "1.60; P500 and P600 or CAMI 400 would bridge it");
  gap.kind = FindingKind::step_too_long;
  gap.about = {fine, coarse};
  EXPECT_EQ(sentence(gap),
            "step to b (18.3 um) from a (35.0 um) is a ratio of 1.91, above max_ratio 1.60; P500 "
            "and P600 or CAMI 400 would bridge it");
  gap.bridges.clear();
  EXPECT_EQ(sentence(gap),
            "step to b (18.3 um) from a (35.0 um) is a ratio of 1.91, above max_ratio 1.60");
}

TEST(Sentences, OfASequence) {
  using enum FindingKind;
  const std::vector<std::pair<Finding, std::string>> cases{
      {about(not_finer, {coarse, fine}, {{"ratio", 0.5}}),
       "step to a (35.0 um) from b (18.3 um) is not finer: its scratches undo the step before"},
      {about(step_too_short, {fine, coarse}, {{"ratio", 1.04}, {"min_ratio", 1.15}}),
       "step to b (18.3 um) from a (35.0 um) is a ratio of 1.04, below min_ratio 1.15: it costs "
       "film and time and gains little"},
      {about(scratch_too_deep, {fine}), "b (18.3 um) is a compound and cannot level orange peel"},
      {about(scratch_too_deep, {fine, coarse}, {{"reach_um", 0.6}, {"scratch_um", 0.9}}),
       "b (18.3 um) takes out scratches of up to 0.60 um; those of a (35.0 um) are 0.90 um deep"},
      {about(repeated_sheet, {fine}), "b (18.3 um) comes more than once"},
      {about(soft_first, {coarse, {"block", "foam pad"}},
             {{"modulus_mpa", 0.25}, {"removal_um", 30}, {"hard_removal_um", 20}}, "top"),
       "levelling zone top with foam pad (0.25 MPa) costs 30.0 um of film, 1.5 times the 20.0 um "
       "of a hard block: a soft face follows the orange peel"},
      {about(paper_short, {fine}, {{"sheets_needed", 2.345}, {"on_hand", 1}}),
       "b (18.3 um) needs 2.35 sheets, 1.00 on hand"},
      {about(film_short, {fine}, {{"depth_um", 31.24}, {"budget_um", 25}}, "top"),
       "zone top is 31.2 um deep after b (18.3 um), its budget is 25.0 um"},
      {about(round_entered, {fine}, {{"film_um", 25}, {"below_um", 0}}, "top"),
       "zone top is sanded through its last round of 25.0 um: a witness line shows that no polish "
       "hides"},
      {about(round_entered, {fine}, {{"film_um", 25}, {"below_um", 30}}, "top"),
       "zone top is sanded through its last round of 25.0 um into the one below: a witness line "
       "shows that no polish hides"},
      {about(target_missed, {fine, {"target", "P2000"}}, {{"target_um", 10.3}}),
       "ends with b (18.3 um) and misses the target, a size of at most 10.3 um (P2000)"},
      {about(target_missed, {fine, {"target", ""}}, {{"target_gloss_gu", 80}}),
       "ends with b (18.3 um) and misses the target, a gloss of at least 80.0 GU at 60 degrees in "
       "every zone"},
      {about(target_missed, {fine, {"target", "satin"}},
             {{"target_gloss_gu", 20}, {"target_gloss_high_gu", 35}}),
       "ends with b (18.3 um) and misses the target, a gloss of 20.0 to 35.0 GU at 60 degrees in "
       "every zone (satin)"},
      {about(after_target, {fine}),
       "b (18.3 um) already meets the target; what follows spends film beyond it"},
      {about(sheen_over, {fine, {"sheen", "satin"}}, {{"gloss_gu", 41}, {"gloss_high_gu", 35}},
             "top"),
       "zone top ends at 41 GU or more, above the 35 GU of satin"},
      {about(price_missing, {fine}), "b (18.3 um) has no price and counts as free"},
      {about(wheel_unknown, {fine, {"surface", "own varnish"}}, {{"surface_speed_m_s", 17.6}}),
       "b: the rim runs at 17.6 m/s; the speed and heat that own varnish stands are not known: "
       "try it on scrap first"},
      {about(tall_defect, {{"defect", "run"}},
             {{"height_um", 150},
              {"tape_um", 60},
              {"residual_um", 1},
              {"local_minutes", 4.25},
              {"flat_minutes", 9.5},
              {"flat_film_um", 12}},
             "top"),
       "run of 150 um in zone top: mask it, shave it to the tape (60 um) and block it flush: 4.2 "
       "min, no film beside it; sanded out flat it takes 9.5 min and up to 12.0 um of film beside "
       "it: worse in time and film"},
      {about(young_coat, {}, {{"age_h", 24}, {"hard_cure_h", 168}, {"shrink_left", 0.02}}),
       "the coat is 24 h old, fully cured at 168 h (the data sheet decides): soft film clogs, "
       "scratches deeper and shrinks back; up to 2.0 % of the film still to be lost"},
      {about(young_coat, {},
             {{"age_h", 0.5},
              {"hard_cure_h", 168},
              {"hardness_ratio", 0.4},
              {"scratch_ratio", 1.6},
              {"first_h", 1},
              {"shrink_left", 0.012}}),
       "the coat is 0 h old, fully cured at 168 h (the data sheet decides): soft film clogs, "
       "scratches deeper and shrinks back; 40 % of its hardness (younger than the first hardness, "
       "1 h: softer than this), scratches 1.60 times as deep; up to 1.2 % of the film still to be "
       "lost"},
  };
  for (const auto& [finding, text] : cases) EXPECT_EQ(sentence(finding), text);
}

TEST(Sentences, OfWheels) {
  const std::vector<Named> names{{"wheel", "muslin"}, {"surface", "shellac"}};
  std::vector<Quantity> speed{{"surface_speed_m_s", 17.6},
                              {"speed_low_m_s", 11},
                              {"speed_high_m_s", 17},
                              {"rpm", 1064.5},
                              {"diameter_mm", 295.2}};
  WheelFinding fast{WheelFindingKind::wheel_too_fast, Severity::error, names, speed};
  const std::string text =
      "wheel 'muslin' runs at 17.6 m/s; shellac asks for 11.0 to 17.0 m/s: at most 1064 rpm with "
      "this wheel, or at most 295 mm at this rpm";
  EXPECT_EQ(sentence(fast), text);
  Finding same = about(FindingKind::wheel_speed, names, speed);
  same.about.insert(same.about.begin(), fine);
  EXPECT_EQ(sentence(same), "b: " + text);
  speed[0].value = 9;
  speed.erase(speed.begin() + 3);  // an rpm that the wheel may not run at
  fast = {WheelFindingKind::wheel_too_slow, Severity::note, names, speed};
  EXPECT_EQ(sentence(fast),
            "wheel 'muslin' runs at 9.0 m/s; shellac asks for 11.0 to 17.0 m/s: at least 296 mm "
            "at this rpm");

  const std::vector<Quantity> heat{{"dwell_s", 2},
                                   {"rise_k", 34},
                                   {"rise_limit_k", 20},
                                   {"dwell_limit_s", 0.693},
                                   {"least_feed_m_s", 0.0577},
                                   {"most_force_n", 8.25}};
  const std::string warm =
      "a spot stays 2.00 s under wheel 'muslin' and warms by 34.0 K; shellac stands 20.0 K, "
      "reached after 0.69 s: feed at least 58 mm/s, or press with less than 8.2 N";
  EXPECT_EQ(sentence(WheelFinding{WheelFindingKind::dwell_too_long, Severity::error, names, heat}),
            warm);
  same.kind = FindingKind::wheel_heat;
  same.numbers = heat;
  EXPECT_EQ(sentence(same), "b: " + warm);

  EXPECT_EQ(sentence(WheelFinding{WheelFindingKind::edge_pressure,
                                  Severity::warning,
                                  {names[0]},
                                  {{"factor", 5}, {"radius_mm", 0.5}}}),
            "wheel 'muslin' may press 5.0 times as hard on an edge of radius 0.5 mm as on the "
            "flat, and cut as much faster: keep edges trailing and off the face");
  const Named compound{"compound", "fine", "", 8};
  EXPECT_EQ(sentence(WheelFinding{WheelFindingKind::compound_too_coarse,
                                  Severity::error,
                                  {compound},
                                  {{"before_um", 6.5}}}),
            "compound 'fine' of 8.0 um is no finer than the grain before it, 6.5 um");
  EXPECT_EQ(sentence(WheelFinding{WheelFindingKind::scratch_too_deep,
                                  Severity::error,
                                  {compound},
                                  {{"reach_um", 0.6}, {"scratch_um", 0.9}}}),
            "compound 'fine' takes out scratches to 0.60 um; the step before leaves 0.90 um");
}

TEST(Sentences, OfWhyThereIsNoPlan) {
  Why why;
  why.target.size_um = 1;
  why.kind = WhyKind::done;
  EXPECT_EQ(sentence(why),
            "Nothing to do: every zone already meets the target, a size of at most 1.0 um.");
  why.kind = WhyKind::no_sheets;
  EXPECT_EQ(sentence(why), "No plan: the stack has no sheets.");
  why.kind = WhyKind::out_of_reach;
  why.nearest = {.sheet = "b",
                 .zone = "rim",
                 .size_um = 18.3,
                 .too_near_to_work = true,
                 .wheel_refused = true};
  EXPECT_EQ(sentence(why),
            "No plan: no sheet meets the target, a size of at most 1.0 um; the nearest is b with "
            "18.3 um in zone rim, which it is too near to work, whose wheel the coat does not "
            "stand.");
  why.kind = WhyKind::carried_finer;
  why.carried = "P3000";
  EXPECT_EQ(sentence(why),
            "No plan: no sheet that meets the target is finer than P3000, which the work carries.");
  why.kind = WhyKind::compounds_only;
  EXPECT_EQ(sentence(why),
            "No plan: only compounds meet the target, with no paper before them, and they cannot "
            "level orange peel.");
  why.kind = WhyKind::different_limits;
  why.sheets = {"a", "b", "c"};
  EXPECT_EQ(sentence(why),
            "No plan: each way breaks more than one limit, and not the same ones. To see them, "
            "evaluate a, b, c.");
  why.kind = WhyKind::one_limit;
  why.smallest_max_ratio = 1.91;
  why.gaps = {{"a", "b", 35, 18.3, 1.9126, {}}};
  EXPECT_EQ(sentence(why),
            "No plan. Lifting one limit would do: the smallest max_ratio that would do is 1.9100: "
            "from a (35.0 um) to b (18.3 um) is a ratio of 1.91, which no standard grade "
            "bridges.");
  why.smallest_max_ratio.reset();
  why.kind = WhyKind::several_limits;
  why.largest_min_ratio = 1.1;
  why.compound = "fine";
  why.too_deep_um = 0.3;
  why.zone = "top";
  why.film_short_um = 4.5;
  why.budget_um = 20;
  why.paper = {{"a", 2, 1}, {"b", 0.5, 0}};
  EXPECT_EQ(sentence(why),
            "No plan, and no single limit is to blame: the largest min_ratio that would do is "
            "1.1000, compound fine meets scratches that are 0.30 um too deep for it: a finer paper "
            "before it would help, zone top is short of film by 4.50 um in the plan that spares it "
            "most, its budget being 20.00 um; paper runs out: a needs 2.00 sheets with 1.00 on "
            "hand and b needs 0.50 sheets with 0.00 on hand.");
}

TEST(Sentences, OfTheWayBack) {
  WayBack way;
  way.diagnosis.mark.zone = "top";
  EXPECT_EQ(sentence(way), "");
  way.diagnosis.needs = {{2.0, 0.5}, {6.0, 0.5}};
  way.film_um = 1.5;
  const std::string asks =
      "the mark asks for 2.0 to 6.0 um, and the film of zone 'top' affords 1.5 um more: ";
  const std::vector<std::pair<NoWay, std::string>> cases{
      {NoWay::witness_line,
       "the last round is sanded through in zone 'top': whatever comes off makes the ring larger"},
      {NoWay::unexplained,
       "no step that was done in zone 'top' explains the mark, so how deep it is is not known"},
      {NoWay::out_of_reach,
       "no sheet that worked zone 'top' takes out what it asks for, 2.0 um or more"},
      {NoWay::film_short, asks + "that is not enough"},
      {NoWay::not_worth, asks + "the chance that this is enough does not pay for the try"},
  };
  for (const auto& [why, text] : cases) {
    way.no_way = why;
    EXPECT_EQ(sentence(way), text);
  }
  EXPECT_THAT(sentence(Remedy::spot_repair), testing::StartsWith("Spot repair: "));
  EXPECT_THAT(sentence(Remedy::another_round), testing::StartsWith("Another round "));
}

TEST(Sentences, OfEvidence) {
  const auto told = [](EvidenceKind kind, std::vector<Quantity> numbers, bool stray = false) {
    return sentence(Evidence{kind, MarkKind::scratch, "a", stray, std::move(numbers)});
  };
  using enum EvidenceKind;
  EXPECT_EQ(told(likeliest, {{"step", 2}, {"probability", 0.84}}),
            "Most likely a (step 2 here), 84 of 100.");
  EXPECT_EQ(told(other_cause, {{"step", 1}, {"probability", 0.999}}, true),
            "Else a stray grain under a (step 1 here), over 99 of 100.");
  EXPECT_EQ(told(depth, {{"scratch_um", 1.5}, {"removal_um", 0}}),
            "Scratches of a reach 1.50 um and nothing came off since.");
  EXPECT_EQ(told(depth, {{"scratch_um", 1.5}, {"removal_um", 0.75}}, true),
            "Scratches of a reach 1.50 um and 0.75 um came off since: a grain coarser than its own "
            "went under it.");
  EXPECT_EQ(told(missed, {{"probability", 0.6}}), "In 60 of 100 such cases a missed the spot.");
  EXPECT_EQ(told(along, {{"mark_deg", 90}, {"strokes_deg", 85}}),
            "It runs at 90 degrees; a ran at 85, the same way.");
  EXPECT_EQ(told(across, {{"mark_deg", 90}, {"strokes_deg", 0}}),
            "It runs at 90 degrees; a ran at 0, another way: strokes that turned.");
  EXPECT_EQ(told(width_seen, {{"width_um", 6}, {"depth_um", 1.2}}),
            "A scratch 6.0 um wide is 1.20 um deep.");
  EXPECT_EQ(told(wash, {}), "Wash the work and your hands, and take a fresh a.");
  const std::vector<std::pair<double, std::string>> many{
      {2e3, "It leaves more than a thousand such in a zone like this."},
      {12, "It leaves 12 such in a zone like this."},
      {1, "It leaves about one such in a zone like this."},
      {0.01, "One zone like this in 100 has such a mark from it."},
      {1e-4, "Fewer than one zone like this in a thousand has such a mark from it."},
  };
  for (const auto& [number, text] : many) EXPECT_EQ(told(expected, {{"expected", number}}), text);
}

TEST(Sentences, OfAJournal) {
  const Place place{3, "2026-03-01T09:30:00Z"};
  EXPECT_EQ(sentence(Unmatched{place, UnmatchedKind::goes_back, {"P800", "P600"}}),
            "It goes back from P800 to P600: what had to be removed is not known.");
  EXPECT_EQ(sentence(Unmatched{place, UnmatchedKind::no_such_zone, {"lid"}}),
            "The job has no zone 'lid'.");
  const std::string end = " what all else lets expect. It is set aside, and stays in the journal.";
  EXPECT_EQ(sentence(Outlier{ObservedKind::minutes, "a", "top", place, 10, 42, 4.16}),
            "a on top at 2026-03-01T09:30:00Z: 42.0 min where 10.0 min is computed, 4.2 spreads "
            "above" +
                end);
  EXPECT_EQ(
      sentence(Outlier{ObservedKind::scratch, "a", "", place, 1, 0.2, -5}),
      "a at 2026-03-01T09:30:00Z: 0.20 um where 1.00 um is computed, 5.0 spreads below" + end);
  EXPECT_EQ(sentence(Outlier{ObservedKind::film, "", "top", place, 100, 60, -5}),
            "film on top at 2026-03-01T09:30:00Z: 60.0 um where 100.0 um is computed, 5.0 spreads "
            "below" +
                end);
  EXPECT_EQ(sentence(LearnedLine{"you", "minutes", 2.3, 1.9, 2.8, 1}),
            "Whatever the paper, you are 2.3 times slower than the profiles say, 1.9 to 2.8, from "
            "1 step.");
  EXPECT_EQ(sentence(LearnedLine{"film on shellac", "minutes", 0.5, 0.25, 0.8, 2}),
            "With film on shellac you are 2.0 times quicker than the profiles say, 1.2 to 4.0, "
            "from 2 steps.");
  EXPECT_EQ(sentence(LearnedLine{"this journal", "lines", 1, 1, 1, 1}),
            "1 line of this journal was learned before.");
}

/// Whether no kind is left without words.
template <typename Kind>
std::vector<Kind> silent(Kind last, auto value_of) {
  std::vector<Kind> result;
  for (int i = 0; i <= static_cast<int>(last); ++i) {
    const auto kind = static_cast<Kind>(i);
    EXPECT_NE(to_string(kind), "");
    if (sentence(value_of(kind)).empty()) result.push_back(kind);
  }
  return result;
}

TEST(Sentences, EveryKindHasOne) {
  using testing::IsEmpty;
  EXPECT_THAT(silent(FindingKind::wheel_unknown, [](FindingKind kind) { return about(kind, {}); }),
              IsEmpty());
  EXPECT_THAT(silent(WheelFindingKind::scratch_too_deep,
                     [](WheelFindingKind kind) {
                       return WheelFinding{kind, Severity::note};
                     }),
              IsEmpty());
  EXPECT_THAT(silent(WhyKind::compounds_only,
                     [](WhyKind kind) {
                       Why why;
                       why.kind = kind;
                       return why;
                     }),
              IsEmpty());
  EXPECT_THAT(
      silent(EvidenceKind::ask_which_way, [](EvidenceKind kind) { return Evidence{.kind = kind}; }),
      IsEmpty());
  EXPECT_THAT(silent(UnmatchedKind::film_known,
                     [](UnmatchedKind kind) {
                       return Unmatched{{}, kind};
                     }),
              IsEmpty());
}

}  // namespace
