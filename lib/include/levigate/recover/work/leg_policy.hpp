// The work behind recover/leg_policy.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <vector>

#include "levigate/recover/leg_policy.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/recover/need.hpp"
#include "levigate/recover/policy.hpp"
#include "levigate/recover/work/require_policy.hpp"

namespace levigate::inline v0 {

namespace detail {

/// A leg that may be taken, from the needs met so far.
struct LegTaken {
  double minutes = 0;  ///< expected, of its looks
  double alive = 1;    ///< chance that the mark is still there after it
};

/// The legs from one state of the needs.
class LegsFrom {
 public:
  LegsFrom(const std::vector<Need>& needs, const std::vector<double>& left,
           const LookMinutes& look_minutes, double film_um, double worth_share, std::size_t met)
      : needs_(needs),
        left_(left),
        look_minutes_(look_minutes),
        film_um_(film_um),
        worth_share_(worth_share),
        met_(met),
        off_um_(met == 0 ? 0.0 : needs[met - 1].need_um) {}

  /// Where a leg of so many looks to a need ends after each of them; none where it cannot be.
  std::optional<std::vector<double>> depths(const Climb& climb, std::size_t to,
                                            std::size_t looks) const {
    const double deep_um = needs_[to].need_um - off_um_;
    const double step_um = deep_um / static_cast<double>(looks);
    const bool passes = step_um < climb.above_um;
    if (deep_um > climb.reach_um || (passes && (looks > 1 || to + 1 < needs_.size()))) return {};
    if (passes && off_um_ + climb.above_um > film_um_) return {};
    std::vector<double> result;
    for (std::size_t j = 1; j < looks; ++j)
      result.push_back(off_um_ + step_um * static_cast<double>(j));
    result.push_back(passes ? off_um_ + climb.above_um : needs_[to].need_um);
    return result;
  }

  /// What a leg of these depths takes; none where its first look is not worth it.
  std::optional<LegTaken> taken(std::size_t climb, const std::vector<double>& off_um) const {
    LegTaken result;
    double from_um = off_um_;
    for (std::size_t j = 0; j < off_um.size(); ++j) {
      const double alive = left_[met_at(off_um[j])] / left_[met_];
      if (j == 0 && 1.0 - alive < worth_share_) return {};
      result.minutes += result.alive * look_minutes_(climb, from_um, off_um[j]);
      result.alive = alive;
      from_um = off_um[j];
    }
    if (!std::isfinite(result.minutes)) return {};
    return result;
  }

 private:
  std::size_t met_at(double off_um) const {
    const auto beyond =
        std::upper_bound(needs_.begin() + static_cast<std::ptrdiff_t>(met_), needs_.end(), off_um,
                         [](double um, const Need& need) { return um < need.need_um; });
    return static_cast<std::size_t>(beyond - needs_.begin());
  }

  const std::vector<Need>& needs_;
  const std::vector<double>& left_;
  const LookMinutes& look_minutes_;
  double film_um_;
  double worth_share_;
  std::size_t met_;
  double off_um_;
};

}  // namespace detail

LEVIGATE_WORK LegPolicy best_legs(const std::vector<Need>& needs, const std::vector<Climb>& climbs,
                                  const LookMinutes& look_minutes, double film_um,
                                  double stop_minutes, const LegLimits& limits) {
  detail::require_policy(needs, film_um, stop_minutes, "best_legs");
  const std::size_t count = needs.size();
  std::vector<double> left(count + 1, 0.0);
  for (std::size_t i = count; i-- > 0;) left[i] = left[i + 1] + needs[i].probability;

  struct Choice {
    double minutes;
    std::size_t climb = 0, to = 0, looks = 0;  // no looks: stop, or what fewer legs do
  };
  // By legs that may follow, then by needs met in vain.
  std::vector<std::vector<Choice>> best(limits.legs + 1,
                                        std::vector<Choice>(count + 1, Choice{0.0}));
  for (std::size_t met = count; met-- > 0;) {
    for (std::size_t l = 0; l <= limits.legs; ++l) best[l][met].minutes = stop_minutes;
    const detail::LegsFrom legs(needs, left, look_minutes, film_um, limits.worth_share, met);
    for (std::size_t to = met; to < count && needs[to].need_um <= film_um; ++to) {
      for (std::size_t looks = 1; looks <= limits.looks; ++looks) {
        for (std::size_t k = 0; k < climbs.size(); ++k) {
          const auto depths = legs.depths(climbs[k], to, looks);
          const auto taken = depths ? legs.taken(k, *depths) : std::nullopt;
          if (!taken) continue;
          for (std::size_t l = 1; l <= limits.legs; ++l) {
            const double minutes = taken->minutes + taken->alive * best[l - 1][to + 1].minutes;
            if (minutes < best[l][met].minutes) best[l][met] = {minutes, k, to, looks};
          }
        }
      }
    }
  }
  LegPolicy result{.legs = {}, .expected_minutes = best[limits.legs][0].minutes, .gone_chance = 0};
  std::size_t met = 0;
  for (std::size_t l = limits.legs; l > 0 && met < count && best[l][met].looks > 0; --l) {
    const Choice& choice = best[l][met];
    const detail::LegsFrom legs(needs, left, look_minutes, film_um, limits.worth_share, met);
    result.legs.push_back(
        {choice.climb, *legs.depths(climbs[choice.climb], choice.to, choice.looks)});
    met = choice.to + 1;
    result.gone_chance = 1.0 - left[met] / left[0];
  }
  return result;
}

}  // namespace levigate
