// Chance of cutting through with errors that all spots of a zone share: of mean and spread of the film, and of the orange peel.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "levigate/detail/adaptive.hpp"
#include "levigate/detail/normal.hpp"
#include "levigate/detail/strict_math.hpp"
#include "levigate/film/common_errors.hpp"
#include "levigate/film/film_chance.hpp"
#include "levigate/surface/levelling.hpp"

namespace levigate::inline v0::detail {

/// FilmChance at any depth, from a table: the quantile of the chance over depth / (depth + film), in quartics through five values.
/// A piece is halved while a parabola through three of them misses the other two by more than `close`. A quartic is off by far less.
class FilmChanceTable {
 public:
  explicit FilmChanceTable(const FilmChance& chance) : film_um_(std::max(chance.mean(), 1.0)) {
    const auto quantile = [&](double place) {
      const double tail = chance(film_um_ * place / (1.0 - place));
      return std::clamp(normal_quantile(std::min(tail, 1.0)), -9.0, 20.0);
    };
    const double middle = quantile(0.5);
    add(quantile, 0.0, 0.5, {quantile(0.0), quantile(0.25), middle}, halvings);
    add(quantile, 0.5, 1.0, {middle, quantile(0.75), quantile(1.0 - 1e-9)}, halvings);
  }

  double operator()(double depth_um) const {
    const double place = depth_um / (depth_um + film_um_);
    const auto after =
        std::upper_bound(pieces_.begin() + 1, pieces_.end(), place,
                         [](double at, const Piece& piece) { return at < piece.low; });
    const Piece& piece = *(after - 1);
    const double t = (place - piece.low) * piece.scale;
    const auto& [p0, p1, p2, p3, p4] = piece.power;
    return normal_tail(p0 + t * (p1 + t * (p2 + t * (p3 + t * p4))));
  }

 private:
  static constexpr int halvings = 20;
  static constexpr double surely = -3.2, never = 7.8;  ///< beyond these a straight line will do
  static constexpr double close = 2e-3;

  struct Piece {
    double low, scale;  ///< t = scale (place - low), 0 to 1
    std::array<double, 5> power;
  };

  /// The piece low..high, from the values at its ends and its middle.
  template <typename Quantile>
  void add(const Quantile& quantile, double low, double high, const std::array<double, 3>& known,
           int left) {
    const auto& [first, middle, last] = known;
    if (last > never || first < surely) {
      pieces_.push_back({low, 1.0 / (high - low), {first, last - first, 0.0, 0.0, 0.0}});
      return;
    }
    const double step = 0.25 * (high - low);
    const double early = quantile(low + step), late = quantile(high - step);
    const double off = std::max(std::abs(early - 0.125 * (3.0 * first + 6.0 * middle - last)),
                                std::abs(late - 0.125 * (3.0 * last + 6.0 * middle - first)));
    if (off > close && left > 0) {
      add(quantile, low, low + 2.0 * step, {first, early, middle}, left - 1);
      add(quantile, low + 2.0 * step, high, {middle, late, last}, left - 1);
      return;
    }
    // Newton's forward differences at t = 0, 1/4, ..., 1 as powers of t.
    const double d1 = early - first, d2 = middle - 2.0 * early + first,
                 d3 = late - 3.0 * middle + 3.0 * early - first,
                 d4 = last - 4.0 * late + 6.0 * middle - 4.0 * early + first;
    pieces_.push_back({low,
                       1.0 / (high - low),
                       {first, 4.0 * (d1 - d2 / 2.0 + d3 / 3.0 - d4 / 4.0),
                        16.0 * (d2 / 2.0 - d3 / 2.0 + d4 * 11.0 / 24.0),
                        64.0 * (d3 / 6.0 - d4 / 4.0), 256.0 * d4 / 24.0}});
  }

  double film_um_;
  std::vector<Piece> pieces_{};
};

/// A film's chance, and the table of it.
struct TabledFilm {
  FilmChance chance;
  FilmChanceTable table{chance};
};

/// That of a film, made once for the few films that follow each other: what a plan relies on is found by moving one input at a
/// time, and most of them move no film. To make a table takes longer than all that is then asked of it.
inline std::shared_ptr<const TabledFilm> tabled_film(double mean_um, double sd_um,
                                                     double removed_cv, double spots,
                                                     const CommonErrors& errors) {
  using Key = std::array<double, 7>;  // all that FilmChance takes of them
  constexpr std::size_t most = 8;
  thread_local std::vector<std::pair<Key, std::shared_ptr<const TabledFilm>>> kept;
  const Key key{mean_um,           sd_um,           removed_cv,     spots,
                errors.mean_se_um, errors.sd_se_um, errors.readings};
  const auto found =
      std::find_if(kept.begin(), kept.end(), [&](const auto& one) { return one.first == key; });
  if (found != kept.end()) {
    std::rotate(kept.begin(), found, found + 1);  // the last used first
  } else {
    if (kept.size() == most) kept.pop_back();
    kept.insert(kept.begin(), {key, std::make_shared<const TabledFilm>(
                                        TabledFilm{{mean_um, sd_um, removed_cv, spots, errors}})});
  }
  return kept.front().second;
}

/// The chance of cutting through at any depth.
///
///   chance(depth) = integral of film(max(0, depth + R(peel peel_factor^z) - R(peel))) phi(z) dz
///
/// with film() of FilmChance. Below the z at which the peel needs no levelling film() is constant.
class CommonChance {
 public:
  CommonChance(double mean_um, double sd_um, double removed_cv, double spots,
               const CommonErrors& errors)
      : amplitude_(0.5 * errors.peel_um),
        critical_(errors.critical_um),
        end_(0.5 * errors.residual_um),
        log_factor_(errors.peel_um > 0.0 ? std::log(errors.peel_factor) : 0.0) {
    if (log_factor_ == 0.0) {
      film_.emplace(mean_um, sd_um, removed_cv, spots, errors);
      return;
    }
    levelled_ = levelled_um(amplitude_, critical_, end_);
    flat_ = std::clamp(std::log(end_ / amplitude_) / log_factor_, -reach, reach);
    tabled_ = tabled_film(mean_um, sd_um, removed_cv, spots, errors);
  }

  /// The chance at a depth, 0 to 1.
  double operator()(double depth_um) const {
    return std::clamp(film_ ? (*film_)(depth_um) : over_peel(depth_um), 0.0, 1.0);
  }

 private:
  static constexpr double reach = 9.0;  ///< standard deviations

  double over_peel(double depth_um) const {
    const FilmChanceTable& film = tabled_->table;
    const double known_um = depth_um - levelled_;
    const double waves = integral<4>(
        [&](double z) {
          const double more = levelled_um(amplitude_ * std::exp(log_factor_ * z), critical_, end_);
          return normal_density(z) * film(std::max(0.0, known_um + more));
        },
        flat_, reach, 1e-4);
    return waves + normal_tail(-flat_) * film(std::max(0.0, known_um));
  }

  std::optional<FilmChance> film_{};  ///< without peel of which the height may be off
  double amplitude_, critical_, end_, log_factor_;
  double levelled_ = 0, flat_ = 0;  ///< what the peel costs, and below which z it costs nothing
  std::shared_ptr<const TabledFilm> tabled_{};
};

}  // namespace levigate::inline v0::detail
