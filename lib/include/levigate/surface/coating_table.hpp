// Coatings and solids by name. Generated from data/profiles/coatings.json by data/generate.py: do not edit.
#pragma once

#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

/// Whether there is a film that can be cut through.
enum class CoatingKind {
  coat,   ///< a film on something else: it has a budget
  solid,  ///< bare wood, metal, stone, acrylic: no film
};

struct CoatingProfile {
  std::string_view name;
  std::string_view note;
  CoatingKind kind;
  bool two_part;
  Sourced hardness_mpa;
  Sourced wear_coefficient;
  Sourced refractive_index;
};

// clang-format off
inline constexpr CoatingProfile coating_table[] = {
    {"two-part urethane", "two-part polyurethane or acrylic urethane, fully cured",
     CoatingKind::coat,
     true,
     {150.0, 100.0, 250.0, {Basis::from_memory, "order of magnitude, from memory; a factor of 2 either way"}},  // hardness_mpa
     {0.02, 0.005, 0.05, {Basis::from_memory, "two-body abrasion 0.005 to 0.05, Hutchings, Tribology (1992), from memory; the value within it is chosen here"}},  // wear_coefficient
     {1.5, 1.48, 1.54, {Basis::from_memory, "usual index of clear binders, from memory"}},  // refractive_index
    },
    {"nitrocellulose lacquer", "",
     CoatingKind::coat,
     false,
     {120.0, 80.0, 180.0, {Basis::from_memory, "order of magnitude, from memory; a factor of 2 either way"}},  // hardness_mpa
     {0.02, 0.005, 0.05, {Basis::from_memory, "two-body abrasion 0.005 to 0.05, Hutchings, Tribology (1992), from memory; the value within it is chosen here"}},  // wear_coefficient
     {1.51, 1.49, 1.53, {Basis::from_memory, "usual index of clear binders, from memory"}},  // refractive_index
    },
    {"acrylic lacquer", "",
     CoatingKind::coat,
     false,
     {120.0, 80.0, 180.0, {Basis::from_memory, "order of magnitude, from memory; a factor of 2 either way"}},  // hardness_mpa
     {0.02, 0.005, 0.05, {Basis::from_memory, "two-body abrasion 0.005 to 0.05, Hutchings, Tribology (1992), from memory; the value within it is chosen here"}},  // wear_coefficient
     {1.49, 1.48, 1.51, {Basis::from_memory, "usual index of clear binders, from memory"}},  // refractive_index
    },
    {"polyester", "two-part polyester for wood",
     CoatingKind::coat,
     false,
     {200.0, 150.0, 250.0, {Basis::from_memory, "order of magnitude, from memory; a factor of 2 either way"}},  // hardness_mpa
     {0.02, 0.005, 0.05, {Basis::from_memory, "two-body abrasion 0.005 to 0.05, Hutchings, Tribology (1992), from memory; the value within it is chosen here"}},  // wear_coefficient
     {1.55, 1.53, 1.57, {Basis::from_memory, "usual index of clear binders, from memory"}},  // refractive_index
    },
    {"uv acrylic", "acrylate cured by ultraviolet light",
     CoatingKind::coat,
     false,
     {220.0, 150.0, 300.0, {Basis::from_memory, "order of magnitude, from memory; a factor of 2 either way"}},  // hardness_mpa
     {0.02, 0.005, 0.05, {Basis::from_memory, "two-body abrasion 0.005 to 0.05, Hutchings, Tribology (1992), from memory; the value within it is chosen here"}},  // wear_coefficient
     {1.51, 1.49, 1.54, {Basis::from_memory, "usual index of clear binders, from memory"}},  // refractive_index
    },
    {"water-borne", "water-borne acrylic or urethane dispersion for wood",
     CoatingKind::coat,
     false,
     {70.0, 40.0, 120.0, {Basis::from_memory, "order of magnitude, from memory; a factor of 2 either way"}},  // hardness_mpa
     {0.02, 0.005, 0.05, {Basis::from_memory, "two-body abrasion 0.005 to 0.05, Hutchings, Tribology (1992), from memory; the value within it is chosen here"}},  // wear_coefficient
     {1.49, 1.47, 1.52, {Basis::from_memory, "usual index of clear binders, from memory"}},  // refractive_index
    },
    {"shellac", "",
     CoatingKind::coat,
     false,
     {140.0, 100.0, 200.0, {Basis::from_memory, "order of magnitude, from memory; a factor of 2 either way"}},  // hardness_mpa
     {0.02, 0.005, 0.05, {Basis::from_memory, "two-body abrasion 0.005 to 0.05, Hutchings, Tribology (1992), from memory; the value within it is chosen here"}},  // wear_coefficient
     {1.52, 1.51, 1.53, {Basis::from_memory, "usual index of clear binders, from memory"}},  // refractive_index
    },
    {"oil varnish", "",
     CoatingKind::coat,
     false,
     {45.0, 20.0, 80.0, {Basis::from_memory, "order of magnitude, from memory; a factor of 2 either way"}},  // hardness_mpa
     {0.02, 0.005, 0.05, {Basis::from_memory, "two-body abrasion 0.005 to 0.05, Hutchings, Tribology (1992), from memory; the value within it is chosen here"}},  // wear_coefficient
     {1.52, 1.49, 1.55, {Basis::from_memory, "usual index of clear binders, from memory"}},  // refractive_index
    },
    {"epoxy", "cured epoxy",
     CoatingKind::coat,
     false,
     {220.0, 150.0, 300.0, {Basis::from_memory, "order of magnitude, from memory; a factor of 2 either way"}},  // hardness_mpa
     {0.02, 0.005, 0.05, {Basis::from_memory, "two-body abrasion 0.005 to 0.05, Hutchings, Tribology (1992), from memory; the value within it is chosen here"}},  // wear_coefficient
     {1.56, 1.54, 1.58, {Basis::from_memory, "usual index of clear binders, from memory"}},  // refractive_index
    },
    {"acrylic sheet", "cast or moulded PMMA, no film",
     CoatingKind::solid,
     false,
     {200.0, 182.0, 224.0, {Basis::published_table, "Vickers hardness 18.6 to 21.2 of PMMA denture base, divided by 0.927: Bahrani et al., World J. Dent. 3(2):171-175 (2012), doi 10.5005/jp-journals-10015-1151; Evaluation of the Vickers hardness of denture base materials (2016)"}},  // hardness_mpa
     {0.02, 0.005, 0.05, {Basis::from_memory, "two-body abrasion 0.005 to 0.05, Hutchings, Tribology (1992), from memory; the value within it is chosen here"}},  // wear_coefficient
     {1.49, 1.485, 1.495, {Basis::from_memory, "index of PMMA, from memory"}},  // refractive_index
    },
};
// clang-format on

}  // namespace levigate
