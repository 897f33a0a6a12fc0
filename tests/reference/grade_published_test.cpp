// The tables against the printed files, and against statements of the trade about equivalence.
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <charconv>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>

#include "levigate/grade/convert.hpp"
#include "levigate/grade/grades.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/grade/row.hpp"
#include "levigate/grade/work/tables.hpp"

namespace grade_published_test {
namespace {

using namespace levigate;
namespace fs = std::filesystem;

const fs::path data = LEVIGATE_DATA_DIR;

std::string text_of(const fs::path& path) {
  std::ostringstream text;
  text << std::ifstream(path).rdbuf();
  return text.str();
}

std::string file_name(System system) {
  std::string name(to_string(system));
  for (char& c : name) {
    c = c == ' ' ? '_' : c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return name + ".json";
}

std::optional<double> printed(const nlohmann::json& row, const char* key) {
  if (!row.contains(key)) return std::nullopt;
  const std::string digits = row[key][0];
  double value = 0;
  const auto end = std::from_chars(digits.data(), digits.data() + digits.size(), value).ptr;
  EXPECT_EQ(end, digits.data() + digits.size()) << digits;
  return value;
}

TEST(GradePublished, EveryPrintedRowStandsInTheTablesDigitForDigit) {
  for (const System system : all_systems) {
    const auto file = nlohmann::json::parse(text_of(data / "standards" / file_name(system)));
    EXPECT_EQ(file["system"], to_string(system));
    const auto source = [&](const nlohmann::json& row, const char* key) -> std::string {
      return row.contains(key) ? file["sources"][row[key][1].get<std::string>()]["citation"] : "";
    };
    const auto rows = grade_rows(system);
    std::size_t at = 0;
    for (const auto& section : file["sections"]) {
      for (const auto& row : section["rows"]) {
        ASSERT_LT(at, rows.size());
        const GradeRow& held = rows[at++];
        EXPECT_EQ(held.label, row["label"].get<std::string>());
        EXPECT_EQ(held.median_um, printed(row, "median_um")) << held.label;
        EXPECT_EQ(held.tolerance_um, printed(row, "tolerance_um")) << held.label;
        EXPECT_EQ(held.coarse_limit_um, printed(row, "coarse_limit_um")) << held.label;
        EXPECT_EQ(held.fine_limit_um, printed(row, "fine_limit_um")) << held.label;
        EXPECT_EQ(held.median_source.citation, source(row, "median_um")) << held.label;
        EXPECT_EQ(held.tolerance_source.citation, source(row, "tolerance_um")) << held.label;
        EXPECT_EQ(held.limits_source.citation, source(row, "coarse_limit_um")) << held.label;
        EXPECT_EQ(held.edition, section["edition"].get<std::string>()) << held.label;
        if (row.contains("note")) {
          EXPECT_NE(held.note.find(row["note"].get<std::string>()), std::string_view::npos);
        }
      }
    }
    EXPECT_EQ(at, rows.size()) << "rows that no file has, " << to_string(system);
  }
}

int generate(const fs::path& root, const std::string& arguments) {
  const std::string command = "python3 \"" + (root / "data" / "generate.py").string() + "\" " +
                              arguments + " > \"" + (root / "out").string() + "\" 2>&1";
  const int status = std::system(command.c_str());
  return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

void replace(const fs::path& path, const std::string& from, const std::string& to) {
  std::string text = text_of(path);
  const std::size_t at = text.find(from);
  ASSERT_NE(at, std::string::npos) << from;
  std::ofstream(path) << text.replace(at, from.size(), to);
}

/// A copy of data/ and of the generated headers, to break.
class GradeDrift : public testing::Test {
 protected:
  void SetUp() override {
    const std::string name = "levigate_drift_" + std::to_string(getpid());
    root_ = fs::temp_directory_path() / name;
    fs::remove_all(root_);
    fs::create_directories(root_ / "lib");
    fs::copy(data, root_ / "data", fs::copy_options::recursive);
    fs::copy(data / ".." / "lib" / "include", root_ / "lib" / "include",
             fs::copy_options::recursive);
  }
  void TearDown() override { fs::remove_all(root_); }

  fs::path root_;
};

TEST_F(GradeDrift, TheHeadersAreWhatTheDataGives) {
  EXPECT_EQ(generate(root_, "--check"), 0) << text_of(root_ / "out");
}

TEST_F(GradeDrift, AChangedDigitIsSeenInBothPlaces) {
  ASSERT_EQ(generate(root_, ""), 0) << text_of(root_ / "out");
  replace(root_ / "data/standards/fepa_p.json", "\"18.3\"", "\"18.4\"");
  EXPECT_EQ(generate(root_, "--check"), 1);
  EXPECT_NE(text_of(root_ / "out").find("+    {\"P1000\", 1000, 18.4,"), std::string::npos);
  ASSERT_EQ(generate(root_, ""), 0);
  EXPECT_EQ(generate(root_, "--check"), 0);
  replace(root_ / "lib/include/levigate/grade/work/tables.hpp", "18.4", "18.3");
  EXPECT_EQ(generate(root_, "--check"), 1);
}

TEST_F(GradeDrift, BrokenFilesAreRefused) {
  const fs::path file = root_ / "data/standards/cami.json";
  const std::string whole = text_of(file);
  const std::pair<const char*, const char*> faults[] = {
      {"\"label\": \"36\"", "\"labell\": \"36\""},
      {"[\"535\", \"two_tables\"]", "[\"535\", \"nowhere\"]"},
      {"\"535\"", "\"5e2\""},
      {"\"535\"", "535"},
      {"\"label\": \"36\"", "\"label\": \"40\""},
      {"\"label\": \"36\"", "\"label\": \"P36\""},
      {"levigate.standard/1", "levigate.standard/2"},
      {"\"from memory\"", "\"verified\""},
      {"\"sources\": {", "\"sources\": {\"idle\": {\"basis\": \"user\", \"citation\": \"x\"},"},
  };
  for (const auto& [from, to] : faults) {
    std::ofstream(file) << whole;
    replace(file, from, to);
    EXPECT_EQ(generate(root_, "--check"), 1) << to;
    EXPECT_NE(text_of(root_ / "out").find("cami.json"), std::string::npos) << to;
  }
}

struct Pair {
  const char* given;
  System system;
  const char* equivalent;
};

TEST(GradePublished, EquivalentsAsTheTradeStatesThem) {
  // Each is printed by at least one, most by two or three grade tables or trade pages.
  constexpr Pair pairs[] = {
      {"CAMI 600", System::fepa_p, "P1200"},
      {"CAMI 400", System::fepa_p, "P800"},
      {"CAMI 500", System::fepa_p, "P1000"},
      {"CAMI 320", System::fepa_p, "P400"},
      {"CAMI 240", System::fepa_p, "P280"},
      {"CAMI 800", System::fepa_p, "P1500"},
      {"CAMI 60", System::fepa_p, "P60"},
      {"CAMI 180", System::fepa_p, "P180"},
      {"CAMI 220", System::fepa_p, "P220"},
      {"535 um", System::cami, "CAMI 36"},
      {"116 um", System::cami, "CAMI 120"},
      {"P1200", System::cami, "CAMI 600"},
      {"P800", System::cami, "CAMI 400"},
      {"P1000", System::cami, "CAMI 500"},
      {"P1500", System::cami, "CAMI 800"},
      {"P2000", System::cami, "CAMI 1000"},
      {"15 um", System::jis_sedimentation, "JIS #1000 sedimentation"},
  };
  for (const Pair& pair : pairs) {
    EXPECT_EQ(convert(grade(pair.given), pair.system).grade.label, pair.equivalent) << pair.given;
  }
}

TEST(GradePublished, OrdersAsTheTradeStatesThem) {
  const auto size = [](const char* label) { return grade(label).median_um; };
  // A trade question and its answer: CAMI 400 is finer than P600, and P800 is no step beyond it.
  EXPECT_LT(size("CAMI 400"), size("P600"));
  EXPECT_LT(size("CAMI 400") / size("P800"), 1.15);
  EXPECT_GT(size("CAMI 400") / size("P1200"), 1.15);
  // A Japanese page: at equal number P is a little coarser than #, by either method.
  EXPECT_GT(size("P1000"), size("JIS #1000 sedimentation"));
  EXPECT_GT(size("JIS #1000 sedimentation"), size("JIS #1000"));
  // F is not P: the worst case that the tables print.
  EXPECT_EQ(size("F400"), 17.3);
  EXPECT_EQ(size("P400"), 35.0);
}

TEST(GradePublished, AbrasiveOfOneNumberInThreeSystems) {
  const std::vector<std::string> labels{"P600", "CAMI 600", "JIS #800"};
  EXPECT_EQ(sizes_um(labels), (std::vector<double>{25.8, 16.0, 14.0}));
}

TEST(GradePublished, TheExtrapolationWouldHaveFoundTheFinestPrintedGrades) {
  // The same fit, six grades and an anchor, kept from the three finest P grades: how far it misses
  // grades up to twice the anchor's number is how far the true extrapolation may be trusted.
  const std::vector<Grade> all = grades(System::fepa_p);
  const std::size_t anchor = 24;  // P1200
  ASSERT_EQ(all[anchor].label, "P1200");
  double x_mean = 0;
  double y_mean = 0;
  for (std::size_t i = anchor - 5; i <= anchor; ++i) {
    x_mean += std::log(*all[i].number) / 6;
    y_mean += std::log(all[i].median_um) / 6;
  }
  double xx = 0;
  double xy = 0;
  for (std::size_t i = anchor - 5; i <= anchor; ++i) {
    const double x = std::log(*all[i].number) - x_mean;
    xx += x * x;
    xy += x * (std::log(all[i].median_um) - y_mean);
  }
  for (const char* label : {"P1500", "P2000"}) {
    const Grade& known = grade(label);
    const double predicted =
        all[anchor].median_um * std::pow(*known.number / *all[anchor].number, xy / xx);
    EXPECT_NEAR(predicted / known.median_um, 1.0, 0.06) << label;
  }
}

}  // namespace
}  // namespace grade_published_test
