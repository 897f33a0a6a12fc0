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
#include "levigate/recover/way_back.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/wheel/finding.hpp"

namespace sentences_test {
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
            "a (P400, 35.0 um) has no published size. 35.0 um is an extrapolation. Give size_um if "
            "the maker states it");
  EXPECT_EQ(sentence(about(misleading_numbers, {coarse, fine},
                           {{"coarse_number", 600}, {"fine_number", 600}})),
            "b (P1000, 18.3 um) is finer than a (P400, 35.0 um). Both carry the same number");
  EXPECT_EQ(
      sentence(about(misleading_numbers, {coarse, fine},
                     {{"coarse_number", 800}, {"fine_number", 600}})),
      "b (P1000, 18.3 um) is finer than a (P400, 35.0 um). The finer one has the lower number");
  EXPECT_EQ(
      sentence(about(near_duplicate, {coarse, fine}, {{"ratio", 1.03}, {"min_ratio", 1.15}})),
      "a (P400, 35.0 um) and b (P1000, 18.3 um) are a ratio of 1.03 apart. The min_ratio is 1.15. "
      "One of them is enough");
  EXPECT_EQ(
      sentence(
          about(coarse_tail, {coarse, fine}, {{"coarse_tail_um", 38.1}, {"fine_tail_um", 43.0}})),
      "b (P1000, 18.3 um) may hold stray grain up to 43.0 um. Stray grain of a (P400, 35.0 um) "
      "reaches 38.1 um. The finer sheet can scratch deeper than the coarser one");
  EXPECT_EQ(sentence(about(paper_short, {coarse}, {{"on_hand", 0}})),
            "The stack has no sheet of a (P400, 35.0 um) left");
}

TEST(Sentences, OfAGapNameTheGradesThatBridgeIt) {
  Finding gap = about(FindingKind::gap, {coarse, fine}, {{"ratio", 1.9126}, {"max_ratio", 1.6}});
  EXPECT_EQ(sentence(gap),
            "The ratio from a (P400, 35.0 um) to b (P1000, 18.3 um) is 1.91, above max_ratio 1.60. "
            "No standard grade bridges the gap");
  gap.bridges = {{System::fepa_p, {"P500", "P600"}}, {System::cami, {"CAMI 400"}}};
  EXPECT_EQ(bridges_text(gap.bridges), "P500 and P600 or CAMI 400");
  EXPECT_EQ(sentence(gap),
            "The ratio from a (P400, 35.0 um) to b (P1000, 18.3 um) is 1.91, above max_ratio 1.60. "
            "To bridge it, buy P500 and P600. Or buy CAMI 400");
  gap.kind = FindingKind::step_too_long;
  gap.about = {fine, coarse};
  EXPECT_EQ(sentence(gap),
            "The step from a (35.0 um) to b (18.3 um) has a ratio of 1.91, above max_ratio 1.60. "
            "To bridge it, buy P500 and P600. Or buy CAMI 400");
  gap.bridges.clear();
  EXPECT_EQ(sentence(gap),
            "The step from a (35.0 um) to b (18.3 um) has a ratio of 1.91, above max_ratio 1.60");
}

TEST(Sentences, OfASequence) {
  using enum FindingKind;
  const std::vector<std::pair<Finding, std::string>> cases{
      {about(not_finer, {coarse, fine}, {{"ratio", 0.5}}),
       "The step from b (18.3 um) to a (35.0 um) does not go finer. Its scratches undo the step "
       "before"},
      {about(step_too_short, {fine, coarse}, {{"ratio", 1.04}, {"min_ratio", 1.15}}),
       "The step from a (35.0 um) to b (18.3 um) has a ratio of 1.04, below min_ratio 1.15. It "
       "costs film and time and gains little"},
      {about(fragile_step, {fine, coarse}, {{"ratio", 1.74}, {"max_ratio", 1.75}}),
       "The step from a (35.0 um) to b (18.3 um) has a ratio of 1.74. It keeps max_ratio 1.75 only "
       "if both sizes are as printed"},
      {about(scratch_too_deep, {fine}), "b (18.3 um) is a compound and cannot level orange peel"},
      {about(scratch_too_deep, {fine, coarse}, {{"reach_um", 0.6}, {"scratch_um", 0.9}}),
       "b (18.3 um) takes out scratches of up to 0.60 um. Scratches of a (35.0 um) are 0.90 um "
       "deep"},
      {about(repeated_sheet, {fine}), "The sequence repeats b (18.3 um)"},
      {about(soft_first, {coarse, {"block", "foam pad"}},
             {{"modulus_mpa", 0.25}, {"removal_um", 30}, {"hard_removal_um", 20}}, "top"),
       "Levelling zone top with foam pad (0.25 MPa) costs 30.0 um of film. That is 1.5 times the "
       "20.0 um of a hard block. A soft face follows the orange peel"},
      {about(paper_short, {fine}, {{"sheets_needed", 2.345}, {"on_hand", 1}}),
       "b (18.3 um) needs 2.35 sheets. The stack has 1.00"},
      {about(film_too_thin, {},
             {{"film_um", 45},
              {"film_sd_um", 12},
              {"reserve_um", 10},
              {"cut_through", 0.1473},
              {"cut_through_limit", 0.01}},
             "edge"),
       "Zone edge has 45.0 +- 12.0 um of film. 10.0 um of it must stay. Before any work, the "
       "chance of less is 14.73 %. The limit is 1.00 %. Do not sand the zone"},
      {about(film_short, {fine}, {{"depth_um", 31.24}, {"budget_um", 25}}, "top"),
       "b (18.3 um) takes zone top down by 31.2 um in all. Its film budget is 25.0 um"},
      {about(round_entered, {fine}, {{"film_um", 25}, {"below_um", 0}}, "top"),
       "The sequence sands through the last round of 25.0 um in zone top. A witness line will "
       "show. "
       "No polish hides it"},
      {about(round_entered, {fine}, {{"film_um", 25}, {"below_um", 30}}, "top"),
       "The sequence sands through the last round of 25.0 um in zone top, into the round below. A "
       "witness line will show. No polish hides it"},
      {about(target_missed, {fine, {"target", "P2000"}}, {{"target_um", 10.3}}),
       "The sequence ends with b (18.3 um) and misses the target. The target is a size of at most "
       "10.3 um (P2000)"},
      {about(target_missed, {fine, {"target", ""}}, {{"target_gloss_gu", 80}}),
       "The sequence ends with b (18.3 um) and misses the target. The target is a gloss of at "
       "least "
       "80.0 GU at 60 degrees in every zone"},
      {about(target_missed, {fine, {"target", "satin"}},
             {{"target_gloss_gu", 20}, {"target_gloss_high_gu", 35}}),
       "The sequence ends with b (18.3 um) and misses the target. The target is a gloss of 20.0 to "
       "35.0 GU at 60 degrees in every zone (satin)"},
      {about(after_target, {fine}),
       "b (18.3 um) already meets the target. The steps after it only cost film"},
      {about(sheen_over, {fine, {"sheen", "satin"}}, {{"reading_gu", 41}, {"gloss_high_gu", 35}},
             "top"),
       "Zone top ends at about 41 GU. The limit of satin is 35 GU"},
      {about(price_missing, {fine}), "b (18.3 um) has no price. The plan counts it as free"},
      {about(wheel_unknown, {fine, {"surface", "own varnish"}}, {{"surface_speed_m_s", 17.6}}),
       "b: The rim runs at 17.6 m/s. No limits of speed and heat are known for own varnish. Try it "
       "on scrap first"},
      {about(tall_defect, {{"defect", "run"}},
             {{"height_um", 150},
              {"tape_um", 60},
              {"residual_um", 1},
              {"local_minutes", 4.25},
              {"flat_minutes", 9.5},
              {"flat_film_um", 12}},
             "top"),
       "Zone top has a run of 150 um. Mask, shave down to the tape (60 um) and block flush. That "
       "takes 4.2 min and no film beside the defect. Sanding flat takes 9.5 min and up to 12.0 um "
       "of "
       "film beside it. Sanding flat is slower and costs film"},
      {about(young_coat, {}, {{"age_h", 24}, {"hard_cure_h", 168}, {"shrink_left", 0.02}}),
       "The coat is 24 h old. It needs 168 h to cure fully, unless the data sheet says otherwise. "
       "A "
       "soft film clogs the paper. It scratches deeper and shrinks back. The film may still shrink "
       "by up to 2.0 %. The plan counts that as lost"},
      {about(young_coat, {},
             {{"age_h", 0.5},
              {"hard_cure_h", 168},
              {"hardness_ratio", 0.4},
              {"scratch_ratio", 1.6},
              {"first_h", 1},
              {"shrink_left", 0.012}}),
       "The coat is 0 h old. It needs 168 h to cure fully, unless the data sheet says otherwise. A "
       "soft film clogs the paper. It scratches deeper and shrinks back. It has 40 % of its "
       "hardness. Scratches are 1.60 times as deep. The first hardness is for 1 h. The coat is "
       "younger and softer. The film may still shrink by up to 1.2 %. The plan counts that as "
       "lost"},
      {about(cure_unknown, {{"coating", "own coating"}}, {{"age_h", 24}}),
       "The coat is 24 h old. How long own coating cures is not known here. The plan counts it as "
       "cured. Follow its data sheet"},
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
      "Wheel 'muslin' runs at 17.6 m/s. The limits of shellac are 11.0 to 17.0 m/s. Use at most "
      "1064 rpm with this wheel, or a wheel of at most 295 mm at this rpm";
  EXPECT_EQ(sentence(fast), text);
  Finding same = about(FindingKind::wheel_speed, names, speed);
  same.about.insert(same.about.begin(), fine);
  EXPECT_EQ(sentence(same), "b: " + text);
  speed[0].value = 9;
  speed.erase(speed.begin() + 3);  // an rpm that the wheel may not run at
  fast = {WheelFindingKind::wheel_too_slow, Severity::note, names, speed};
  EXPECT_EQ(sentence(fast),
            "Wheel 'muslin' runs at 9.0 m/s. The limits of shellac are 11.0 to 17.0 m/s. Use a "
            "wheel of at least 296 mm at this rpm");

  const std::vector<Quantity> heat{{"dwell_s", 2},
                                   {"rise_k", 34},
                                   {"rise_limit_k", 20},
                                   {"dwell_limit_s", 0.693},
                                   {"least_feed_m_s", 0.0577},
                                   {"most_force_n", 8.25}};
  const std::string warm =
      "A spot stays 2.00 s under wheel 'muslin' and warms by 34.0 K. The limit of shellac is "
      "20.0 K, reached after 0.69 s. Feed at least 58 mm/s, or press with less than 8.2 N";
  EXPECT_EQ(sentence(WheelFinding{WheelFindingKind::dwell_too_long, Severity::error, names, heat}),
            warm);
  same.kind = FindingKind::wheel_heat;
  same.numbers = heat;
  EXPECT_EQ(sentence(same), "b: " + warm);

  EXPECT_EQ(sentence(WheelFinding{WheelFindingKind::edge_pressure,
                                  Severity::warning,
                                  {names[0]},
                                  {{"factor", 5}, {"radius_mm", 0.5}}}),
            "On an edge of radius 0.5 mm, wheel 'muslin' may press 5.0 times as hard as on the "
            "flat. It cuts faster by the same factor. Keep edges trailing and off the face");
  const Named compound{"compound", "fine", "", 8};
  EXPECT_EQ(sentence(WheelFinding{WheelFindingKind::compound_too_coarse,
                                  Severity::error,
                                  {compound},
                                  {{"before_um", 6.5}}}),
            "Compound 'fine' (8.0 um) is not finer than the grain before it (6.5 um)");
  EXPECT_EQ(
      sentence(WheelFinding{WheelFindingKind::scratch_too_deep,
                            Severity::error,
                            {compound},
                            {{"reach_um", 0.6}, {"scratch_um", 0.9}}}),
      "Compound 'fine' takes out scratches of up to 0.60 um. The step before leaves scratches "
      "of 0.90 um");
}

TEST(Sentences, OfWhyThereIsNoPlan) {
  Why why;
  why.target.size_um = 1;
  why.kind = WhyKind::done;
  EXPECT_EQ(sentence(why),
            "Nothing to do. Every zone already meets the target. The target is a size of at most "
            "1.0 um.");
  why.kind = WhyKind::no_sheets;
  EXPECT_EQ(sentence(why), "No plan. The stack has no sheets.");
  why.kind = WhyKind::out_of_reach;
  why.nearest = {.sheet = "b",
                 .zone = "rim",
                 .size_um = 18.3,
                 .too_near_to_work = true,
                 .wheel_refused = true};
  EXPECT_EQ(
      sentence(why),
      "No plan. No sheet meets the target. The target is a size of at most 1.0 um. The nearest "
      "is b with 18.3 um in zone rim. It is too close to the grain there to work the zone. "
      "Its wheel or polisher is too fast or too hot for the coat.");
  why.kind = WhyKind::carried_finer;
  why.carried = "P3000";
  EXPECT_EQ(sentence(why),
            "No plan. The work already carries P3000. No sheet that meets the target is finer.");
  why.kind = WhyKind::compounds_only;
  EXPECT_EQ(sentence(why),
            "No plan. Only compounds meet the target, and no paper comes before them. Compounds "
            "cannot level orange peel.");
  why.kind = WhyKind::different_limits;
  why.sheets = {"a", "b", "c"};
  EXPECT_EQ(sentence(why),
            "No plan. Each sequence breaks more than one limit, and not always the same ones. To "
            "see them, evaluate a, b, c.");
  why.kind = WhyKind::one_limit;
  why.smallest_max_ratio = 1.91;
  why.gaps = {{"a", "b", 35, 18.3, 1.9126, {}}};
  EXPECT_EQ(
      sentence(why),
      "No plan. Changing one limit is enough. The smallest max_ratio that allows a plan is "
      "1.9100. The ratio from a (35.0 um) to b (18.3 um) is 1.91. No standard grade bridges it.");
  why.smallest_max_ratio.reset();
  why.kind = WhyKind::several_limits;
  why.largest_min_ratio = 1.1;
  why.compound = "fine";
  why.too_deep_um = 0.3;
  why.zone = "top";
  why.film_short_um = 4.5;
  why.budget_um = 20;
  why.films = {
      {"top", 40, 60, 28, 3, {}}, {"side", 40, {}, {}, {}, {}}, {"edge", 20, 31, {}, {}, 62}};
  why.paper = {{"a", 2, 1}, {"b", 0.5, 0}};
  EXPECT_EQ(
      sentence(why),
      "No plan. Several limits are in the way at once. The largest min_ratio that allows a "
      "plan is 1.1000. Compound fine meets scratches that are 0.30 um too deep for it. A finer "
      "paper before it would help. Even the plan that takes least goes 4.50 um too deep in zone "
      "top. The film budget there is 20.00 um. Zone top needs 60 um of film on the mean. It has "
      "40.0 um. 60 um takes 3 coats of 28.0 um. No film is enough in zone side: its errors are "
      "too large. Read a film gauge at more spots. Zone edge needs 31 um of film on the mean. It "
      "has 20.0 um. An edge holds less than the flat: spray 62 um on the flat. Paper runs out. a "
      "needs 2.00 sheets. The stack has "
      "1.00. b needs 0.50 sheets. The stack has 0.00.");
  Why paper_alone;
  paper_alone.kind = WhyKind::one_limit;
  paper_alone.paper = {{"a", 2, 1}};
  EXPECT_EQ(
      sentence(paper_alone),
      "No plan. Changing one limit is enough. Paper runs out. More film does not help. a needs "
      "2.00 sheets. The stack has 1.00.");
}

TEST(Sentences, OfTheWayBack) {
  WayBack way;
  way.diagnosis.mark.zone = "top";
  EXPECT_EQ(sentence(way), "");
  way.diagnosis.needs = {{2.0, 0.5}, {6.0, 0.5}};
  way.film_um = 1.5;
  const std::string asks =
      "The mark takes 2.0 to 6.0 um to remove. The film of zone 'top' allows 1.5 um more. ";
  const std::vector<std::pair<NoWay, std::string>> cases{
      {NoWay::witness_line,
       "The last round is sanded through in zone 'top'. More sanding makes the ring larger"},
      {NoWay::bottom_shows,
       "All of the film is sanded through in zone 'top'. More sanding makes the ring larger"},
      {NoWay::unexplained,
       "None of the steps in zone 'top' explains the mark. So its depth is not known"},
      {NoWay::out_of_reach,
       "The mark takes 2.0 um or more to remove. No sheet that worked zone 'top' takes that off"},
      {NoWay::film_short, asks + "That is not enough"},
      {NoWay::not_worth, asks + "The chance of success is too small for a try"},
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
            "Most likely cause: a, step 2 in this zone (84 of 100).");
  EXPECT_EQ(told(other_cause, {{"step", 1}, {"probability", 0.999}}, true),
            "Other cause: a stray grain under a, step 1 in this zone (over 99 of 100).");
  EXPECT_EQ(told(depth, {{"scratch_um", 1.5}, {"removal_um", 0}}),
            "Scratches of a reach 1.50 um. Nothing came off since then.");
  EXPECT_EQ(told(depth, {{"scratch_um", 1.5}, {"removal_um", 0.75}}, true),
            "Scratches of a reach 1.50 um. 0.75 um came off since then. A coarser grain was under "
            "it.");
  EXPECT_EQ(told(missed, {{"probability", 0.6}}), "In 60 of 100 such cases, a missed the spot.");
  EXPECT_EQ(told(along, {{"mark_deg", 90}, {"strokes_deg", 85}}),
            "The mark runs at 90 degrees. a ran at 85 degrees, the same way.");
  EXPECT_EQ(
      told(across, {{"mark_deg", 90}, {"strokes_deg", 0}}),
      "The mark runs at 90 degrees. a ran at 0 degrees, another way. A stroke that turned made the "
      "mark.");
  EXPECT_EQ(told(width_seen, {{"width_um", 6}, {"depth_um", 1.2}}),
            "A scratch 6.0 um wide is 1.20 um deep.");
  EXPECT_EQ(told(wash, {}), "Wash the work and your hands. Take a fresh piece of a.");
  const std::vector<std::pair<double, std::string>> many{
      {2e3, "It leaves more than 1000 such marks in a zone like this."},
      {12, "It leaves 12 such marks in a zone like this."},
      {1, "It leaves about 1 such mark in a zone like this."},
      {0.01, "It leaves such a mark in 1 of 100 zones like this."},
      {1e-4, "It leaves such a mark in fewer than 1 of 1000 zones like this."},
  };
  for (const auto& [number, text] : many) EXPECT_EQ(told(expected, {{"expected", number}}), text);
}

TEST(Sentences, WhatLearningSetsAsideIsStillUsedByThePlan) {
  const Place place{3, "2026-03-01T09:30:00Z"};
  const auto said = [&](ObservedKind kind) {
    return sentence(Outlier{kind, "a", "top", place, 10, 42, 6});
  };
  using testing::HasSubstr;
  EXPECT_THAT(said(ObservedKind::film),
              HasSubstr("The plan uses it. Learning does not use it yet."));
  EXPECT_THAT(said(ObservedKind::minutes),
              HasSubstr("The plan counts the step. Learning does not use its minutes yet."));
  EXPECT_THAT(said(ObservedKind::scratch), HasSubstr("Learning does not use it yet."));
}

TEST(Sentences, OfAJournal) {
  const Place place{3, "2026-03-01T09:30:00Z"};
  EXPECT_EQ(sentence(Unmatched{place, UnmatchedKind::goes_back, {"P800", "P600"}}),
            "It goes back from P800 to P600. The removal it needed is not known.");
  EXPECT_EQ(sentence(Unmatched{place, UnmatchedKind::no_such_zone, {"lid"}}),
            "The job has no zone 'lid'.");
  const std::string end = " what all other entries suggest. ", stays = " It stays in the journal.";
  EXPECT_EQ(
      sentence(Outlier{ObservedKind::minutes, "a", "top", place, 10, 42, 4.16}),
      "a on top at 2026-03-01T09:30:00Z: 42.0 min read, 10.0 min computed. That is 4.2 standard "
      "deviations above" +
          end + "The plan counts the step. Learning does not use its minutes yet." + stays);
  EXPECT_EQ(
      sentence(Outlier{ObservedKind::scratch, "a", "", place, 1, 0.2, -5}),
      "a at 2026-03-01T09:30:00Z: 0.20 um read, 1.00 um computed. That is 5.0 standard deviations "
      "below" +
          end + "Learning does not use it yet." + stays);
  EXPECT_EQ(sentence(Outlier{ObservedKind::film, "", "top", place, 100, 60, -5}),
            "film on top at 2026-03-01T09:30:00Z: 60.0 um read, 100.0 um computed. That is 5.0 "
            "standard deviations below" +
                end + "The plan uses it. Learning does not use it yet." + stays);
  EXPECT_EQ(
      sentence(LearnedLine{"you", "minutes", 2.3, 1.9, 2.8, 1}),
      "Over all papers you are 2.3 times slower than the profiles say. The range is 1.9 to 2.8, "
      "from 1 step.");
  EXPECT_EQ(
      sentence(LearnedLine{"film on shellac", "minutes", 0.5, 0.25, 0.8, 2}),
      "With film on shellac you are 2.0 times quicker than the profiles say. The range is 1.2 "
      "to 4.0, from 2 steps.");
  EXPECT_EQ(sentence(LearnedLine{"this journal", "lines", 1, 1, 1, 1}),
            "The shop already knew 1 line of this journal.");
}

/// The kinds that are left without words.
template <typename Kind>
std::vector<Kind> silent(auto value_of) {
  std::vector<Kind> result;
  for (const Kind kind : choices<Kind>) {
    if (sentence(value_of(kind)).empty()) result.push_back(kind);
  }
  return result;
}

TEST(Sentences, EveryKindHasOne) {
  using testing::IsEmpty;
  EXPECT_THAT(silent<FindingKind>([](FindingKind kind) { return about(kind, {}); }), IsEmpty());
  EXPECT_THAT(silent<WheelFindingKind>([](WheelFindingKind kind) {
                return WheelFinding{kind, Severity::note};
              }),
              IsEmpty());
  EXPECT_THAT(silent<WhyKind>([](WhyKind kind) {
                Why why;
                why.kind = kind;
                return why;
              }),
              IsEmpty());
  EXPECT_THAT(silent<EvidenceKind>([](EvidenceKind kind) { return Evidence{.kind = kind}; }),
              IsEmpty());
  EXPECT_THAT(silent<UnmatchedKind>([](UnmatchedKind kind) {
                return Unmatched{{}, kind};
              }),
              IsEmpty());
  EXPECT_THAT(silent<NoWay>([](NoWay kind) {
                WayBack way;
                way.no_way = kind;
                return way;
              }),
              IsEmpty());
  EXPECT_THAT(silent<Remedy>([](Remedy kind) { return kind; }), IsEmpty());
}

}  // namespace
}  // namespace sentences_test
