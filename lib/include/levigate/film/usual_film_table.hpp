// A film that nobody measured. Generated from data/profiles/films.json by data/generate.py: do not edit.
#pragma once

#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct UsualFilmProfile {
  std::string_view name;
  std::string_view note;
  Sourced film_cv;
};

// clang-format off
inline constexpr UsualFilmProfile usual_film_table[] = {
    {"default", "",
     {0.1, 0.05, 0.15, {Basis::assumption, "spread from spot to spot over the mean, where nobody told it; above the 0.08 of a gun in crossed passes, as a plan counts it as known; chosen here"}},  // film_cv
    },
};

inline constexpr TableField<UsualFilmProfile> usual_film_columns[] = {
    {"film_cv", &UsualFilmProfile::film_cv},
};
// clang-format on

}  // namespace levigate
