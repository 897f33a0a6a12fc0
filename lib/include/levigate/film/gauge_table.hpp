// Film gauges by name. Generated from data/profiles/gauges.json by data/generate.py: do not edit.
#pragma once

#include <span>
#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct GaugeProfile {
  std::string_view name;
  std::string_view note;
  std::span<const std::string_view> also;  ///< other names that people call it by
  Sourced fixed_um;
  Sourced share;
};

// clang-format off
inline constexpr std::string_view gauge_also_0[] = {"ultrasound", "ultrasonic gauge", "gauge"};

inline constexpr GaugeProfile gauge_table[] = {
    {"ultrasonic", "coats on wood; layers of alike density are read as one",
     gauge_also_0,  // also
     {2.0, 1.0, 5.0, {Basis::from_memory, "usual accuracy of 2 um + 3 %, from memory; the gauge's own sheet decides"}},  // fixed_um
     {0.03, 0.01, 0.05, {Basis::from_memory, "usual accuracy of 2 um + 3 %, from memory; the gauge's own sheet decides"}},  // share
    },
    {"wet comb", "dry film worked out from the wet film, the volume solids and the thinner",
     {},  // also
     {5.0, 2.0, 12.0, {Basis::assumption, "about half a step of the comb's teeth, as dry film"}},  // fixed_um
     {0.1, 0.05, 0.2, {Basis::assumption, "solids, thinner and overspray are known to about a tenth"}},  // share
    },
    {"coats counted", "number of coats times what a coat usually leaves",
     {},  // also
     {0.0, 0.0, 5.0, {Basis::assumption, "the error grows with the film"}},  // fixed_um
     {0.15, 0.08, 0.3, {Basis::assumption, "half-width: hands, spray guns and thinning leave a coat 15 % thinner or thicker"}},  // share
    },
};

inline constexpr TableField<GaugeProfile> gauge_columns[] = {
    {"fixed_um", &GaugeProfile::fixed_um},
    {"share", &GaugeProfile::share},
};
// clang-format on

}  // namespace levigate
