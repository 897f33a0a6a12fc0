// Two entries of the grade tables: they must agree to the printed digit, row by row, both ways.
#include <gtest/gtest.h>

#include "levigate/grade/work/tables.hpp"
#include "reference/double_entry.hpp"
#include "reference/reference.hpp"

namespace double_entry_test {
namespace {

using namespace levigate;
using namespace levigate_tests;

/// data/standards of a system, its rows in order; each with the fine_percent of its section.
std::vector<json> printed_rows(System system, json& sources) {
  std::string name(to_string(system));
  for (char& c : name) c = c == ' ' ? '_' : static_cast<char>(std::tolower(c));
  const auto file = std::filesystem::path(LEVIGATE_DATA_DIR) / "standards" / (name + ".json");
  const json table = json::parse(std::ifstream(file));
  sources = table["sources"];
  std::vector<json> rows;
  for (const json& section : table["sections"]) {
    for (json row : section["rows"]) {
      if (!row.contains("fine_percent") && row.contains("fine_limit_um")) {
        row["fine_percent"] = section["fine_percent"];
      }
      rows.push_back(std::move(row));
    }
  }
  return rows;
}

std::string digits(const json& row, const char* key) {
  if (!row.contains(key)) return "";
  return row[key].is_array() ? row[key][0] : row[key];
}

TEST(DoubleEntry, DataAgreesToThePrintedDigit) {
  for (const System system : all_systems) {
    json sources;
    const std::vector<json> rows = printed_rows(system, sources);
    const auto second = second_entries(system);
    ASSERT_EQ(rows.size(), second.size()) << to_string(system);
    for (std::size_t i = 0; i < rows.size(); ++i) {
      const SecondEntry& entry = second[i];
      EXPECT_EQ(digits(rows[i], "label"), entry.label) << to_string(system);
      EXPECT_EQ(digits(rows[i], "median_um"), entry.median_um) << entry.label;
      EXPECT_EQ(digits(rows[i], "tolerance_um"), entry.tolerance_um) << entry.label;
      EXPECT_EQ(digits(rows[i], "coarse_limit_um"), entry.coarse_limit_um) << entry.label;
      EXPECT_EQ(digits(rows[i], "fine_limit_um"), entry.fine_limit_um) << entry.label;
      EXPECT_EQ(digits(rows[i], "fine_percent"), entry.fine_percent) << entry.label;
      EXPECT_EQ(digits(rows[i], "largest_um"), entry.largest_um) << entry.label;
      if (entry.seen == Provenance::none) continue;
      const std::string basis = sources[rows[i]["median_um"][1].get<std::string>()]["basis"];
      EXPECT_EQ(basis == "from memory", entry.seen == Provenance::memory) << entry.label;
    }
  }
}

std::optional<double> value(std::string_view text) {
  if (text.empty()) return std::nullopt;
  return number_in(std::string(text));
}

TEST(DoubleEntry, CompiledTablesAgree) {
  for (const System system : all_systems) {
    const auto rows = grade_rows(system);
    const auto second = second_entries(system);
    ASSERT_EQ(rows.size(), second.size()) << to_string(system);
    for (std::size_t i = 0; i < rows.size(); ++i) {
      const SecondEntry& entry = second[i];
      EXPECT_EQ(rows[i].label, entry.label) << to_string(system);
      EXPECT_EQ(rows[i].median_um, value(entry.median_um)) << entry.label;
      EXPECT_EQ(rows[i].tolerance_um, value(entry.tolerance_um)) << entry.label;
      EXPECT_EQ(rows[i].coarse_limit_um, value(entry.coarse_limit_um)) << entry.label;
      EXPECT_EQ(rows[i].fine_limit_um, value(entry.fine_limit_um)) << entry.label;
      EXPECT_EQ(rows[i].fine_percent, value(entry.fine_percent)) << entry.label;
      const bool digits_only = system != System::micron;
      EXPECT_EQ(rows[i].number, digits_only ? value(rows[i].digits()) : std::nullopt);
    }
  }
}

}  // namespace
}  // namespace double_entry_test
