// The work behind journal/shop_factors.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/journal/shop_factors.hpp"

#include "levigate/detail/normal.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/journal/learned_factor.hpp"
#include "levigate/journal/prior.hpp"
#include "levigate/journal/work/belief.hpp"
#include "levigate/journal/work/factor.hpp"
#include "levigate/journal/work/shop_belief.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {

/// What the person's pace with a row of the shop's rates is between, or the row alone where a machine sets the pace; none where no step
/// is behind it.
inline std::optional<LearnedBand> pace_band(const Shop& shop, const LearnedPair* rate,
                                            bool machine) {
  if (!rate || rate->learned.observations == 0) return std::nullopt;
  const Belief belief = pace_belief(shop);
  std::vector<double> weights(belief.mean.size(), 0.0);
  weights[1 + static_cast<std::size_t>(rate - shop.rates.data())] = 1;
  if (!machine) weights[0] = 1;
  const LearnedFactor pace = learned_factor(sum_of(belief, weights), belief.df, 1);
  return LearnedBand{pace.low, pace.high};
}

inline std::optional<LearnedBand> scratch_band(const LearnedPair* scratch) {
  if (!scratch || scratch->learned.observations == 0) return std::nullopt;
  return LearnedBand{scratch->learned.low, scratch->learned.high};
}

}  // namespace detail

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
    const std::string name = learned_name(sheet);
    const LearnedPair* rate = rate_of(shop, coating, name);
    const LearnedPair* scratch = detail::find_pair(shop.scratches, coating, name);
    const bool machine = machine_of(sheet);
    SheetFactors& told = factors.sheets.emplace_back(
        SheetFactors{rate ? rate->learned.factor : 1.0, scratch ? scratch->learned.factor : 1.0,
                     detail::pace_band(shop, rate, machine), detail::scratch_band(scratch)});
    if (!machine) continue;
    if (const LearnedPair* hand = rate_of(shop, coating, sheet.backing.name))
      told.hand_rate = hand->learned.factor;
    if (const LearnedPair* hand = detail::find_pair(shop.scratches, coating, sheet.backing.name))
      told.hand_scratch = hand->learned.factor;
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
