// How well the size of a grade is known.
#pragma once

#include "levigate/grade/grade.hpp"
#include "levigate/source.hpp"
#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

namespace detail {

/// A number given by the user: its band is not known.
inline Sourced given(double value) {
  return {value, value, value, {Basis::user, "given by the user"}};
}

/// The band of a grade's median: its tolerance where known; else what the two published CAMI series differ by (3 %), or
/// for an extrapolation what the printed grades leave open (about 12 %).
inline Sourced median_band(const Grade& grade) {
  Sourced band = given(grade.median_um);
  band.source = grade.median_source;
  double half_um = grade.median_um * (grade.basis() == Basis::extrapolated ? 0.12 : 0.03);
  if (grade.basis() == Basis::user) half_um = 0;
  if (grade.tolerance_um) half_um = *grade.tolerance_um;
  band.low -= half_um;
  band.high += half_um;
  return band;
}

}  // namespace detail

}  // namespace levigate
