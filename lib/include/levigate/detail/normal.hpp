// The standard normal distribution, good far out in its tails: density, upper tail and quantile.
#pragma once

#include <cmath>
#include <limits>
#include <numbers>

#include "levigate/detail/strict_math.hpp"
#include "levigate/version.hpp"

namespace levigate::inline v0::detail {

inline constexpr double inv_sqrt_2pi = std::numbers::inv_sqrtpi / std::numbers::sqrt2;

/// Density phi(x) = exp(-x^2 / 2) / sqrt(2 pi).
inline double normal_density(double x) { return inv_sqrt_2pi * std::exp(-0.5 * x * x); }

/// Upper tail Q(x) = P(X > x) of a standard normal X; the lower tail is Q(-x).
/// Accuracy: relative error below 4 + x^2 ulp down to 1e-300 (x = 37)
inline double normal_tail(double x) { return 0.5 * std::erfc(x / std::numbers::sqrt2); }

/// The x that a standard normal exceeds with chance `tail`: the inverse of normal_tail.
/// Infinite at 0 and 1, NaN outside.
///
/// A rational start for the nearer tail (Abramowitz & Stegun, Handbook of Mathematical Functions,
/// 26.2.23, error below 4.5e-4), then two Halley steps, each of which cubes the error.
/// Accuracy: 4 ulp of max(1, |x|) for tails from 1e-300 to 1 - 1e-16
inline double normal_quantile(double tail) {
  if (!(tail >= 0.0 && tail <= 1.0)) return std::numeric_limits<double>::quiet_NaN();
  if (tail == 0.0) return std::numeric_limits<double>::infinity();
  if (tail > 0.5) return -normal_quantile(1.0 - tail);  // 1 - tail is exact here
  const double t = std::sqrt(-2.0 * std::log(tail));
  double x = t - (2.515517 + t * (0.802853 + t * 0.010328)) /
                     (1.0 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
  for (int step = 0; step < 2; ++step) {
    const double error = (normal_tail(x) - tail) / normal_density(x);
    x += error / (1.0 - 0.5 * x * error);
  }
  return x;
}

}  // namespace levigate::inline v0::detail
