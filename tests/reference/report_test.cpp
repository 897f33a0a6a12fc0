// data/reference/REPORT.md: what the library prints beside what is published, made from the rows themselves, and the
// values that rest on memory or assumption. Rows that can show the library wrong come first; those that we worked out
// ourselves, and those that a number was fitted to, come apart. The test fails where the file is not what the rows give.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <iterator>
#include <map>

#include "reference/functions.hpp"
#include "reference/lean.hpp"
#include "reference/reference.hpp"

namespace report_test {
namespace {

using namespace levigate_tests;

const std::filesystem::path data = LEVIGATE_DATA_DIR;

std::string digits(double value, const char* format = "%.6g") {
  char text[32];
  std::snprintf(text, sizeof text, format, value);
  return text;
}

std::string published(const json& printed) {
  if (printed.is_string()) return printed;
  return printed[0].get<std::string>() + " to " + printed[1].get<std::string>();
}

std::string shown(const Value& ours) {
  const auto* label = std::get_if<std::string>(&ours);
  return label != nullptr ? *label : digits(std::get<double>(ours));
}

/// Ours less the other; for a band, how far outside it.
std::string difference(const json& printed, const Value& ours) {
  if (std::holds_alternative<std::string>(ours)) return shown(ours) == printed ? "none" : "another";
  const double value = std::get<double>(ours);
  const double low = number_in(printed.is_array() ? printed[0] : printed);
  const double high = number_in(printed.is_array() ? printed[1] : printed);
  const double beyond = value < low ? value - low : value > high ? value - high : 0.0;
  if (std::abs(beyond) <= 1e-9 * std::abs(value)) return printed.is_array() ? "in the band" : "0";
  return digits(beyond, "%+.2g");
}

std::string tolerance_text(const json& tolerance) {
  for (const auto& [kind, value] : tolerance.items()) {
    if (kind == "reason") continue;
    const std::string amount = value;
    return kind == "absolute"   ? "+- " + amount
           : kind == "relative" ? "+- " + amount + " of it"
           : kind == "factor"   ? "a factor of " + amount
                                : amount;
  }
  return "";
}

std::string other_side(const Row& row) {
  return row.kind() == "computed" ? "worked out" : "published";
}

/// What the rows show of a lean, and what we guess.
std::string bias_text(const json& bias) {
  std::string text;
  if (bias.contains("shown")) text += ": " + bias["shown"].get<std::string>();
  if (bias.contains("guess")) text += "; a guess: " + bias["guess"].get<std::string>();
  return text;
}

Value ours_for(const Row& row) { return functions().at(row.group["function"])(row.inputs); }

/// Rows of one group in a table, or where they are of the high-precision file a single line.
std::string group_text(const std::vector<Row>& rows) {
  const json& group = rows.front().group;
  std::string text = "\n**" + group["what"].get<std::string>() + "**";
  text += " (" + rows.front().source["kind"].get<std::string>() + ": " +
          rows.front().source["citation"].get<std::string>() + ").";
  if (!rows.front().computed()) {
    text += " Held, not computed: " + group["not_computed"].get<std::string>() + ".\n\n";
    text += "| inputs | " + other_side(rows.front()) + " |\n|---|---|\n";
    for (const Row& row : rows) {
      text += "| " + row.inputs.words() + " | " + published(row.printed) + " |\n";
    }
    return text;
  }
  text += " `" + group["function"].get<std::string>() + "`, tolerance " +
          tolerance_text(group["tolerance"]) + ": " +
          group["tolerance"]["reason"].get<std::string>() + ".";
  if (rows.front().must_differ()) {
    text += " **Disagrees**: " + group["disagrees"].get<std::string>() + ".";
  }
  if (group.contains("bias")) {
    text += " **Leans to one side**" + bias_text(group["bias"]) + ".";
  }
  if (rows.front().area == "high precision") {
    return text + " " + std::to_string(rows.size()) + " rows.\n";
  }
  text +=
      "\n\n| inputs | " + other_side(rows.front()) + " | ours | difference |\n|---|---|---|---|\n";
  for (const Row& row : rows) {
    const Value ours = ours_for(row);
    text += "| " + row.inputs.words() + " | " + published(row.printed) + " | " + shown(ours) +
            " | " + difference(row.printed, ours) + " |\n";
  }
  return text;
}

struct Count {
  int agree = 0, differ = 0, held = 0;
};

/// By kind and area, as the rows come out now.
std::string counts_text(const std::vector<Row>& rows) {
  std::map<std::string, Count> counts;
  Count all;
  for (const Row& row : rows) {
    for (Count* count : {&counts[row.kind() + ", " + row.area], &all}) {
      ++(!row.computed() ? count->held : agrees(row, ours_for(row)) ? count->agree : count->differ);
    }
  }
  const bool fitted = rows.front().kind() == "fitted";
  std::string text = fitted ? "| rows | within tolerance | outside | held, not computed |\n"
                            : "| rows | agree | differ, and say why | held, not computed |\n";
  text += "|---|---|---|---|\n";
  const auto line = [&](const std::string& name, const Count& count) {
    text += "| " + name + " | " + std::to_string(count.agree) + " | " +
            std::to_string(count.differ) + " | " + std::to_string(count.held) + " |\n";
  };
  for (const auto& [kind, count] : counts) line(kind, count);
  line("all", all);
  return text;
}

bool of_finishing(const Row& row) { return row.area == "finishing"; }

/// What a finisher meets: quantity, practice, ours, whether they agree.
std::string finishing_text(const std::vector<Row>& rows) {
  std::string text = "| quantity | for | practice | ours | agrees |\n|---|---|---|---|---|\n";
  for (const Row& row : rows) {
    if (!of_finishing(row)) continue;
    const Value ours = ours_for(row);
    text += "| " + row.group["what"].get<std::string>() + " | " + row.inputs.words() + " | " +
            published(row.printed) + " | " + digits(std::get<double>(ours), "%.3g") + " | " +
            (agrees(row, ours) ? "yes" : "no: " + row.group["disagrees"].get<std::string>()) +
            " |\n";
  }
  return text;
}

/// The sources whose rows miss to one side.
std::string leans_text(const std::vector<Row>& rows) {
  std::string text =
      "| function | source | above | within | below | ours over printed, of those that miss "
      "|\n|---|---|---|---|---|---|\n";
  for (const auto& [of, lean] : leans(rows)) {
    if (!lean.one_sided()) continue;
    text += "| `" + of[0] + "` | " + of[1] + " | " + std::to_string(lean.above) + " | " +
            std::to_string(lean.within) + " | " + std::to_string(lean.below) + " | " +
            digits(lean.factor(), "%.2f") + " |\n";
  }
  return text;
}

/// The groups, area by area.
std::string areas_text(const std::vector<Row>& rows) {
  std::string text, area;
  for (std::size_t at = 0; at < rows.size();) {
    std::size_t end = at;
    while (end < rows.size() && rows[end].group == rows[at].group) ++end;
    if (rows[at].area != area) {
      area = rows[at].area;
      text += "\n### " + area + "\n";
    }
    text += group_text({rows.begin() + static_cast<std::ptrdiff_t>(at),
                        rows.begin() + static_cast<std::ptrdiff_t>(end)});
    at = end;
  }
  return text;
}

json parsed(const std::filesystem::path& path) { return json::parse(std::ifstream(path)); }

std::vector<std::filesystem::path> json_files(const std::filesystem::path& folder) {
  std::set<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().extension() == ".json") files.insert(entry.path());
  }
  return {files.begin(), files.end()};
}

bool soft(const json& source) {
  return source["basis"] == "from memory" || source["basis"] == "assumption" ||
         source["basis"] == "common practice";
}

/// Grade tables: which numbers of which rows, by source.
std::string soft_grades_text() {
  std::string text = "| table | number | grades | source |\n|---|---|---|---|\n";
  for (const auto& file : json_files(data / "standards")) {
    const json table = parsed(file);
    for (const char* number :
         {"median_um", "tolerance_um", "coarse_limit_um", "fine_limit_um", "largest_um"}) {
      std::map<std::string, std::vector<std::string>> labels;
      for (const json& section : table["sections"]) {
        for (const json& row : section["rows"]) {
          if (row.contains(number) && soft(table["sources"][row[number][1].get<std::string>()])) {
            labels[row[number][1]].push_back(row["label"]);
          }
        }
      }
      for (const auto& [key, of] : labels) {
        std::string list;
        for (const std::string& label : of) list += (list.empty() ? "" : ", ") + label;
        text += "| " + table["system"].get<std::string>() + " | " + number + " | " + list + " | " +
                table["sources"][key]["citation"].get<std::string>() + " |\n";
      }
    }
  }
  return text;
}

/// The soft entries of a profile, and of its parts.
std::string soft_entries_text(const std::string& name, const json& profile) {
  std::string text;
  for (const auto& [field, entry] : profile.items()) {
    if (!entry.is_object()) continue;
    if (!entry.contains("basis")) {
      text += soft_entries_text(name, entry);
      continue;
    }
    if (!soft(entry) || entry.contains("names")) continue;  // names are no numbers
    const bool fact = entry["value"].is_boolean();
    text += "| " + name + " | " + field + " | " +
            (fact ? entry["value"].dump() : digits(entry["value"])) + " | " +
            (fact ? "" : digits(entry["low"]) + " to " + digits(entry["high"])) + " | " +
            entry["basis"].get<std::string>() + " | " + entry["citation"].get<std::string>() +
            " |\n";
  }
  return text;
}

std::string soft_profiles_text() {
  std::string text =
      "| profile | number | value | band | basis | source |\n|---|---|---|---|---|---|\n";
  for (const auto& file : json_files(data / "profiles" / "coatings")) {
    const json coating = parsed(file);
    text += soft_entries_text("coating: " + coating["name"].get<std::string>(), coating);
  }
  for (const auto& file : json_files(data / "profiles")) {
    const json table = parsed(file);
    for (const json& profile : table["profiles"]) {
      text += soft_entries_text(
          table["kind"].get<std::string>() + ": " + profile["name"].get<std::string>(), profile);
    }
  }
  return text;
}

/// The simulations' figures; tests run each anew and hold it to its interval.
std::string simulations_text() {
  std::string text =
      "| quantity | figure | from | to | interval | seed | supports "
      "|\n|---|---|---|---|---|---|---|\n";
  const json file = parsed(data / "reference" / "simulations.json");
  for (const json& row : file["simulations"]) {
    const std::string confidence =
        row["confidence_percent"].is_null() ? "" : digits(row["confidence_percent"]) + " %, ";
    text += "| " + row["quantity"].get<std::string>() + " | " + digits(row["value"]) + " | " +
            digits(row["low"]) + " | " + digits(row["high"]) + " | " + confidence +
            row["interval"].get<std::string>() + " | " +
            (row["seed"].is_null() ? "none" : row["seed"].get<std::string>()) + " | " +
            row["supports"].get<std::string>() + " |\n";
  }
  return text;
}

const char* const self_computed_heading = "\n## Worked out by ourselves\n\n";
const char* const fitted_heading = "\n## What a number was fitted to\n\n";
const char* const soft_heading = "\n## Grade sizes that rest on memory or practice\n\n";

std::string report() {
  std::vector<Row> independent, computed, fitted;
  for (const Row& row : reference_rows(data / "reference")) {
    (row.independent() ? independent : row.kind() == "computed" ? computed : fitted).push_back(row);
  }
  std::vector<Row> other;
  std::copy_if(independent.begin(), independent.end(), std::back_inserter(other),
               [](const Row& row) { return !of_finishing(row); });
  return "# What the library prints, beside what is published\n\n"
         "Made by `tests/reference/report_test.cpp` from the rows of `data/reference/*.json`, "
         "which the C++ and the Python tests both run. To write it anew: "
         "`LEVIGATE_WRITE_REPORT=1 ctest -R Report`.\n\n"
         "A row agrees where it lies within its tolerance. Where a source contradicts the library, "
         "or another source, the row is kept, says why, and must differ. Difference is ours less "
         "the other.\n\n"
         "## Published, and practice\n\n"
         "Only these rows can show that the library is wrong about the world. Published means "
         "printed in a standard, a paper or a table. Practice means told by the trade, or "
         "remembered.\n\n" +
         counts_text(independent) +
         "\n### What a finisher meets\n\n"
         "No number was fitted to these rows. They were known when flank and cutting efficiency "
         "were chosen.\n\n" +
         finishing_text(independent) +
         "\n### Sources that miss to one side\n\n"
         "Three rows or more of a source miss, all to the same side, by 10 % or more on average. "
         "The groups below say why, or guess.\n\n" +
         leans_text(independent) + areas_text(other) + self_computed_heading +
         "Arithmetic by hand, the same formulas in 30 digits, and simulations of our own. They "
         "show that the code does what its formulas say, not that the formulas are true.\n\n" +
         counts_text(computed) + areas_text(computed) +
         "\n### Simulations, and the constants they support\n\n" + simulations_text() +
         fitted_heading +
         "A number of the library was chosen by these rows, or its band was. That they come out "
         "says nothing, and none of them counts as agreeing.\n\n" +
         counts_text(fitted) + areas_text(fitted) + soft_heading + soft_grades_text() +
         "\n## Profile values and rules that rest on memory, practice or assumption\n\n" +
         soft_profiles_text();
}

TEST(Report, IsWhatTheRowsGive) {
  const std::filesystem::path path = data / "reference" / "REPORT.md";
  const std::string made = report();
  if (std::getenv("LEVIGATE_WRITE_REPORT") != nullptr) std::ofstream(path) << made;
  std::ostringstream held;
  held << std::ifstream(path).rdbuf();
  std::istringstream made_lines(made), held_lines(held.str());
  std::string made_line, held_line;
  while (std::getline(made_lines, made_line)) {
    std::getline(held_lines, held_line);
    ASSERT_EQ(held_line, made_line) << "write it anew: LEVIGATE_WRITE_REPORT=1 ctest -R Report";
  }
  EXPECT_FALSE(std::getline(held_lines, held_line)) << held_line;
}

/// The numbers of a line of a table, after its name.
std::vector<int> numbers_of(const std::string& line) {
  std::istringstream cells(line);
  std::string cell;
  std::vector<int> numbers;
  std::getline(cells, cell, '|');
  std::getline(cells, cell, '|');
  while (std::getline(cells, cell, '|')) numbers.push_back(std::stoi(cell));
  return numbers;
}

/// The table of counts that begins a part: its lines by name.
std::map<std::string, std::vector<int>> counts_in(const std::string& part) {
  std::istringstream lines(part.substr(part.find("|---|---|---|---|\n") + 18));
  std::map<std::string, std::vector<int>> counts;
  for (std::string line; std::getline(lines, line) && !line.empty();) {
    counts[line.substr(2, line.find(" |") - 2)] = numbers_of(line);
  }
  return counts;
}

TEST(Report, CountsAddUpAndStandApart) {
  const std::string text = report();
  const std::size_t ends[] = {text.find(self_computed_heading), text.find(fitted_heading),
                              text.find(soft_heading)};
  const std::set<std::string> kinds[] = {{"published", "practice"}, {"computed"}, {"fitted"}};
  std::size_t begin = 0;
  for (std::size_t i = 0; i < std::size(kinds); ++i) {
    ASSERT_NE(ends[i], std::string::npos);
    auto counts = counts_in(text.substr(begin, ends[i] - begin));
    begin = ends[i];
    const std::vector<int> all = counts.at("all");
    counts.erase("all");
    std::vector<int> sum{0, 0, 0};
    for (const auto& [name, numbers] : counts) {
      EXPECT_TRUE(kinds[i].contains(name.substr(0, name.find(',')))) << name;
      for (std::size_t at = 0; at < sum.size(); ++at) sum[at] += numbers.at(at);
    }
    EXPECT_EQ(sum, all);
    int rows = 0;
    for (const auto& file : json_files(data / "reference")) {
      const json content = parsed(file);
      if (!content.contains("groups")) continue;
      for (const json& group : content["groups"]) {
        if (kinds[i].contains(group["kind"])) rows += static_cast<int>(group["rows"].size());
      }
    }
    EXPECT_EQ(sum[0] + sum[1] + sum[2], rows);
  }
}

TEST(Report, WhatDiffersStandsInTheFirstPart) {
  const std::string text = report();
  const std::string first = text.substr(0, text.find(self_computed_heading));
  int differ = 0;
  for (const Row& row : reference_rows(data / "reference")) {
    const bool shown = first.find(row.group["what"].get<std::string>()) != std::string::npos;
    if (row.must_differ()) {
      EXPECT_TRUE(shown) << row.name();
      ++differ;
    }
  }
  EXPECT_GT(differ, 0);
}

}  // namespace
}  // namespace report_test
