// The work behind journal/shop_factors.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/journal/shop_factors.hpp"

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
