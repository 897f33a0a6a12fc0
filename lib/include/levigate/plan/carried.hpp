// What a zone carries now: the scratches of a grade, and how deep and how rough they are where that is known.
#pragma once

#include <optional>
#include <string_view>

#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"

namespace levigate::inline v0 {

/// The state of a zone that was sanded. What is not known of it is taken from the grade.
struct Carried {
  Grade grade;                            ///< whose scratches these are
  std::optional<double> scratch_um = {};  ///< their depth [um], 0 to 1000
  std::optional<double> rq_um = {};       ///< roughness of the surface [um], 0 to 1000
  std::optional<double> worn_um = {};     ///< of a compound: its grain once broken down [um]

  friend bool operator==(const Carried&, const Carried&) = default;
};

/// The size of the grain that made the scratches [um].
inline double grain_um(const Carried& carried) {
  return carried.worn_um.value_or(carried.grade.median_um);
}

/// Throws: OutOfRange where a member is outside its range.
inline void validate(const Carried& carried, std::string_view where) {
  detail::require_range(carried.grade.median_um, 0.01, 1e4, "size_um", "um", where);
  if (carried.scratch_um)
    detail::require_range(*carried.scratch_um, 0.0, 1e3, "scratch_um", "um", where);
  if (carried.rq_um) detail::require_range(*carried.rq_um, 0.0, 1e3, "rq_um", "um", where);
  if (carried.worn_um)
    detail::require_range(*carried.worn_um, 0.01, carried.grade.median_um, "worn_um", "um", where);
}

}  // namespace levigate
