// What to measure, as plain text: how, what it takes, what it narrows, and a command that records it.
#include "levigate/text/calibration.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

#include "levigate/plan/caution.hpp"
#include "levigate/text/columns.hpp"
#include "levigate/text/work/command.hpp"
#include "unit/workshop.hpp"

namespace calibration_card_test {
namespace {

using namespace workshop;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

/// One of each kind, written down so that each figure is known.
Calibration written() {
  Calibration calibration;
  calibration.job = "Walnut clock's case";
  calibration.minutes = {93, 205, 450, 240};
  for (const MeasurementKind kind : choices<MeasurementKind>) {
    Measurement one;
    one.kind = kind;
    one.sheet = "b-400";
    one.minutes = 12;
    one.minutes_before = {93, 205, 450, 240};
    one.minutes_after = {121, 205, 362, 220};
    one.gain_per_hour = 2;
    const bool patch = kind <= MeasurementKind::patch_levelled;
    if (patch) {
      one.tool = "hard block";
      one.area_cm2 = 100;
      one.sanding_minutes = 5;
      one.removal_um = 12.6;
    }
    if (kind == MeasurementKind::patch_levelled) one.zone = "front and sides";
    if (kind == MeasurementKind::first_step) one.overcut = 1.5;
    calibration.measurements.push_back(one);
  }
  calibration.cautions = cautions(top(35));
  return calibration;
}

/// The card of one measurement alone, on one line.
std::string card_of(MeasurementKind kind) {
  Calibration calibration = written();
  calibration.measurements = {calibration.measurements[static_cast<std::size_t>(kind)]};
  return flowing(calibration_card(calibration));
}

TEST(CalibrationCard, TellsEachInOrder) {
  const std::string text = calibration_card(written());
  std::size_t at = 0;
  for (const char* title :
       {"What to measure: Walnut clock's case",
        "\n1. A patch with b-400 on the hard block, by film gauge\n",
        "\n2. A patch with b-400 on the hard block, by weight\n",
        "\n3. A patch with b-400 on the hard block, by its shiny spots\n",
        "\n4. The scratches of b-400, by loupe\n", "\n5. The whole first step, b-400\n"}) {
    const std::size_t next = text.find(title, at);
    ASSERT_NE(next, std::string::npos) << title;
    at = next;
  }
}

TEST(CalibrationCard, TellsHowWhatItTakesAndWhatItNarrows) {
  const std::string text = card_of(MeasurementKind::patch_gauged);
  EXPECT_THAT(text, HasSubstr("In 4 of 5 cases the work takes 1 h 33 min to 7 h 30 min."));
  EXPECT_THAT(text, HasSubstr("Mark 10 spots on 100 cm2 and read the film at each. Sand for 5 min, "
                              "wash, and read the same spots again."));
  EXPECT_THAT(text, HasSubstr("It takes 12 min in all. About 13 um of film comes off."));
  EXPECT_THAT(text, HasSubstr("With this, expect a range such as 2 h 01 min to 6 h 02 min."));
  EXPECT_THAT(card_of(MeasurementKind::first_step),
              HasSubstr("the rest takes 1 h 33 min to 7 h 30 min now."));
}

TEST(CalibrationCard, SaysOnlyWhatItsMeasurementsAskFor) {
  const std::string step = card_of(MeasurementKind::first_step);
  EXPECT_THAT(step, HasSubstr("plan JOB STACK --after JOURNAL --shop SHOP"));
  EXPECT_THAT(step, Not(HasSubstr("spare piece")));
  const std::string weighed = card_of(MeasurementKind::patch_weighed);
  EXPECT_THAT(weighed, Not(HasSubstr("--after JOURNAL")));
  EXPECT_THAT(weighed, HasSubstr("spare piece"));
  EXPECT_THAT(weighed, Not(HasSubstr("BEFORE ... stands")));
  EXPECT_THAT(card_of(MeasurementKind::patch_levelled), HasSubstr("a part of the first step"));
}

TEST(CalibrationCard, WhatNarrowsNothingSaysSo) {
  Calibration calibration = written();
  calibration.measurements.resize(1);
  calibration.measurements[0].gain_per_hour = 0;
  const std::string text = flowing(calibration_card(calibration));
  EXPECT_THAT(text, HasSubstr("This would not narrow it."));
  EXPECT_THAT(text, Not(HasSubstr("expect a range")));
}

TEST(CalibrationCard, SaysHowToRecordEach) {
  const auto expect_command = [](MeasurementKind kind, const std::string& rest) {
    std::string text = card_of(kind);
    for (std::size_t at = 0; (at = text.find("\\ ", at)) != std::string::npos;) text.erase(at, 2);
    EXPECT_THAT(text, HasSubstr("levigate record JOURNAL " + rest + " "));
  };
  const std::string job = R"(--job 'Walnut clock'\''s case' --sheet b-400)";
  const std::string patch =
      "'patch worked' " + job + " --tool 'hard block' --area-cm2 100 --minutes MINUTES ";
  expect_command(MeasurementKind::patch_gauged,
                 patch + "--before-um BEFORE ... --after-um AFTER ...");
  expect_command(MeasurementKind::patch_weighed, patch + "--before-g BEFORE --after-g AFTER");
  expect_command(MeasurementKind::patch_levelled, patch + "--zone 'front and sides'");
  expect_command(MeasurementKind::scratch_read,
                 "'scratch read' " + job + " --zone ZONE --width-um WIDTH");
  expect_command(MeasurementKind::first_step,
                 "'step ended' " + job + " --overcut 1.50 --minutes MINUTES");
}

TEST(CalibrationCard, CautionsStandOnce) {
  const std::string text = flowing(calibration_card(written()));
  for (const Caution& caution : written().cautions) {
    const std::size_t at = text.find(caution.text);
    ASSERT_NE(at, std::string::npos) << caution.text;
    EXPECT_EQ(text.find(caution.text, at + 1), std::string::npos) << caution.text;
  }
  EXPECT_THAT(text, HasSubstr("on a spare piece. It needs the same coat at the same age."));
}

TEST(CalibrationCard, FitsTheWidth) {
  const std::string text = calibration_card(written());
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = text.find('\n', begin);
    ASSERT_NE(end, std::string::npos);
    EXPECT_LE(end - begin, card_columns) << text.substr(begin, end - begin);
    begin = end + 1;
  }
}

TEST(CalibrationCard, WithNothingToMeasure) {
  Calibration calibration = written();
  calibration.measurements.clear();
  const std::string text = flowing(calibration_card(calibration));
  EXPECT_THAT(text, HasSubstr("No measurement would tell more of what is left to do."));
  EXPECT_THAT(text, Not(HasSubstr("python")));
  EXPECT_THAT(text, HasSubstr("Before you start:"));
}

TEST(Command, QuotesWhatAShellWouldRead) {
  EXPECT_EQ(detail::shell_word("a-p400"), "a-p400");
  EXPECT_EQ(detail::shell_word("$HOME *"), "'$HOME *'");
  EXPECT_EQ(detail::shell_word(""), "''");
  EXPECT_EQ(detail::shell_word("line\nline"), "NAME") << "no card can show it";
  EXPECT_THAT(detail::Command("x").option("--sheet", "-p400").lines(80),
              ElementsAre("levigate x --sheet=-p400"));
}

TEST(Command, GoesOnWithABackslash) {
  const auto lines = detail::Command("learn").word("a b").option("--shop", "s").lines(20);
  EXPECT_THAT(lines, ElementsAre("levigate learn \\", "  'a b' --shop s"));
}

}  // namespace
}  // namespace calibration_card_test
