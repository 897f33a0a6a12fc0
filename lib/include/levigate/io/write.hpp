// Writing stacks and jobs as JSON that reads back equal.
#pragma once

#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>

#include "levigate/grade/label.hpp"
#include "levigate/io/keys.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Keys keep the order in which they are set.
using OrderedJson = nlohmann::ordered_json;

/// Text with two blanks a level. Bytes that are not UTF-8 are replaced, as JSON cannot hold them.
inline std::string json_text(const OrderedJson& json) {
  return json.dump(2, ' ', false, OrderedJson::error_handler_t::replace) + "\n";
}

inline OrderedJson modulus_json(double modulus_mpa) {
  return std::isinf(modulus_mpa) ? OrderedJson(rigid_text) : OrderedJson(modulus_mpa);
}

/// The name where the profile of that name has just these numbers, else nothing.
template <typename Value, std::size_t count, typename Row>
std::optional<OrderedJson> profile_json(const Value& value, const Row (&table)[count],
                                        Value (*named)(std::string_view)) {
  for (const Row& row : table) {
    if (row.name == value.name && named(row.name) == value) return OrderedJson(value.name);
  }
  return std::nullopt;
}

inline OrderedJson json_of(const Coating& coating) {
  if (const auto profile = profile_json(coating, coating_table, coating_named)) return *profile;
  OrderedJson json{
      {"name", coating.name},
      {"kind", coating_kinds[coating.kind == CoatingKind::coat ? 0 : 1]},
      {"hardness_mpa", coating.hardness_mpa},
      {"wear_coefficient", coating.wear_coefficient},
      {"refractive_index", coating.refractive_index},
  };
  if (coating.two_part) json["two_part"] = *coating.two_part;
  return json;
}

inline OrderedJson json_of(const Block& block) {
  if (const auto profile = profile_json(block, block_table, block_named)) return *profile;
  return {{"name", block.name},
          {"modulus_mpa", modulus_json(block.modulus_mpa)},
          {"area_cm2", block.area_cm2},
          {"force_n", block.force_n},
          {"speed_m_s", block.speed_m_s},
          {"duty", block.duty},
          {"wrap", block.wrap}};
}

inline OrderedJson json_of(const Backing& backing) {
  if (const auto profile = profile_json(backing, backing_table, backing_named)) return *profile;
  return {{"name", backing.name},
          {"tip_spread", backing.tip_spread},
          {"modulus_mpa", modulus_json(backing.modulus_mpa)},
          {"life_m", backing.life_m},
          {"clean_every_m", backing.clean_every_m},
          {"fade_m", backing.fade_m},
          {"floor", backing.floor}};
}

inline OrderedJson json_of(const Film& film) {
  OrderedJson json{{"mean_um", film.mean_um}, {"sd_um", film.sd_um}};
  if (film.mean_se_um != 0.0) json["mean_se_um"] = film.mean_se_um;
  if (film.sd_se_um != 0.0) json["sd_se_um"] = film.sd_se_um;
  if (film.readings != 0) json["readings"] = film.readings;
  return json;
}

inline OrderedJson json_of(const Sheet& sheet) {
  OrderedJson json{{"id", sheet.id}, {"maker", sheet.maker}, {"label", sheet.label}};
  if (sheet.system) json["system"] = to_string(*sheet.system);
  if (sheet.size_um) json["size_um"] = *sheet.size_um;
  json["backing"] = json_of(sheet.backing);
  if (sheet.block) json["block"] = json_of(*sheet.block);
  json["width_mm"] = sheet.width_mm;
  json["height_mm"] = sheet.height_mm;
  if (sheet.on_hand) json["on_hand"] = *sheet.on_hand;
  if (sheet.price) json["price"] = *sheet.price;
  return json;
}

inline OrderedJson json_of(const Zone& zone) {
  OrderedJson json{
      {"name", zone.name}, {"area_cm2", zone.area_cm2}, {"block", json_of(zone.block)}};
  if (zone.film) json["film"] = json_of(*zone.film);
  json["peel_um"] = zone.peel_um;
  json["peel_wavelength_mm"] = zone.peel_wavelength_mm;
  json["levelled"] = zone.levelled;
  return json;
}

inline OrderedJson json_of(const Rules& rules) {
  return {{"max_ratio", rules.max_ratio},
          {"min_ratio", rules.min_ratio},
          {"overcut", rules.overcut},
          {"scratch_quantile", rules.scratch_quantile},
          {"residual_peel_um", rules.residual_peel_um},
          {"change_minutes", rules.change_minutes},
          {"reserve_um", rules.reserve_um},
          {"removed_cv", rules.removed_cv},
          {"cut_through_limit", rules.cut_through_limit}};
}

inline OrderedJson start_json(const std::optional<Grade>& scratched_by) {
  if (!scratched_by) return {{"as", "sprayed"}};
  if (scratched_by->basis() == Basis::user && scratched_by->system != System::micron) {
    throw BadInput("scratched_by '" + scratched_by->label +
                       "' has a size of its own; a file holds a label only, in /start/scratched_by",
                   "/start/scratched_by");
  }
  return {{"scratched_by", scratched_by->label}};
}

inline OrderedJson target_json(const Target& target) {
  if (!target.label.empty()) return {{"grade", target.label}};
  if (target.size_um) return {{"size_um", *target.size_um}};
  return {{"gloss_gu", target.gloss_gu.value_or(0.0)}};
}

}  // namespace detail

/// A stack as JSON text of format levigate.stack/1, which stack_from_json reads back equal.
inline std::string to_json(const Stack& stack) {
  detail::OrderedJson json{
      {"format", stack_format},
      {"bare_number", stack.bare_number ? to_string(*stack.bare_number) : "ask"},
      {"sheets", detail::OrderedJson::array()}};
  for (const Sheet& sheet : stack.sheets) json["sheets"].push_back(detail::json_of(sheet));
  return detail::json_text(json);
}

/// A job as JSON text of format levigate.job/1, which job_from_json reads back equal: film by its mean and
/// spread, every rule with its value.
/// Throws: BadInput where scratched_by has a size of its own, which the format has no place for
inline std::string to_json(const Job& job) {
  detail::OrderedJson json{{"format", job_format},
                           {"name", job.name},
                           {"coating", detail::json_of(job.coating)},
                           {"zones", detail::OrderedJson::array()},
                           {"start", detail::start_json(job.scratched_by)},
                           {"target", detail::target_json(job.target)},
                           {"rules", detail::json_of(job.rules)},
                           {"prefer", to_string(job.prefer)}};
  for (const Zone& zone : job.zones) json["zones"].push_back(detail::json_of(zone));
  return detail::json_text(json);
}

}  // namespace levigate
