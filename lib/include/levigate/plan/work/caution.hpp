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
             " coat: sand it only when it is fully cured by its data sheet. Uncured hardener holds "
             "isocyanates. They sensitise for life. A dust mask does not stop their vapour."});
  }
  result.push_back(
      {"dust",
       "Sand wet where the work allows it. For dry dust use extraction, eye protection and a "
       "fitted particle respirator. The data sheet and local rules give its class (P100 or FFP3 "
       "is usual). Clean up wet."});
  if (coat) {
    result.push_back(
        {"edges",
         "Edges and corners hold less film. Keep the block off them while levelling. Sand them "
         "last in each grade, lightly, with a soft pad."});
  }
  result.push_back(
      {"rags",
       "Rags with drying oil or solvent can ignite by themselves. Spread them flat outdoors to "
       "dry, or keep them in a closed metal can with water. Follow local rules. Keep sparks away "
       "from lacquer dust and solvent vapour."});
  result.push_back(
      {"authority", "The data sheet, local codes and licensed practice come before this card."});
  return result;
}

}  // namespace levigate
