// Reading what jobs and stacks are made of: cure, coating, block, backing, wheel, compound, sheet.
#pragma once

#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/detail/profile.hpp"
#include "levigate/error.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/io/work/document.hpp"
#include "levigate/io/work/keys.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/surface/coating.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/cure.hpp"
#include "levigate/surface/wheel_limits.hpp"
#include "levigate/wheel/compound.hpp"
#include "levigate/wheel/compound_table.hpp"
#include "levigate/wheel/wheel.hpp"

namespace levigate::inline v0 {

namespace detail {

inline constexpr std::string_view profile_or_object = "the name of a profile, or an object";

/// A modulus [MPa]: a number, or "rigid".
inline double modulus_in(const Node& node) {
  if (!node.is_text()) return node.number();
  if (node.text() != rigid_text) node.fail("modulus_mpa is wanted as a number or \"rigid\"");
  return std::numeric_limits<double>::infinity();
}

inline std::string name_or(const Node& node, std::string_view otherwise) {
  const auto name = node.find("name");
  return name ? name->text() : std::string(otherwise);
}

inline Cure cure_in(const Node& node) {
  node.require_keys(cure_keys);
  Cure cure{.hard_cure_h = node.at("hard_cure_h").number(), .shrink = 0, .points = {}};
  if (const auto shrink = node.find("shrink")) cure.shrink = shrink->number();
  if (const auto points = node.find("points")) {
    for (const Node& point : points->items()) {
      const std::vector<Node> pair = point.items();
      if (pair.size() != 2) point.fail("a point is a pair, hours and MPa");
      cure.points.push_back({pair[0].number(), pair[1].number()});
    }
  }
  node.placed([&] { validate(cure, node.pointer()); });
  return cure;
}

inline WheelLimits limits_in(const Node& node) {
  node.require_keys(limits_keys);
  const WheelLimits limits{.speed_low_m_s = node.at("speed_low_m_s").number(),
                           .speed_high_m_s = node.at("speed_high_m_s").number(),
                           .effusivity = node.at("effusivity").number(),
                           .rise_k = node.at("rise_k").number()};
  node.placed([&] { validate(limits, node.pointer()); });
  return limits;
}

/// What an object says of a part that may be not known, as null says; where it says nothing, what is there stays.
template <typename Part, typename Read>
void read_known(const Node& object, std::string_view key, std::optional<Part>& part, Read read) {
  const auto node = object.find(key);
  if (!node) return;
  part.reset();
  if (!node->is_null()) part = read(*node);
}

/// A coating with its own numbers. What it leaves out of cure, limits and redissolves is that of the profile of its name.
inline Coating own_coating_in(const Node& node) {
  node.require_keys(coating_keys, profile_or_object);
  const std::string name = name_or(node, nameless_coating);
  Coating coating;
  if (has_profile(coating_table, name)) coating = coating_named(name);
  coating.name = name;
  coating.kind =
      node.at("kind").one_of(coating_kinds, "kind") == 0 ? CoatingKind::coat : CoatingKind::solid;
  coating.hardness_mpa = node.at("hardness_mpa").number();
  coating.wear_coefficient = node.at("wear_coefficient").number();
  coating.refractive_index = node.at("refractive_index").number();
  coating.two_part.reset();
  if (const auto two_part = node.find("two_part")) coating.two_part = two_part->boolean();
  read_known(node, "redissolves", coating.redissolves, [](const Node& n) { return n.boolean(); });
  read_known(node, "cure", coating.cure, cure_in);
  read_known(node, "limits", coating.limits, limits_in);
  node.placed([&] { validate(coating, node.pointer()); });
  return coating;
}

inline Coating coating_in(const Node& node) {
  if (node.is_text()) return node.placed([&] { return coating_named(node.text()); });
  return own_coating_in(node);
}

inline Block block_in(const Node& node) {
  if (node.is_text()) return node.placed([&] { return block_named(node.text()); });
  node.require_keys(block_keys, profile_or_object);
  const Block block{.name = name_or(node, "own block"),
                    .modulus_mpa = modulus_in(node.at("modulus_mpa")),
                    .area_cm2 = node.at("area_cm2").number(),
                    .force_n = node.at("force_n").number(),
                    .speed_m_s = node.at("speed_m_s").number(),
                    .duty = node.at("duty").number(),
                    .wrap = node.at("wrap").number()};
  node.placed([&] { validate(block, node.pointer()); });
  return block;
}

inline Backing backing_in(const Node& node) {
  if (node.is_text()) return node.placed([&] { return backing_named(node.text()); });
  node.require_keys(backing_keys, profile_or_object);
  const Backing backing{.name = name_or(node, nameless_backing),
                        .tip_spread = node.at("tip_spread").number(),
                        .modulus_mpa = modulus_in(node.at("modulus_mpa")),
                        .life_m = node.at("life_m").number(),
                        .clean_every_m = node.at("clean_every_m").number(),
                        .fade_m = node.at("fade_m").number(),
                        .floor = node.at("floor").number()};
  node.placed([&] { validate(backing, node.pointer()); });
  return backing;
}

inline Wheel wheel_in(const Node& node) {
  if (node.is_text()) return node.placed([&] { return wheel_named(node.text()); });
  node.require_keys(wheel_keys, profile_or_object);
  const Wheel wheel{.name = name_or(node, "own wheel"),
                    .diameter_mm = node.at("diameter_mm").number(),
                    .rpm = node.at("rpm").number(),
                    .rated_rpm = node.at("rated_rpm").number(),
                    .width_mm = node.at("width_mm").number(),
                    .contact_mm = node.at("contact_mm").number(),
                    .force_n = node.at("force_n").number(),
                    .feed_m_s = node.at("feed_m_s").number(),
                    .modulus_mpa = node.at("modulus_mpa").number(),
                    .friction = node.at("friction").number(),
                    .heat_share = node.at("heat_share").number(),
                    .duty = node.at("duty").number()};
  node.placed([&] { validate(wheel, node.pointer()); });
  return wheel;
}

/// A compound by its name, or by its numbers.
inline Polish polish_in(const Node& node) {
  if (node.is_text()) return node.placed([&] { return polish_named(node.text()); });
  node.require_keys(compound_keys, profile_or_object);
  Polish polish{.name = name_or(node, "own"),
                .size_um = node.at("size_um").number(),
                .worn_um = node.at("worn_um").number(),
                .wear_share = node.at("wear_share").number(),
                .reach = {}};
  if (node.has("coarsest_scratch_um") == node.has("coarsest_paper_um")) {
    node.fail("one is wanted of coarsest_scratch_um and coarsest_paper_um");
  }
  if (const auto scratch_um = node.find("coarsest_scratch_um")) {
    polish.reach = ScratchReach{scratch_um->number()};
  } else {
    polish.reach = PaperReach{node.at("coarsest_paper_um").number()};
  }
  node.placed([&] { validate(polish, node.pointer()); });
  return polish;
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
  std::optional<Tool> tool;
  if (const auto block = node.find("block")) tool = block_in(*block);
  if (const auto wheel = node.find("wheel")) {
    if (tool) wheel->fail("wheel does not go with block: one of them is wanted");
    tool = wheel_in(*wheel);
  }
  const auto compound = node.find("compound");
  if (compound) {
    if (sheet.size_um) node.at("size_um").fail("size_um does not go with compound, which has one");
    Polish polish = polish_in(*compound);
    sheet.backing = compound->placed([&] { return buff_of(polish); });
    polish.tool = std::move(tool);
    sheet.kind = std::move(polish);
  } else if (tool) {
    sheet.kind = Pad{*std::move(tool)};
  }
  if (!compound || node.has("backing")) sheet.backing = backing_in(node.at("backing"));
  const auto side_mm = [&](std::string_view key) {
    return compound && !node.has(key) ? compound_side_mm : node.at(key).number();
  };
  sheet.width_mm = side_mm("width_mm");
  sheet.height_mm = side_mm("height_mm");
  if (const auto on_hand = node.find("on_hand")) sheet.on_hand = on_hand->number();
  if (const auto price = node.find("price")) sheet.price = price->number();
  node.placed([&] { validate(sheet, node.pointer()); });
  return sheet;
}

}  // namespace detail

}  // namespace levigate
