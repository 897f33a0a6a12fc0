// What the search may choose, and what it calls equal. Generated from data/profiles/search.json by data/generate.py: do not edit.
#pragma once

#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct SearchProfile {
  std::string_view name;
  std::string_view note;
  Sourced equal_percent;
  Sourced overcut_more;
  Sourced overcut_most;
};

// clang-format off
inline constexpr SearchProfile search_table[] = {
    {"default", "",
     {3.0, 1.0, 5.0, {Basis::assumption, "minutes no further apart count as equal: what the sun shows is not known better"}},  // equal_percent
     {1.5, 1.2, 1.8, {Basis::assumption, "second of three overcuts that the search may give a step, over the least"}},  // overcut_more
     {2.0, 1.8, 3.0, {Basis::assumption, "last of the three: as long again, as the trade sands"}},  // overcut_most
    },
};

inline constexpr TableField<SearchProfile> search_columns[] = {
    {"equal_percent", &SearchProfile::equal_percent},
    {"overcut_more", &SearchProfile::overcut_more},
    {"overcut_most", &SearchProfile::overcut_most},
};
// clang-format on

}  // namespace levigate
