// Writing the parts of a plan as JSON.
#pragma once

#include <optional>
#include <vector>

#include "levigate/grade/grade.hpp"
#include "levigate/io/work/write_parts.hpp"
#include "levigate/plan/caution.hpp"
#include "levigate/plan/local.hpp"
#include "levigate/plan/outcome.hpp"
#include "levigate/plan/reliance.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/sourced.hpp"
#include "levigate/stack/check.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/surface/take_down.hpp"

namespace levigate::inline v0 {

namespace detail {

inline OrderedJson or_null(const std::optional<double>& value) {
  return value ? OrderedJson(*value) : OrderedJson(nullptr);
}

inline OrderedJson json_of(const Finding& finding) {
  return {{"kind", to_string(finding.kind)},
          {"severity", to_string(finding.severity)},
          {"sheets", finding.sheets},
          {"message", finding.message}};
}

inline OrderedJson json_of(const Caution& caution) {
  return {{"topic", caution.topic}, {"text", caution.text}};
}

inline OrderedJson json_of(const Bridge& bridge) {
  return {{"system", to_string(bridge.system)}, {"labels", bridge.labels}};
}

/// An array, each element by the json_of of its type.
template <typename Value>
OrderedJson array_json(const std::vector<Value>& values, OrderedJson (*one)(const Value&)) {
  OrderedJson json = OrderedJson::array();
  for (const Value& value : values) json.push_back(one(value));
  return json;
}

inline OrderedJson json_of(const ZoneStep& zone) {
  return {{"zone", zone.zone},
          {"worked", zone.worked},
          {"removal_um", zone.removal_um},
          {"scratch_um", zone.scratch_um},
          {"depth_um", zone.depth_um},
          {"minutes", zone.minutes},
          {"travel_m", zone.travel_m},
          {"sheets_used", zone.sheets_used},
          {"gloss_gu", zone.gloss_gu},
          {"gloss_20_gu", zone.gloss_20_gu},
          {"gloss_85_gu", zone.gloss_85_gu},
          {"film_left_um", or_null(zone.film_left_um)},
          {"cut_through", or_null(zone.cut_through)},
          {"strokes_left", or_null(zone.strokes_left)}};
}

inline OrderedJson json_of(const Step& step) {
  return {{"sheet", step.sheet},
          {"label", step.label},
          {"size_um", step.size_um},
          {"size_ratio", or_null(step.size_ratio)},
          {"minutes", step.minutes},
          {"sheets_used", step.sheets_used},
          {"cost", step.cost},
          {"gloss_gu", step.gloss_gu},
          {"zones", array_json(step.zones, json_of)},
          {"cautions", array_json(step.cautions, json_of)}};
}

inline OrderedJson json_of(const LocalCost& cost) {
  return {{"minutes", cost.minutes}, {"film_um", cost.film_um}};
}

inline OrderedJson json_of(const LocalStep& step) {
  return {{"zone", step.zone},
          {"defect", json_of(step.defect)},
          {"block", step.block},
          {"shaved", step.work.shaved},
          {"masked", step.work.masked},
          {"local", json_of(step.work.local)},
          {"flat", json_of(step.work.flat)},
          {"verdict", step.work.verdict}};
}

inline OrderedJson json_of(const Totals& total) {
  return {{"minutes", total.minutes},
          {"film", or_null(total.film)},
          {"steps", total.steps},
          {"cost", total.cost},
          {"depth_um", total.depth_um}};
}

inline OrderedJson json_of(const Gap& gap) {
  return {{"coarse", gap.coarse},       {"fine", gap.fine},
          {"coarse_um", gap.coarse_um}, {"fine_um", gap.fine_um},
          {"ratio", gap.ratio},         {"bridges", array_json(gap.bridges, json_of)}};
}

inline OrderedJson json_of(const PaperShort& paper) {
  return {{"sheet", paper.sheet}, {"needed", paper.needed}, {"on_hand", paper.on_hand}};
}

inline OrderedJson json_of(const Why& why) {
  return {{"blocked_by", to_string(why.blocked_by)},
          {"message", why.message},
          {"smallest_max_ratio", or_null(why.smallest_max_ratio)},
          {"largest_min_ratio", or_null(why.largest_min_ratio)},
          {"gaps", array_json(why.gaps, json_of)},
          {"compound", why.compound.empty() ? OrderedJson(nullptr) : OrderedJson(why.compound)},
          {"too_deep_um", or_null(why.too_deep_um)},
          {"zone", why.zone.empty() ? OrderedJson(nullptr) : OrderedJson(why.zone)},
          {"film_short_um", or_null(why.film_short_um)},
          {"paper", array_json(why.paper, json_of)}};
}

inline OrderedJson json_of(const Reliance& reliance) {
  const Sourced& input = reliance.input;
  return {{"subject", reliance.subject},           {"quantity", reliance.quantity},
          {"value", modulus_json(input.value)},    {"low", modulus_json(input.low)},
          {"high", modulus_json(input.high)},      {"basis", to_string(input.source.basis)},
          {"citation", input.source.citation},     {"minutes_low", reliance.minutes_low},
          {"minutes_high", reliance.minutes_high}, {"film_low", reliance.film_low},
          {"film_high", reliance.film_high},       {"influence", reliance.influence}};
}

/// What a plan and each point of its trade-off have in common.
inline OrderedJson outcome_json(const Plan& plan) {
  return {{"before", array_json(plan.before, json_of)},
          {"steps", array_json(plan.steps, json_of)},
          {"total", json_of(plan.total)},
          {"findings", array_json(plan.findings, json_of)}};
}

inline OrderedJson json_of(const Grade& grade) {
  return {{"system", to_string(grade.system)},
          {"label", grade.label},
          {"median_um", grade.median_um},
          {"tolerance_um", or_null(grade.tolerance_um)},
          {"coarse_limit_um", or_null(grade.coarse_limit_um)},
          {"fine_limit_um", or_null(grade.fine_limit_um)},
          {"fine_percent", or_null(grade.fine_percent)},
          {"edition", grade.edition},
          {"method", grade.method},
          {"basis", to_string(grade.basis())},
          {"note", grade.note}};
}

inline OrderedJson json_of(const std::optional<Grade>& grade) {
  return grade ? json_of(*grade) : OrderedJson(nullptr);
}

}  // namespace detail

}  // namespace levigate
