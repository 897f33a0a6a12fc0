// A coat that is not fully cured: how soft it still is, and what that does to scratches and film.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "levigate/faults.hpp"
#include "levigate/surface/contact.hpp"

namespace levigate::inline v0 {

/// Hardness of a coat at an age.
struct HardnessPoint {
  double hours = 0;
  double hardness_mpa = 0;

  friend bool operator==(const HardnessPoint&, const HardnessPoint&) = default;
};

/// How a coat cures. The data sheet decides; the profiles say what is usual.
struct Cure {
  double hard_cure_h = 0;
  double shrink = 0;
  std::vector<HardnessPoint> points;

  friend bool operator==(const Cure&, const Cure&) = default;
};

struct CoatingProfile;

namespace detail {

/// The cure of a profile, where one is known.
std::optional<Cure> cure_of(const CoatingProfile& profile);

}  // namespace detail

/// Cure of the coating of that name in the profiles, without points.
/// Throws: BadInput where there is none, naming the nearest.
Cure cure_named(std::string_view name);

/// Throws: BadInput unless ages rise and hardness does not fall from point to point.
void require_hardening(const Cure& cure, std::string_view where);

template <std::same_as<HardnessPoint> Value>
inline constexpr auto described<Value> = describe<Value>(
    "HardnessPoint", "Hardness of a coat at an age.",
    member<&Value::hours>("hours", Within{0.01, 1e6}, "since the last coat"),
    member<&Value::hardness_mpa>("hardness_mpa", Within{1, 1e5}, "indentation hardness"));

template <std::same_as<Cure> Value>
inline constexpr auto described<Value> =
    describe<Value>(
        "Cure", "How a coat cures. The data sheet decides.",
        member<&Value::hard_cure_h>("hard_cure_h", Within{0.01, 1e6}, "age of full cure"),
        member<&Value::shrink>("shrink", Within{0, 0.9}, "share of the dry film lost by then")
            .optional(),
        member<&Value::points>("points", "hardness by rising age; empty where nothing is known")
            .optional())
        .rule(rule_by<&require_hardening>);

/// Hardness at an age, and whether the points reach that far.
struct AgedHardness {
  double hardness_mpa = 0;
  std::optional<double> first_h{};  ///< age of the first point, where it is younger than that [h]
  std::optional<double> last_h{};   ///< age of the last point, where it is older than that [h]
};

/// Hardness of a coat at an age, between its points linear in the logarithm of the age.
///
///   H(t) = H_i + (H_(i+1) - H_i) ln(t / t_i) / ln(t_(i+1) / t_i)
///
/// Outside the points that of the nearest, with the age of that point.
///
/// @param cure   with at least one point; see Cure for units and ranges
/// @param age_h  since the last coat [h], 0 to 1e6
/// @return       hardness [MPa]
/// Throws:    BadInput without points; OutOfRange, BadInput where an argument is not valid
/// NaN:       rejected as OutOfRange
/// Accuracy:  4 ulp between the points; monotone
/// Source:    the logarithm is an assumption: a cure slows as it goes
AgedHardness hardness_at(const Cure& cure, double age_h);

/// A coat at its age against the same coat cured. Estimates are absent where no hardness is known.
struct CureState {
  bool hard = false;                     ///< as old as hard_cure_h
  double age_h = 0;                      ///< since the last coat [h]
  double hard_cure_h = 0;                ///< age of full cure [h]
  std::optional<double> hardness_ratio;  ///< hardness now over that at hard_cure_h (dimensionless)
  std::optional<double> scratch_ratio;   ///< scratch depth now over that when cured (dimensionless)
  std::optional<double> first_h;         ///< as AgedHardness has it
  std::optional<double> last_h;
  double shrink_left = 0;  ///< share of the film still to be lost, at most
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
CureState cure_state(const Cure& cure, double age_h, const ContactInput& sheet, double quantile);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/surface/work/cure.hpp"
#endif
