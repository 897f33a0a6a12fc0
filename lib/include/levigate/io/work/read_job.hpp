// Reading the parts of a job: zones, target, start, rules.
#pragma once

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/film/edge.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/grade/sized.hpp"
#include "levigate/io/work/document.hpp"
#include "levigate/io/work/keys.hpp"
#include "levigate/io/work/read_described.hpp"
#include "levigate/io/work/read_film.hpp"
#include "levigate/io/work/read_parts.hpp"
#include "levigate/plan/carried.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/stack/stack.hpp"
#include "levigate/surface/coating.hpp"
#include "levigate/surface/sheen_band_table.hpp"
#include "levigate/surface/sheen_bands.hpp"

namespace levigate::inline v0 {

namespace detail {

/// What a zone carries, where it does not stand as the job starts. A label may come with a size of its own.
inline Carried zone_start_in(const Node& node) {
  node.require_keys(zone_start_keys);
  const Node label = node.at("scratched_by");
  Carried carried;
  if (const auto size_um = node.find("size_um")) {
    carried.grade = node.placed([&] { return sized_grade(label.text(), size_um->number()); });
  } else {
    carried.grade = label.placed([&] { return grade(label.text()); });
  }
  if (const auto scratch_um = node.find("scratch_um")) carried.scratch_um = scratch_um->number();
  if (const auto rq_um = node.find("rq_um")) carried.rq_um = rq_um->number();
  if (const auto worn_um = node.find("worn_um")) carried.worn_um = worn_um->number();
  node.placed([&] { validate(carried, node.pointer()); });
  return carried;
}

/// An edge. Its film is its own where that is told, else a share of that of its zone, which stands above it in the list.
inline void read_edge(const Node& node, const std::vector<Zone>& above, Zone& zone) {
  const Node edge_of = node.at("edge_of");
  if (node.has("levelled")) {
    node.at("levelled").fail("levelled does not go with edge_of: an edge is not levelled");
  }
  const std::string name = edge_of.text();
  const auto flat = std::find_if(above.begin(), above.end(),
                                 [&](const Zone& other) { return other.name == name; });
  if (flat == above.end()) {
    edge_of.fail("edge_of '" + shown(name) + "' is no zone that stands before this one");
  }
  const auto radius_mm = node.find("radius_mm");
  zone.edge = Edge{name, radius_mm ? std::optional(radius_mm->number()) : std::nullopt};
  if (zone.film || !flat->film) return;  // a solid has none on either
  if (node.has("below_um")) {
    node.at("below_um").fail("below_um does not go with edge_of, which tells it by the radius");
  }
  zone.edge->radius_mm = node.at("radius_mm").number();
  node.placed([&] {
    zone.film = edge_film(*flat->film, *zone.edge->radius_mm);
    zone.below_um = edge_share(*zone.edge->radius_mm) * flat->below_um;
  });
}

inline Zone zone_in(const Node& node, const std::vector<Zone>& above, bool sprayed) {
  node.require_keys(zone_keys);
  Zone zone;
  zone.name = node.at("name").text();
  zone.area_cm2 = node.at("area_cm2").number();
  zone.block = block_in(node.at("block"));
  if (const auto film = node.find("film")) {
    const ReadFilm read = film_in(*film);
    zone.film = read.film;
    zone.below_um = read.below_um;
  }
  if (const auto below_um = node.find("below_um")) {
    if (zone.below_um > 0.0) below_um->fail("below_um does not go with coats, which tell it");
    zone.below_um = below_um->number();
  }
  if (const auto levelled = node.find("levelled")) zone.levelled = levelled->boolean();
  if (node.has("edge_of")) {
    read_edge(node, above, zone);
  } else if (const auto radius_mm = node.find("radius_mm")) {
    radius_mm->fail("radius_mm needs edge_of");
  }
  if (const auto start = node.find("start")) zone.carries = zone_start_in(*start);
  const bool peel_counts = sprayed && !zone.carries && is_levelled(zone);
  if (peel_counts || node.has("peel_um")) zone.peel_um = node.at("peel_um").number();
  if ((peel_counts && zone.peel_um > 0.0) || node.has("peel_wavelength_mm")) {
    zone.peel_wavelength_mm = node.at("peel_wavelength_mm").number();
  }
  if (const auto defects = node.find("defects")) {
    for (const Node& defect : defects->items()) zone.defects.push_back(defect_in(defect));
  }
  node.placed([&] { validate(zone, node.pointer()); });
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

/// A band of sheen as a target: at least its lower end, and no more than its upper.
inline Target sheen_in(const Node& node) {
  node.require_keys(sheen_keys);
  const std::string scheme = node.at("scheme").text();
  const std::string name = node.at("name").text();
  const SheenBand band = node.placed([&] { return band_named(scheme, name); });
  if (!band.low_gu) node.fail("sheen '" + name + "' has no limits at 60 degrees to aim at");
  return {.size_um = {},
          .gloss_gu = band.low_gu,
          .label = sheen_label(band),
          .gloss_high_gu = band.high_gu};
}

inline Target target_in(const Node& node) {
  Target target;
  const std::string_view key = only_key(node, target_keys);
  const Node value = node.at(key);
  if (key == "grade") {
    const Grade grade = value.placed([&] { return levigate::grade(value.text()); });
    target.size_um = grade.median_um;
    target.label = grade.label;
  } else if (key == "sheen") {
    target = sheen_in(value);
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

}  // namespace levigate
