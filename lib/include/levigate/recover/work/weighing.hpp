// The weighing of all sources of scratches for one mark, by Bayes' rule.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <vector>

#include "levigate/detail/quadrature.hpp"
#include "levigate/plan/work/budget_of.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/diagnosis.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/recover/work/depth_tally.hpp"
#include "levigate/recover/work/layer.hpp"
#include "levigate/recover/work/poisson.hpp"
#include "levigate/recover/work/sources_of_marks.hpp"
#include "levigate/recover/work/spot.hpp"
#include "levigate/recover/work/visible.hpp"
#include "levigate/sourced.hpp"
#include "levigate/surface/inspection_table.hpp"
#include "levigate/surface/scratch_width.hpp"

namespace levigate::inline v0 {

namespace detail {

/// A depth that scratches can have, as a node of a quadrature.
struct DepthNode {
  double depth_um = 0;
  double log_depth = 0;
  double weight_um = 0;
  double likelihood = 0;  ///< of how the mark was seen, given that depth
  bool shows = false;     ///< stands out from the finish
};

/// Weighs all sources of scratches in one zone for one mark.
class Weighing {
 public:
  Weighing(const Workings& workings, const std::vector<Layer>& layers, std::size_t zone,
           const levigate::Mark& mark)
      : workings_(workings),
        layers_(layers),
        zone_(zone),
        mark_(mark),
        sources_(mark_sources(workings, layers, zone)),
        ends_(sources_.size()),
        found_(sources_.size()),
        missed_(sources_.size(), std::vector<double>(layers.size())) {
    for (const MarkSource& source : sources_) way_.push_back(way_likelihood(source));
    set_nodes();
    densities_.resize(sources_.size() * nodes_.size());
  }

  /// What the mark tells, but for the evidence.
  Diagnosis diagnosis() {
    const std::vector<SpotNode> spots = spot_nodes(layers_.size(), workings_.job.rules.removed_cv);
    for (const SpotNode& spot : spots) weigh(spot);
    Diagnosis result{.mark = mark_, .causes = {}, .needs = tally_.needs()};
    result.shows_um = width_of_depth_um(shows_um_, workings_.model.flank_deg);
    double total = 0;
    for (const double weight : found_) total += weight;
    if (!(total > 0)) return result;
    const double alone = mark_.kind == MarkKind::scratch ? std::exp(-least_shown_) : 1.0;
    const double spots_here = spots_in(workings_.job.zones[zone_]);
    for (std::size_t s = 0; s < sources_.size(); ++s) {
      const Layer& layer = layers_[sources_[s].layer];
      Cause& cause =
          result.causes.emplace_back(Cause{.step = layer.step,
                                           .sheet = workings_.stack.sheets[layer.sheet].id,
                                           .stray = sources_[s].stray,
                                           .probability = found_[s] / total,
                                           .expected = alone * found_[s] / way_[s] * spots_here});
      cause.missed.assign(layers_.back().step + 1, 0.0);
      for (std::size_t j = 0; j < layers_.size() && found_[s] > 0; ++j)
        cause.missed[layers_[j].step] = missed_[s][j] / found_[s];
    }
    std::stable_sort(result.causes.begin(), result.causes.end(),
                     [](const Cause& a, const Cause& b) { return a.probability > b.probability; });
    return result;
  }

 private:
  double depth_of(double width_um) const {
    return depth_of_width_um(width_um, workings_.model.flank_deg);
  }

  /// Likelihood of the way the mark runs, straight or in an arc, for a source.
  double way_likelihood(const MarkSource& source) const {
    const Layer& layer = layers_[source.layer];
    const InspectionProfile& eye = inspection_table[0];
    const bool machine = workings_.work[layer.sheet][zone_].machine;
    const bool own = tool_of(workings_.stack.sheets[layer.sheet]) &&
                     !machine_of(workings_.stack.sheets[layer.sheet]);
    const double arcs = machine ? eye.arc_share_machine.value
                        : own   ? eye.arc_share_tool.value
                                : eye.arc_share_block.value;
    if (mark_.kind == MarkKind::swirl) return arcs;
    if (mark_.kind == MarkKind::haze)
      return direction_likelihood(mark_.direction_deg, layer.direction_deg);
    return (1.0 - arcs) * direction_likelihood(mark_.direction_deg, layer.direction_deg);
  }

  /// Depth beyond which the last layer's own scratches number, or cover, only so much where it was worked as it should:
  /// what is shallower is the finish.
  template <typename Each>
  double finish_um(double most, Each each) const {
    const MarkSource& own = sources_[sources_.size() - 2];
    const double removed_um = layers_.back().removal_um;
    double low = 0;
    double high = own.deepest_um;
    for (int i = 0; i < 30; ++i) {
      const double middle = 0.5 * (low + high);
      double sum = 0;
      for_each_node(middle, own.deepest_um, 2, [&](double y, double weight) {
        sum += weight * each(y) * own.density(y, 0.0, removed_um);
      });
      (sum > most ? low : high) = middle;
    }
    return high;
  }

  /// Depths from the shallowest that matters to the deepest there can be, with what was seen.
  void set_nodes() {
    const InspectionProfile& eye = inspection_table[0];
    const double sunlight_um = depth_of(eye.sunlight_um.value);
    const double finish = finish_um(eye.finish_per_spot.value, [](double) { return 1.0; });
    double deepest_um = 0;
    for (const MarkSource& source : sources_) deepest_um = std::max(deepest_um, source.deepest_um);
    shows_um_ = std::max(sunlight_um, finish);
    const bool haze = mark_.kind == MarkKind::haze;
    double from_um = shows_um_;
    const double lamp_um =
        depth_of(lamp_width_um(width_of_depth_um(shows_um_, workings_.model.flank_deg)));
    if (haze) {
      const double flank_deg = workings_.model.flank_deg;
      texture_um_ = finish_um(eye.finish_cover_share.value * eye.haze_cover.low,
                              [&](double y) { return width_of_depth_um(y, flank_deg) / spot_um; });
      constexpr double nearly = 0.9;  // so that depths are left where the finish is coarse
      texture_um_ = std::min(texture_um_, nearly * shows_um_);
      from_um = texture_um_;
    }
    constexpr double sigmas = 4.0;  // a reading is not further off than this
    const double log_sd = width_log_sd(mark_.seen);
    const auto likelihood = [&](double y) {
      if (mark_.width_um) {
        const double off = std::log(y / depth_of(*mark_.width_um)) / log_sd;
        return std::abs(off) > sigmas ? 0.0 : std::exp(-0.5 * off * off);
      }
      if (haze) return 1.0;
      const bool in_lamp = y >= lamp_um;
      return in_lamp == (mark_.seen == Seen::lamp) ? 1.0 : 0.0;
    };
    // Panels end where a likelihood jumps.
    std::vector<double> ends{from_um};
    for (const double end : {shows_um_, lamp_um, deepest_um}) {
      if (end > ends.back()) ends.push_back(end);
    }
    constexpr double panel_factor = 3.0;
    for (std::size_t i = 1; i < ends.size(); ++i) {
      const double low = std::log(ends[i - 1]);
      const double high = std::log(ends[i]);
      const int panels =
          std::max(1, static_cast<int>(std::ceil((high - low) / std::log(panel_factor))));
      for_each_node(low, high, panels, [&](double log_y, double weight) {
        const double y = std::exp(log_y);
        nodes_.push_back({y, log_y, y * weight, likelihood(y), y >= shows_um_});
      });
    }
    std::sort(nodes_.begin(), nodes_.end(),
              [](const DepthNode& a, const DepthNode& b) { return a.depth_um < b.depth_um; });
  }

  /// Densities of all sources at a spot, at the nodes that each reaches; returns the number of scratches that show.
  double set_densities(const SpotNode& spot) {
    double shown = 0;
    double since_um = 0;
    for (std::size_t i = layers_.size(); i-- > 0;) {
      const double own_um =
          spot.evenness * layers_[i].removal_um * (spot.missed == i ? spot.worked : 1.0);
      for (std::size_t s : {2 * i, 2 * i + 1}) {
        std::size_t& k = ends_[s];
        for (k = 0; k < nodes_.size(); ++k) {
          if (sources_[s].share_deeper(nodes_[k].depth_um + since_um) == 0) break;
          const double density = sources_[s].density(nodes_[k].depth_um, since_um, own_um);
          densities_[s * nodes_.size() + k] = density;
          if (nodes_[k].shows) shown += nodes_[k].weight_um * density;
        }
      }
      since_um += own_um;
    }
    return shown;
  }

  void weigh(const SpotNode& spot) {
    const double shown = set_densities(spot);
    if (mark_.kind == MarkKind::haze) {
      weigh_haze(spot);
    } else if (mark_.kind == MarkKind::scratch) {
      weigh_scratch(spot, shown);
    } else {
      weigh_cluster(spot);
    }
  }

  /// Adds to a source: a mark that needs exp(log_need) off, with the chance that the spot shows it.
  void add(const SpotNode& spot, std::size_t source, double log_need, double chance, double seen) {
    if (!(chance > 0)) return;
    const double weight = spot.weight * way_[source] * chance;
    found_[source] += weight * seen;
    if (spot.missed) missed_[source][*spot.missed] += weight * seen;
    tally_.add(log_need - std::log(spot.evenness), weight * seen);
  }

  /// One scratch, and nothing else that shows: density exp(-shown). The last is kept relative to its largest value so far.
  void weigh_scratch(const SpotNode& spot, double shown) {
    if (shown < least_shown_) {
      const double by = std::exp(shown - least_shown_);
      for (double& weight : found_) weight *= by;
      for (auto& row : missed_) {
        for (double& weight : row) weight *= by;
      }
      tally_.scale(by);
      least_shown_ = shown;
    }
    const double alone = std::exp(least_shown_ - shown);
    if (alone < negligible) return;
    for (std::size_t s = 0; s < sources_.size(); ++s) {
      for (std::size_t k = 0; k < ends_[s]; ++k) {
        add(spot, s, nodes_[k].log_depth, nodes_[k].likelihood * count(s, k), alone);
      }
    }
  }

  /// At least n scratches of one source, the deepest near a node: none deeper, at least n up to it, and not all of those
  /// shallower.
  void weigh_cluster(const SpotNode& spot) {
    const int n = mark_.count.value_or(static_cast<int>(inspection_table[0].cluster_count.value));
    for (std::size_t s = 0; s < sources_.size(); ++s) {
      double up_to = 0;
      for (std::size_t k = 0; k < ends_[s]; ++k) {
        if (nodes_[k].shows) up_to += count(s, k);
      }
      if (up_to < negligible) continue;
      double none_deeper = 1;
      double enough = poisson_at_least(n, up_to);
      for (std::size_t k = ends_[s]; k-- > 0 && nodes_[k].shows;) {
        const double here = count(s, k);
        if (here < negligible) continue;
        if (none_deeper < negligible || enough < negligible) break;
        const double none_here = std::exp(-here);
        up_to = std::max(0.0, up_to - here);
        const double shallower = poisson_at_least(n, up_to);
        const double chance = none_deeper * (enough - none_here * shallower);
        add(spot, s, nodes_[k].log_depth, nodes_[k].likelihood * chance, 1.0);
        none_deeper *= none_here;
        enough = shallower;
      }
    }
  }

  /// Scratches of a source on the spot whose depth is near that of a node.
  double count(std::size_t source, std::size_t node) const {
    return nodes_[node].weight_um * densities_[source * nodes_.size() + node];
  }

  /// Share of the surface under the scratches near a node once off_um came off, where they stand out from the finish and
  /// are too fine to be told apart; per scratch.
  double cover_of_one(std::size_t node, double off_um) const {
    const double left_um = nodes_[node].depth_um - off_um;
    if (left_um < texture_um_ || left_um >= shows_um_) return 0.0;
    return width_of_depth_um(left_um, workings_.model.flank_deg) / spot_um;
  }

  /// Haze shows from a cover that is even in logarithm over its band, and is gone below it.
  void weigh_haze(const SpotNode& spot) {
    const Sourced& band = inspection_table[0].haze_cover;
    std::vector<double> all(nodes_.size(), 0.0);
    std::vector<double> covers(sources_.size(), 0.0);
    double covered = 0;
    for (std::size_t s = 0; s < sources_.size(); ++s) {
      for (std::size_t k = 0; k < ends_[s]; ++k) {
        all[k] += count(s, k);
        covers[s] += count(s, k) * cover_of_one(k, 0.0);
      }
      covered += covers[s];
    }
    if (!(covered > band.low)) return;
    const double chance =
        std::min(1.0, std::log(covered / band.low) / std::log(band.high / band.low));
    double low = 0;
    double high = nodes_.back().depth_um;
    for (int i = 0; i < 20; ++i) {
      const double middle = 0.5 * (low + high);
      double left = 0;
      for (std::size_t k = 0; k < nodes_.size(); ++k) left += all[k] * cover_of_one(k, middle);
      (left > band.low ? low : high) = middle;
    }
    for (std::size_t s = 0; s < sources_.size(); ++s) {
      add(spot, s, std::log(high), chance * covers[s] / covered, 1.0);
    }
  }

  static constexpr double negligible = 1e-15;  // of a chance, or of a number of scratches

  const Workings& workings_;
  const std::vector<Layer>& layers_;
  std::size_t zone_;
  const levigate::Mark& mark_;
  std::vector<MarkSource> sources_;
  std::vector<double> way_;  ///< by source
  std::vector<DepthNode> nodes_;
  double shows_um_ = 0;
  double texture_um_ = 0;
  std::vector<double> densities_;
  std::vector<std::size_t> ends_;  ///< by source: node from which on it leaves nothing
  std::vector<double> found_;
  std::vector<std::vector<double>> missed_;
  DepthTally tally_;
  double least_shown_ = std::numeric_limits<double>::infinity();
};

}  // namespace detail

}  // namespace levigate
