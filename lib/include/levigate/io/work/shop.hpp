// The work behind io/shop.hpp: defines what it declares.
#pragma once

#include <cstddef>
#include <filesystem>
#include <span>
#include <string>
#include <string_view>

#include "levigate/io/shop.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/io/file.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/io/work/document.hpp"
#include "levigate/io/work/keys.hpp"
#include "levigate/io/work/read_job.hpp"
#include "levigate/io/work/write_outcome.hpp"
#include "levigate/io/work/write_parts.hpp"
#include "levigate/io/write_plan.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/journal/learned_factor.hpp"
#include "levigate/journal/shop.hpp"
#include "levigate/journal/work/shop_belief.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::size_t observations_in(const Node& node) {
  const auto observations = node.find("observations");
  return observations
             ? static_cast<std::size_t>(observations->whole(0, 1'000'000'000, "observations"))
             : 0;
}

inline LearnedFactor learned_factor_in(const Node& node, std::string_view factor) {
  const LearnedFactor learned{node.at(factor).number(), node.at("low").number(),
                              node.at("high").number(), observations_in(node)};
  node.placed([&] { validate_factor(learned, factor, node.pointer()); });
  return learned;
}

inline LearnedPair learned_pair_in(const Node& node, std::span<const std::string_view> keys) {
  node.require_keys(keys);
  LearnedPair pair{node.at("coating").text(), "", learned_factor_in(node, "factor"), {}};
  if (const auto backing = node.find("backing")) pair.backing = backing->text();
  if (const auto correlations = node.find("correlations")) {
    for (const Node& one : correlations->items()) pair.correlations.push_back(one.number());
  }
  return pair;
}

inline LearnedFilm learned_film_in(const Node& node) {
  node.require_keys(learned_film_keys);
  return {node.at("coating").text(), node.at("offset_um").number(), node.at("low_um").number(),
          node.at("high_um").number(), observations_in(node)};
}

inline LearnedJob learned_job_in(const Node& node) {
  node.require_keys(learned_job_keys);
  const int lines = node.at("lines").whole(0, 1'000'000'000, "lines");
  return {node.at("job").text(), static_cast<std::size_t>(lines)};
}

inline LearnedNoise learned_noise_in(const Node& node) {
  node.require_keys(learned_noise_keys);
  const LearnedNoise noise{node.at("log_sd").number(), node.at("weight").number()};
  node.placed([&] { validate(noise, node.pointer()); });
  return noise;
}

inline OrderedJson json_of(const LearnedFactor& learned, std::string_view factor) {
  return {{factor, learned.factor},
          {"low", learned.low},
          {"high", learned.high},
          {"observations", learned.observations}};
}

inline OrderedJson json_of(const LearnedPair& pair) {
  OrderedJson json{{"coating", pair.coating}};
  if (!pair.backing.empty()) json["backing"] = pair.backing;
  json.update(json_of(pair.learned, "factor"));
  if (!pair.correlations.empty()) json["correlations"] = pair.correlations;
  return json;
}

inline OrderedJson json_of(const LearnedFilm& film) {
  return {{"coating", film.coating},
          {"offset_um", film.offset_um},
          {"low_um", film.low_um},
          {"high_um", film.high_um},
          {"observations", film.observations}};
}

inline OrderedJson json_of(const LearnedJob& job) {
  return {{"job", job.job}, {"lines", job.lines}};
}

inline OrderedJson json_of(const LearnedNoise& noise) {
  return {{"log_sd", noise.log_sd}, {"weight", noise.weight}};
}

}  // namespace detail

LEVIGATE_WORK Shop shop_from_json(std::string_view text, std::string_view file) {
  const detail::Document document(text, file);
  const detail::Node root(document);
  detail::require_format(root, shop_format);
  root.require_keys(detail::shop_keys);
  Shop shop;
  if (const auto person = root.find("person")) {
    person->require_keys(detail::person_keys);
    shop.person = detail::learned_factor_in(*person, "duty_factor");
  }
  if (const auto rates = root.find("rates")) {
    for (const detail::Node& rate : rates->items()) {
      shop.rates.push_back(detail::learned_pair_in(rate, detail::learned_rate_keys));
    }
  }
  if (const auto scratches = root.find("scratches")) {
    for (const detail::Node& scratch : scratches->items()) {
      shop.scratches.push_back(detail::learned_pair_in(scratch, detail::learned_scratch_keys));
    }
  }
  if (const auto films = root.find("films")) {
    for (const detail::Node& film : films->items()) {
      shop.films.push_back(detail::learned_film_in(film));
      film.placed([&] { validate(shop.films.back(), film.pointer()); });
    }
  }
  if (const auto jobs = root.find("jobs")) {
    for (const detail::Node& job : jobs->items()) shop.jobs.push_back(detail::learned_job_in(job));
  }
  if (const auto noise = root.find("minutes_noise")) {
    shop.minutes_noise = detail::learned_noise_in(*noise);
  }
  if (const auto noise = root.find("scratch_noise")) {
    shop.scratch_noise = detail::learned_noise_in(*noise);
  }
  root.placed([&] { validate(shop); });
  return shop;
}

LEVIGATE_WORK std::string to_json(const Shop& shop) {
  return detail::json_text({{"format", shop_format},
                            {"person", detail::json_of(shop.person, "duty_factor")},
                            {"rates", detail::array_json(shop.rates, &detail::json_of)},
                            {"scratches", detail::array_json(shop.scratches, &detail::json_of)},
                            {"films", detail::array_json(shop.films, &detail::json_of)},
                            {"jobs", detail::array_json(shop.jobs, &detail::json_of)},
                            {"minutes_noise", detail::json_of(shop.minutes_noise)},
                            {"scratch_noise", detail::json_of(shop.scratch_noise)}});
}

LEVIGATE_WORK Shop load_shop(const std::filesystem::path& path) {
  return shop_from_json(read_file(path), path.string());
}

LEVIGATE_WORK void save_shop(const std::filesystem::path& path, const Shop& shop) {
  validate(shop);
  write_file(path, to_json(shop));
}

}  // namespace levigate
