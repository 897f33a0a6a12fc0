// The work behind io/read.hpp: defines what it declares.
#pragma once

#include <filesystem>
#include <string_view>
#include <vector>

#include "levigate/io/read.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/io/file.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/io/work/document.hpp"
#include "levigate/io/work/keys.hpp"
#include "levigate/io/work/read_job.hpp"
#include "levigate/io/work/read_parts.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Stack stack_from_json(std::string_view text, std::string_view file) {
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

LEVIGATE_WORK Job job_from_json(std::string_view text, std::string_view file) {
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
  if (const auto age_h = root.find("age_h")) job.age_h = age_h->number();
  if (const auto cure = root.find("cure")) job.cure = detail::cure_in(*cure);
  for (const detail::Node& zone : root.at("zones").items()) {
    job.zones.push_back(detail::zone_in(zone, job.zones, !job.scratched_by));
  }
  root.placed([&] { validate(job); });
  return job;
}

LEVIGATE_WORK Stack load_stack(const std::filesystem::path& path) {
  return stack_from_json(read_file(path), path.string());
}

LEVIGATE_WORK Job load_job(const std::filesystem::path& path) {
  return job_from_json(read_file(path), path.string());
}

}  // namespace levigate
