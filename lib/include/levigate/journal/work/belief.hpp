// What is believed of some unknown numbers and of the noise they are seen through, and how an observation changes it.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

#include "levigate/detail/strict_math.hpp"

namespace levigate::inline v0 {

/// One observation of a sum of unknown numbers: y = sum of weights_i times number_i, plus noise.
struct Observation {
  std::vector<double> weights;
  double y = 0;
};

/// Gaussian unknowns seen through Gaussian noise of a size that is unknown too:
///
///   noise variance v: df noise^2 / v is chi-square with df degrees of freedom;
///   unknowns given v: Gaussian about mean, with the covariance v spread
///
/// so that every unknown, and every sum of them, is a Student t with df degrees of freedom. An observation leaves the form as it
/// is (conjugacy), and the order of observations does not matter.
/// Source: normal-inverse-gamma prior of linear regression, from memory (Gelman et al., Bayesian Data Analysis)
struct Belief {
  std::vector<double> mean;
  std::vector<std::vector<double>> spread;  ///< covariance over the noise variance; symmetric
  double noise = 1;                         ///< standard deviation
  double df = 1;                            ///< what is known of the noise, in observations
};

namespace detail {

/// spread times weights
inline std::vector<double> spread_times(const Belief& belief, const std::vector<double>& weights) {
  std::vector<double> result;
  for (const std::vector<double>& row : belief.spread) {
    double sum = 0;
    for (std::size_t i = 0; i < row.size(); ++i) sum += row[i] * weights[i];
    result.push_back(sum);
  }
  return result;
}

inline double dot(const std::vector<double>& a, const std::vector<double>& b) {
  double sum = 0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

/// Lower triangle whose square the symmetric matrix is; nothing where it has a negative direction, so that it is no covariance. What
/// is zero but for rounding counts as zero.
inline std::optional<std::vector<std::vector<double>>> root_of(
    const std::vector<std::vector<double>>& matrix) {
  constexpr double rounding = 1e-10;
  std::vector<std::vector<double>> root(matrix.size());
  for (std::size_t i = 0; i < matrix.size(); ++i) {
    root[i].assign(matrix.size(), 0.0);
    for (std::size_t j = 0; j <= i; ++j) {
      const double left = matrix[i][j] - dot(root[i], root[j]);  // what of j on is still zero
      const double zero = rounding * std::sqrt(matrix[i][i] * matrix[j][j]);
      if (i != j && root[j][j] > 0.0) {
        root[i][j] = left / root[j][j];
      } else if (i == j && left > zero) {
        root[i][i] = std::sqrt(left);
      } else if (std::abs(left) >
                 (i == j ? zero : std::sqrt(rounding) * std::sqrt(matrix[i][i] * matrix[j][j]))) {
        return std::nullopt;
      }
    }
  }
  return root;
}

}  // namespace detail

/// What is believed of a sum of the unknowns: a Student t with df of the belief.
struct Sum {
  double median = 0;
  double scale = 0;
};

/// What is believed of a sum of the unknowns.
///
///   median = w' mean,   scale = noise sqrt(w' spread w)
///
/// @param belief   as it stands
/// @param weights  w, one for each unknown, any
/// @return         the sum, a Student t with df of the belief
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  1e-9 relative, as part of learn()
/// Source:    that of Belief
inline Sum sum_of(const Belief& belief, const std::vector<double>& weights) {
  const double spread = detail::dot(weights, detail::spread_times(belief, weights));
  return {detail::dot(weights, belief.mean), belief.noise * std::sqrt(std::max(0.0, spread))};
}

/// The belief after one more observation.
///
///   g = spread x / (x' spread x + 1),   e = y - x' mean
///   mean' = mean + g e,   spread' = spread - g (spread x)'
///   df' = df + 1,   df' noise'^2 = df noise^2 + e^2 / (x' spread x + 1)
///
/// @param belief  before it
/// @param seen    x and y, with a weight for each unknown
/// @return        the belief after it
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  1e-9 relative, as part of learn()
/// Source:    that of Belief
inline Belief updated(Belief belief, const Observation& seen) {
  const std::vector<double> pull = detail::spread_times(belief, seen.weights);
  const double size = detail::dot(seen.weights, pull) + 1;
  const double error = seen.y - detail::dot(seen.weights, belief.mean);
  for (std::size_t i = 0; i < pull.size(); ++i) {
    belief.mean[i] += pull[i] * error / size;
    for (std::size_t j = 0; j < pull.size(); ++j) belief.spread[i][j] -= pull[i] * pull[j] / size;
  }
  const double squares = belief.df * belief.noise * belief.noise + error * error / size;
  belief.df += 1;
  belief.noise = std::sqrt(squares / belief.df);
  return belief;
}

/// How far an observation that the belief holds already lies from what all the others let expect, in units of the spread they
/// give it: a Student t with df - 1 degrees of freedom, if it is one of them.
///
///   h = x' spread x,   e = y - x' mean
///   t = e / sqrt((1 - h) (df noise^2 - e^2/(1 - h)) / (df - 1))
///
/// @param belief  that holds it; df above 1
/// @param seen    one of its observations
/// @return        t, of the sign of the error (dimensionless)
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  1e-12 where t is of order one, beside the same found by leaving the observation out
/// Source:    that of Belief; studentized residuals of regression, from memory
inline double surprise(const Belief& belief, const Observation& seen) {
  const double kept = 1 - detail::dot(seen.weights, detail::spread_times(belief, seen.weights));
  const double error = seen.y - detail::dot(seen.weights, belief.mean);
  const double others = belief.df * belief.noise * belief.noise - error * error / kept;
  return error / std::sqrt(kept * others / (belief.df - 1));
}

/// A belief that observations led to, and those that were set aside.
struct Settled {
  Belief belief;
  std::vector<std::optional<double>>
      set_aside;  ///< of each observation: its surprise, where set aside
};

/// The belief after all observations but those that do not belong: while the one that surprises most, given the belief before
/// and all others, is beyond the line, it is set aside. It does not depend on the order of the observations.
///
/// @param before  any of them
/// @param seen    with a weight for each unknown
/// @param line    surprise from which on one is set aside (dimensionless), above 0
/// @return        the belief, and the surprise of each that is set aside
/// Throws:    nothing
/// NaN:       kept out by learn()
/// Accuracy:  that of updated(); order within rounding
/// Source:    that of Belief; outlier_source
inline Settled settled(const Belief& before, const std::vector<Observation>& seen, double line) {
  Settled result{before, std::vector<std::optional<double>>(seen.size())};
  while (true) {
    result.belief = before;
    for (std::size_t i = 0; i < seen.size(); ++i) {
      if (!result.set_aside[i]) result.belief = updated(std::move(result.belief), seen[i]);
    }
    std::optional<std::size_t> worst;
    double most = line;
    for (std::size_t i = 0; i < seen.size(); ++i) {
      if (result.set_aside[i]) continue;
      const double t = std::abs(surprise(result.belief, seen[i]));
      if (t <= most) continue;
      most = t;
      worst = i;
    }
    if (!worst) return result;
    result.set_aside[*worst] = surprise(result.belief, seen[*worst]);
  }
}

}  // namespace levigate
