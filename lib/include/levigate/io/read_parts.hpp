// Reading what jobs and stacks are made of: coating, block, backing, film.
#pragma once

#include <limits>
#include <string>
#include <vector>

#include "levigate/film/film.hpp"
#include "levigate/io/document.hpp"
#include "levigate/io/keys.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/surface/coating.hpp"

namespace levigate::inline v0::detail {

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

inline Coating coating_in(const Node& node) {
  if (node.is_text()) return node.placed([&] { return coating_named(node.text()); });
  node.require_keys(coating_keys, profile_or_object);
  Coating coating{.name = name_or(node, "own coating"),
                  .kind = node.at("kind").one_of(coating_kinds, "kind") == 0 ? CoatingKind::coat
                                                                             : CoatingKind::solid,
                  .hardness_mpa = node.at("hardness_mpa").number(),
                  .wear_coefficient = node.at("wear_coefficient").number(),
                  .refractive_index = node.at("refractive_index").number(),
                  .two_part = {}};
  if (const auto two_part = node.find("two_part")) coating.two_part = two_part->boolean();
  node.placed([&] { validate(coating, node.pointer()); });
  return coating;
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
  const Backing backing{.name = name_or(node, "own backing"),
                        .tip_spread = node.at("tip_spread").number(),
                        .modulus_mpa = modulus_in(node.at("modulus_mpa")),
                        .life_m = node.at("life_m").number(),
                        .clean_every_m = node.at("clean_every_m").number(),
                        .fade_m = node.at("fade_m").number(),
                        .floor = node.at("floor").number()};
  node.placed([&] { validate(backing, node.pointer()); });
  return backing;
}

/// The three forms of a film. Keys of one form do not go with those of another.
inline Film film_in(const Node& node) {
  node.require_keys(film_keys);
  const auto only = [&](std::vector<std::string_view> keys) {
    for (const std::string_view key : film_keys) {
      if (!node.has(key) || std::find(keys.begin(), keys.end(), key) != keys.end()) continue;
      node.at(key).fail(
          std::string(key) + " does not go with " + std::string(keys.front()) +
          ": film is given in one of its forms, mean_um with sd_um, or readings_um, or "
          "coats with dry_um_per_coat and sd_um");
    }
  };
  if (node.has("readings_um")) {
    only({"readings_um"});
    std::vector<double> readings_um;
    for (const Node& reading : node.at("readings_um").items()) {
      readings_um.push_back(reading.number());
    }
    return node.placed([&] { return film_from_readings(readings_um); });
  }
  if (node.has("coats")) {
    only({"coats", "dry_um_per_coat", "sd_um"});
    const int coats = node.at("coats").whole(1, 1000, "coats");
    const double dry_um_per_coat = node.at("dry_um_per_coat").number();
    const double sd_um = node.at("sd_um").number();
    return node.placed([&] { return film_from_coats(coats, dry_um_per_coat, sd_um); });
  }
  if (!node.has("mean_um")) node.fail("film is missing one of mean_um, readings_um and coats");
  only({"mean_um", "sd_um", "mean_se_um", "sd_se_um", "readings"});
  const auto size_um = [&](std::string_view key) {
    const double value = node.at(key).number();
    node.placed([&] { require_range(value, 0.0, 2e4, key, "um", node.pointer()); });
    return value;
  };
  Film film{.mean_um = size_um("mean_um"), .sd_um = size_um("sd_um")};
  if (node.has("mean_se_um")) film.mean_se_um = size_um("mean_se_um");
  if (node.has("sd_se_um")) film.sd_se_um = size_um("sd_se_um");
  if (const auto readings = node.find("readings")) {
    film.readings = static_cast<std::size_t>(readings->whole(0, 1'000'000, "readings"));
  }
  return film;
}

}  // namespace levigate::inline v0::detail
