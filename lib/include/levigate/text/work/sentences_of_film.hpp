// Sentences on what a gauge says of a film.
#pragma once

#include <string>

#include "levigate/detail/text.hpp"
#include "levigate/film/agreement.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::string sentence_of(const Agreement& agreement) {
  if (!agreement.contradicts) return "";
  return "the gauge reads " + fixed(agreement.readings_um, 1) + " um where the coats make " +
         fixed(agreement.coats_um, 1) + " um: " + fixed(agreement.sigmas, 1) +
         " standard uncertainties of " + fixed(agreement.uncertainty_um, 1) +
         " um apart; one of the two is wrong";
}

}  // namespace detail

}  // namespace levigate
