// What a zone carries now: the scratches of a grade, and how deep and how rough they are where that is known.
#pragma once

#include <optional>
#include <string_view>

#include "levigate/error.hpp"
#include "levigate/faults.hpp"
#include "levigate/grade/grade.hpp"

namespace levigate::inline v0 {

/// The state of a zone that was sanded. What is not known of it is taken from the grade.
struct Carried {
  Grade grade;
  std::optional<double> scratch_um{};
  std::optional<double> rq_um{};
  std::optional<double> worn_um{};

  friend bool operator==(const Carried&, const Carried&) = default;
};

/// The size of the grain that made the scratches [um].
inline double grain_um(const Carried& carried) {
  return carried.worn_um.value_or(carried.grade.median_um);
}

/// Throws: OutOfRange where the grade has no size, or its worn grain is larger than its fresh one.
inline void require_grain(const Carried& carried, std::string_view where) {
  detail::require_range(carried.grade.median_um, 0.01, 1e4, "size_um", "um", where);
  if (carried.worn_um)
    detail::require_range(*carried.worn_um, 0.01, carried.grade.median_um, "worn_um", "um", where);
}

template <std::same_as<Carried> Value>
inline constexpr auto described<Value> =
    describe<Value>("Carried", "What a zone carries: scratches of a grade.",
                    member<&Value::grade>("grade", "whose scratches these are"),
                    member<&Value::scratch_um>("scratch_um", Within{0, 1e3}, "their depth"),
                    member<&Value::rq_um>("rq_um", Within{0, 1e3}, "roughness of the surface"),
                    member<&Value::worn_um>("worn_um", Within{0.01, 1e4},
                                            "of a compound: its grain once broken down"))
        .rule(rule_by<&require_grain>);

}  // namespace levigate
