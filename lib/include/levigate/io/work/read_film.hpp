// Reading the film of a zone and what stands proud of it: readings, coats, gauges, defects.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/film/film.hpp"
#include "levigate/film/gauge.hpp"
#include "levigate/film/rounds.hpp"
#include "levigate/io/work/document.hpp"
#include "levigate/io/work/keys.hpp"
#include "levigate/io/work/read_parts.hpp"
#include "levigate/surface/defect.hpp"
#include "levigate/text/sentences.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The film of the last round, and what lies below it [um].
struct ReadFilm {
  Film film;
  double below_um = 0;
};

inline Gauge gauge_in(const Node& node) {
  if (node.is_text()) return node.placed([&] { return gauge_named(node.text()); });
  node.require_keys(gauge_keys, profile_or_object);
  const Gauge gauge{node.at("fixed_um").number(), node.at("share").number()};
  node.placed([&] { uncertainty_um(gauge, 0.0); });
  return gauge;
}

inline Film readings_in(const Node& node) {
  std::vector<double> readings_um;
  for (const Node& reading : node.at("readings_um").items()) {
    readings_um.push_back(reading.number());
  }
  const auto gauge = node.find("gauge");
  const Gauge accuracy = gauge ? gauge_in(*gauge) : Gauge{};
  return node.placed([&] { return film_from_gauge(readings_um, accuracy); });
}

inline Coat coat_in(const Node& node) {
  node.require_keys(coat_keys);
  Coat coat;
  if (const auto dry_um = node.find("dry_um")) {
    coat.dry_um = dry_um->number();
    for (const std::string_view key : {"wet_um", "volume_solids", "thinner"}) {
      if (node.has(key)) node.at(key).fail(std::string(key) + " does not go with dry_um");
    }
  } else {
    coat.wet_um = node.at("wet_um").number();
    coat.volume_solids = node.at("volume_solids").number();
    if (const auto thinner = node.find("thinner")) coat.thinner = thinner->number();
  }
  if (const auto shrink = node.find("shrink")) coat.shrink = shrink->number();
  if (const auto applied_h = node.find("applied_h")) coat.applied_h = applied_h->number();
  return coat;
}

/// The last round of coats that are told one by one. Readings see every round: they must agree with the sum, and where they do
/// they stand above it. Coats are known as well as a film that is worked out from a wet comb.
inline ReadFilm film_of_coats(const Node& node) {
  std::vector<Coat> coats;
  for (const Node& coat : node.at("coats").items()) coats.push_back(coat_in(coat));
  const double window_h = node.at("recoat_window_h").number();
  const std::vector<Round> all = node.placed([&] { return rounds(coats, window_h); });
  double below_um = 0;
  for (std::size_t i = 0; i + 1 < all.size(); ++i) below_um += all[i].dry_um;
  const Gauge comb = gauge_named("wet comb");
  if (!node.has("readings_um")) {
    const double sd_um = node.at("sd_um").number();
    return node.placed([&] {
      return ReadFilm{film_of_last_round(all, sd_um, uncertainty_um(comb, all.back().dry_um)),
                      below_um};
    });
  }
  Film film = readings_in(node);
  const double total_um = below_um + all.back().dry_um;
  const Agreement agreement = node.placed([&] {
    return agrees({total_um, 0, uncertainty_um(comb, total_um)}, film);
  });
  if (agreement.contradicts) node.at("readings_um").fail("readings_um: " + sentence(agreement));
  if (below_um > 0.0) {
    film.mean_um = std::max(0.0, film.mean_um - below_um);
    film.mean_se_um = std::hypot(film.mean_se_um, uncertainty_um(comb, below_um));
  }
  return {film, below_um};
}

/// The forms of a film. Keys of one form do not go with those of another.
inline ReadFilm film_in(const Node& node) {
  node.require_keys(film_keys);
  const auto only = [&](std::vector<std::string_view> keys) {
    for (const std::string_view key : film_keys) {
      if (!node.has(key) || std::find(keys.begin(), keys.end(), key) != keys.end()) continue;
      node.at(key).fail(
          std::string(key) + " does not go with " + std::string(keys.front()) +
          ": film is given in one of its forms, mean_um with sd_um, or readings_um, or "
          "coats with dry_um_per_coat and sd_um, or an array of coats with recoat_window_h");
    }
  };
  if (node.has("coats") && node.at("coats").is_array()) {
    if (node.has("readings_um")) {
      only({"coats", "recoat_window_h", "readings_um", "gauge"});
    } else {
      only({"coats", "recoat_window_h", "sd_um"});
    }
    return film_of_coats(node);
  }
  if (node.has("readings_um")) {
    only({"readings_um", "gauge"});
    return {readings_in(node)};
  }
  if (node.has("coats")) {
    only({"coats", "dry_um_per_coat", "sd_um"});
    const int coats = node.at("coats").whole(1, 1000, "coats");
    const double dry_um_per_coat = node.at("dry_um_per_coat").number();
    const double sd_um = node.at("sd_um").number();
    return {node.placed([&] { return film_from_coats(coats, dry_um_per_coat, sd_um); })};
  }
  if (!node.has("mean_um")) node.fail("film is missing one of mean_um, readings_um and coats");
  only({"mean_um", "sd_um", "mean_se_um", "sd_se_um", "readings"});
  const auto size_um = [&](std::string_view key, double low_um = 0.0) {
    const double value = node.at(key).number();
    node.placed([&] { require_range(value, low_um, 2e4, key, "um", node.pointer()); });
    return value;
  };
  Film film{.mean_um = size_um("mean_um"), .sd_um = size_um("sd_um")};
  if (node.has("mean_se_um")) film.mean_se_um = size_um("mean_se_um");
  if (node.has("sd_se_um")) film.sd_se_um = size_um("sd_se_um");
  if (const auto readings = node.find("readings")) {
    film.readings = static_cast<std::size_t>(readings->whole(0, 1'000'000, "readings"));
  }
  return {film};
}

/// Height from two readings. Their difference is uncertain by what the gauge adds to each reading by its share; an offset that
/// both have cancels.
inline double height_in(const Node& node) {
  node.require_keys(defect_reading_keys);
  const double over_um = node.at("over_um").number();
  const double beside_um = node.at("beside_um").number();
  const auto gauge = node.find("gauge");
  const double share = gauge ? gauge_in(*gauge).share : 0.0;
  return node.placed([&] {
    require_range(over_um, 0.0, 2e4, "over_um", "um", node.pointer());
    require_range(beside_um, 0.0, 2e4, "beside_um", "um", node.pointer());
    const double uncertainty = uncertainty_um({0.0, share}, std::abs(over_um - beside_um));
    return height_from_readings_um(over_um, beside_um, uncertainty);
  });
}

inline Defect defect_in(const Node& node) {
  node.require_keys(defect_keys);
  Defect defect;
  defect.kind = kind_in(node.at("kind"), all_defect_kinds, "kind");
  if (node.has("height_um") == node.has("readings")) {
    node.fail("one is wanted of height_um and readings");
  }
  defect.height_um =
      node.has("readings") ? height_in(node.at("readings")) : node.at("height_um").number();
  defect.width_mm = node.at("width_mm").number();
  const auto length_mm = node.find("length_mm");
  defect.length_mm = length_mm ? length_mm->number() : defect.width_mm;
  if (const auto count = node.find("count")) defect.count = count->whole(1, 10'000, "count");
  node.placed([&] { validate(defect, node.pointer()); });
  return defect;
}

}  // namespace detail

}  // namespace levigate
