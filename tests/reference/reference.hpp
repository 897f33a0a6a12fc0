// Published values in data/reference: read, checked for their form, and compared with the library.
//
// A file holds `sources` (kind, basis, citation) and `groups` of rows. A group says of what `kind` its rows are: printed
// in a standard, a paper or a table (`published`), told by the trade or remembered (`practice`), worked out by ourselves
// (`computed`), or such that a number of the library was chosen by them (`fitted`). It names one function, inputs that its
// rows share (`given`), the inputs that stand in each row (`columns`), a source and a tolerance with its reason. A row
// is its inputs and the value as printed: a number or a label in quotes, or [low, high] for a band. A group
// whose source the library contradicts says why in `disagrees`, and then the rows must differ; one that
// no function here computes says why in `not_computed`, and is held for the reader.
#pragma once

#include <charconv>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <stdexcept>
#include <string>
#include <variant>
#include <vector>

namespace levigate_tests {

using nlohmann::json;
using Value = std::variant<double, std::string>;

/// The number that a text prints.
inline double number_in(const std::string& text) {
  double value = 0;
  const auto end = std::from_chars(text.data(), text.data() + text.size(), value).ptr;
  if (end != text.data() + text.size()) throw std::runtime_error("not a number: " + text);
  return value;
}

/// The inputs of a row; remembers which were asked for.
class Inputs {
 public:
  void add(const std::string& name, const json& value) {
    if (!values_.emplace(name, value).second) throw std::runtime_error("given twice: " + name);
  }

  double number(const std::string& name) const {
    const json& value = asked(name);
    return value.is_string() ? number_in(value) : value.get<double>();
  }
  std::string text(const std::string& name) const { return asked(name); }
  bool all_asked() const { return used_.size() == values_.size(); }

  /// "refractive_index 1.5, angle_deg 60"
  std::string words() const {
    std::string result;
    for (const auto& [name, value] : values_) {
      result += (result.empty() ? "" : ", ") + name + " " +
                (value.is_string() ? value.get<std::string>() : value.dump());
    }
    return result;
  }

 private:
  const json& asked(const std::string& name) const {
    const auto found = values_.find(name);
    if (found == values_.end()) throw std::runtime_error("no input " + name);
    used_.insert(name);
    return found->second;
  }

  std::map<std::string, json> values_;
  mutable std::set<std::string> used_;
};

struct Row {
  std::string area;
  json group;
  json source;
  Inputs inputs;
  json printed;  ///< "57.0", "P1200" or ["0.41", "0.65"]

  std::string kind() const { return group["kind"]; }
  /// Whether the row can tell that the library is wrong about the world.
  bool independent() const { return kind() == "published" || kind() == "practice"; }
  bool computed() const { return group.contains("function"); }
  bool must_differ() const { return group.contains("disagrees"); }
  std::string name() const {
    return area + ": " + group["what"].get<std::string>() + ": " + inputs.words();
  }
};

/// How far a value may lie from `printed`.
inline double allowance(const json& tolerance, double printed) {
  if (tolerance.contains("absolute")) return number_in(tolerance["absolute"]);
  if (tolerance.contains("relative")) {
    return number_in(tolerance["relative"]) * std::abs(printed);
  }
  return 0.0;
}

/// Whether a value is what the row prints, within the tolerance of its group.
inline bool agrees(const Row& row, const Value& ours) {
  const json& tolerance = row.group["tolerance"];
  if (const auto* label = std::get_if<std::string>(&ours)) {
    return row.printed.is_string() && *label == row.printed.get<std::string>();
  }
  const double value = std::get<double>(ours);
  const bool band = row.printed.is_array();
  const double low = number_in(band ? row.printed[0] : row.printed);
  const double high = number_in(band ? row.printed[1] : row.printed);
  if (tolerance.contains("factor")) {
    const double factor = number_in(tolerance["factor"]);
    return value >= low / factor && value <= high * factor;
  }
  return value >= low - allowance(tolerance, low) && value <= high + allowance(tolerance, high);
}

/// The rows of one file.
inline std::vector<Row> rows_of(const json& content) {
  static const std::set<std::string> kinds{"published", "practice", "computed", "fitted"};
  std::vector<Row> rows;
  for (const json& group : content["groups"]) {
    if (!kinds.contains(group.value("kind", ""))) {
      throw std::runtime_error(group["what"].get<std::string>() + ": no kind, or an unknown one");
    }
    for (const json& printed : group["rows"]) {
      Row& row = rows.emplace_back(
          Row{content["area"], group, content["sources"].at(group["source"]), {}, printed.back()});
      for (const auto& [name, value] : group["given"].items()) row.inputs.add(name, value);
      if (printed.size() != group["columns"].size() + 1) {
        throw std::runtime_error(row.name() + ": a row does not have the length of its columns");
      }
      for (std::size_t i = 0; i + 1 < printed.size(); ++i) {
        row.inputs.add(group["columns"][i], printed[i]);
      }
    }
  }
  return rows;
}

/// All rows of data/reference, in the order of the file names.
inline std::vector<Row> reference_rows(const std::filesystem::path& folder) {
  std::set<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().extension() == ".json") files.insert(entry.path());
  }
  std::vector<Row> rows;
  for (const auto& file : files) {
    const json content = json::parse(std::ifstream(file));
    if (content.value("format", "") != "levigate.reference/1")
      continue;  // the simulations' results
    for (Row& row : rows_of(content)) rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace levigate_tests
