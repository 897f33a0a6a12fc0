// Errors that all spots of a zone share: of the film's mean, of its spread, and of the orange peel. They move the whole zone, where
// the film's spread and the hand's unevenness differ from spot to spot.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <string_view>
#include <vector>

#include "levigate/detail/normal.hpp"
#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"
#include "levigate/stack/rule_table.hpp"
#include "levigate/surface/levelling.hpp"

namespace levigate::inline v0 {

/// Errors that all spots of a zone share. As made there are none.
///
///   sigma = sd sqrt(df / chi2_df),   df = max(1, sd^2 / (2 sd_se^2))
///   mean' = mean + N(0, 1) sqrt(mean_se^2 + s^2 ((sigma / sd)^2 - 1)),   s^2 = min(mean_se^2, sd^2 / readings)
///   depth' = depth + R(peel peel_factor^N(0, 1)) - R(peel)
///
/// with R levelling_removal_um(). Of n readings df is n - 1 and the mean has Student's t distribution. Where df is held at 1, sd is
/// taken for sqrt(2) sd_se.
struct CommonErrors {
  double mean_se_um = 0;  ///< standard error of the film's mean [um], 0 to 20 000
  double sd_se_um = 0;    ///< standard error of its spread [um], 0 to 20 000
  double readings =
      0;  ///< that mean and spread rest on (dimensionless), 0 to 1e6; 0: mean and spread err independently
  double peel_um =
      0;  ///< height of the waves that the depth levels, peak to valley [um], 0 to 10 000
  double peel_factor =
      1;  ///< by which peel_um may be off, one standard deviation (dimensionless), 1 to 10
  double critical_um = 0;  ///< critical_amplitude_um() of what levels them [um], 0 (rigid) to 1e9
  double residual_um =
      rule_table[0].residual_peel_um.value;  ///< height that may stay [um], 0.001 to 10 000

  friend bool operator==(const CommonErrors&, const CommonErrors&) = default;
};

namespace detail {

/// Whether there is no error that all spots share.
inline bool none_common(const CommonErrors& errors) {
  return errors.mean_se_um == 0.0 && errors.sd_se_um == 0.0 &&
         (errors.peel_um == 0.0 || errors.peel_factor == 1.0);
}

inline bool any_nan(const CommonErrors& errors) {
  return any_nan(errors.mean_se_um, errors.sd_se_um, errors.readings, errors.peel_um,
                 errors.peel_factor, errors.critical_um, errors.residual_um);
}

/// Throws: OutOfRange where an error is outside its range
inline void require_common(const CommonErrors& errors, std::string_view where) {
  require_range(errors.mean_se_um, 0.0, 2e4, "mean_se_um", "um", where);
  require_range(errors.sd_se_um, 0.0, 2e4, "sd_se_um", "um", where);
  require_range(errors.readings, 0.0, 1e6, "readings", "", where);
  require_range(errors.peel_um, 0.0, 1e4, "peel_um", "um", where);
  require_range(errors.peel_factor, 1.0, 10.0, "peel_factor", "", where);
  require_range(errors.critical_um, 0.0, 1e9, "critical_um", "um", where);
  require_range(errors.residual_um, 1e-3, 1e4, "residual_um", "um", where);
}

/// How the spread of a film and the error of its mean go together.
struct FilmSampling {
  double df = std::numeric_limits<double>::infinity();
  double scale_um = 0;    ///< sigma = scale sqrt(df / chi2)
  double sampled_um = 0;  ///< part of the mean's error that goes with sigma
  double other_um = 0;    ///< part that does not

  double mean_error_um(double sigma_um) const {
    if (sampled_um == 0.0) return other_um;
    return std::hypot(other_um, sampled_um * (sigma_um / scale_um));
  }
};

inline FilmSampling film_sampling(double sd_um, double mean_se_um, double sd_se_um,
                                  double readings) {
  FilmSampling law{.scale_um = sd_um, .other_um = mean_se_um};
  if (sd_se_um == 0.0) return law;
  law.scale_um = std::max(sd_um, std::sqrt(2.0) * sd_se_um);
  const double ratio = law.scale_um / sd_se_um;
  law.df = std::max(1.0, 0.5 * ratio * ratio);
  if (readings == 0.0) return law;
  law.sampled_um = std::min(mean_se_um, law.scale_um / std::sqrt(readings));
  law.other_um = std::sqrt((mean_se_um - law.sampled_um) * (mean_se_um + law.sampled_um));
  return law;
}

struct ChanceNode {
  double value = 0;
  double weight = 0;
};

/// Nodes of a trapezoidal rule in y for a law with the density exp(log_density(x(y))), its weights adding up to 1. Where the law is
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

/// Widens steps in the tails, which are exponential.
inline double stretched(double y) { return std::sinh(0.3 * y) / 0.3; }

inline double log_stretch(double y) { return std::log(std::cosh(0.3 * y)); }

inline std::vector<ChanceNode> normal_nodes() {
  return law_nodes(
      -8.5, 8.5, 0.8, [](double y) { return y; }, [](double y) { return -0.5 * y * y; });
}

/// sigma of a sampled film: ln sigma is spread by 1 / sqrt(2 df).
inline std::vector<ChanceNode> sigma_nodes(const FilmSampling& law) {
  if (std::isinf(law.df)) return {{law.scale_um, 1.0}};
  const double unit = 1.0 / std::sqrt(2.0 * law.df);
  const auto log_ratio = [unit](double y) { return unit * stretched(y); };
  return law_nodes(
      -13.0, 13.0, 0.4, [&](double y) { return law.scale_um * std::exp(log_ratio(y)); },
      [&](double y) {
        const double x = log_ratio(y);
        return -law.df * (x + 0.5 * std::expm1(-2.0 * x)) + log_stretch(y);
      });
}

/// The largest of as many standard normal numbers as there are spots, by the Gumbel law of -ln(-spots ln(1 - Q)).
inline std::vector<ChanceNode> extreme_nodes(double spots) {
  return law_nodes(
      -6.0, 12.0, 0.75,
      [spots](double y) {
        return std::max(-9.0, normal_quantile(-std::expm1(-std::exp(-stretched(y)) / spots)));
      },
      [](double y) {
        const double t = stretched(y);
        return 1.0 - t - std::exp(-t) + log_stretch(y);
      });
}

/// The depth D at which mean - D is hypot(film_part, depth_part D), or where it is not `above` the negative of that. Below 0: there is
/// none.
inline double depth_within(double mean, double film_part, double depth_part, bool above) {
  if (above) {
    if (mean <= 0.0 || film_part > mean) return -1.0;
    const double product = (mean - film_part) * (mean + film_part);
    return product / (mean + std::hypot(film_part, depth_part * std::sqrt(product)));
  }
  const double leading = (1.0 - depth_part) * (1.0 + depth_part);
  if (leading <= 0.0) return std::numeric_limits<double>::infinity();
  return (mean + std::hypot(film_part * std::sqrt(leading), depth_part * mean)) / leading;
}

/// A monotone function from a table, by straight lines: they are monotone too. Beyond its ends it is constant.
class Table {
 public:
  template <typename Function>
  Table(double low, double high, Function function)
      : low_(low), high_(high), cells_a_unit_(cells / (high - low)) {
    values_.reserve(cells + 2);
    for (std::size_t i = 0; i <= cells; ++i)
      values_.push_back(function(low + static_cast<double>(i) / cells_a_unit_));
    values_.push_back(values_.back());  // at the upper end itself
  }

  double high() const { return high_; }

  double operator()(double x) const {
    const double place = (std::clamp(x, low_, high_) - low_) * cells_a_unit_;
    const int cell = static_cast<int>(place);
    const double* at = values_.data() + cell;
    return at[0] + (place - cell) * (at[1] - at[0]);
  }

 private:
  static constexpr std::size_t cells = 17 * 256;

  double low_, high_, cells_a_unit_;
  std::vector<double> values_{};
};

/// Standard deviations beyond which one normal number is not found.
inline constexpr double normal_reach = 8.5;

/// normal_tail() within reach, 2e-4 relative off at most.
inline const Table& tail_table() {
  static const Table table(-normal_reach, normal_reach, normal_tail);
  return table;
}

/// Chance of cutting through with errors that all spots share, at any depth.
///
/// The chance is an integral over four laws: sigma, the mean's error, the peel, and the worst of the spots. One of the last three is
/// integrated in closed form, the widest: so the integrand of the others is smooth. That choice does not hang on the depth, and the
/// chance never falls as the depth grows.
class CommonChance {
 public:
  CommonChance(double mean_um, double sd_um, double removed_cv, double spots,
               const CommonErrors& errors)
      : mean_(mean_um),
        cv_(removed_cv),
        spots_(spots),
        law_(film_sampling(sd_um, errors.mean_se_um, errors.sd_se_um, errors.readings)),
        sigma_(sigma_nodes(law_)),
        amplitude_(0.5 * errors.peel_um),
        critical_(errors.critical_um),
        end_(0.5 * errors.residual_um),
        log_factor_(errors.peel_um > 0.0 ? std::log(errors.peel_factor) : 0.0) {
    levelled_ = levelled_um(amplitude_, critical_, end_);
    const double spot_um = std::hypot(law_.scale_um, cv_ * std::max(0.0, mean_));
    const double worst_um = spot_um * extreme_spread();
    const double peel_um = levelled_ == 0.0 ? 0.0 : log_factor_ * std::max(amplitude_, critical_);
    way_ = peel_um > std::max(worst_um, errors.mean_se_um) ? Widest::peel
           : errors.mean_se_um > worst_um                  ? Widest::mean
                                                           : Widest::spot;
    if (way_ != Widest::spot) worst_ = extreme_nodes(spots_);
    if (way_ != Widest::mean) {
      means_ = errors.mean_se_um > 0.0 ? normal_nodes() : std::vector<ChanceNode>{{0.0, 1.0}};
    }
    if (way_ == Widest::peel) {
      find_limits();
      return;
    }
    find_deepenings();
    if (way_ == Widest::spot) {
      closed_.emplace(-normal_reach, of_all_reach, [this](double z) {
        return -std::expm1(spots_ * std::log1p(-normal_tail(z)));
      });
    }
  }

  /// The chance at a depth, 0 to 1.
  double operator()(double depth_um) const {
    const double chance = way_ == Widest::peel   ? over_peel(depth_um)
                          : way_ == Widest::mean ? over_mean(depth_um)
                                                 : over_spots(depth_um);
    return std::clamp(chance, 0.0, 1.0);
  }

 private:
  enum class Widest { spot, mean, peel };
  static constexpr double least_weight = 1e-14;
  static constexpr double of_all_reach = 11.0;  ///< where not one of 1e9 spots is found
  static constexpr double widths = 40.0;  ///< of the peel's law in a table: its cells are small

  /// Standard deviation of the worst of the spots, as the half of what the middle 68 % of them span.
  double extreme_spread() const {
    const auto quantile = [this](double below) {
      return normal_quantile(-std::expm1(std::log(below) / spots_));
    };
    return 0.5 * (quantile(normal_tail(-1.0)) - quantile(normal_tail(1.0)));
  }

  /// By how much the depth grows with the peel, at each node of it.
  void find_deepenings() {
    if (log_factor_ == 0.0) {
      deeper_ = {{0.0, 1.0}};
      return;
    }
    deeper_ = normal_nodes();
    for (ChanceNode& node : deeper_) {
      const double amplitude = amplitude_ * std::exp(log_factor_ * node.value);
      node.value = levelled_um(amplitude, critical_, end_) - levelled_;
    }
  }

  /// depth_within() without its guard against overflow, which takes most of the time. Minus infinity where there is none.
  static double limit_um(double mean, double film_part, double depth_part, bool above) {
    if (!above) return depth_within(mean, film_part, depth_part, above);
    if (mean <= 0.0 || film_part > mean) return -std::numeric_limits<double>::infinity();
    const double product = (mean - film_part) * (mean + film_part);
    return product / (mean + std::sqrt(film_part * film_part + depth_part * depth_part * product));
  }

  /// The depth that the film allows, at each node of sigma, the worst spot and the mean, and the chance that the peel takes more
  /// than some depth. Limits that differ by a small part of the peel's width count as one, at their mean.
  void find_limits() {
    constexpr double parts = 64.0;
    const double width_um = log_factor_ * std::max(amplitude_, critical_);
    std::vector<ChanceNode> near(static_cast<std::size_t>(widths * parts));
    for (const ChanceNode& sigma : sigma_) {
      const double error_um = law_.mean_error_um(sigma.value);
      for (const ChanceNode& spot : worst_) {
        const double out = std::abs(spot.value);
        for (const ChanceNode& mean : means_) {
          const double weight = sigma.weight * spot.weight * mean.weight;
          if (weight < least_weight) continue;
          const double limit = limit_um(mean_ + error_um * mean.value, out * sigma.value, out * cv_,
                                        spot.value >= 0.0);
          if (limit < 0.0 || limit >= widths * width_um) {
            limits_.push_back({limit, weight});
          } else {
            ChanceNode& part = near[static_cast<std::size_t>(limit / width_um * parts)];
            part.value += weight * limit;
            part.weight += weight;
          }
        }
      }
    }
    for (const ChanceNode& part : near) {
      if (part.weight > 0.0) limits_.push_back({part.value / part.weight, part.weight});
    }
    const double low = levelled_at(-normal_reach);
    closed_.emplace(low, std::min(levelled_at(normal_reach), low + widths * width_um),
                    [this](double levelled) { return tail_table()(deviations(levelled)); });
  }

  double levelled_at(double z) const {
    return levelled_um(amplitude_ * std::exp(log_factor_ * z), critical_, end_);
  }

  /// How many standard deviations off the peel is that costs so much.
  double deviations(double levelled) const {
    return std::log(amplitude_levelled_um(levelled, critical_, end_) / amplitude_) / log_factor_;
  }

  /// Sum over the limits of the chance that the peel takes the depth beyond.
  double over_peel(double depth_um) const {
    const double known_um = depth_um - levelled_;
    double chance = 0;
    for (const ChanceNode& limit : limits_) {
      const double allowed = limit.value - known_um;
      const double more =
          allowed > closed_->high() ? normal_tail(deviations(allowed)) : (*closed_)(allowed);
      chance += limit.weight * (allowed < 0.0 ? 1.0 : more);
    }
    return chance;
  }

  /// Calls visit(weight, mean error, film left, spread) at each node of sigma and peel.
  template <typename Visit>
  void for_each_zone(double depth_um, Visit visit) const {
    for (const ChanceNode& deeper : deeper_) {
      const double depth = std::max(0.0, depth_um + deeper.value);
      for (const ChanceNode& sigma : sigma_) {
        const double weight = deeper.weight * sigma.weight;
        if (weight < least_weight) continue;
        visit(weight, law_.mean_error_um(sigma.value), mean_ - depth,
              std::hypot(sigma.value, cv_ * depth));
      }
    }
  }

  double over_mean(double depth_um) const {
    const Table& tail = tail_table();
    double chance = 0;
    for_each_zone(depth_um, [&](double weight, double error, double left, double spread) {
      double share = 0;
      for (const ChanceNode& spot : worst_) {
        share += spot.weight * tail((left - spread * spot.value) / error);
      }
      chance += weight * share;
    });
    return chance;
  }

  double over_spots(double depth_um) const {
    double chance = 0;
    for_each_zone(depth_um, [&](double weight, double error, double left, double spread) {
      double share = 0;
      for (const ChanceNode& mean : means_) {
        const double above = left + error * mean.value;
        if (spread == 0.0) {
          share += above < 0.0 ? mean.weight : 0.0;
          continue;
        }
        share += mean.weight * (*closed_)(above / spread);
      }
      chance += weight * share;
    });
    return chance;
  }

  double mean_, cv_, spots_;
  FilmSampling law_;
  std::vector<ChanceNode> sigma_;
  double amplitude_, critical_, end_, log_factor_, levelled_ = 0;
  Widest way_ = Widest::spot;
  std::vector<ChanceNode> worst_, means_, deeper_, limits_;
  std::optional<Table> closed_;  ///< chance over the law that is integrated in closed form
};

}  // namespace detail

}  // namespace levigate
