// The work behind risk/share.hpp: defines what it declares.
#pragma once

#include <cmath>
#include <cstdint>

#include "levigate/risk/share.hpp"

#include "levigate/detail/strict_math.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Chance of at least `hits` hits in `cases` where each has the chance p, for hits from cases p on: the first term times a sum
/// of falling ratios, in which nothing cancels.
inline double binomial_tail(double hits, double cases, double p) {
  constexpr double negligible = 1e-18;
  const double odds = p / (1.0 - p);
  double term = 1, sum = 0;
  for (double k = hits; k <= cases && term > negligible * sum; ++k) {
    sum += term;
    term *= (cases - k) / (k + 1) * odds;
  }
  const double log_ways =
      std::lgamma(cases + 1) - std::lgamma(hits + 1) - std::lgamma(cases - hits + 1);
  return sum * std::exp(log_ways + hits * std::log(p) + (cases - hits) * std::log1p(-p));
}

/// The chance under which at least `hits` hits have the chance `tail`, which is below 1/2; hits from 1 on. By halving: where
/// hits are fewer than cases p the tail is 1/2 or more, as the median of a binomial is cases p rounded up or down.
inline double chance_of_tail(double hits, double cases, double tail) {
  double low = 0, high = 1;
  for (int step = 0; step < 60; ++step) {
    const double p = 0.5 * (low + high);
    const bool above = hits < cases * p || binomial_tail(hits, cases, p) > tail;
    (above ? high : low) = p;
  }
  return 0.5 * (low + high);
}

}  // namespace detail

LEVIGATE_WORK Share exact_share(std::int64_t hits, std::int64_t cases, double confidence) {
  constexpr auto where = "exact_share";
  detail::require_range(static_cast<double>(cases), 1, 1e7, "cases", "", where);
  detail::require_range(static_cast<double>(hits), 0, static_cast<double>(cases), "hits", "",
                        where);
  detail::require_range(confidence, 0.5, 0.9999, "confidence", "", where);
  const double half = 0.5 * (1.0 - confidence);
  const auto n = static_cast<double>(cases), k = static_cast<double>(hits);
  Share result{k / n, 0, 1};
  if (hits > 0) result.low = detail::chance_of_tail(k, n, half);
  if (hits < cases) result.high = 1.0 - detail::chance_of_tail(n - k, n, half);  // of misses
  return result;
}

}  // namespace levigate
