// Runs, sags, nibs and ridges: taken down one by one before the levelling step.
#pragma once

#include <string>
#include <vector>

#include "levigate/plan/bench.hpp"

namespace levigate::inline v0 {

/// Work on the defects of one kind in a zone, before the first step.
struct LocalStep {
  std::string zone;
  Defect defect;
  std::string block;  ///< that does it
  LocalWork work;     ///< how, how long, and what sanding them out flat would cost instead
};

/// The work on all defects of a job, with the sheet that comes first. See take_down().
inline std::vector<LocalStep> local_steps(const Bench& bench, std::size_t first) {
  std::vector<LocalStep> result;
  for (std::size_t i = 0; i < bench.job.zones.size(); ++i) {
    const Zone& zone = bench.job.zones[i];
    for (const Defect& defect : zone.defects) {
      const LocalTools tools = local_tools(bench, i, first);
      result.push_back({zone.name, defect, tools.small_block.block.name, take_down(defect, tools)});
    }
  }
  return result;
}

}  // namespace levigate
