// No sentence is longer than one reads at a glance.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/journal/learn.hpp"
#include "levigate/journal/report.hpp"
#include "levigate/plan/caution.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/recover/way_back.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/wheel/caution.hpp"
#include "levigate/wheel/finding.hpp"
#include "unit/workshop.hpp"

namespace plain_words_test {
namespace {

using namespace levigate;
using testing::IsEmpty;

constexpr int most_words = 20;

/// Sentences of more words than that. Numbers and units are words; a sentence ends with a full stop.
std::vector<std::string> long_sentences(const std::string& text) {
  std::vector<std::string> result;
  std::istringstream stream(text + (text.ends_with('.') ? "" : "."));
  std::string sentence;
  int words = 0;
  for (std::string word; stream >> word;) {
    sentence += (words++ > 0 ? " " : "") + word;
    if (word.back() != '.') continue;
    if (words > most_words) result.push_back(sentence);
    sentence.clear();
    words = 0;
  }
  return result;
}

TEST(PlainWords, ALongSentenceIsSeen) {
  std::string text = "Short. 1.5";
  for (int i = 1; i < most_words; ++i) text += " 1.5";
  EXPECT_THAT(long_sentences(text), IsEmpty());
  EXPECT_EQ(long_sentences(text + " um").size(), 1U);
}

/// A name of each kind that sentences use, after two sheets.
const std::vector<Named> names{{"sheet", "a-p400", "P400", 35.0},
                               {"sheet", "c-400", "CAMI 400", 23.6},
                               {"block", "hard block"},
                               {"compound", "fine-bar"},
                               {"defect", "ridge"},
                               {"sheen", "satin (institute)"},
                               {"surface", "two-part urethane"},
                               {"target", "satin (institute)"},
                               {"wheel", "loose muslin"},
                               {"zone", "front and sides"},
                               {"not_before", "2026-03-04T09:30:00Z"}};

/// Every number that sentences use.
std::vector<Quantity> numbers() {
  std::vector<Quantity> result;
  for (const std::string_view name : {"age_h",
                                      "below_um",
                                      "budget_um",
                                      "coarse_number",
                                      "coarse_tail_um",
                                      "cut_through",
                                      "cut_through_limit",
                                      "depth_um",
                                      "diameter_mm",
                                      "dwell_limit_s",
                                      "dwell_s",
                                      "expected",
                                      "factor",
                                      "film_sd_um",
                                      "film_um",
                                      "fine_number",
                                      "fine_tail_um",
                                      "first_h",
                                      "flat_film_um",
                                      "flat_minutes",
                                      "gloss_gu",
                                      "gloss_high_gu",
                                      "hard_cure_h",
                                      "hard_removal_um",
                                      "hardness_ratio",
                                      "height_um",
                                      "lamp_depth_um",
                                      "lamp_width_um",
                                      "least_feed_m_s",
                                      "local_minutes",
                                      "mark_deg",
                                      "max_ratio",
                                      "min_ratio",
                                      "read_um",
                                      "expected_um",
                                      "uncertainty_um",
                                      "counts_um",
                                      "sheets_used",
                                      "modulus_mpa",
                                      "most_force_n",
                                      "on_hand",
                                      "probability",
                                      "radius_mm",
                                      "ratio",
                                      "reach_um",
                                      "removal_um",
                                      "reserve_um",
                                      "residual_um",
                                      "rise_k",
                                      "rise_limit_k",
                                      "rpm",
                                      "scratch_ratio",
                                      "scratch_um",
                                      "sheets_needed",
                                      "shows_depth_um",
                                      "shows_um",
                                      "shrink_left",
                                      "speed_high_m_s",
                                      "speed_low_m_s",
                                      "step",
                                      "strokes_deg",
                                      "surface_speed_m_s",
                                      "tape_um",
                                      "target_gloss_gu",
                                      "target_gloss_high_gu",
                                      "width_um"}) {
    result.push_back({std::string(name), 12.5});
  }
  return result;
}

TEST(PlainWords, OfFindings) {
  for (int i = 0; i <= static_cast<int>(FindingKind::paper_overused); ++i) {
    Finding finding{.kind = static_cast<FindingKind>(i),
                    .sheets = {},
                    .zone = "front and sides",
                    .about = names,
                    .numbers = numbers()};
    for (int more = 0; more < 2; ++more) {
      EXPECT_THAT(long_sentences(sentence(finding)), IsEmpty());
      finding.bridges = {{System::fepa_p, {"P500", "P600"}}, {System::cami, {"CAMI 400"}}};
      finding.numbers.pop_back();  // other numbers, other words
      std::erase_if(finding.numbers, [](const Quantity& one) {
        return one.name == "sheets_needed" || one.name == "reach_um";
      });
    }
  }
  for (int i = 0; i <= static_cast<int>(WheelFindingKind::scratch_too_deep); ++i) {
    const WheelFinding finding{static_cast<WheelFindingKind>(i), Severity::note, names, numbers()};
    EXPECT_THAT(long_sentences(sentence(finding)), IsEmpty());
  }
}

TEST(PlainWords, OfWhyThereIsNoPlan) {
  Why why;
  why.target = {.size_um = {}, .gloss_gu = 20, .label = "satin (institute)", .gloss_high_gu = 35};
  why.nearest = {.sheet = "b-pad",
                 .zone = "front and sides",
                 .size_um = 18.3,
                 .too_near_to_work = true,
                 .wheel_refused = true};
  why.carried = "CAMI 600";
  why.sheets = {"a-p400", "a-p800", "a-p1500", "b-pad", "fine-bar"};
  why.smallest_max_ratio = 1.9;
  why.largest_min_ratio = 1.1;
  why.gaps = {{"a-p400", "a-p1000", 35, 18.3, 1.9126, {}},
              {"a-p400", "a-p1000", 35, 18.3, 1.9126, {{System::cami, {"CAMI 400"}}}}};
  why.compound = "fine-bar";
  why.too_deep_um = 0.3;
  why.zone = "front and sides";
  why.film_short_um = 4.5;
  why.budget_um = 20;
  why.films = {{"front and sides", 40.3, 60, 28.5, 3, 120},
               {"front and sides", 40, {}, {}, {}, {}}};
  why.paper = {{"a-p400", 2, 1}, {"b-pad", 0.5, 0}};
  for (int i = 0; i <= static_cast<int>(WhyKind::compounds_only); ++i) {
    why.kind = static_cast<WhyKind>(i);
    EXPECT_THAT(long_sentences(sentence(why)), IsEmpty());
  }
}

TEST(PlainWords, OfTheWayBack) {
  for (int i = 0; i <= static_cast<int>(EvidenceKind::ask_which_way); ++i) {
    for (const bool stray : {false, true}) {
      EXPECT_THAT(long_sentences(sentence(Evidence{static_cast<EvidenceKind>(i), MarkKind::scratch,
                                                   "a-p400", stray, numbers()})),
                  IsEmpty());
    }
  }
  WayBack way;
  way.diagnosis.mark.zone = "front and sides";
  way.diagnosis.needs = {{2.0, 0.5}, {6.0, 0.5}};
  way.film_um = 1.5;
  for (int i = 0; i <= static_cast<int>(NoWay::not_worth); ++i) {
    way.no_way = static_cast<NoWay>(i);
    EXPECT_THAT(long_sentences(sentence(way)), IsEmpty());
  }
  for (const Remedy remedy : {Remedy::spot_repair, Remedy::another_round}) {
    EXPECT_THAT(long_sentences(sentence(remedy)), IsEmpty());
  }
}

TEST(PlainWords, OfAJournal) {
  const Place place{3, "2026-03-01T09:30:00Z"};
  for (int i = 0; i <= static_cast<int>(UnmatchedKind::film_known); ++i) {
    EXPECT_THAT(long_sentences(sentence(
                    Unmatched{place, static_cast<UnmatchedKind>(i), {"Mantel clock", "P600"}})),
                IsEmpty());
  }
  for (const ObservedKind kind :
       {ObservedKind::minutes, ObservedKind::scratch, ObservedKind::film}) {
    const Outlier outlier{kind, "a-p400", "front and sides", place, 10, 42, 4.16};
    EXPECT_THAT(long_sentences(sentence(outlier)), IsEmpty());
  }
  for (const std::string quantity : {"minutes", "scratches", "film_um", "lines"}) {
    const LearnedLine line{"waterproof paper on two-part urethane", quantity, 2.3, 1.9, 2.8, 12};
    EXPECT_THAT(long_sentences(sentence(line)), IsEmpty());
  }
}

TEST(PlainWords, OfCautions) {
  for (const Caution& caution : cautions(workshop::top(35))) {
    EXPECT_THAT(long_sentences(caution.text), IsEmpty());
  }
  for (const WheelCaution& caution : wheel_cautions) {
    EXPECT_THAT(long_sentences(std::string(caution.text)), IsEmpty());
  }
}

}  // namespace
}  // namespace plain_words_test
