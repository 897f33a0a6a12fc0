// The work behind io/write_plan.hpp: defines what it declares.
#pragma once

#include <string>
#include <vector>

#include "levigate/io/write_plan.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/grade/convert.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/io/work/write_outcome.hpp"
#include "levigate/io/work/write_parts.hpp"
#include "levigate/io/write.hpp"
#include "levigate/plan/outcome.hpp"
#include "levigate/stack/finding.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK std::string to_json(const Plan& plan) {
  detail::OrderedJson json{{"format", plan_format}, {"found", plan.found}};
  json.update(detail::outcome_json(plan));
  json["cautions"] = detail::array_json(plan.cautions, detail::json_of);
  json["relies_on"] = detail::array_json(plan.relies_on, detail::json_of);
  json["why"] = plan.why ? detail::json_of(*plan.why) : detail::OrderedJson(nullptr);
  json["tradeoff"] = detail::OrderedJson::array();
  for (const Plan& point : plan.tradeoff) json["tradeoff"].push_back(detail::outcome_json(point));
  return detail::json_text(json);
}

LEVIGATE_WORK std::string to_json(const std::vector<Finding>& findings) {
  return detail::json_text(detail::array_json(findings, detail::json_of));
}

LEVIGATE_WORK std::string to_json(const Equivalent& equivalent) {
  return detail::json_text(
      {{"grade", detail::json_of(equivalent.grade)},
       {"size_ratio", equivalent.size_ratio},
       {"within_tolerance", equivalent.within_tolerance
                                ? detail::OrderedJson(*equivalent.within_tolerance)
                                : detail::OrderedJson(nullptr)},
       {"overlap", equivalent.overlap},
       {"number", detail::or_null(equivalent.number)},
       {"coarser", detail::json_of(equivalent.coarser)},
       {"finer", detail::json_of(equivalent.finer)},
       {"verdict", equivalent.verdict}});
}

}  // namespace levigate
