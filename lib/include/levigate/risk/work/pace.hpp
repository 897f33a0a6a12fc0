// Minutes as journals let expect them: a person's pace and rates drawn from what is believed of them, and the scatter of steps.
// What has to come off is drawn as without a journal.
#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <set>
#include <utility>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/journal/shop_factors.hpp"
#include "levigate/journal/work/belief.hpp"
#include "levigate/journal/work/rows.hpp"
#include "levigate/journal/work/shop_belief.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/risk/philox.hpp"
#include "levigate/stack/sheet.hpp"

namespace levigate::inline v0 {

namespace detail {

/// A chi-square number with df degrees of freedom, from 2 on.
/// Source: Marsaglia and Tsang, ACM Trans. Math. Softw. 26:363-372 (2000), from memory
inline double chi_square(double df, Stream& stream) {
  const double d = 0.5 * df - 1.0 / 3.0, c = 1.0 / std::sqrt(9.0 * d);
  while (true) {
    const double x = stream.normal(), u = stream.uniform();
    const double root = 1.0 + c * x, v = root * root * root;
    if (root > 0.0 && std::log(u) < 0.5 * x * x + d - d * v + d * std::log(v)) return 2.0 * d * v;
  }
}

}  // namespace detail

/// Unknowns and the noise they are seen through, drawn together.
struct DrawnBelief {
  std::vector<double> values;
  double noise = 0;
};

/// Draws from a belief: the noise variance from df noise^2 over a chi-square, the unknowns given it from their Gaussian.
class BeliefDraws {
 public:
  /// Throws: BadInput where the spread is no covariance
  explicit BeliefDraws(Belief belief) : belief_(std::move(belief)) {
    auto root = detail::root_of(belief_.spread);
    if (!root) throw BadInput("spread is not a covariance, in BeliefDraws");
    root_ = std::move(*root);
  }

  DrawnBelief operator()(Stream& stream) const {
    DrawnBelief drawn{belief_.mean, 0};
    drawn.noise = belief_.noise * std::sqrt(belief_.df / detail::chi_square(belief_.df, stream));
    std::vector<double> normals;
    for (std::size_t i = 0; i < belief_.mean.size(); ++i) normals.push_back(stream.normal());
    for (std::size_t i = 0; i < normals.size(); ++i) {
      drawn.values[i] += drawn.noise * detail::dot(root_[i], normals);
    }
    return drawn;
  }

 private:
  Belief belief_;
  std::vector<std::vector<double>> root_;
};

/// A pace in one draw.
struct DrawnPace {
  double duty_factor = 1;
  std::vector<double> rate_factor;       ///< of each sheet
  std::vector<double> hand_rate_factor;  ///< the same where the hand works for its machine
  std::vector<std::vector<double>>
      minutes_per_um;  ///< of sanding with each sheet in each zone, scatter included [min/um]
};

/// Draws the pace of a sequence from what a shop knows. Sheets of which it knows nothing are drawn as the profiles' bands have
/// them.
///
///   minutes = removed x computed / duty_factor / rate_factor x e^(scatter),   duty_factor 1 where a machine works
///
/// with computed the minutes of removing 1 um without any factor and all inputs at their values, as journals are compared with
/// them: the pace stands for the rate of removal. What has to be removed hangs on peel and scratches, and is drawn with them.
class PaceDraws {
 public:
  /// `setup` holds the sheets of the sequence in its order.
  /// Throws: as validate(Shop), workings()
  PaceDraws(const Shop& shop, const Setup& setup)
      : known_(known(shop, setup)), draws_(detail::pace_belief(known_)) {
    for (const Sheet& sheet : setup.stack.sheets) {
      rows_.push_back(row(setup, sheet, false));
      hand_rows_.push_back(row(setup, sheet, true));
    }
    const Workings workings = workings_without_budgets(setup);
    for (std::size_t sheet = 0; sheet < rows_.size(); ++sheet) {
      std::vector<Computed>& zones = computed_.emplace_back();
      const SheetFactors factors = setup.factors.of(sheet);
      for (std::size_t zone = 0; zone < setup.job.zones.size(); ++zone) {
        const SheetInZone& work = workings.work[sheet][zone];
        const bool handed = machine_of(setup.stack.sheets[sheet]) && !work.machine;
        const Effort one = effort(1.0, work, setup.job.zones[zone], setup.stack.sheets[sheet], 1.0);
        zones.push_back({one.minutes * (handed ? factors.hand_rate : factors.rate), work.machine,
                         handed ? hand_rows_[sheet] : rows_[sheet]});
      }
    }
  }

  DrawnPace operator()(std::uint64_t seed, std::uint32_t draw) const {
    Stream stream(seed, stream_named("pace"), draw);
    const DrawnBelief belief = draws_(stream);
    DrawnPace pace{std::exp(belief.values[0]), {}, {}, {}};
    for (std::size_t i = 0; i < computed_.size(); ++i) {
      pace.rate_factor.push_back(std::exp(belief.values[rows_[i]]));
      pace.hand_rate_factor.push_back(std::exp(belief.values[hand_rows_[i]]));
      const double scatter = std::exp(belief.noise * stream.normal());
      std::vector<double>& zones = pace.minutes_per_um.emplace_back();
      for (const Computed& one : computed_[i]) {
        const double duty = one.machine ? 1.0 : pace.duty_factor;
        zones.push_back(one.minutes / duty / std::exp(belief.values[one.row]) * scatter);
      }
    }
    return pace;
  }

 private:
  static Shop known(const Shop& shop, const Setup& setup) {
    validate(shop);
    std::set<detail::PairName> names;
    for (const Sheet& sheet : setup.stack.sheets) {
      for (const bool by_hand : {false, true})
        names.emplace(setup.job.coating.name, learned_name(sheet, by_hand));
    }
    return detail::with_rates(shop, names);
  }

  std::size_t row(const Setup& setup, const Sheet& sheet, bool by_hand) const {
    return 1 + detail::row_at(known_.rates, setup.job.coating.name, learned_name(sheet, by_hand));
  }

  /// Minutes for each um of a step in a zone, whether a machine works there, and the row of its rate.
  struct Computed {
    double minutes = 0;
    bool machine = false;
    std::size_t row = 0;
  };

  Shop known_;
  BeliefDraws draws_;
  std::vector<std::size_t> rows_;                // of each sheet
  std::vector<std::size_t> hand_rows_;           // the same where the hand works for its machine
  std::vector<std::vector<Computed>> computed_;  // of each step in each zone
};

}  // namespace levigate
