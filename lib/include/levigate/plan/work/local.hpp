// Taking the defects of a job down, with the sheet that comes first.
#pragma once

#include <cstddef>
#include <vector>

#include "levigate/plan/job.hpp"
#include "levigate/plan/local.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/surface/defect.hpp"
#include "levigate/surface/take_down.hpp"

namespace levigate::inline v0 {

/// The work on all defects of a job, with the sheet that comes first. See take_down().
inline std::vector<LocalStep> local_steps(const Workings& workings, std::size_t first) {
  std::vector<LocalStep> result;
  for (std::size_t i = 0; i < workings.job.zones.size(); ++i) {
    const Zone& zone = workings.job.zones[i];
    for (const Defect& defect : zone.defects) {
      const LocalTools tools = local_tools(workings, i, first);
      result.push_back({zone.name, defect, tools.small_block.block.name, take_down(defect, tools)});
    }
  }
  return result;
}

}  // namespace levigate
