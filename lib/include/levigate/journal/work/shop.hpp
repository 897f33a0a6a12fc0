// The work behind journal/shop.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/journal/shop.hpp"

#include "levigate/detail/normal.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/journal/prior.hpp"
#include "levigate/journal/work/factor.hpp"
#include "levigate/journal/work/shop_belief.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK void validate(const LearnedFilm& film, std::string_view where) {
  if (film.coating.empty()) throw BadInput("coating is empty, in " + std::string(where));
  detail::require_range(film.offset_um, -1e3, 1e3, "offset_um", "um", where);
  detail::require_range(film.low_um, -1e4, 1e4, "low_um", "um", where);
  detail::require_range(film.high_um, -1e4, 1e4, "high_um", "um", where);
  if (film.low_um <= film.offset_um && film.offset_um <= film.high_um) return;
  throw BadInput("offset_um = " + detail::number_text(film.offset_um) +
                 " um is not between low_um = " + detail::number_text(film.low_um) +
                 " um and high_um = " + detail::number_text(film.high_um) + " um, in " +
                 std::string(where));
}

LEVIGATE_WORK void validate(const LearnedNoise& noise, std::string_view where) {
  detail::require_range(noise.log_sd, 1e-3, 10.0, "log_sd", "", where);
  detail::require_range(noise.weight, 2.0, 1e9, "weight", "", where);
}

LEVIGATE_WORK void validate(const Shop& shop) {
  detail::validate_factor(shop.person, "duty_factor", "/person");
  const auto pairs = [](const std::vector<LearnedPair>& all, const std::string& list) {
    for (std::size_t i = 0; i < all.size(); ++i) {
      const std::string place = list + "/" + std::to_string(i);
      detail::validate_factor(all[i].learned, "factor", place);
      if (all[i].coating.empty()) throw BadInput("coating is empty, in " + place, place);
      if (detail::find_pair(all, all[i].coating, all[i].backing) != &all[i]) {
        throw BadInput("coating and backing stand twice, in " + place, place);
      }
    }
  };
  pairs(shop.rates, "/rates");
  pairs(shop.scratches, "/scratches");
  detail::validate_correlations(shop);
  for (std::size_t i = 0; i < shop.scratches.size(); ++i) {
    const std::string place = "/scratches/" + std::to_string(i);
    if (shop.scratches[i].backing.empty()) throw BadInput("backing is empty, in " + place, place);
  }
  for (std::size_t i = 0; i < shop.films.size(); ++i) {
    const std::string place = "/films/" + std::to_string(i);
    validate(shop.films[i], place);
    for (std::size_t j = 0; j < i; ++j) {
      if (shop.films[j].coating == shop.films[i].coating)
        throw BadInput("coating stands twice, in " + place, place);
    }
  }
  for (std::size_t i = 0; i < shop.jobs.size(); ++i) {
    const std::string place = "/jobs/" + std::to_string(i);
    if (shop.jobs[i].job.empty()) throw BadInput("job is empty, in " + place, place);
    for (std::size_t j = 0; j < i; ++j) {
      if (shop.jobs[j].job == shop.jobs[i].job)
        throw BadInput("job stands twice, in " + place, place);
    }
  }
  validate(shop.minutes_noise, "/minutes_noise");
  validate(shop.scratch_noise, "/scratch_noise");
}

LEVIGATE_WORK const LearnedPair* rate_of(const Shop& shop, std::string_view coating,
                                         std::string_view backing) {
  const LearnedPair* pair = detail::find_pair(shop.rates, coating, backing);
  return pair ? pair : detail::find_pair(shop.rates, coating, "");
}

LEVIGATE_WORK Factors factors_of(const Shop& shop, const Job& job, const Stack& stack) {
  validate(shop);
  const std::string& coating = job.coating.name;
  Factors factors{.duty = shop.person.factor};
  for (const Sheet& sheet : stack.sheets) {
    const LearnedPair* rate = rate_of(shop, coating, sheet.backing.name);
    const LearnedPair* scratch = detail::find_pair(shop.scratches, coating, sheet.backing.name);
    factors.sheets.push_back(
        {rate ? rate->learned.factor : 1.0, scratch ? scratch->learned.factor : 1.0});
  }
  const auto film = std::find_if(shop.films.begin(), shop.films.end(),
                                 [&](const LearnedFilm& row) { return row.coating == coating; });
  if (film == shop.films.end()) return factors;
  factors.film_offset_um = film->offset_um;
  factors.film_se_um =
      std::hypot(0.5 * (film->high_um - film->low_um) / detail::normal_quantile(detail::tail_share),
                 film_noise_um);
  return factors;
}

}  // namespace levigate
