// How long the coat of a job must still stand.
#pragma once

#include <optional>

#include "levigate/detail/moment.hpp"
#include "levigate/plan/cure_wait.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/coat_of.hpp"

namespace levigate::inline v0 {

/// How long the coat of a job must still stand; none where it is cured.
inline std::optional<CureWait> cure_wait_of(const Job& job) {
  const CureState state = cure_of(job);
  if (state.hard) return std::nullopt;
  const double wait_h = state.hard_cure_h - state.age_h;
  return CureWait{job.age_at.empty() ? "" : detail::moment_after(job.age_at, wait_h), wait_h,
                  state.age_h, state.hard_cure_h};
}

}  // namespace levigate
