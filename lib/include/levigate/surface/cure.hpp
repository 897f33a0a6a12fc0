// A coat that is not fully cured: how soft it still is, and what that does to scratches and film.
#pragma once

#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/detail/profile.hpp"
#include "levigate/detail/strict_math.hpp"
#include "levigate/detail/text.hpp"
#include "levigate/error.hpp"
#include "levigate/surface/contact.hpp"
#include "levigate/surface/cure_table.hpp"

namespace levigate::inline v0 {

/// Hardness of a coat at an age.
struct HardnessPoint {
  double hours = 0;         ///< since the last coat [h], 0.01 to 1e6
  double hardness_mpa = 0;  ///< indentation hardness [MPa], 1 to 100 000
};

/// How a coat cures. The data sheet decides; the profiles say what is usual.
struct Cure {
  double hard_cure_h = 0;  ///< age of full cure [h], 0.01 to 1e6
  double shrink = 0;       ///< share of the dry film lost by then (dimensionless), 0 to 0.9
  std::vector<HardnessPoint> points;  ///< by rising age; empty where nothing is known
};

/// Cure of the coating of that name in the profiles, without points.
/// Throws: BadInput where there is none, naming the nearest.
inline Cure cure_named(std::string_view name) {
  const CureProfile& p = detail::profile_named(cure_table, name, "cure");
  return {p.hard_cure_h.value, p.shrink.value, {}};
}

/// Throws: OutOfRange where a member is outside its range; BadInput unless ages rise and hardness does
/// not fall from point to point.
inline void validate(const Cure& cure, std::string_view where) {
  detail::require_range(cure.hard_cure_h, 0.01, 1e6, "hard_cure_h", "h", where);
  detail::require_range(cure.shrink, 0.0, 0.9, "shrink", "", where);
  for (std::size_t i = 0; i < cure.points.size(); ++i) {
    const HardnessPoint& point = cure.points[i];
    detail::require_range(point.hours, 0.01, 1e6, "hours", "h", where);
    detail::require_range(point.hardness_mpa, 1.0, 1e5, "hardness_mpa", "MPa", where);
    if (i == 0) continue;
    const HardnessPoint& before = cure.points[i - 1];
    if (point.hours <= before.hours || point.hardness_mpa < before.hardness_mpa) {
      throw BadInput("points[" + std::to_string(i) + "], " + detail::number_text(point.hours) +
                     " h and " + detail::number_text(point.hardness_mpa) +
                     " MPa, must be older and not softer than the one before, in " +
                     std::string(where));
    }
  }
}

/// Hardness at an age, and whether the points reach that far.
struct AgedHardness {
  double hardness_mpa = 0;
  std::string note;  ///< empty between the points
};

/// Hardness of a coat at an age, between its points linear in the logarithm of the age.
///
///   H(t) = H_i + (H_(i+1) - H_i) ln(t / t_i) / ln(t_(i+1) / t_i)
///
/// Outside the points that of the nearest, with a note that says so.
///
/// @param cure   with at least one point; see Cure for units and ranges
/// @param age_h  since the last coat [h], 0 to 1e6
/// @return       hardness [MPa]
/// Throws:    BadInput without points; OutOfRange, BadInput where an argument is not valid
/// NaN:       rejected as OutOfRange
/// Accuracy:  4 ulp between the points; monotone
/// Source:    the logarithm is an assumption: a cure slows as it goes
inline AgedHardness hardness_at(const Cure& cure, double age_h) {
  constexpr auto where = "hardness_at";
  validate(cure, where);
  detail::require_range(age_h, 0.0, 1e6, "age_h", "h", where);
  if (cure.points.empty()) {
    throw BadInput(std::string("points is empty: no hardness is known, in ") + where);
  }
  const HardnessPoint& first = cure.points.front();
  const HardnessPoint& last = cure.points.back();
  if (age_h < first.hours) {
    return {first.hardness_mpa, "younger than the first hardness, " +
                                    detail::number_text(first.hours) + " h: softer than this"};
  }
  if (age_h > last.hours) {
    return {last.hardness_mpa,
            "older than the last hardness, " + detail::number_text(last.hours) + " h"};
  }
  std::size_t i = 0;
  while (i + 1 < cure.points.size() && cure.points[i + 1].hours <= age_h) ++i;
  const HardnessPoint& before = cure.points[i];
  if (before.hours == age_h) return {before.hardness_mpa, ""};
  const HardnessPoint& after = cure.points[i + 1];
  const double part = std::log(age_h / before.hours) / std::log(after.hours / before.hours);
  return {std::lerp(before.hardness_mpa, after.hardness_mpa, part), ""};
}

/// A coat at its age against the same coat cured. Estimates are absent where no hardness is known.
struct CureState {
  bool hard = false;                     ///< as old as hard_cure_h
  std::optional<double> hardness_ratio;  ///< hardness now over that at hard_cure_h (dimensionless)
  std::optional<double> scratch_ratio;   ///< scratch depth now over that when cured (dimensionless)
  double shrink_left = 0;                ///< share of the film still to be lost, at most
  std::string text;                      ///< a sentence; empty where the coat is hard
};

/// What sanding a coat before it is hard means: soft film clogs the paper, takes deeper scratches, and
/// shrinks back afterwards.
///
///   scratch_ratio = depth(H now) / depth(H cured), by contact();   shrink_left = shrink (1 - H now / H cured)
///
/// Without hardness points shrink_left is the whole shrink.
///
/// @param cure      of the coat; see Cure for units and ranges
/// @param age_h     since the last coat [h], 0 to 1e6
/// @param sheet     on the film; its hardness is not used
/// @param quantile  of the scratch depth (dimensionless), 0 to 1
/// @return          the state; ratios and shrink dimensionless
/// Throws:    OutOfRange, BadInput where an argument is not valid
/// NaN:       rejected as OutOfRange, but that of the sheet gives NaN
/// Accuracy:  that of contact(); as a prediction that of the hardness points
/// Source:    contact(); that shrink goes with hardness is an assumption
inline CureState cure_state(const Cure& cure, double age_h, const ContactInput& sheet,
                            double quantile) {
  constexpr auto where = "cure_state";
  validate(cure, where);
  detail::require_range(age_h, 0.0, 1e6, "age_h", "h", where);
  detail::require_range(quantile, 0.0, 1.0, "quantile", "", where);
  CureState state;
  state.hard = age_h >= cure.hard_cure_h;
  if (state.hard) return state;
  state.shrink_left = cure.shrink;
  state.text = detail::fixed(age_h, 0) + " h old, fully cured at " +
               detail::fixed(cure.hard_cure_h, 0) +
               " h (the data sheet decides): soft film clogs, scratches deeper and shrinks back";
  if (!cure.points.empty()) {
    const AgedHardness now = hardness_at(cure, age_h);
    const double cured_mpa = hardness_at(cure, cure.hard_cure_h).hardness_mpa;
    const auto depth = [&](double hardness_mpa) {
      ContactInput input = sheet;
      input.hardness_mpa = hardness_mpa;
      return contact(input).depth_um(quantile);
    };
    state.hardness_ratio = now.hardness_mpa / cured_mpa;
    state.scratch_ratio = depth(now.hardness_mpa) / depth(cured_mpa);
    state.shrink_left = cure.shrink * (1.0 - *state.hardness_ratio);
    const std::string note = now.note.empty() ? "" : " (" + now.note + ")";
    state.text += "; " + detail::fixed(100 * *state.hardness_ratio, 0) + " % of its hardness" +
                  note + ", scratches " + detail::fixed(*state.scratch_ratio, 2) + " times as deep";
  }
  state.text +=
      "; up to " + detail::fixed(100 * state.shrink_left, 1) + " % of the film still to be lost";
  return state;
}

}  // namespace levigate
