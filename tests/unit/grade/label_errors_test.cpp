// Labels and sizes that are refused: which error, and what its message says.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "levigate/grade/label.hpp"
#include "levigate/grade/sized.hpp"
#include "levigate/grade/work/label_text.hpp"

namespace label_errors_test {
namespace {

using namespace levigate;

template <typename Wanted, typename Call>
std::string message_of(Call call) {
  try {
    call();
  } catch (const Wanted& error) {
    return error.what();
  } catch (const std::exception& error) {
    ADD_FAILURE() << "another error: " << error.what();
    return "";
  }
  ADD_FAILURE() << "no error";
  return "";
}

void expect_words(const std::string& message, const std::vector<std::string>& words) {
  for (const std::string& word : words) {
    EXPECT_NE(message.find(word), std::string::npos) << '"' << word << "\" in: " << message;
  }
}

std::string unknown(std::string_view text) {
  return message_of<UnknownGrade>([&] { read_label(text); });
}

TEST(LabelErrors, AnUnknownNumberNamesItsNeighbours) {
  expect_words(unknown("P650"), {"\"P650\"", "FEPA P", "P600 (25.8 um)", "P800 (21.8 um)"});
  expect_words(unknown("650"), {"FEPA P, CAMI or JIS", "P600", "CAMI 800", "JIS #700", "9 um"});
  expect_words(unknown("P10000"), {"P5000"});
  expect_words(unknown("F3"), {"F4"});
  expect_words(unknown("#220"), {"JIS #240", "before any grit"});
  expect_words(message_of<UnknownGrade>([] { grade("700", System::cami); }),
               {"\"700\"", "CAMI", "CAMI 600", "CAMI 800"});
  unknown("P0800");
  unknown("P" + std::string(400, '9'));
}

TEST(LabelErrors, AnUnknownFormSaysWhatWasTried) {
  for (const char* text : {"P-600x",
                           "grit",
                           "P",
                           "xyz",
                           "-9 um",
                           "P8 00",
                           "800 220",
                           "nan",
                           "P1.5",
                           "9.5",
                           "1e308 um",
                           "1,000 grit",
                           "CAMI P800",
                           "P#800",
                           "J 800 um",
                           "9 um film",
                           "micron 9 grit",
                           "600P",
                           "F800 sedimentation",
                           "P800 tube",
                           "P800番",
                           "\xD0\xA0 800",
                           "/",
                           "1/3",
                           "3/0"}) {
    expect_words(unknown(text), {"Tried", "FEPA", "um"});
  }
}

TEST(LabelErrors, OtherSystemsAreNamed) {
  for (const char* text : {"40-N", "25-P", "M40", "m 14"}) expect_words(unknown(text), {"GOST"});
  for (const char* text : {"B126", "D64"}) expect_words(unknown(text), {"superabrasives"});
}

TEST(LabelErrors, AmbiguousLabelsListTheirMeaningsAndTheWayOut) {
  expect_words(
      message_of<AmbiguousLabel>([] { grade("600"); }),
      {"\"600\"", "P600 (25.8 um)", "CAMI 600 (16.0 um)", "JIS #600 (20.0 um)", "bare_number"});
  expect_words(message_of<AmbiguousLabel>([] { grade("1,500 um"); }),
               {"1.5 um", "1500 um", "decimal point"});
}

TEST(LabelErrors, EmptyTextAndBrokenTextAreBadInput) {
  using namespace std::string_view_literals;
  for (const std::string_view text : {""sv, " "sv, "\t\n"sv, "\u00A0\u3000"sv}) {
    expect_words(message_of<BadInput>([&] { read_label(text); }), {"empty"});
    EXPECT_THROW(sized_grade(text, 5.0), BadInput);
  }
  // A stray lead byte, a lone continuation, a cut sequence, overlong forms, a surrogate, too large.
  for (const std::string_view text :
       {"P800\xFF"sv, "\x80P800"sv, "9 \xC2"sv, "\xC0\xAF"sv, "\xE0\x80\xAF"sv, "\xED\xA0\x80"sv,
        "\xF0\x80\x80\xAF"sv, "\xF4\x90\x80\x80"sv, "\xE2\x80"sv}) {
    expect_words(message_of<BadInput>([&] { read_label(text); }), {"UTF-8", "\\x"});
  }
  expect_words(message_of<BadInput>([&] { read_label("P8\0 00"sv); }), {"control", "\\x00"});
  EXPECT_THROW(read_label("P800\x7F"), BadInput);
  EXPECT_THROW(read_label("\u0085P800"), BadInput);
}

TEST(LabelErrors, LongTextIsShortenedInTheMessage) {
  for (const std::string& text : {std::string(10000, 'x'), "P" + std::string(10000, '8'),
                                  std::string(5000, '\xFF'), std::string(10000, '8') + " um"}) {
    try {
      read_label(text);
      ADD_FAILURE() << "read";
    } catch (const Error& error) {
      const std::string message = error.what();
      EXPECT_LT(message.size(), 500u);
      expect_words(message, {"... (", "bytes)"});
    }
  }
  EXPECT_EQ(grade(std::string(10000, ' ') + "P800").label, "P800");
}

TEST(LabelErrors, QuotingKeepsCharactersWhole) {
  const std::string text = std::string(39, 'x') + "番番";
  EXPECT_EQ(detail::quoted(text), '"' + std::string(39, 'x') + "番... (45 bytes)\"");
}

TEST(LabelErrors, SizesOnLabelsHaveARange) {
  for (const char* text : {"0 um", "0.0 um", "0.049 um", "2501 um", "99999999999999999999 um"}) {
    expect_words(message_of<OutOfRange>([&] { read_label(text); }), {"size", "0.05", "2500", text});
  }
}

TEST(LabelErrors, SizesOfUsersHaveARange) {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  for (const double size : {0.0, -5.0, 0.009, 10001.0, 1e308, infinity, std::nan("")}) {
    expect_words(message_of<OutOfRange>([&] { sized_grade("P4000", size); }),
                 {"size_um", "0.01", "10000", "P4000"});
  }
  EXPECT_EQ(sized_grade("P4000", 0.01).median_um, 0.01);
  EXPECT_EQ(sized_grade("P4000", 1e4).median_um, 1e4);
}

}  // namespace
}  // namespace label_errors_test
