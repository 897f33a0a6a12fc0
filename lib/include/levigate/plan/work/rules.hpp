// The work behind plan/rules.hpp: defines what it declares.
#pragma once

#include <vector>

#include "levigate/plan/rules.hpp"

#include "levigate/detail/normal.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/plan/search_table.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK double overcut_of(const Rules& rules) {
  if (rules.overcut) return *rules.overcut;
  constexpr double most = 20.0;
  const double kept = 1.0 - detail::normal_quantile(rules.short_share) * rules.removed_cv;
  if (kept * most < 1.0) {
    throw BadInput::of("removed_cv",
                       "removed_cv is too large for short_share: a step would take off more than "
                       "20 times the scratches before it; state overcut, in rules");
  }
  return 1.0 / kept;
}

LEVIGATE_WORK std::vector<double> overcuts_of(const Rules& rules) {
  const double least = overcut_of(rules);
  if (rules.overcut) return {least};
  const SearchProfile& search = search_table[0];
  return {least, search.overcut_more.value * least, search.overcut_most.value * least};
}

}  // namespace levigate
