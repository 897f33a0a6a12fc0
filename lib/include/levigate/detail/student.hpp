// Student's t distribution: upper tail and quantile, for any number of degrees of freedom.
#pragma once

#include <cmath>
#include <initializer_list>

#include "levigate/detail/normal.hpp"
#include "levigate/detail/strict_math.hpp"
#include "levigate/version.hpp"

namespace levigate::inline v0::detail {

/// Continued fraction of the incomplete beta function, by Lentz's method; for x below (a + 1)/(a + b + 2).
/// Source: Abramowitz & Stegun, Handbook of Mathematical Functions, 26.5.8
inline double beta_fraction(double a, double b, double x) {
  constexpr double tiny = 1e-300;
  constexpr int most = 1000;
  const auto held = [](double value) { return std::abs(value) < tiny ? tiny : value; };
  double c = 1, d = 1 / held(1 - (a + b) * x / (a + 1)), result = d;
  for (int m = 1; m < most; ++m) {
    const double even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
    const double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
    double last = 1;
    for (const double term : {even, odd}) {
      d = 1 / held(1 + term * d);
      c = held(1 + term / c);
      last = c * d;
      result *= last;
    }
    if (std::abs(last - 1) < 1e-15) break;
  }
  return result;
}

/// Upper tail P(T > t) of a Student t with `df` degrees of freedom, above 0, for t from 0 on: half of the incomplete beta
/// function I_x(df/2, 1/2) at x = df/(df + t^2).
/// Accuracy: 1e-10 relative for df from 1 to 1e4
inline double student_tail(double t, double df) {
  const double a = 0.5 * df, b = 0.5;
  const double x = df / (df + t * t), y = t * t / (df + t * t);
  if (y == 0.0) return 0.5;
  const double front = std::exp(std::lgamma(a + b) - std::lgamma(a) - std::lgamma(b) +
                                a * std::log(x) + b * std::log(y));
  if (x < (a + 1) / (a + b + 2)) return 0.5 * front * beta_fraction(a, b, x) / a;
  return 0.5 - 0.5 * front * beta_fraction(b, a, y) / b;
}

/// The t above 0 that is exceeded with chance `tail`, above 0 and below 1/2: by halving, down to what a double can tell. With more
/// than 1e7 degrees of freedom it is the quantile of the normal, which lies (x^2 + 1)/(4 df) of itself lower.
/// Source: Abramowitz & Stegun, Handbook of Mathematical Functions, 26.7.5
inline double student_quantile(double tail, double df) {
  if (df > 1e7) return normal_quantile(tail);
  double low = 0, high = 1;
  while (student_tail(high, df) > tail) high *= 2;
  for (int step = 0; step < 60; ++step) {
    const double t = 0.5 * (low + high);
    (student_tail(t, df) > tail ? low : high) = t;
  }
  return 0.5 * (low + high);
}

}  // namespace levigate::inline v0::detail
