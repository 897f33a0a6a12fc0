// Chance of cutting through a film of which mean and spread are not known exactly, at a depth that is.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include "levigate/detail/adaptive.hpp"
#include "levigate/detail/normal.hpp"
#include "levigate/detail/strict_math.hpp"
#include "levigate/detail/table.hpp"
#include "levigate/film/common_errors.hpp"

namespace levigate::inline v0::detail {

/// A node of a law, and its weight.
struct ChanceNode {
  double value = 0;
  double weight = 0;
};

/// Nodes of a trapezoidal rule in y for a law with the density exp(log_density(y)), their weights adding up to 1. Where the law is
/// smooth the error of the rule falls exponentially with the inverse of the step; nodes of no weight are left out.
template <typename Place, typename LogDensity>
std::vector<ChanceNode> law_nodes(double low, double high, double step, Place place,
                                  LogDensity log_density) {
  constexpr double least = -35.0;
  std::vector<ChanceNode> nodes;
  double total = 0;
  for (double y = std::ceil(low / step) * step; y <= high; y += step) {
    const double log_weight = log_density(y);
    if (log_weight < least) continue;
    nodes.push_back({place(y), std::exp(log_weight)});
    total += nodes.back().weight;
  }
  for (ChanceNode& node : nodes) node.weight /= total;
  return nodes;
}

/// Of a normal number, as far as it matters where the chance falls as the number grows.
inline std::vector<ChanceNode> normal_nodes() {
  return law_nodes(
      -8.0, 4.8, 0.8, [](double y) { return y; }, [](double y) { return -0.5 * y * y; });
}

/// The worst of a number of spots, in standard deviations of one.
class WorstSpot {
 public:
  static constexpr double reach = 11.0;  ///< beyond it is not one of 1e9 spots

  explicit WorstSpot(double spots) : spots_(spots), beyond_(table(spots)) {
    const auto quantile = [spots](double below) {
      return normal_quantile(-std::expm1(std::log(below) / spots));
    };
    spread_ = 0.5 * (quantile(normal_tail(-1.0)) - quantile(normal_tail(1.0)));
  }

  /// Chance that it lies beyond.
  double beyond(double deviations) const { return beyond_(deviations); }

  /// Half of what the middle 68 % span.
  double spread() const { return spread_; }

  /// Its law, by the Gumbel law of -ln(-spots ln(1 - Q)), with steps that the tails widen.
  std::vector<ChanceNode> nodes() const {
    constexpr double wider = 0.3;
    const auto stretched = [](double y) { return std::sinh(wider * y) / wider; };
    return law_nodes(
        -6.0, 12.0, 0.5,
        [&](double y) {
          return std::max(-9.0, normal_quantile(-std::expm1(-std::exp(-stretched(y)) / spots_)));
        },
        [&](double y) {
          const double t = stretched(y);
          return 1.0 - t - std::exp(-t) + std::log(std::cosh(wider * y));
        });
  }

 private:
  static constexpr double step = 1.0 / 32, lowest = -8.0;

  static Table table(double spots) {
    static const std::vector<double> one_stays = [] {
      std::vector<double> logs;
      for (double z = lowest; z <= reach; z += step) logs.push_back(std::log1p(-normal_tail(z)));
      return logs;
    }();
    std::vector<double> beyond;
    beyond.reserve(one_stays.size());
    for (const double log_stays : one_stays) beyond.push_back(-std::expm1(spots * log_stays));
    return {lowest, step, beyond};
  }

  double spots_, spread_ = 0;
  Table beyond_;
};

/// Chance of cutting through the film at a depth, over the errors of its mean and spread.
///
/// Given sigma it is one integral over the wider of two laws, the mean's error and the worst spot, the other in closed form. So the
/// integrand is smooth, and few nodes do. Sigma is integrated adaptively.
class FilmChance {
 public:
  FilmChance(double mean_um, double sd_um, double removed_cv, double spots,
             const CommonErrors& errors)
      : mean_(mean_um),
        cv_(removed_cv),
        law_(film_sampling(sd_um, errors.mean_se_um, errors.sd_se_um, errors.readings)),
        worst_(spots),
        worst_nodes_(worst_.nodes()) {
    if (std::isinf(law_.df)) return;
    // What ln(sigma / scale) lies within but for 1e-13.
    const double unit = 1.0 / std::sqrt(2.0 * law_.df);
    low_ = -std::log1p(reach * unit);
    high_ = std::max(reach * unit, 32.0 / law_.df);
    whole_ = over_sigma([](double) { return 1.0; }, low_);
  }

  double operator()(double depth_um) const {
    if (std::isinf(law_.df)) return given_sigma(law_.scale_um, depth_um);
    // Below this sigma the film is thick enough for every spot.
    const double spare =
        mean_ - depth_um - WorstSpot::reach * cv_ * depth_um - reach * law_.other_um;
    const double needed = WorstSpot::reach * law_.scale_um + reach * law_.sampled_um;
    const double least = spare > 0.0 ? std::log(spare / needed) : low_;
    if (least >= high_) return 0.0;
    return over_sigma(
               [&](double log_ratio) {
                 return given_sigma(law_.scale_um * std::exp(log_ratio), depth_um);
               },
               std::max(low_, least)) /
           whole_;
  }

  double mean() const { return mean_; }

 private:
  static constexpr double reach = 9.0;  ///< standard deviations

  template <typename Function>
  double over_sigma(Function f, double low) const {
    return integral<3>(
        [&](double log_ratio) {
          return std::exp(-law_.df * (log_ratio + 0.5 * std::expm1(-2.0 * log_ratio))) *
                 f(log_ratio);
        },
        low, high_, 3e-3);
  }

  double given_sigma(double sigma_um, double depth_um) const {
    static const std::vector<ChanceNode> means = normal_nodes();
    static const WorstSpot one(1.0);
    const double left = mean_ - depth_um;
    const double error = law_.mean_error_um(sigma_um);
    const double spread = std::hypot(sigma_um, cv_ * depth_um);
    if (spread == 0.0 && error == 0.0) return left < 0.0 ? 1.0 : 0.0;
    double chance = 0;
    if (error > spread * worst_.spread()) {
      const double u = left / error, a = spread / error;
      for (const ChanceNode& spot : worst_nodes_)
        chance += spot.weight * one.beyond(u - a * spot.value);
    } else {
      const double u = left / spread, a = error / spread;
      for (const ChanceNode& mean : means)
        chance += mean.weight * worst_.beyond(u + a * mean.value);
    }
    return chance;
  }

  double mean_, cv_;
  FilmSampling law_;
  WorstSpot worst_;
  std::vector<ChanceNode> worst_nodes_;
  double low_ = 0, high_ = 0, whole_ = 1;  ///< of ln(sigma / scale), and the weight of it all
};

}  // namespace levigate::inline v0::detail
