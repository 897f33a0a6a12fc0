// When coats are fully cured, by name. Generated from data/profiles/cure.json by data/generate.py: do not edit.
#pragma once

#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct CureProfile {
  std::string_view name;
  std::string_view note;
  Sourced hard_cure_h;
  Sourced shrink;
};

// clang-format off
inline constexpr CureProfile cure_table[] = {
    {"two-part urethane", "",
     {168.0, 72.0, 336.0, {Basis::common_practice, "about a week at room temperature; the data sheet decides"}},  // hard_cure_h
     {0.02, 0.0, 0.05, {Basis::assumption, "share of the film lost between dry and fully cured, solvent leaving slowly; no measurement at hand"}},  // shrink
    },
    {"nitrocellulose lacquer", "",
     {504.0, 336.0, 1008.0, {Basis::common_practice, "two to six weeks, three is usual; the data sheet decides"}},  // hard_cure_h
     {0.1, 0.03, 0.2, {Basis::assumption, "share of the film lost between dry and fully cured, solvent leaving slowly; no measurement at hand"}},  // shrink
    },
    {"acrylic lacquer", "",
     {504.0, 336.0, 1008.0, {Basis::common_practice, "two to six weeks, three is usual; the data sheet decides"}},  // hard_cure_h
     {0.08, 0.03, 0.2, {Basis::assumption, "share of the film lost between dry and fully cured, solvent leaving slowly; no measurement at hand"}},  // shrink
    },
    {"polyester", "",
     {72.0, 24.0, 168.0, {Basis::common_practice, "one to seven days; the data sheet decides"}},  // hard_cure_h
     {0.02, 0.0, 0.05, {Basis::assumption, "share of the film lost between dry and fully cured, solvent leaving slowly; no measurement at hand"}},  // shrink
    },
    {"uv acrylic", "",
     {24.0, 1.0, 48.0, {Basis::common_practice, "hard under the lamp, left for a day; the data sheet decides"}},  // hard_cure_h
     {0.01, 0.0, 0.03, {Basis::assumption, "share of the film lost between dry and fully cured, solvent leaving slowly; no measurement at hand"}},  // shrink
    },
    {"water-borne", "",
     {504.0, 168.0, 720.0, {Basis::common_practice, "one to four weeks; the data sheet decides"}},  // hard_cure_h
     {0.05, 0.02, 0.1, {Basis::assumption, "share of the film lost between dry and fully cured, solvent leaving slowly; no measurement at hand"}},  // shrink
    },
    {"shellac", "",
     {336.0, 72.0, 720.0, {Basis::common_practice, "days to a month, by the thickness of the film; the data sheet decides"}},  // hard_cure_h
     {0.08, 0.03, 0.15, {Basis::assumption, "share of the film lost between dry and fully cured, solvent leaving slowly; no measurement at hand"}},  // shrink
    },
    {"oil varnish", "",
     {720.0, 336.0, 1440.0, {Basis::common_practice, "a month, by drier and weather; the data sheet decides"}},  // hard_cure_h
     {0.05, 0.02, 0.1, {Basis::assumption, "share of the film lost between dry and fully cured, solvent leaving slowly; no measurement at hand"}},  // shrink
    },
    {"epoxy", "",
     {168.0, 72.0, 336.0, {Basis::common_practice, "about a week at room temperature; the data sheet decides"}},  // hard_cure_h
     {0.01, 0.0, 0.03, {Basis::assumption, "share of the film lost between dry and fully cured, solvent leaving slowly; no measurement at hand"}},  // shrink
    },
};
// clang-format on

}  // namespace levigate
