// The bench sheet holds what a finisher works by: figures of the plan, where to stop, and nothing that runs off the page.
#include "levigate/text/bench_sheet.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <sstream>
#include <string>
#include <vector>

#include "levigate/plan/plan.hpp"
#include "levigate/risk/simulate.hpp"
#include "levigate/text/columns.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/text/work/measure.hpp"
#include "levigate/text/work/page.hpp"
#include "levigate/text/work/short_cautions.hpp"
#include "levigate/text/work/upkeep.hpp"
#include "levigate/text/work/urgent.hpp"
#include "levigate/wheel/caution.hpp"

#include "unit/io/json_workshop.hpp"
#include "unit/plan/machine_workshop.hpp"
#include "unit/workshop.hpp"

namespace bench_sheet_test {
namespace {

using namespace json_workshop;
using testing::AllOf;
using testing::Contains;
using testing::ContainsRegex;
using testing::Each;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using workshop::flowing;

struct Demo {
  Job job;
  Stack stack;
  Plan plan;
  Simulation simulation;
};

Demo demo(const std::string& job_name, const std::string& stack_name) {
  Demo made{job_from_json(demo_text(job_name)), stack_from_json(demo_text(stack_name)), {}, {}};
  made.plan = plan(made.job, made.stack);
  made.simulation = simulate(made.job, made.stack, made.plan, {.draws = 200});
  return made;
}

/// Each is worked out once: together they take most of the time of these tests.
const Demo& clock_case() {
  static const Demo made = demo("job.json", "stack.json");
  return made;
}
const Demo& whole_day() {
  static const Demo made = demo("day.json", "day_stack.json");
  return made;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

/// All that a sheet says in sentences.
std::vector<std::string> sentences_of(const BenchSheet& sheet) {
  std::vector<std::string> said{sheet.on,      sheet.goal, sheet.time,
                                sheet.lay_out, sheet.more, sheet.before_done};
  const auto add = [&](const std::vector<std::string>& more) {
    said.insert(said.end(), more.begin(), more.end());
  };
  add(sheet.urgent);
  add(sheet.cautions);
  add(sheet.reading);
  add(sheet.sun);
  for (const SheetStep& step : sheet.steps) {
    add({step.beware, step.way, step.look, step.time, step.upkeep});
    add(step.notes);
  }
  return said;
}

/// The most words from one full stop to the next.
int longest(const std::string& text) {
  int most = 0, words = 0;
  std::istringstream stream(text);
  for (std::string word; stream >> word;) {
    most = std::max(most, ++words);
    if (word.ends_with('.') || word.ends_with(':')) words = 0;
  }
  return most;
}

void expect_fits(const std::string& text, std::size_t most_lines) {
  const std::vector<std::string> lines = lines_of(text);
  EXPECT_LE(lines.size(), most_lines);
  for (const std::string& line : lines) {
    EXPECT_LE(detail::columns(line), card_columns) << line;
    EXPECT_FALSE(line.ends_with(' ')) << line;
  }
}

TEST(BenchSheet, FitsItsPages) {
  const Demo &job = clock_case(), &day = whole_day();
  expect_fits(sheet_text(bench_sheet(job.plan, job.simulation)), 60);
  expect_fits(sheet_text(bench_sheet(job.plan, job.simulation, ShownUnits::us)), 60);
  expect_fits(sheet_text(bench_sheet(job.plan)), 60);
  expect_fits(sheet_text(bench_sheet(day.plan, day.simulation)), 110);
  expect_fits(sheet_text(bench_sheet(day.plan, day.simulation, ShownUnits::us)), 110);
}

TEST(BenchSheet, SaysShortSentencesAndNoNumberThatIsNone) {
  for (const Demo* made : {&clock_case(), &whole_day()}) {
    for (const ShownUnits units : choices<ShownUnits>) {
      const BenchSheet sheet = bench_sheet(made->plan, made->simulation, units);
      for (const std::string& said : sentences_of(sheet)) EXPECT_LE(longest(said), 20) << said;
      for (const std::string& text : {sheet_text(sheet), sheet_html(sheet)})
        EXPECT_THAT(text, Not(ContainsRegex("[^a-z](nan|inf)[^a-z]")));
    }
  }
}

TEST(BenchSheet, HasTheFiguresOfThePlan) {
  const auto& [job, stack, found, simulation] = clock_case();
  const BenchSheet sheet = bench_sheet(found, simulation);
  ASSERT_EQ(sheet.steps.size(), found.steps.size());
  for (std::size_t i = 0; i < found.steps.size(); ++i) {
    const Step& step = found.steps[i];
    EXPECT_THAT(sheet.steps[i].take, HasSubstr(step.sheet + ", " + step.label + " ("));
    EXPECT_THAT(sheet.steps[i].time,
                HasSubstr(detail::duration_text(simulation.steps[i].minutes.p50)));
    for (std::size_t zone = 0; zone < step.zones.size(); ++zone) {
      const SheetZone& row = sheet.steps[i].zones[zone];
      EXPECT_EQ(row.zone, found.zones[zone].zone);
      if (step.zones[zone].removal_um > 0.0) {
        EXPECT_EQ(row.take_off, detail::fixed(step.zones[zone].removal_um, 1));
        EXPECT_EQ(row.tool, step.zones[zone].tool);
      }
    }
  }
  EXPECT_EQ(sheet.steps[0].beware, "Not a-p400, which is coarser.");
  EXPECT_EQ(sheet.steps[0].zones[2].take_off, "keep off");
  EXPECT_EQ(sheet.steps[0].zones[2].stop, "");
  EXPECT_EQ(sheet.steps[1].zones[2].take_off, "light pass");
  EXPECT_THAT(flowing(sheet_text(sheet)),
              AllOf(HasSubstr("[ ] Step 1 of 4: take b-400"), HasSubstr("Lay out: 3"),
                    HasSubstr("Done when no shiny low spot is left."),
                    HasSubstr("Gauge now: top 92, front and sides 84 and edges 45 um.")));
}

TEST(BenchSheet, WithoutASimulationSaysThatItsMinutesAreUsual) {
  const BenchSheet sheet = bench_sheet(clock_case().plan);
  EXPECT_THAT(sheet.time,
              AllOf(HasSubstr("Times are at usual numbers"), Not(HasSubstr("brackets"))));
  EXPECT_EQ(sheet.steps[0].time, detail::duration_text(clock_case().plan.steps[0].minutes));
}

TEST(BenchSheet, RefusesASimulationOfAnotherPlan) {
  EXPECT_THROW(bench_sheet(clock_case().plan, whole_day().simulation), BadInput);
}

/// Who stops at the line of a step and goes on as planned ends just within the budget: all that came off by the gauge, what the
/// steps after it take, and the last scratches.
TEST(BenchSheet, StopsWhereTheRestStillFitsTheBudget) {
  for (const Demo* made : {&clock_case(), &whole_day()}) {
    const BenchSheet sheet = bench_sheet(made->plan);
    for (std::size_t zone = 0; zone < made->plan.zones.size(); ++zone) {
      const PlannedZone& start = made->plan.zones[zone];
      double later_um = made->plan.steps.back().zones[zone].scratch_um;
      for (std::size_t i = made->plan.steps.size(); i-- > 0;) {
        const SheetZone& row = sheet.steps[i].zones[zone];
        if (row.worked) {
          const double off_um = *start.film_um + *start.below_um - std::stod(row.stop);
          EXPECT_LE(off_um + later_um, *start.budget_um + 1e-9) << start.zone << i;
          EXPECT_GT(off_um + later_um, *start.budget_um - 1.0) << start.zone << i;
        }
        later_um += made->plan.steps[i].zones[zone].removal_um;
      }
    }
  }
}

TEST(BenchSheet, KeepsStrokesAlongAnEdgeForTheStepsAfter) {
  Plan found = clock_case().plan;
  const std::size_t edges = 2, second = 1, last = found.steps.size() - 1;
  const auto strokes = [&](std::size_t step) {
    const std::string note = bench_sheet(found).steps[step].notes.back();
    const std::string before = "Strokes beyond this, at most: ";
    EXPECT_THAT(note, ContainsRegex(before + "[0-9]+ on edges."));
    return std::stod(note.substr(before.size()));
  };
  EXPECT_EQ(strokes(last), *found.steps[last].zones[edges].strokes_left);
  // All budget but 3 um is used after the second step, and the steps after it take 1 um of them.
  found.steps[second].zones[edges].depth_um = *found.zones[edges].budget_um - 3.0;
  found.steps[last].zones[edges].depth_um = *found.zones[edges].budget_um - 2.0;
  found.steps[second].zones[edges].strokes_left = 90;
  EXPECT_EQ(strokes(second), 60);
  found.steps[last].zones[edges].depth_um = *found.zones[edges].budget_um + 1.0;
  EXPECT_EQ(strokes(second), 0);
}

TEST(BenchSheet, ReadsTheRoundsBelowTheLastWithTheGauge) {
  const Plan& day = whole_day().plan;
  EXPECT_DOUBLE_EQ(*day.zones[1].below_um, 80);  // front: two coats of 40
  const BenchSheet sheet = bench_sheet(day);
  EXPECT_THAT(sheet.reading, Contains(HasSubstr("A gauge reads all rounds.")));
  EXPECT_THAT(sheet.reading, Contains(HasSubstr("front 200, sides 200")));
  EXPECT_THAT(bench_sheet(clock_case().plan).reading, Each(Not(HasSubstr("all rounds"))));
}

TEST(BenchSheet, OfRoundsThatMeltCountsThemAll) {
  Job job = workshop::top(10);
  job.coating = coating_named("nitrocellulose lacquer");
  job.zones[0].film = Film{80, 3};
  job.zones[0].below_um = 40;
  const Plan found = plan(job, workshop::papers({"P600", "P800", "P1000", "P1200", "P1500"}));
  ASSERT_TRUE(found.found);
  EXPECT_DOUBLE_EQ(*found.zones[0].below_um, 0);
  const BenchSheet sheet = bench_sheet(found);
  EXPECT_THAT(sheet.reading,
              AllOf(Contains(HasSubstr("melt together")), Contains(HasSubstr("top 120 um"))));
  EXPECT_THAT(sheet.steps[0].notes, Contains(HasSubstr("Then wait")));
}

TEST(BenchSheet, OfASolidHasNoGaugeLine) {
  Job job = workshop::top(35);
  job.coating = coating_named("acrylic sheet");
  job.zones[0].film.reset();
  const Plan found = plan(job, workshop::papers({"P400", "P800", "P1500"}));
  EXPECT_EQ(found.zones[0].below_um, std::nullopt);
  const BenchSheet sheet = bench_sheet(found);
  EXPECT_FALSE(sheet.gauge);
  EXPECT_EQ(sheet.steps[0].zones[0].stop, "no gauge line");
  EXPECT_THAT(sheet_text(sheet), Not(HasSubstr("stop")));
  EXPECT_THAT(sheet_html(sheet), AllOf(HasSubstr("no film figure"), Not(HasSubstr("gauge"))));
}

TEST(BenchSheet, WithoutALimitSaysSo) {
  Plan found = clock_case().plan;
  found.zones[0].budget_um = std::numeric_limits<double>::infinity();
  const BenchSheet sheet = bench_sheet(found);
  EXPECT_EQ(sheet.steps[0].zones[0].stop, "no limit");
  EXPECT_EQ(sheet.bars[0].stop, "no limit");
}

TEST(BenchSheet, TellsAChanceFromATenthOfTheLimitOn) {
  Plan found = clock_case().plan;
  ZoneStep& zone = found.steps[0].zones[0];
  zone.cut_through = told_share_of_limit * found.cut_through_limit;
  EXPECT_EQ(bench_sheet(found).steps[0].zones[0].chance, "0.10 %");
  zone.cut_through = 0.999 * told_share_of_limit * found.cut_through_limit;
  EXPECT_EQ(bench_sheet(found).steps[0].zones[0].chance, "");
  EXPECT_FALSE(bench_sheet(whole_day().plan).chances);  // all of them lie below
  EXPECT_THAT(sheet_text(bench_sheet(whole_day().plan)), Not(HasSubstr("risk")));
}

TEST(BenchSheet, OfAWheelSaysHowToHoldIt) {
  const BenchSheet sheet = bench_sheet(whole_day().plan);
  EXPECT_THAT(flowing(sheet_text(sheet)),
              AllOf(HasSubstr("Wheel at 750 rpm, 838 m/min at the rim. Feed 12 m/min. Passes: 6"),
                    HasSubstr("A spot is too warm after 0.91 s."),
                    HasSubstr("warms the spot by 42 C"), HasSubstr("no gloves near the spindle")));
  EXPECT_EQ(sheet.cautions.back(), detail::first_of_all_with_machine);
  EXPECT_THAT(flowing(sheet_text(bench_sheet(whole_day().plan, ShownUnits::us))),
              AllOf(HasSubstr("2749 ft/min at the rim. Feed 39 ft/min."),
                    HasSubstr("warms the spot by 76 F"), HasSubstr("0.24 by 1.38 in")));
}

TEST(BenchSheet, OfAMachineKeepsItOffTheEdges) {
  Job job = workshop::top(25, 250);
  job.zones[0].area_cm2 = 5000;
  const Plan found = plan(job, machine_workshop::discs({"P400", "P600", "P800", "P1200", "P1500"}));
  ASSERT_TRUE(found.found);
  const BenchSheet sheet = bench_sheet(found);
  EXPECT_THAT(sheet.steps[0].notes,
              AllOf(Contains(HasSubstr("off every edge. Rub that strip by hand")),
                    Contains(HasSubstr("orbits a minute"))));
  EXPECT_THAT(sheet.cautions, Contains(HasSubstr("mains power and water can kill")));
}

TEST(BenchSheet, HasAShortFormOfEveryCaution) {
  const auto expect_short = [](const auto& table, const std::string& topic) {
    if (topic == detail::authority_topic) return;
    const std::string text = detail::short_caution(table, {topic, "not in the table"});
    EXPECT_NE(text, "not in the table") << topic;
    EXPECT_LE(text.size(), card_columns - 4) << text;  // one line, after its mark
    EXPECT_LE(longest(text), 20) << text;
  };
  for (const Caution& caution : cautions(workshop::top(35)))
    expect_short(detail::short_cautions_of_job, caution.topic);
  for (const WheelCaution& caution : wheel_cautions)
    expect_short(detail::short_cautions_of_wheel, std::string(caution.topic));
  for (const WheelCaution& caution : machine_cautions)
    expect_short(detail::short_cautions_of_machine, std::string(caution.topic));
  EXPECT_EQ(detail::short_caution(detail::short_cautions_of_job, {"new", "Said whole."}),
            "Said whole.");
  EXPECT_EQ(bench_sheet(clock_case().plan).cautions.back(), detail::first_of_all);
}

TEST(BenchSheet, SaysFirstWhatCannotWait) {
  Job job = clock_case().job;
  job.age_h = 5;
  const Plan young = plan(job, clock_case().stack);
  const BenchSheet waits = bench_sheet(young);
  ASSERT_FALSE(waits.urgent.empty());
  EXPECT_THAT(waits.urgent.front(), HasSubstr("Not before"));
  EXPECT_THAT(waits.reading, Contains(HasSubstr("Gauge when cured: top 90")));
  EXPECT_LT(sheet_text(waits).find("Not before"), sheet_text(waits).find("Before you start"));
  job = clock_case().job;
  job.zones[1].film->mean_um = 50;
  const Plan too_deep = evaluate(job, clock_case().stack, {"a-p320", "b-pad"});
  EXPECT_THAT(bench_sheet(too_deep).urgent,
              AllOf(Contains(ContainsRegex("takes front and sides down by .* um in all")),
                    Contains(HasSubstr("is too long a step"))));
}

TEST(BenchSheet, SaysEachFindingInShortOrNotAtAll) {
  Finding finding{.sheets = {"a"}, .zone = "top", .about = {{"sheet", "b", "P400", 35.0}}};
  for (const char* name : {"read_um", "expected_um", "sheets_needed", "on_hand", "ratio",
                           "depth_um", "budget_um", "removal_um", "rest_h"})
    finding.numbers.push_back({name, 25.4});
  const detail::Measure mils(ShownUnits::us);
  int said = 0;
  for (const FindingKind kind : choices<FindingKind>) {
    finding.kind = kind;
    const std::string text = detail::UrgentFinding(finding, mils).text();
    EXPECT_THAT(text, AllOf(Not(HasSubstr("nan")), Not(ContainsRegex("[0-9] um")))) << text;
    EXPECT_LE(longest(text), 20) << text;
    said += text.empty() ? 0 : 1;
  }
  EXPECT_EQ(said, 23);
  finding.kind = FindingKind::reading_contradicts;
  EXPECT_THAT(detail::UrgentFinding(finding, mils).text(),
              HasSubstr("The gauge read 1.00 mil on top, 1.00 mil was expected."));
}

TEST(BenchSheet, SaysNothingOfAPieceThatOutlastsTheDay) {
  Step step{.sheet = "medium", .label = "medium"};
  step.rinse_every_strokes = 2667;
  step.change_every_minutes = 1235;
  EXPECT_EQ(detail::cleaning_text(step), "");
  step.change_every_minutes = 12;
  EXPECT_EQ(detail::cleaning_text(step), "rinse or wipe about every 2667 strokes");
}

TEST(BenchSheet, WithoutAPlanSaysWhy) {
  Job job = workshop::top(35, 30);
  const Plan none = plan(job, workshop::papers({"P400", "P800", "P1500"}));
  ASSERT_FALSE(none.found);
  const BenchSheet sheet = bench_sheet(none);
  EXPECT_THAT(flowing(sheet_text(sheet)), HasSubstr(sentence(*none.why)));
  EXPECT_THAT(flowing(sheet_text(sheet)),
              Not(AnyOf(HasSubstr("No plan. No plan."), HasSubstr(".."))));
  EXPECT_THAT(sheet_html(sheet), AllOf(HasSubstr("No plan."), Not(HasSubstr("Last look"))));
}

TEST(BenchSheet, ShowsNoMetricNumberInUnitsOfTheUs) {
  for (const Demo* made : {&clock_case(), &whole_day()}) {
    const BenchSheet sheet = bench_sheet(made->plan, made->simulation, ShownUnits::us);
    for (const std::string& text : {sheet_text(sheet), sheet_html(sheet)})
      EXPECT_THAT(text, Not(ContainsRegex("[0-9,] (um|cm2|m/min|C)[^a-zA-Z]")));
  }
  const detail::Measure us(ShownUnits::us), metric(ShownUnits::metric);
  EXPECT_EQ(us.depth_text(25.4), "1.00 mil");
  EXPECT_EQ(us.stop_level(25.5), "1.01");  // never below the one that is meant
  EXPECT_EQ(metric.stop_level(25.1), "26");
  EXPECT_EQ(metric.stop_level(25.0), "25");
  EXPECT_EQ(us.area(645.16), "100.0 in2");
  EXPECT_EQ(us.length(25.4), "1.00");
  EXPECT_EQ(us.speed(0.00508), "1 ft/min");
  EXPECT_EQ(us.rise(10), "18 F");
}

TEST(BenchSheet, EscapesNamesAndKeepsLongOnesOnThePage) {
  Plan found = clock_case().plan;
  const std::string name = "<b>\"Oak\" & 'Ash'\x01</b>\x7f";
  found.job = name + std::string(300, 'x');
  found.zones[0].zone = name;
  found.steps[0].maker = name;
  found.steps[0].sheet = name;
  for (Step& step : found.steps) {
    step.zones[0].zone = name;
    step.zones[0].tool = std::string(60, 'y');
  }
  const BenchSheet sheet = bench_sheet(found);
  const std::string html = sheet_html(sheet), text = sheet_text(sheet);
  EXPECT_THAT(html, AllOf(HasSubstr("&lt;b&gt;&quot;Oak&quot; &amp; &#39;Ash&#39;?&lt;/b&gt;?"),
                          Not(HasSubstr("<b>\"Oak")), Not(HasSubstr("\x01"))));
  EXPECT_THAT(text, Not(HasSubstr("\x01")));
  expect_fits(text, 70);
}

}  // namespace
}  // namespace bench_sheet_test
