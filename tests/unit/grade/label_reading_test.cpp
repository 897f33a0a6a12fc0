// Every form of a label that is read, and what it means.
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "levigate/grade/grades.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/grade/sized.hpp"

namespace label_reading_test {
namespace {

using namespace levigate;
using Labels = std::vector<std::string>;

Labels candidates(std::string_view text) {
  Labels labels;
  for (const Grade& grade : read_label(text).candidates) labels.push_back(grade.label);
  return labels;
}

struct Form {
  std::string text;
  std::string label;
};

void expect_one(const std::vector<Form>& forms) {
  for (const Form& form : forms) {
    EXPECT_EQ(candidates(form.text), Labels{form.label}) << form.text;
    EXPECT_FALSE(read_label(form.text).ambiguous) << form.text;
    EXPECT_EQ(grade(form.text).label, form.label) << form.text;
  }
}

TEST(LabelReading, SystemsByPrefix) {
  expect_one({{"P800", "P800"},         {"p 800", "P800"},         {"  P\t800 \n", "P800"},
              {"FEPA P800", "P800"},    {"fepa p 800", "P800"},    {"FEPA 800", "P800"},
              {"ISO P 800", "P800"},    {"ISO 800", "P800"},       {"P800 grit", "P800"},
              {"Grit P800", "P800"},    {"F800", "F800"},          {"f 800", "F800"},
              {"FEPA F800", "F800"},    {"ISO F 800", "F800"},     {"CAMI 800", "CAMI 800"},
              {"cami800", "CAMI 800"},  {"CAMI #800", "CAMI 800"}, {"ANSI 400", "CAMI 400"},
              {"#800", "JIS #800"},     {"# 800", "JIS #800"},     {"JIS 800", "JIS #800"},
              {"JIS #800", "JIS #800"}, {"jis#800", "JIS #800"},   {"J800", "JIS #800"}});
}

TEST(LabelReading, FullWidthAndJapaneseForms) {
  expect_one({{"Ｐ８００", "P800"},
              {"ｐ　８００", "P800"},
              {"＃８００", "JIS #800"},
              {"800番", "JIS #800"},
              {"#800番", "JIS #800"},
              {"８００ 番", "JIS #800"},
              {"JIS 800番", "JIS #800"},
              {"P\u00A0800", "P800"},
              {"\uFEFFP\u2009800", "P800"}});
}

TEST(LabelReading, WeightLettersAfterTheNumber) {
  expect_one({{"P600A", "P600"}, {"P600 C", "P600"}, {"P80X", "P80"}, {"F80 J", "F80"}});
  EXPECT_NE(read_label("P600A").note.find("weight"), std::string::npos);
  EXPECT_EQ(candidates("600A"), candidates("600"));
  EXPECT_EQ(candidates("600 J"), candidates("600"));
}

TEST(LabelReading, OldUsSymbols) {
  expect_one({{"2/0", "CAMI 100"},
              {"2 / 0", "CAMI 100"},
              {"0", "CAMI 80"},
              {"1/2", "CAMI 60"},
              {"½", "CAMI 60"}});
  EXPECT_NE(read_label("0").note.find("old US symbol"), std::string::npos);
}

TEST(LabelReading, ASymbolThatMayBeASizeIsNotGuessed) {
  EXPECT_EQ(candidates("1"), (std::vector<std::string>{"CAMI 50", "1 um"}));
  EXPECT_EQ(candidates("2"), (std::vector<std::string>{"CAMI 36", "2 um"}));
  EXPECT_EQ(candidates("3"), (std::vector<std::string>{"CAMI 24", "3 um"}));
  EXPECT_EQ(candidates("4"), (std::vector<std::string>{"CAMI 16", "4 um"}));
  EXPECT_TRUE(read_label("3").ambiguous);
  EXPECT_NE(read_label("3").note.find("old US symbol"), std::string::npos);
  EXPECT_THROW(grade("3"), AmbiguousLabel);
}

TEST(LabelReading, MicronMarks) {
  expect_one({{"9 \u00B5m", "9 um"},
              {"9 \u03BCm", "9 um"},
              {"9\u00B5", "9 um"},
              {"9um", "9 um"},
              {"9 UM", "9 um"},
              {"9 mic", "9 um"},
              {"9 micron", "9 um"},
              {"9 Microns", "9 um"},
              {"9 micrometres", "9 um"},
              {"9\u339B", "9 um"},
              {"９μｍ", "9 um"},
              {"0.3 um", "0.3 um"},
              {"0,3 µm", "0.3 um"},
              {".3 um", "0.3 um"},
              {"1,5 um", "1.5 um"},
              {"1.500 um", "1.5 um"},
              {"0.05 um", "0.05 um"},
              {"2500 um", "2500 um"},
              {"17.25 um", "17.25 um"}});
}

TEST(LabelReading, ASizeOutsideTheCatalogueIsStillASize) {
  const Grade odd = grade("17.25 um");
  EXPECT_EQ(odd.median_um, 17.25);
  EXPECT_EQ(odd.system, System::micron);
  EXPECT_EQ(odd.basis(), Basis::user);
  EXPECT_NE(read_label("17.25 um").note.find("not one of the sizes"), std::string::npos);
  EXPECT_EQ(read_label("9 um").note, "");
}

TEST(LabelReading, ACommaBeforeThreeDigitsMayPartThousands) {
  EXPECT_EQ(candidates("1,500 um"), (Labels{"1.5 um", "1500 um"}));
  EXPECT_TRUE(read_label("1,500 um").ambiguous);
  EXPECT_THROW(grade("1,500 um"), AmbiguousLabel);
  EXPECT_EQ(candidates("0,500 um"), Labels{"0.5 um"});
  EXPECT_EQ(candidates("9,500 um"), Labels{"9.5 um"});  // 9500 um is no size of a label
}

TEST(LabelReading, ABareNumberIsNeverGuessed) {
  for (const char* text : {"600", "600 grit", "600-grit", "grit 600", "K600", "C 600", "c600"}) {
    EXPECT_EQ(candidates(text), (Labels{"P600", "CAMI 600", "JIS #600"})) << text;
    EXPECT_TRUE(read_label(text).ambiguous) << text;
    EXPECT_THROW(grade(text), AmbiguousLabel) << text;
  }
  EXPECT_EQ(candidates("120"), (Labels{"P120", "CAMI 120"}));
  // One system alone has the number, and still the label does not name it.
  EXPECT_EQ(candidates("700"), Labels{"JIS #700"});
  EXPECT_TRUE(read_label("700").ambiguous);
  EXPECT_THROW(grade("700"), AmbiguousLabel);
}

TEST(LabelReading, GrainLetterAMayStandBeforeASize) {
  EXPECT_EQ(candidates("A 240"), (Labels{"P240", "CAMI 240", "JIS #240", "240 um"}));
  EXPECT_EQ(candidates("A16"), (Labels{"P16", "CAMI 16", "16 um"}));
  EXPECT_EQ(candidates("A35"), Labels{"35 um"});
  EXPECT_TRUE(read_label("A35").ambiguous);
  EXPECT_EQ(grade("A16", System::micron).label, "16 um");
  EXPECT_EQ(grade("A16", System::cami).label, "CAMI 16");
}

TEST(LabelReading, ARuleForBareNumbersSettlesThem) {
  EXPECT_EQ(grade("600", System::fepa_p).label, "P600");
  EXPECT_EQ(grade("600 grit", System::cami).label, "CAMI 600");
  EXPECT_EQ(grade("K600", System::jis).label, "JIS #600");
  EXPECT_EQ(grade("600", System::fepa_f).label, "F600");
  EXPECT_EQ(grade("600", System::jis_sedimentation).label, "JIS #600 sedimentation");
  EXPECT_EQ(grade("9", System::micron).label, "9 um");
  EXPECT_EQ(grade("1", System::cami).label, "CAMI 50");
  EXPECT_EQ(grade("1", System::micron).label, "1 um");
  EXPECT_EQ(grade("4", System::fepa_f).label, "F4");
  // A label that names its system keeps it.
  EXPECT_EQ(grade("P600", System::cami).label, "P600");
  EXPECT_EQ(grade("2/0", System::fepa_p).label, "CAMI 100");
  EXPECT_THROW(grade("700", System::fepa_p), UnknownGrade);
  EXPECT_THROW(grade("1", System::fepa_p), UnknownGrade);
}

TEST(LabelReading, TheLooseHashIsNoted) {
  EXPECT_NE(read_label("#800").note.find("before any grit"), std::string::npos);
  EXPECT_EQ(read_label("JIS #800").note, "");
}

TEST(LabelReading, EveryCanonicalLabelReadsBackAsItself) {
  for (const System system : all_systems) {
    for (const Grade& known : grades(system)) {
      EXPECT_EQ(grade(known.label), known) << known.label;
      EXPECT_EQ(read_label(known.label).candidates, std::vector<Grade>{known}) << known.label;
    }
  }
}

TEST(LabelReading, ManyLabelsGiveTheirSizes) {
  const std::vector<std::string> labels{"P600", "CAMI 600", "#800", "9 um"};
  EXPECT_EQ(sizes_um(labels), (std::vector<double>{25.8, 16.0, 14.0, 9.0}));
  EXPECT_EQ(sizes_um(std::vector<std::string>{"600"}, System::cami), std::vector<double>{16.0});
  EXPECT_THROW(sizes_um(std::vector<std::string>{"P600", "600"}), AmbiguousLabel);
  EXPECT_TRUE(sizes_um({}).empty());
}

TEST(LabelSized, KeepsTheSystemThatTheLabelNames) {
  const Grade p4000 = sized_grade("p 4000", 5.0);
  EXPECT_EQ(p4000.label, "P4000");
  EXPECT_EQ(p4000.system, System::fepa_p);
  EXPECT_EQ(p4000.number, 4000);
  EXPECT_EQ(p4000.median_um, 5.0);
  EXPECT_EQ(p4000.basis(), Basis::user);
  EXPECT_FALSE(p4000.tolerance_um || p4000.coarse_limit_um || p4000.fine_limit_um);
  EXPECT_EQ(sized_grade("P7000", 3.0).label, "P7000");
  EXPECT_EQ(sized_grade("2/0", 140.0).label, "CAMI 100");
  EXPECT_EQ(sized_grade("F400 tube", 21.0).system, System::fepa_f_tube);
  EXPECT_NE(sized_grade("P800", 22.5).note.find("P800 (21.8 um)"), std::string::npos);
}

TEST(LabelSized, AnyOtherTextNamesAMicronSheet) {
  for (const char* text : {"foam, fine", "800", "9 um", "P-600x", "P1.5", "1"}) {
    const Grade made = sized_grade(std::string(" ") + text + " ", 8.7);
    EXPECT_EQ(made.system, System::micron) << text;
    EXPECT_EQ(made.label, text);
    EXPECT_EQ(made.median_um, 8.7);
    EXPECT_FALSE(made.number) << text;
  }
  EXPECT_EQ(sized_grade("800", 22.0, System::fepa_p).label, "P800");
  EXPECT_EQ(sized_grade("1", 340.0, System::cami).label, "CAMI 50");
}

}  // namespace
}  // namespace label_reading_test
