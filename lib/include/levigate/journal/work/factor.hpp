// A learned factor as the Student t of its logarithm, both ways.
#pragma once

#include <cmath>
#include <cstddef>

#include "levigate/detail/student.hpp"
#include "levigate/journal/learned_factor.hpp"
#include "levigate/journal/prior.hpp"
#include "levigate/journal/work/belief.hpp"

namespace levigate::inline v0 {

namespace detail {

inline constexpr double tail_share = 0.05;  ///< below low, and above high

/// A factor whose logarithm is a Student t of this median and scale.
inline LearnedFactor learned_factor(const Sum& log, double df, std::size_t observations) {
  const double reach = student_quantile(tail_share, df) * log.scale;
  return {std::exp(log.median), std::exp(log.median - reach), std::exp(log.median + reach),
          observations};
}

/// Median and scale of the logarithm of a factor: the factor is the median, low and high tell the spread.
inline Sum log_of(const LearnedFactor& learned, double df) {
  return {std::log(learned.factor),
          0.5 * std::log(learned.high / learned.low) / student_quantile(tail_share, df)};
}

inline LearnedFactor prior_factor(double variance) {
  return learned_factor({0, std::sqrt(variance)}, prior_noise_weight, 0);
}

}  // namespace detail

}  // namespace levigate
