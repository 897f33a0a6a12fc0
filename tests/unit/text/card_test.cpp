// The card says what the plan says, in lines that fit.
#include "levigate/text/card.hpp"
#include "levigate/detail/text.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/stack/check.hpp"
#include "levigate/surface/sheen_band_table.hpp"
#include "levigate/surface/sheen_bands.hpp"
#include "levigate/text/columns.hpp"
#include "levigate/text/work/page.hpp"
#include "levigate/text/work/phrases.hpp"
#include "levigate/text/work/step_figures.hpp"
#include "levigate/wheel/caution.hpp"
#include "levigate/wheel/pass.hpp"
#include "levigate/wheel/wheel.hpp"

#include "unit/io/json_workshop.hpp"
#include "unit/workshop.hpp"

namespace card_test {
namespace {

using namespace json_workshop;
using testing::HasSubstr;
using testing::Not;
using workshop::flowing;

Job demo_job() { return job_from_json(demo_text("job.json")); }
Stack demo_stack() { return stack_from_json(demo_text("stack.json")); }
const std::vector<std::string> habit{"a-p600", "a-p800", "a-p1000", "a-p1200", "a-p1500", "b-pad"};

void expect_fits(const std::string& text) {
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = text.find('\n', begin);
    ASSERT_NE(end, std::string::npos) << "the last line has no end";
    const std::string line = text.substr(begin, end - begin);
    EXPECT_LE(detail::columns(line), card_columns) << line;
    EXPECT_TRUE(line.empty() || line.back() != ' ') << line;
    begin = end + 1;
  }
}

/// The part of a card from one heading to the next.
std::string part(const std::string& text, const std::string& from, const std::string& to) {
  const std::size_t begin = text.find(from);
  EXPECT_NE(begin, std::string::npos) << from;
  return begin == std::string::npos ? ""
                                    : flowing(text.substr(begin, text.find(to, begin) - begin));
}

/// What is said of a step alone.
std::string step_part(const std::string& text, std::size_t number) {
  const std::size_t begin = text.find("Step " + std::to_string(number) + " of");
  EXPECT_NE(begin, std::string::npos) << number;
  if (begin == std::string::npos) return "";
  const std::size_t end = std::min(text.find("\nStep ", begin), text.find("\n\n", begin));
  return flowing(text.substr(begin, end - begin));
}

/// A cell of "take off" or of "left", of a table that holds all steps beside each other.
std::string film_cell(const std::string& text, const std::string& table, const std::string& zone,
                      std::size_t number) {
  const std::size_t head = text.find("\n  " + table + " ", text.find("\nFilm: "));
  const std::size_t row = text.find("\n  " + zone + "  ", head + 1) + 1;
  const std::string titles = text.substr(head + 1, text.find('\n', head + 1) - head - 1);
  const std::size_t from = titles.find("  " + std::to_string(number) + " ") + 2;
  const std::size_t to = titles.find("  " + std::to_string(number + 1) + " ");
  const std::string line = text.substr(row, text.find('\n', row) - row);
  const std::string cell = line.size() <= from ? "" : line.substr(from, to - from);
  return cell.substr(0, cell.find_last_not_of(' ') + 1);
}

/// The figures of a step: its line in the table of all steps.
std::string step_row(const std::string& text, std::size_t number) {
  const std::size_t table = text.find("\nEach step: ");
  const std::size_t row = text.find("\n  " + std::to_string(number) + "  ", table) + 1;
  return flowing(text.substr(row, text.find('\n', row) - row));
}

TEST(Card, FitsTheWidth) { expect_fits(card(plan(demo_job(), demo_stack()))); }

TEST(Card, HasEveryStepWithItsFigures) {
  const Job job = demo_job();
  const Plan found = plan(job, demo_stack());
  ASSERT_GE(found.steps.size(), 4U);
  const std::string text = card(found);
  for (std::size_t i = 0; i < found.steps.size(); ++i) {
    const Step& step = found.steps[i];
    const std::string own = step_part(text, i + 1);
    EXPECT_THAT(own, HasSubstr(": " + step.sheet));
    EXPECT_THAT(own, HasSubstr(", " + step.label + " ("));
    EXPECT_THAT(own, HasSubstr(detail::fixed(step.sheets_used, 1) + " sheets"));
    EXPECT_THAT(step_row(text, i + 1),
                testing::StartsWith(fmt::format(
                    "{} {:.0f} {} ", i + 1, step.minutes,
                    detail::percent_text(*step.zones[detail::worst_zone(step)].film_used))));
    if (i > 0) {
      EXPECT_THAT(own, HasSubstr("Turn 90 degrees"));
      EXPECT_THAT(own, HasSubstr("Done when the scratches of " + found.steps[i - 1].label +
                                 " are gone and all scratches run your way"));
      EXPECT_THAT(own, HasSubstr(detail::fixed(*step.size_ratio, 2) + " times finer"));
      const double budget_um = *found.zones[2].budget_um;
      const double spare_um = budget_um - found.steps.back().zones[2].depth_um;
      const double strokes = *step.zones[2].strokes_left * spare_um /
                             (budget_um - step.zones[2].depth_um);  // the later steps have theirs
      EXPECT_THAT(own,
                  HasSubstr(detail::fixed(std::floor(strokes), 0) + " more strokes along edges."));
    }
    for (const ZoneStep& zone : step.zones) {
      const double chance = *zone.cut_through;
      EXPECT_EQ(film_cell(text, "left", zone.zone, i + 1),
                detail::fixed(*zone.film_left_um, 0) +
                    (chance < 1e-4 ? "" : fmt::format(", {:.2f} %", 100 * chance)));
      if (zone.removal_um > 0) {
        EXPECT_EQ(
            film_cell(text, "take off", zone.zone, i + 1),
            detail::fixed(zone.removal_um, 1) + " in " + detail::minutes_number(zone.minutes));
      }
    }
  }
  EXPECT_THAT(step_part(text, 1), HasSubstr("Level the orange peel"));
  EXPECT_EQ(film_cell(text, "take off", "edges", 1), "keep off");
  EXPECT_EQ(film_cell(text, "take off", "edges", 2), "light pass");
  EXPECT_THAT(step_part(text, 4), HasSubstr("b-pad with foam pad, P3000"));
  EXPECT_THAT(flowing(text), HasSubstr("Rinse or wipe about every 67 strokes. Change after 12 min "
                                       "of work, b-pad after 25 min."));
}

/// More steps than stand beside each other in the width go on below.
TEST(Card, HasTheFilmOfManySteps) {
  const Plan taken =
      evaluate(demo_job(), demo_stack(),
               {"a-p400", "a-p600", "a-p800", "a-p1000", "a-p1200", "a-p1500", "a-p2000", "b-pad"});
  ASSERT_EQ(taken.steps.size(), 8U);
  const std::string text = card(taken);
  expect_fits(text);
  const std::string film = part(text, "\nFilm: ", "\n\nEach");
  for (std::size_t i = 0; i < taken.steps.size(); ++i) {
    const std::string head = std::to_string(i + 1) + " " + taken.steps[i].sheet;
    const std::size_t first = film.find(head);
    EXPECT_NE(first, std::string::npos) << head;
    EXPECT_NE(film.find(head, first + 1), std::string::npos) << head << ", film left";
    for (const ZoneStep& zone : taken.steps[i].zones)
      EXPECT_THAT(film, HasSubstr(detail::fixed(*zone.film_left_um, 0)));
  }
}

TEST(Card, SaysOnlyOnceWhatEachStepWouldRepeat) {
  const Plan found = plan(demo_job(), demo_stack());
  const std::string text = flowing(card(found));
  const auto count = [&](const std::string& what) {
    std::size_t times = 0;
    for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1))
      ++times;
    return times;
  };
  EXPECT_EQ(count("Rinse or wipe"), 1U);
  EXPECT_EQ(count("Mirrors:"), 1U);
  EXPECT_EQ(count("Lay out:"), 1U);
  for (const Caution& caution : found.cautions) EXPECT_EQ(count(caution.text), 1U);
}

TEST(Card, NamesTheWorstZoneByItsShareOfTheBudget) {
  const Job job = demo_job();
  const Plan found = plan(job, demo_stack());
  const Step& last = found.steps.back();
  const std::size_t worst = detail::worst_zone(last);
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    EXPECT_LE(last.zones[i].depth_um / budget_of(job, job.zones[i]),
              last.zones[worst].depth_um / budget_of(job, job.zones[worst]));
  }
  EXPECT_THAT(flowing(card(found)),
              HasSubstr("It uses " + detail::percent_text(*last.zones[worst].film_used) +
                        " of the film budget in " + last.zones[worst].zone + "."));
}

/// A share of no budget is no number: neither "-nan %" nor "inf %" is for a bench.
TEST(Card, SaysOfAFilmThatAffordsNothingThatItHasNoBudget) {
  Job job = demo_job();
  job.zones[2].film = Film{40, 30};
  const Stack stack = demo_stack();
  const Plan taken = evaluate(job, stack, {"a-p400", "a-p800"});
  const std::string text = card(taken);
  EXPECT_THAT(text, Not(testing::ContainsRegex("-?(nan|inf)(inite)? *%")));
  EXPECT_THAT(step_row(text, 2), HasSubstr(" no budget "));
  EXPECT_THAT(part(text, "Lay out:", "\n\n"),
              HasSubstr("Zone " + job.zones[2].name + " has no film budget."));
  EXPECT_THAT(part(text, "Found in the drawer", "\n\n"), HasSubstr("Do not sand the zone"));
  EXPECT_THAT(flowing(comparison_card(taken, plan(demo_job(), stack))),
              HasSubstr("film budget used, worst zone no budget"));
}

TEST(Card, HasTotalsTradeoffAndFindings) {
  const Plan found = plan(demo_job(), demo_stack());
  const std::string text = card(found);
  EXPECT_THAT(part(text, "Goal: ", "\n\n"),
              HasSubstr("4 steps, " + detail::duration_text(found.total.minutes)));
  EXPECT_THAT(part(text, "Lay out:", "\n\n"),
              HasSubstr(fmt::format("It uses {:.1f} sheets, paper for {:.2f}.",
                                    detail::all_sheets(found), found.total.cost)));
  const std::string ways = part(text, "Other ways", "\n\n");
  for (const Plan& end : {found.tradeoff.front(), found.tradeoff.back()}) {
    EXPECT_THAT(ways, HasSubstr(detail::sequence_text(end)));
    EXPECT_THAT(ways, HasSubstr(detail::duration_text(detail::expected_minutes(end))));
  }
  EXPECT_THAT(ways, HasSubstr(fmt::format(": 6 of {}.", found.tradeoff.size())));
  const std::size_t star = ways.find(" * ");
  ASSERT_NE(star, std::string::npos);
  EXPECT_EQ(ways.find(" * ", star + 1), std::string::npos);
  EXPECT_THAT(ways.substr(star), HasSubstr(detail::duration_text(detail::expected_minutes(found))));
  EXPECT_THAT(ways.substr(star, 70), HasSubstr(detail::sequence_text(found)));
  const std::string told = part(text, "Found in the drawer", "\n\n");
  EXPECT_THAT(told, HasSubstr("Warning: b-400 (CAMI 400, 23.6 um) is finer than a-p400"));
  EXPECT_THAT(told, HasSubstr("b-pad (P3000, 7.2 um) has no published size"));
  EXPECT_THAT(told, Not(HasSubstr("c-9um")));  // not used by this plan
}

TEST(Card, HasEveryCautionBeforeTheFirstStep) {
  const Job job = demo_job();
  const std::string text = card(plan(job, demo_stack()));
  const std::string before = part(text, "Before you start:", "Step 1 of");
  for (const Caution& caution : cautions(job)) EXPECT_THAT(before, HasSubstr(caution.text));
}

TEST(Card, SaysHowFarToTrustIt) {
  const Plan found = plan(demo_job(), demo_stack());
  const std::string text = flowing(card(found));
  EXPECT_THAT(text, HasSubstr("uncertain by a factor of 2 to 3 until you calibrate them"));
  EXPECT_THAT(text, HasSubstr("Their range is across to along"));
  EXPECT_THAT(text, HasSubstr("Sizes not from a standard. P1200 and P2000: from a published table. "
                              "CAMI 400: from memory. P3000: extrapolated."));
  // Rules are chosen, not believed: the card begins with the first input that is no rule.
  const auto first = std::find_if(found.relies_on.begin(), found.relies_on.end(),
                                  [](const Reliance& r) { return r.subject != "rule"; });
  ASSERT_NE(first, found.relies_on.end());
  EXPECT_THAT(text, HasSubstr(first->quantity));
}

TEST(Card, TakesDefectsDownBeforeTheFirstStep) {
  Job job = demo_job();
  job.zones[0].defects = {{DefectKind::run, 150, 6, 35, 3}};
  job.zones[1].defects = {{DefectKind::nib, 12, 1, 1, 1}};
  const Plan found = plan(job, demo_stack());
  const std::string text = card(found);
  expect_fits(text);
  const std::string own = part(text, "Before the first step:", "\n\n");
  EXPECT_THAT(own, HasSubstr("Warning: top: 3 runs of 150 um, 6 by 35 mm, with small hard block. " +
                             sentence(found.before[0].work)));
  EXPECT_THAT(own, HasSubstr("- front and sides: 1 nib of 12 um"));
  EXPECT_THAT(own, HasSubstr(detail::duration_text(found.before[0].work.local.minutes +
                                                   found.before[1].work.local.minutes) +
                             " in all. Done when"));
  // The work before the first step warns of it, so the findings need not.
  ASSERT_TRUE(std::any_of(found.findings.begin(), found.findings.end(),
                          [](const Finding& one) { return one.kind == FindingKind::tall_defect; }));
  EXPECT_THAT(part(text, "Found in the drawer", "\n\n"), Not(HasSubstr("has a run")));
  EXPECT_LT(text.find("Before you start:"), text.find("Before the first step:"));
}

TEST(Card, TellsTheGlossAtThreeAnglesAndAConditionForEveryStep) {
  const Plan found = plan(demo_job(), demo_stack());
  const std::string text = card(found);
  for (std::size_t i = 0; i < found.steps.size(); ++i) {
    double least_20 = 1e9, least_85 = 1e9;
    for (const ZoneStep& zone : found.steps[i].zones) {
      least_20 = std::min(least_20, zone.gloss_20_gu);
      least_85 = std::min(least_85, zone.gloss_85_gu);
    }
    const Step& step = found.steps[i];
    const auto dullest = std::min_element(
        step.zones.begin(), step.zones.end(), [](const ZoneStep& a, const ZoneStep& b) {
          return a.reading_60.expected_gu < b.reading_60.expected_gu;
        });
    const std::string row = step_row(text, i + 1);
    for (const Reading& reading : {dullest->reading_20, dullest->reading_60, dullest->reading_85}) {
      EXPECT_THAT(row, HasSubstr(fmt::format(" {:.0f} ({:.0f} to {:.0f}) ", reading.expected_gu,
                                             reading.low_gu, reading.high_gu)));
    }
    EXPECT_THAT(row, testing::EndsWith(") " + detail::fixed(least_20, 0) + ", " +
                                       detail::fixed(step.gloss_gu, 0) + ", " +
                                       detail::fixed(least_85, 0)));
    EXPECT_THAT(step_part(text, i + 1), HasSubstr("Done when "));
  }
}

TEST(Card, ASatinEndsAlongTheGrain) {
  Job job = demo_job();
  Stack stack = demo_stack();
  stack.sheets.back().size_um = 11.5;  // a pad that ends at satin
  const SheenBand& satin = band_named("institute", "satin");
  job.target = {.size_um = {},
                .gloss_gu = satin.low_gu,
                .label = "satin (institute)",
                .gloss_high_gu = satin.high_gu};
  const Plan found = plan(job, stack);
  ASSERT_TRUE(found.found);
  ASSERT_GE(found.steps.size(), 2U);
  const std::string text = card(found);
  EXPECT_THAT(flowing(text),
              HasSubstr("satin (institute), 20 to 35 GU at 60 degrees in every zone"));
  const std::size_t last = found.steps.size();
  const auto step = [&](std::size_t i) { return step_part(text, i); };
  EXPECT_THAT(step(last), HasSubstr("Sand along the grain, in straight strokes"));
  EXPECT_THAT(step(last),
              HasSubstr("all scratches run one way. A glossmeter then reads 20 to 35 GU at 60 "
                        "degrees."));
  EXPECT_THAT(step(last - 1), HasSubstr("Sand across the grain."));
  EXPECT_THAT(text, Not(HasSubstr("Turn 90 degrees")));
}

Stack stack_with_wheels() {
  Stack stack = demo_stack();
  const Stack polish = stack_from_json(
      "{\"format\": \"levigate.stack/1\", \"sheets\": ["
      "{\"id\": \"fine\", \"label\": \"fine bar\", \"compound\": \"fine\", \"wheel\": \"loose "
      "muslin\"},"
      "{\"id\": \"ultra\", \"label\": \"ultra-fine\", \"compound\": \"ultra-fine\", \"wheel\": "
      "\"loose flannel\"}]}");
  stack.sheets.insert(stack.sheets.end(), polish.sheets.begin(), polish.sheets.end());
  return stack;
}

TEST(Card, SaysOfAWheelItsNumbersAndItsCautions) {
  const Job job = demo_job();
  const Stack stack = stack_with_wheels();
  const Plan taken =
      evaluate(job, stack, {"a-p400", "a-p800", "a-p1500", "b-pad", "fine", "ultra"});
  const std::string text = card(taken);
  expect_fits(text);
  const std::string fine = step_part(text, 5);
  const Workings workings = levigate::workings(job, stack);
  const Wheel wheel = wheel_named("loose muslin");
  const std::size_t at = sheet_index(stack, "fine");
  const WheelPass pass =
      wheel_pass(wheel, wheel_limits_named(job.coating.name), workings.work[at][0].rate_um_per_m,
                 taken.steps[4].zones[0].removal_um);
  EXPECT_THAT(fine, HasSubstr("Rim speed " + detail::fixed(wheel.surface_speed_m_s(), 1) + " m/s"));
  EXPECT_THAT(fine, HasSubstr("stays " + detail::fixed(pass.dwell_s, 2) + " s under the face"));
  EXPECT_THAT(fine, HasSubstr("too warm after " + detail::fixed(pass.dwell_limit_s, 2) + " s"));
  EXPECT_THAT(fine, HasSubstr("takes " + detail::fixed(pass.film_per_pass_um, 3) + " um"));
  EXPECT_THAT(fine, HasSubstr("Passes: " + detail::fixed(pass.passes, 0) + " over every spot"));
  for (const WheelCaution& caution : wheel_cautions) {
    EXPECT_THAT(fine, HasSubstr(std::string(caution.text)));
  }
  EXPECT_THAT(fine, HasSubstr("only an even sheen is left"));
  EXPECT_THAT(step_part(text, 6), HasSubstr("follow the notes of step 5"));
  EXPECT_THAT(step_part(text, 4), Not(HasSubstr("wheel")));
}

TEST(Card, WarnsOfAWheelOnACoatingWithoutLimitsAtItsStep) {
  Job job = demo_job();
  job.coating.limits.reset();
  const Stack stack = stack_with_wheels();
  const Plan taken =
      evaluate(job, stack, {"a-p400", "a-p800", "a-p1500", "b-pad", "fine", "ultra"});
  const std::string text = card(taken);
  expect_fits(text);
  const std::string speed = detail::fixed(wheel_named("loose muslin").surface_speed_m_s(), 1);
  const std::string fine = flowing(step_part(text, 5));
  EXPECT_THAT(fine, HasSubstr("Warning: " + speed + " m/s may be too fast or too hot."));
  EXPECT_THAT(fine, HasSubstr("No limits of speed and heat are known for this coating."));
  EXPECT_THAT(fine, HasSubstr("Try it on scrap first."));
  EXPECT_THAT(fine, Not(HasSubstr("too warm after")));
  EXPECT_THAT(step_part(text, 6), HasSubstr("Warning: "));
  EXPECT_THAT(step_part(text, 4), Not(HasSubstr("Warning")));
  EXPECT_THAT(flowing(text), HasSubstr("fine: The rim runs at " + speed + " m/s"));
  EXPECT_THAT(card(evaluate(demo_job(), stack, {"a-p400", "fine"})), Not(HasSubstr("on scrap")));
}

TEST(Card, OfTheWholeDay) {
  const Job job = job_from_json(demo_text("day.json"));
  const Stack stack = stack_from_json(demo_text("day_stack.json"));
  const Plan found = plan(job, stack);
  ASSERT_TRUE(found.found);
  ASSERT_GE(found.steps.size(), 4U);
  EXPECT_EQ((found.steps.end() - 2)->sheet, "b-pad");
  EXPECT_EQ(found.steps.back().sheet, "fine-bar");
  ASSERT_EQ(found.before.size(), 3U);
  EXPECT_TRUE(found.before[0].work.shaved);
  EXPECT_EQ(found.steps[0].zones[3].removal_um, 0.0) << "a sharp edge is not levelled";
  EXPECT_NEAR(job.zones[3].film->mean_um, 0.5 * job.zones[1].film->mean_um, 1e-12);
  const std::string text = card(found);
  expect_fits(text);
  EXPECT_THAT(text, HasSubstr("3 runs of 155 um"));
  EXPECT_THAT(text, HasSubstr("1 ridge of 45 um"));
  EXPECT_THAT(flowing(text), HasSubstr("fine: common practice."));
}

TEST(Card, SaysWhatHelpsACompoundThatMeetsDeepScratches) {
  Job job = demo_job();
  job.target = {.size_um = {}, .gloss_gu = 80, .label = ""};
  Stack stack = stack_with_wheels();
  stack.sheets.erase(stack.sheets.begin(), stack.sheets.end() - 3);
  stack.sheets[0] = demo_stack().sheets[1];
  const Plan none = plan(job, stack);
  ASSERT_FALSE(none.found);
  EXPECT_THAT(part(card(none), "What would help:", "\n\n"),
              HasSubstr("Go finer with paper before fine"));
}

TEST(Card, StartsFromScratches) {
  Job job = demo_job();
  job.scratched_by = grade("P600");
  const Plan found = plan(job, demo_stack());
  ASSERT_TRUE(found.found);
  const std::string text = flowing(card(found));
  EXPECT_THAT(text, HasSubstr("scratched by P600"));
  EXPECT_THAT(text, HasSubstr("Done when the scratches of P600 are gone"));
  EXPECT_THAT(text, Not(HasSubstr("orange peel. Sand")));
}

TEST(Card, SaysWhyThereIsNoPlanAndWhatWouldHelp) {
  Job job = demo_job();
  Stack two;
  for (const Sheet& sheet : demo_stack().sheets) {
    if (sheet.id == "a-p400" || sheet.id == "b-pad") two.sheets.push_back(sheet);
  }
  const Plan none = plan(job, two);
  ASSERT_FALSE(none.found);
  std::string text = card(none);
  expect_fits(text);
  EXPECT_THAT(flowing(text), HasSubstr(sentence(*none.why)));
  const std::string help = part(text, "What would help:", "\n\n");
  EXPECT_THAT(help, HasSubstr("buy " + detail::list_text(none.why->gaps[0].bridges[0].labels)));
  EXPECT_THAT(help, HasSubstr("Allow a max_ratio of 4.8"));
  EXPECT_THAT(text, Not(HasSubstr("Step 1")));

  two = demo_stack();
  for (Sheet& sheet : two.sheets) sheet.on_hand = 0.2;
  text = card(plan(job, two));
  EXPECT_THAT(part(text, "What would help:", "\n\n"), HasSubstr("Get more of "));

  job.zones[2].film->mean_um = 20;
  const Plan thin = plan(job, demo_stack());
  const std::string needed = detail::fixed(*thin.why->films[0].needed_um, 0);
  EXPECT_THAT(part(card(thin), "What would help:", "\n\n"),
              HasSubstr("Give edges a film of " + needed + " um on the mean"));
}

TEST(Card, ASolidHasNoFilm) {
  Job job = demo_job();
  job.coating = coating_named("acrylic sheet");
  for (Zone& zone : job.zones) zone.film.reset();
  const std::string text = card(plan(job, demo_stack()));
  expect_fits(text);
  EXPECT_THAT(text, HasSubstr("no limit"));
  EXPECT_THAT(text, Not(HasSubstr("worst zone")));
}

TEST(Card, StaysInItsWidthWithLongAndStrangeNames) {
  Job job = demo_job();
  Stack stack = demo_stack();
  job.name = std::string(300, 'x') + "\x1b[2J\n\xff \u5bc4\u6728\u7d30\u5de5";
  job.zones[0].name = "the top of the case, without the moulding that runs round it";
  job.zones[2].edge->of = job.zones[0].name;
  job.zones[1].block.name = std::string(70, 'y');
  for (Sheet& sheet : stack.sheets) sheet.id += std::string(40, 'z');
  const std::string text = card(plan(job, stack));
  expect_fits(text);
  EXPECT_EQ(text.find('\x1b'), std::string::npos);
  EXPECT_EQ(text.find('\xff'), std::string::npos);
  EXPECT_THAT(text, HasSubstr("\u5bc4\u6728\u7d30\u5de5"));
}

/// A plan that was written down: no job and no stack stand behind it.
Plan written() {
  Plan plan;
  plan.found = true;
  plan.job = "lid";
  plan.coating = "own lacquer";
  plan.scratched_by = "P320";
  plan.target = {.size_um = {}, .gloss_gu = 70, .label = ""};
  plan.reserve_um = 12;
  plan.cut_through_limit = 0.02;
  plan.zones = {{"flat", 400, "cork block", 81, 4, 33.25, "P320"},
                {"rim", 30, "felt pad", 52, 5, 11, "P500"}};
  Step sand;
  sand.sheet = "own-600";
  sand.label = "P600";
  sand.size_um = 25.8;
  sand.maker = "Maker A";
  sand.size_ratio = 1.79;
  sand.way = StrokeWay::across_scratches;
  sand.takes_out = {"P320", "P500"};
  sand.minutes = 20;
  sand.sheets_used = 1.5;
  sand.size_basis = Basis::published_table;
  sand.rinse_every_strokes = 44;
  sand.change_every_minutes = 9;
  sand.zones.resize(2);
  sand.zones[0].zone = "flat";
  sand.zones[0].tool = "cork block";
  sand.zones[0].removal_um = 5.2;
  sand.zones[0].minutes = 17;
  sand.zones[0].film_left_um = 74;
  sand.zones[0].cut_through = 0;
  sand.zones[0].film_used = 0.21;
  sand.zones[1] = sand.zones[0];
  sand.zones[1].zone = "rim";
  sand.zones[1].tool = "felt pad";
  sand.zones[1].worked = false;
  sand.zones[1].passed_by = PassedBy::fine_already;
  sand.zones[1].removal_um = 0;
  sand.zones[1].film_left_um = 50.5;
  sand.zones[1].film_used = 0.27;
  Step polish = sand;
  polish.sheet = "bar";
  polish.label = "fine";
  polish.maker = "";
  polish.size_basis = Basis::assumption;
  polish.way = StrokeWay::across_before;
  polish.takes_out = {"P600"};
  polish.done = DoneSign::even_sheen;
  polish.done_gloss_gu = 70;
  polish.done_angle_deg = 60;
  polish.rinse_every_strokes = polish.change_every_minutes = std::nullopt;
  polish.wheel = WheelStep{.rim_m_s = 13,
                           .rpm = 700,
                           .feed_m_s = 0.15,
                           .dwell_s = 0.4,
                           .film_per_pass_um = 0.05,
                           .rise_k = 22,
                           .dwell_limit_s = 1.1,
                           .still = {.film_um = 0.25, .rise_k = 35}};
  polish.cautions = {{"hold", "Hold it with both hands."}};
  polish.zones[0].tool = polish.zones[1].tool = "muslin";
  polish.zones[0].passes = 4;
  polish.zones[1].worked = true;
  polish.zones[1].passed_by.reset();
  polish.zones[1].removal_um = 0.05;
  polish.zones[1].passes = 1;
  plan.steps = {sand, polish};
  plan.total = {.minutes = 40, .film = 0.27, .steps = 2, .cost = 0, .depth_um = 6};
  plan.cautions = {{"dust", "Mind the dust."}};
  return plan;
}

TEST(Card, PrintsFromThePlanAlone) {
  const std::string text = card(written());
  expect_fits(text);
  const std::string whole = flowing(text);
  EXPECT_EQ(text.find("Plan explained: lid\n===="), 0U);
  EXPECT_THAT(
      whole,
      HasSubstr(
          "On own lacquer, zones in different states. Goal: 70 GU at 60 degrees in every zone. "
          "2 steps, 40 min at usual numbers. Lay out: 2 own-600, 2 bar. It uses 3.0 sheets. It "
          "uses 27 % of the film budget in rim. In the sun:"));
  EXPECT_THAT(whole, HasSubstr("flat 400 cork block 81 +- 4 33.2 at P320"));
  EXPECT_THAT(whole, HasSubstr("rim 30 felt pad 52 +- 5 11.0 at P500"));
  EXPECT_THAT(whole,
              HasSubstr("the chance is 2.00 % that less than 12 um of film stays somewhere"));
  EXPECT_THAT(whole, HasSubstr("Before you start: - Mind the dust."));
  EXPECT_EQ(
      step_part(text, 1),
      "Step 1 of 2: own-600, P600 (25.8 um, 1.79 times finer), Maker A; 1.5 sheets Sand one "
      "way, across the scratches that are there. Done when the scratches of P320 and P500 are "
      "gone and all scratches run your way.");
  EXPECT_EQ(film_cell(text, "take off", "flat", 1), "5.2 in 17");
  EXPECT_EQ(film_cell(text, "take off", "rim", 1), "pass by");
  EXPECT_EQ(film_cell(text, "take off", "rim", 2), "0.05 in 17");
  EXPECT_EQ(film_cell(text, "left", "flat", 2), "74");
  EXPECT_EQ(film_cell(text, "left", "rim", 1), "50");
  EXPECT_THAT(step_row(text, 1), testing::StartsWith("1 20 27 % 0 (0 to 0) "));
  EXPECT_THAT(whole,
              HasSubstr("Rinse or wipe about every 44 strokes. Change after 9 min of work."));
  EXPECT_EQ(
      step_part(text, 2),
      "Step 2 of 2: bar with muslin, fine (25.8 um, 1.79 times finer) Turn 90 degrees from the "
      "step before. Keep the work moving past the wheel. Done when the scratches of P600 are "
      "gone and only an even sheen is left under a low light. A glossmeter then reads 70 GU or "
      "more at 60 degrees. Rim speed 13.0 m/s at 700 rpm. Feed the work at 150 mm/s. A spot "
      "stays 0.40 s under the face and warms by 22 K. It is too warm after 1.10 s. One pass "
      "takes 0.050 um off. Passes: 4 on flat and 1 on rim. One second of standing still takes "
      "0.25 um off and warms the spot by 35 degrees Celsius. At the wheel: - Hold it with both "
      "hands.");
  EXPECT_THAT(whole, HasSubstr("Sizes not from a standard. P600: from a published table. fine: "
                               "assumption."));
}

/// Where a sheet, a machine or a wheel asks for other care than the first step, the card says so.
TEST(Card, SaysWhichSheetAsksForOtherCare) {
  Plan plan = written();
  Step more = plan.steps.front();
  more.sheet = "own-800";
  more.change_every_minutes = 25;
  plan.steps.insert(plan.steps.begin() + 1, more);
  EXPECT_THAT(flowing(card(plan)), HasSubstr("Rinse or wipe about every 44 strokes. Change after 9 "
                                             "min of work, own-800 after 25 min."));
  more.sheet = "disc";
  more.rinse_every_minutes = 0.25;
  more.machine = MachineStep{};
  more.machine->name = "sander";
  more.zones[0].tool = "sander";
  plan.steps[1] = more;
  const std::string text = flowing(card(plan));
  EXPECT_THAT(text,
              HasSubstr("Rinse or wipe about every 44 strokes. With disc, clean the sheet every "
                        "15 s of work, by extraction or by hand. Change after 9 min of work, "
                        "disc after 25 min."));
  EXPECT_THAT(text, HasSubstr("disc with sander, P600"));
}

TEST(Card, NamesTheToolOfAZoneThatDiffers) {
  Plan plan = written();
  plan.steps.front().zones[1].worked = true;
  plan.steps.front().zones[1].tool = "soft sponge";
  EXPECT_THAT(step_part(card(plan), 1), HasSubstr("Use soft sponge on rim. Done when"));
}

TEST(Card, KeepsOffEdgesWhereItLevelsAndEndsAlongTheGrain) {
  Plan plan = written();
  plan.scratched_by = "";
  for (PlannedZone& zone : plan.zones) zone.stands = "";
  plan.steps.pop_back();
  Step& step = plan.steps.front();
  step.levels = true;
  step.way = StrokeWay::along_grain;
  step.takes_out.clear();
  step.done = DoneSign::no_shiny_spot;
  step.zones[1].passed_by = PassedBy::not_levelled;
  const std::string whole = flowing(card(plan));
  EXPECT_THAT(whole, HasSubstr("On own lacquer, as sprayed. Goal"));
  EXPECT_THAT(whole, HasSubstr("33.2 rim"));  // no column on how zones stand
  EXPECT_THAT(whole, HasSubstr("Level the orange peel. Sand along the grain, in straight strokes "
                               "from end to end."));
  EXPECT_THAT(whole, HasSubstr("rim keep off left 1 own-600"));
  EXPECT_THAT(whole, HasSubstr("Done when no shiny low spot is left. Film: "));
}

TEST(ComparisonCard, RefusesPlansOfOtherZones) {
  Job other = demo_job();
  const Plan found = plan(other, demo_stack());
  other.zones.pop_back();
  EXPECT_THROW(comparison_card(found, plan(other, demo_stack())), BadInput);
}

TEST(ComparisonCard, SetsTheHabitBesideTheBest) {
  const Job job = demo_job();
  const Plan taken = evaluate(job, demo_stack(), habit);
  const Plan best = plan(job, demo_stack());
  ASSERT_LT(best.total.minutes, taken.total.minutes);
  ASSERT_LT(*best.total.film, *taken.total.film);
  const std::string text = comparison_card(taken, best);
  expect_fits(text);
  const std::string whole = flowing(text);
  EXPECT_THAT(whole, HasSubstr("steps 6 4"));
  EXPECT_THAT(
      whole, HasSubstr("time at usual numbers " + detail::duration_text(taken.total.minutes) + " " +
                       detail::duration_text(best.total.minutes)));
  EXPECT_THAT(whole, HasSubstr("worst zone " + detail::percent_text(*taken.total.film) + " " +
                               detail::percent_text(*best.total.film)));
  EXPECT_THAT(whole, HasSubstr("Your sequence: " + detail::sequence_text(taken)));
  EXPECT_THAT(whole, HasSubstr("Best plan: " + detail::sequence_text(best)));
  EXPECT_THAT(whole, HasSubstr("It keeps max_ratio 1.75 only if both sizes are as printed."));
}

TEST(ComparisonCard, ListsEveryRuleThatTheHabitBreaks) {
  const Job job = demo_job();
  const Plan taken = evaluate(job, demo_stack(), {"b-pad", "a-p400", "a-p2000"});
  ASSERT_GE(taken.findings.size(), 4U);
  const std::string text = comparison_card(taken, plan(job, demo_stack()));
  expect_fits(text);
  for (const Finding& finding : taken.findings) {
    EXPECT_THAT(flowing(text), HasSubstr(sentence(finding)));
  }
}

TEST(FindingsText, HasEveryFindingErrorsFirst) {
  Stack stack = demo_stack();
  stack.sheets.back().label = "P650";
  const std::vector<Finding> findings = check(stack);
  const std::string text = findings_text(findings);
  expect_fits(text);
  for (const Finding& finding : findings) EXPECT_THAT(flowing(text), HasSubstr(sentence(finding)));
  EXPECT_EQ(text.find("  Error: b-pad"), 0U);
  EXPECT_EQ(findings_text({}), "Nothing to report.\n");
}

TEST(EquivalentText, HasVerdictNumberAndNeighbours) {
  const Grade given = grade("P600");
  const Equivalent found = convert(given, System::cami);
  const std::string text = equivalent_text(given, found);
  expect_fits(text);
  EXPECT_THAT(flowing(text), HasSubstr(sentence(found)));
  EXPECT_THAT(text, HasSubstr("number 382"));
  EXPECT_THAT(text, HasSubstr(found.coarser->label));
  EXPECT_THAT(text, HasSubstr(found.finer->label));
}

TEST(Phrases, DurationsAndChancesAsSpoken) {
  EXPECT_EQ(detail::duration_text(0), "0 min");
  EXPECT_EQ(detail::duration_text(0.3), "under 1 min");
  EXPECT_EQ(detail::duration_text(59.4), "59 min");
  EXPECT_EQ(detail::duration_text(59.6), "1 h 00 min");
  EXPECT_EQ(detail::duration_text(160.4), "2 h 40 min");
  EXPECT_EQ(detail::chance_text(9.9e-5), "below 0.01 %");
  EXPECT_EQ(detail::chance_text(0.0123), "1.23 %");
}

TEST(Layout, WrapsBetweenWordsAndCutsLongOnes) {
  using testing::ElementsAre;
  EXPECT_THAT(detail::wrapped("one two  three", 7), ElementsAre("one two", "three"));
  EXPECT_THAT(detail::wrapped("abcdefgh ij", 3), ElementsAre("abc", "def", "gh", "ij"));
  EXPECT_THAT(detail::wrapped("", 5), ElementsAre(""));
  EXPECT_THAT(detail::wrapped("use 86 % of it", 7), ElementsAre("use", "86 % of", "it"));
  EXPECT_THAT(detail::wrapped("in 1 h 46 min, or", 13), ElementsAre("in", "1 h 46 min,", "or"));
  EXPECT_THAT(detail::wrapped("took ____ min.", 9), ElementsAre("took", "____ min."));
  EXPECT_THAT(detail::wrapped("\u00fc\u00fc\u00fc\u00fc", 3),
              ElementsAre("\u00fc\u00fc\u00fc", "\u00fc"));
}

}  // namespace
}  // namespace card_test
