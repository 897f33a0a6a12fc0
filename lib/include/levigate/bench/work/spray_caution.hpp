// The cautions that belong to spraying.
#pragma once

#include <string>
#include <vector>

#include "levigate/plan/caution.hpp"
#include "levigate/surface/coating.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The cautions of spraying; those of sanding come with the plan.
inline std::vector<Caution> spray_cautions(const Coating& coating) {
  std::vector<Caution> result;
  if (coating.two_part.value_or(true)) {
    result.push_back(
        {"isocyanates",
         std::string(coating.two_part ? "Two-part" : "If this is a two-part") +
             " coat: its mist holds isocyanates, which sensitise for life. Spray it only with "
             "supplied air and the extraction that the data sheet asks for."});
  }
  result.push_back({"fire",
                    "Solvent vapour and mist burn and explode. Extract them, keep sparks and "
                    "flames away, and protect lungs, eyes and skin."});
  result.push_back({"authority",
                    "The data sheet decides on coats, thinning and protection. It comes before "
                    "this list, and so do local rules."});
  return result;
}

}  // namespace detail

}  // namespace levigate
