// Runs, sags, drips, nibs and ridges: what stands proud of the film in one place, and its volume.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <string_view>

#include "levigate/describe.hpp"
#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"
#include "levigate/faults.hpp"

namespace levigate::inline v0 {

/// What stands proud of the film.
enum class DefectKind {
  run,
  sag,
  drip,   ///< round: the end of a run, a drop
  nib,    ///< round: dust in the film
  ridge,  ///< along an opening or an edge
};

constexpr std::string_view to_string(DefectKind kind) noexcept {
  switch (kind) {
    case DefectKind::run: return "run";
    case DefectKind::sag: return "sag";
    case DefectKind::drip: return "drip";
    case DefectKind::nib: return "nib";
    case DefectKind::ridge: return "ridge";
  }
  return "";
}

inline constexpr auto all_defect_kinds = std::to_array(
    {DefectKind::run, DefectKind::sag, DefectKind::drip, DefectKind::nib, DefectKind::ridge});

template <>
inline constexpr auto choices<DefectKind> = all_defect_kinds;

/// Something that stands proud of the film in one place.
struct Defect {
  DefectKind kind = DefectKind::run;
  double height_um = 0;
  double width_mm = 0;
  double length_mm = 0;
  int count = 1;

  friend bool operator==(const Defect&, const Defect&) = default;
};

namespace detail {

/// Throws: BadInput where it is wider than long.
inline void longer_than_wide(const Defect& defect, std::string_view where) {
  if (!(defect.width_mm > defect.length_mm)) return;
  throw BadInput::of("width_mm",
                     "width_mm = " + number_text(defect.width_mm) +
                         " mm is more than length_mm = " + number_text(defect.length_mm) +
                         " mm: the longer side is the length, in " + std::string(where),
                     {"length_mm"});
}

}  // namespace detail

template <std::same_as<Defect> Value>
inline constexpr auto described<Value> =
    describe<Value>("Defect", "What stands proud of the film in one place.",
                    member<&Value::kind>("kind", "of defect; drips and nibs are round"),
                    member<&Value::height_um>("height_um", Within{0.1, 1e4},
                                              "above the film beside it"),
                    member<&Value::width_mm>("width_mm", Within{0.01, 1e3},
                                             "across, the shorter side"),
                    member<&Value::length_mm>("length_mm", Within{0.01, 1e5}, "along"),
                    member<&Value::count>("count", Within{1, 1e4}, "how many equal ones"))
        .rule(rule_by<&detail::longer_than_wide>);

/// Height of a defect from two readings of a film gauge.
///
///   height = over - beside
///
/// @param over_um         reading on its top [um], 0 to 20 000
/// @param beside_um       reading beside it [um], 0 to 20 000
/// @param uncertainty_um  standard uncertainty of the difference [um], 0 to 20 000
/// @return                height [um]
/// Throws:    OutOfRange where an argument is outside its range; BadInput where the height is not
///            positive or is smaller than its uncertainty
/// NaN:       rejected as OutOfRange
/// Accuracy:  1 ulp; an error that both readings share cancels
/// Source:    arithmetic
inline double height_from_readings_um(double over_um, double beside_um, double uncertainty_um) {
  constexpr auto where = "height_from_readings_um";
  detail::require_range(over_um, 0.0, 2e4, "over_um", "um", where);
  detail::require_range(beside_um, 0.0, 2e4, "beside_um", "um", where);
  detail::require_range(uncertainty_um, 0.0, 2e4, "uncertainty_um", "um", where);
  const double height = over_um - beside_um;
  const std::string readings = "over_um = " + detail::number_text(over_um) +
                               " um and beside_um = " + detail::number_text(beside_um) + " um";
  if (height <= 0.0) {
    throw BadInput::of("over_um", readings + " show nothing that stands proud, in " + where,
                       {"beside_um"});
  }
  if (height < uncertainty_um) {
    throw BadInput::of("over_um",
                       readings + " differ by less than their uncertainty of " +
                           detail::number_text(uncertainty_um) + " um, in " + where,
                       {"beside_um"});
  }
  return height;
}

namespace detail {

/// Round ones are caps, V = pi/8 h w l; the rest are parabolic in section, V = 2/3 h w l.
inline bool is_round(DefectKind kind) {
  return kind == DefectKind::nib || kind == DefectKind::drip;
}

}  // namespace detail

/// Volume of one defect that lies above a height.
///
///   V(z) = V (1 - z/h)^n
///   run, sag, ridge: parabolic section,    V = 2/3 h w l,   n = 3/2
///   nib, drip:       elliptic paraboloid,  V = pi/8 h w l,  n = 2
///
/// @param defect  see Defect for units and ranges
/// @param z_um    height above the film beside it z [um], any; 0 for the whole volume
/// @return        volume [mm3]
/// Throws:    OutOfRange, BadInput where the defect is not valid
/// NaN:       rejected as OutOfRange
/// Accuracy:  8 ulp; as a model of a run, a third either way (rectangle 3/2, triangle 3/4 of it)
/// Source:    geometry; the parabola is an assumption
inline double volume_above_mm3(const Defect& defect, double z_um) {
  constexpr auto where = "volume_above_mm3";
  validate(defect, where);
  detail::require_range(z_um, -1e300, 1e300, "z_um", "um", where);
  const bool cap = detail::is_round(defect.kind);
  const double left = std::clamp((defect.height_um - z_um) / defect.height_um, 0.0, 1.0);
  const double shape =
      cap ? std::numbers::pi / 8.0 * left * left : 2.0 / 3.0 * left * std::sqrt(left);
  return shape * 1e-3 * defect.height_um * defect.width_mm * defect.length_mm;
}

}  // namespace levigate
