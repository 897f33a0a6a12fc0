// The work behind io/write.hpp: defines what it declares.
#pragma once

#include <string>

#include "levigate/io/write.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/io/work/write_parts.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK std::string to_json(const Stack& stack) {
  detail::OrderedJson json{
      {"format", stack_format},
      {"bare_number", stack.bare_number ? to_string(*stack.bare_number) : "ask"},
      {"sheets", detail::OrderedJson::array()}};
  for (const Sheet& sheet : stack.sheets) json["sheets"].push_back(detail::json_of(sheet));
  return detail::json_text(json);
}

LEVIGATE_WORK std::string to_json(const Job& job) {
  detail::OrderedJson json{{"format", job_format},
                           {"name", job.name},
                           {"coating", detail::json_of(job.coating)},
                           {"zones", detail::OrderedJson::array()},
                           {"start", detail::start_json(job.scratched_by)},
                           {"target", detail::target_json(job.target)},
                           {"rules", detail::json_of(job.rules)},
                           {"prefer", to_string(job.prefer)}};
  if (job.age_h) json["age_h"] = *job.age_h;
  if (job.cure) json["cure"] = detail::json_of(*job.cure);
  for (const Zone& zone : job.zones) json["zones"].push_back(detail::json_of(zone));
  return detail::json_text(json);
}

}  // namespace levigate
