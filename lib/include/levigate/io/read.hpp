// Reading stacks and jobs from JSON. Every error names the value, its pointer and its line.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/grade/label.hpp"
#include "levigate/io/file.hpp"
#include "levigate/io/read_parts.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {

inline void require_format(const Node& root, std::string_view wanted) {
  if (const auto format = root.find("format"); format && format->is_text()) {
    if (format->text() == wanted) return;
    format->fail("format is '" + shown(format->text()) + "', wanted '" + std::string(wanted) + "'");
  }
  root.require_object("an object of format '" + std::string(wanted) + "'");
  root.fail("format is missing or no string, wanted '" + std::string(wanted) + "'");
}

inline System system_in(const Node& node) {
  std::vector<std::string_view> known;
  for (const System system : all_systems) known.push_back(to_string(system));
  return all_systems[node.one_of(known, "system")];
}

inline Sheet sheet_in(const Node& node) {
  node.require_keys(sheet_keys);
  Sheet sheet;
  sheet.id = node.at("id").text();
  if (const auto maker = node.find("maker")) sheet.maker = maker->text();
  sheet.label = node.at("label").text();
  if (const auto system = node.find("system")) sheet.system = system_in(*system);
  if (const auto size_um = node.find("size_um")) sheet.size_um = size_um->number();
  sheet.backing = backing_in(node.at("backing"));
  if (const auto block = node.find("block")) sheet.block = block_in(*block);
  sheet.width_mm = node.at("width_mm").number();
  sheet.height_mm = node.at("height_mm").number();
  if (const auto on_hand = node.find("on_hand")) sheet.on_hand = on_hand->number();
  if (const auto price = node.find("price")) sheet.price = price->number();
  node.placed([&] { validate(sheet, node.pointer()); });
  return sheet;
}

inline Zone zone_in(const Node& node, const Coating& coating, const Rules& rules, bool sprayed) {
  node.require_keys(zone_keys);
  Zone zone;
  zone.name = node.at("name").text();
  zone.area_cm2 = node.at("area_cm2").number();
  zone.block = block_in(node.at("block"));
  if (const auto film = node.find("film")) zone.film = film_in(*film);
  if (const auto levelled = node.find("levelled")) zone.levelled = levelled->boolean();
  const bool peel_counts = sprayed && zone.levelled;
  if (peel_counts || node.has("peel_um")) zone.peel_um = node.at("peel_um").number();
  if ((peel_counts && zone.peel_um > 0.0) || node.has("peel_wavelength_mm")) {
    zone.peel_wavelength_mm = node.at("peel_wavelength_mm").number();
  }
  node.placed([&] { validate(zone, coating, rules, true, node.pointer()); });
  return zone;
}

/// The key of an object that must have exactly one of these keys.
inline std::string_view only_key(const Node& node, std::span<const std::string_view> keys) {
  node.require_keys(keys);
  std::string_view found;
  for (const std::string_view key : keys) {
    if (!node.has(key)) continue;
    if (!found.empty()) {
      node.at(key).fail(std::string(key) + " does not go with " + std::string(found) +
                        ": one of them is wanted");
    }
    found = key;
  }
  if (found.empty()) node.fail("one is wanted of " + names_text(keys));
  return found;
}

inline Target target_in(const Node& node) {
  Target target;
  const std::string_view key = only_key(node, target_keys);
  const Node value = node.at(key);
  if (key == "grade") {
    const Grade grade = value.placed([&] { return levigate::grade(value.text()); });
    target.size_um = grade.median_um;
    target.label = grade.label;
  } else {
    (key == "size_um" ? target.size_um : target.gloss_gu) = value.number();
  }
  node.placed([&] { validate(target, node.pointer()); });
  return target;
}

/// The grade whose scratches the work carries; none as sprayed.
inline std::optional<Grade> start_in(const Node& node) {
  const std::string_view key = only_key(node, start_keys);
  const Node value = node.at(key);
  if (key == "scratched_by") return value.placed([&] { return grade(value.text()); });
  constexpr std::string_view known[] = {"sprayed"};
  value.one_of(known, "start");
  return std::nullopt;
}

inline Rules rules_in(const Node& node) {
  node.require_keys(rules_keys);
  Rules rules;
  double* const members[] = {
      &rules.max_ratio,        &rules.min_ratio,        &rules.overcut,
      &rules.scratch_quantile, &rules.residual_peel_um, &rules.change_minutes,
      &rules.reserve_um,       &rules.removed_cv,       &rules.cut_through_limit};
  static_assert(std::size(members) == std::size(rules_keys));
  for (std::size_t i = 0; i < std::size(members); ++i) {
    if (const auto value = node.find(rules_keys[i])) *members[i] = value->number();
  }
  node.placed([&] { validate(rules, node.pointer()); });
  return rules;
}

inline Objective objective_in(const Node& node) {
  constexpr Objective all[] = {Objective::minutes, Objective::film, Objective::steps,
                               Objective::cost};
  std::vector<std::string_view> known;
  for (const Objective objective : all) known.push_back(to_string(objective));
  return all[node.one_of(known, "prefer")];
}

}  // namespace detail

/// A stack from JSON text of format levigate.stack/1. Labels are not read: that is for check(), which tells of
/// all of them, and for plan().
///
/// @param text  the JSON text, UTF-8
/// @param file  its name for messages; may be empty
/// @return      the stack
/// Throws:    BadInput, with pointer and line, for text that is not of the format; OutOfRange for a number
///            outside its range
/// Source:    data/schema/stack.schema.json
inline Stack stack_from_json(std::string_view text, std::string_view file = "") {
  const detail::Document document(text, file);
  const detail::Node root(document);
  detail::require_format(root, stack_format);
  root.require_keys(detail::stack_keys);
  Stack stack;
  if (const auto bare = root.find("bare_number"); bare && bare->text() != "ask") {
    std::vector<std::string_view> known{"ask"};
    for (const System system : all_systems) known.push_back(to_string(system));
    stack.bare_number = all_systems[bare->one_of(known, "bare_number") - 1];
  }
  for (const detail::Node& sheet : root.at("sheets").items()) {
    stack.sheets.push_back(detail::sheet_in(sheet));
  }
  root.placed([&] { validate(stack); });
  return stack;
}

/// A job from JSON text of format levigate.job/1.
///
/// @param text  the JSON text, UTF-8
/// @param file  its name for messages; may be empty
/// @return      the job
/// Throws:    BadInput, with pointer and line, for text that is not of the format; OutOfRange for a number
///            outside its range; UnknownGrade, AmbiguousLabel for a label in start or target
/// Source:    data/schema/job.schema.json
inline Job job_from_json(std::string_view text, std::string_view file = "") {
  const detail::Document document(text, file);
  const detail::Node root(document);
  detail::require_format(root, job_format);
  root.require_keys(detail::job_keys);
  Job job;
  job.name = root.at("name").text();
  job.coating = detail::coating_in(root.at("coating"));
  if (const auto start = root.find("start")) job.scratched_by = detail::start_in(*start);
  job.target = detail::target_in(root.at("target"));
  if (const auto rules = root.find("rules")) job.rules = detail::rules_in(*rules);
  if (const auto prefer = root.find("prefer")) job.prefer = detail::objective_in(*prefer);
  for (const detail::Node& zone : root.at("zones").items()) {
    job.zones.push_back(detail::zone_in(zone, job.coating, job.rules, !job.scratched_by));
  }
  root.placed([&] { validate(job); });
  return job;
}

/// The stack in a file. Throws: what read_file and stack_from_json throw, naming the file.
inline Stack load_stack(const std::filesystem::path& path) {
  return stack_from_json(read_file(path), path.string());
}

/// The job in a file. Throws: what read_file and job_from_json throw, naming the file.
inline Job load_job(const std::filesystem::path& path) {
  return job_from_json(read_file(path), path.string());
}

}  // namespace levigate
