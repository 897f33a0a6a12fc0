// Writing the parts of a job and a stack as JSON.
#pragma once

#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>

#include "levigate/detail/profile.hpp"
#include "levigate/error.hpp"
#include "levigate/film/film.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/sized.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/io/work/keys.hpp"
#include "levigate/io/work/write_described.hpp"
#include "levigate/plan/carried.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/source.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/backing_table.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/block_table.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/surface/coating.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/cure.hpp"
#include "levigate/surface/defect.hpp"
#include "levigate/surface/sheen_band_table.hpp"
#include "levigate/surface/wheel_limits.hpp"
#include "levigate/wheel/compound.hpp"
#include "levigate/wheel/compound_table.hpp"
#include "levigate/wheel/wheel.hpp"
#include "levigate/wheel/wheel_table.hpp"

namespace levigate::inline v0 {

namespace detail {

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

inline OrderedJson json_of(const Cure& cure) {
  OrderedJson json{
      {"hard_cure_h", cure.hard_cure_h}, {"shrink", cure.shrink}, {"points", OrderedJson::array()}};
  for (const HardnessPoint& point : cure.points) {
    json["points"].push_back(OrderedJson::array({point.hours, point.hardness_mpa}));
  }
  return json;
}

inline OrderedJson json_of(const WheelLimits& limits) {
  return {{"speed_low_m_s", limits.speed_low_m_s},
          {"speed_high_m_s", limits.speed_high_m_s},
          {"effusivity", limits.effusivity},
          {"rise_k", limits.rise_k}};
}

/// A part that is known; null where it is not, but would be read as `left_out` if it were left out.
template <typename Part>
void put_known(OrderedJson& json, const char* key, const std::optional<Part>& part,
               const std::optional<Part>& left_out) {
  if constexpr (std::is_same_v<Part, bool>) {
    if (part) json[key] = *part;
  } else {
    if (part) json[key] = json_of(*part);
  }
  if (!part && left_out) json[key] = nullptr;
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
  const bool named = has_profile(coating_table, coating.name);
  const Coating left_out = named ? coating_named(coating.name) : Coating{};
  put_known(json, "redissolves", coating.redissolves, left_out.redissolves);
  put_known(json, "cure", coating.cure, left_out.cure);
  put_known(json, "limits", coating.limits, left_out.limits);
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
  OrderedJson json{{"name", backing.name},
                   {"tip_spread", backing.tip_spread},
                   {"modulus_mpa", modulus_json(backing.modulus_mpa)},
                   {"life_m", backing.life_m},
                   {"clean_every_m", backing.clean_every_m},
                   {"fade_m", backing.fade_m},
                   {"floor", backing.floor}};
  return json;
}

inline OrderedJson json_of(const Wheel& wheel) {
  if (const auto profile = profile_json(wheel, wheel_table, wheel_named)) return *profile;
  return {{"name", wheel.name},
          {"diameter_mm", wheel.diameter_mm},
          {"rpm", wheel.rpm},
          {"rated_rpm", wheel.rated_rpm},
          {"width_mm", wheel.width_mm},
          {"contact_mm", wheel.contact_mm},
          {"force_n", wheel.force_n},
          {"feed_m_s", wheel.feed_m_s},
          {"modulus_mpa", wheel.modulus_mpa},
          {"friction", wheel.friction},
          {"heat_share", wheel.heat_share},
          {"duty", wheel.duty}};
}

/// The name of a compound of the profiles, or its numbers.
inline OrderedJson json_of(const Polish& polish) {
  for (const CompoundProfile& row : compound_table) {
    Polish named = polish_named(row.name);
    named.tool = polish.tool;
    if (named == polish) return row.name;
  }
  OrderedJson json{{"name", polish.name}, {"size_um", polish.size_um}, {"worn_um", polish.worn_um}};
  if (const auto* scratch = std::get_if<ScratchReach>(&polish.reach)) {
    json["coarsest_scratch_um"] = scratch->coarsest_scratch_um;
  } else {
    json["coarsest_paper_um"] = std::get<PaperReach>(polish.reach).coarsest_paper_um;
  }
  json["wear_share"] = polish.wear_share;
  return json;
}

inline OrderedJson json_of(const Defect& defect) {
  return {{"kind", to_string(defect.kind)},
          {"height_um", defect.height_um},
          {"width_mm", defect.width_mm},
          {"length_mm", defect.length_mm},
          {"count", defect.count}};
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
  if (const Polish* polish = polish_of(sheet)) {
    json["compound"] = json_of(*polish);
  } else if (sheet.size_um) {
    json["size_um"] = *sheet.size_um;
  }
  json["backing"] = json_of(sheet.backing);
  if (const Tool* tool = tool_of(sheet)) {
    const Wheel* wheel = as_wheel(*tool);
    json[wheel ? "wheel" : "block"] = wheel ? json_of(*wheel) : json_of(std::get<Block>(*tool));
  }
  json["width_mm"] = sheet.width_mm;
  json["height_mm"] = sheet.height_mm;
  if (sheet.on_hand) json["on_hand"] = *sheet.on_hand;
  if (sheet.price) json["price"] = *sheet.price;
  return json;
}

/// The size stands beside the label where it is not the label's.
inline OrderedJson json_of(const Carried& carried) {
  const Grade& grade = carried.grade;
  OrderedJson json{{"scratched_by", grade.label}};
  if (grade.method == sized_grade(grade.label, grade.median_um).method)
    json["size_um"] = grade.median_um;
  if (carried.scratch_um) json["scratch_um"] = *carried.scratch_um;
  if (carried.rq_um) json["rq_um"] = *carried.rq_um;
  if (carried.worn_um) json["worn_um"] = *carried.worn_um;
  return json;
}

inline OrderedJson json_of(const Zone& zone) {
  OrderedJson json{
      {"name", zone.name}, {"area_cm2", zone.area_cm2}, {"block", json_of(zone.block)}};
  if (zone.film) json["film"] = json_of(*zone.film);
  json["peel_um"] = zone.peel_um;
  json["peel_wavelength_mm"] = zone.peel_wavelength_mm;
  if (zone.edge) {
    json["edge_of"] = zone.edge->of;
    if (zone.edge->radius_mm) json["radius_mm"] = *zone.edge->radius_mm;
  } else {
    json["levelled"] = zone.levelled;
  }
  json["below_um"] = zone.below_um;
  json["defects"] = OrderedJson::array();
  for (const Defect& defect : zone.defects) json["defects"].push_back(json_of(defect));
  if (zone.carries) json["start"] = json_of(*zone.carries);
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
  if (target.gloss_gu && (target.gloss_high_gu || !target.label.empty())) {
    for (const SheenBand& band : sheen_band_table) {
      if (sheen_label(band) != target.label) continue;
      return {{"sheen", {{"scheme", band.scheme}, {"name", band.name}}}};
    }
    throw BadInput("target '" + target.label + "' is no band of sheen that a file can name",
                   "/target");
  }
  if (!target.label.empty()) return {{"grade", target.label}};
  if (target.size_um) return {{"size_um", *target.size_um}};
  return {{"gloss_gu", target.gloss_gu.value_or(0.0)}};
}

}  // namespace detail

}  // namespace levigate
