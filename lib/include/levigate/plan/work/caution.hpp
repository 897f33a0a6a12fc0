// The work behind plan/caution.hpp: defines what it declares.
#pragma once

#include <string>
#include <vector>

#include "levigate/plan/caution.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/surface/coating.hpp"
#include "levigate/surface/coating_table.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK std::vector<Caution> cautions(const Job& job) {
  std::vector<Caution> result;
  const Coating& coating = job.coating;
  const bool coat = coating.kind == CoatingKind::coat;
  if (coat && coating.two_part.value_or(true)) {
    result.push_back(
        {"cure",
         std::string(coating.two_part ? "Two-part" : "If this is a two-part") +
             " coat: sand only when fully cured by its data sheet. Uncured hardener holds "
             "isocyanates, which sensitise for life; a dust mask does not stop their vapour."});
  }
  result.push_back(
      {"dust",
       "Sand wet where the work allows it. Dry dust: extraction and a fitted particle respirator "
       "of the class that the data sheet and local rules ask for (P100 or FFP3 is usual), eye "
       "protection, wet clean-up."});
  if (coat) {
    result.push_back(
        {"edges",
         "Edges and corners hold less film. Keep the block off them while levelling; sand them "
         "last in each grade, lightly, with a soft pad."});
  }
  result.push_back(
      {"rags",
       "Rags with drying oil or solvent can ignite by themselves: spread them flat to dry outdoors "
       "or keep them in a closed metal can with water, as local rules ask. No sparks near "
       "lacquer dust or solvent vapour."});
  result.push_back(
      {"authority", "Data sheet, local codes and licensed practice stand above this card."});
  return result;
}

}  // namespace levigate
