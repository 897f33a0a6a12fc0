// How a sheet touches a film: how many grain tips press in, and how deep, under a given pressure.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "levigate/detail/normal.hpp"
#include "levigate/detail/quadrature.hpp"
#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"
#include "levigate/surface/model_table.hpp"

namespace levigate::inline v0 {

/// A sheet on a film. The spread of the tips, sqrt(tip_spread^2 + (log_spread / 2)^2), must be at
/// least 0.001: below that all tips would be level and none would stand out.
struct ContactInput {
  double size_um;       ///< median grain size d [um], 0.01 to 10 000
  double log_spread;    ///< standard deviation of ln(grain size) (dimensionless), 0 to 1
  double tip_spread;    ///< sd of tip heights due to the backing, over d (dimensionless), 0 to 1
  double modulus_mpa;   ///< of the backing at the scale of a grain [MPa], 0.01 to infinity (rigid)
  double pressure_kpa;  ///< mean pressure [kPa], 0.01 to 1000
  double hardness_mpa;  ///< indentation hardness of the film [MPa], 1 to 100 000
  double flank_deg =
      model_table[0].flank_deg.value;  ///< angle of a tip's flank with the surface [deg], 1 to 80
  double packing = model_table[0].packing.value;  ///< tips per d^2 (dimensionless), 0.01 to 1
};

/// The solved contact: see contact(). Its numbers are NaN if a member of the input was.
class Contact {
 public:
  /// Tips that touch the film [1/mm2].
  double active_per_mm2() const noexcept { return tips_per_mm2_ * active_share_; }

  /// Share of all tips that touch the film (dimensionless), 0 to 1.
  double active_share() const noexcept { return active_share_; }

  /// Mean depth of the active tips [um].
  double mean_depth_um() const noexcept { return spread_um_ * mean_depth_; }

  /// Root mean square depth of the active tips [um].
  double rms_depth_um() const noexcept { return spread_um_ * rms_depth_; }

  /// Depth that the roughness of the sanded surface goes by, more than the mean as deep tips cut more:
  /// sqrt(E[delta^3] / E[delta^2] sqrt(E[delta^3] / E[delta])) [um]. See ra_um().
  double groove_depth_um() const noexcept { return spread_um_ * groove_depth_; }

  /// Height of the plane of the backing that tips must exceed to touch, above the mean tip [um].
  double plane_height_um() const noexcept { return spread_um_ * plane_; }

  /// Load that the tips carry over the load applied, minus 1 (dimensionless); at most 1e-12.
  double load_residual() const noexcept { return load_residual_; }

  /// Depth that a share q of the active tips do not exceed.
  ///
  /// @param q   share (dimensionless), 0 to 1
  /// @return    depth [um]
  /// Throws:    OutOfRange where q is outside its range
  /// NaN:       NaN in, NaN out
  /// Accuracy:  1e-8 relative for q from 1e-6 to 1 - 1e-6, 1e-11 from 1e-3 on
  /// Source:    see contact()
  double depth_um(double q) const {
    if (detail::any_nan(q, plane_)) return std::nan("");
    detail::require_range(q, 0.0, 1.0, "q", "", "Contact::depth_um");
    const double above = (1.0 - q) * active_share_ + cut_tail();
    const double below = q * active_share_ + detail::normal_tail(-plane_);
    const double height =
        above < below ? detail::normal_quantile(above) : -detail::normal_quantile(below);
    return spread_um_ * (base_depth_ + rise(std::clamp(height, plane_, cut)));
  }

  /// Share of the active tips that are deeper than depth_um.
  ///
  /// @param depth_um  depth [um], any
  /// @return          share (dimensionless), 0 to 1
  /// Throws:    nothing
  /// NaN:       NaN in, NaN out
  /// Accuracy:  1e-7 relative down to shares that leave 1e-12 of all tips
  /// Source:    see contact()
  double exceedance(double depth_um) const {
    if (detail::any_nan(depth_um, plane_)) return std::nan("");
    const double rise = std::max(depth_um, 0.0) / spread_um_ - base_depth_;
    const double height = base_height_ + rise * (slope_ + softness_ * rise);
    if (height >= cut) return 0.0;
    return std::min(1.0, (detail::normal_tail(height) - cut_tail()) / active_share_);
  }

 private:
  friend Contact contact(const ContactInput& input);

  // Everything is scaled by the spread s of the tip heights: plane, heights and depths are in units
  // of s, and a tip at height h above the plane z sinks in by t with h - z = t + softness t^2.
  // Heights end at cut; those below -floor_height carry nothing that a double could hold. With
  // b = max(z, floor), its depth t_b and slope_ = dh/dt there, h = b + r (slope_ + softness r) for
  // r = t - t_b: this form neither cancels for a plane at -1e9 nor has the root that t(h) has at z.
  static constexpr double cut = 8.0;
  static constexpr double floor_height = -9.0;
  static double cut_tail() { return detail::normal_tail(cut); }

  struct Moments {
    double load;        ///< integral of t^2 over the heights
    double load_slope;  ///< -d load / d plane
    double depth;       ///< integral of t
    double cube;        ///< integral of t^3
  };

  Contact() = default;

  void set_plane(double plane) {
    plane_ = plane;
    base_height_ = std::max(plane, floor_height);
    const double gap = base_height_ - plane;
    slope_ = std::sqrt(1.0 + 4.0 * softness_ * gap);
    base_depth_ = 2.0 * gap / (1.0 + slope_);
  }

  /// r at a height: the depth there less the depth at base_height_.
  double rise(double height) const {
    const double above = height - base_height_;
    return 2.0 * above / (slope_ + std::sqrt(slope_ * slope_ + 4.0 * softness_ * above));
  }

  Moments moments() const {
    constexpr int panels = 6;
    Moments sum{};
    detail::for_each_node(0.0, rise(cut), panels, [&](double r, double weight) {
      const double t = base_depth_ + r;
      const double height = base_height_ + r * (slope_ + softness_ * r);
      const double density = weight * detail::normal_density(height);
      const double tips = density * (slope_ + 2.0 * softness_ * r);
      sum.load += tips * t * t;
      sum.load_slope += density * 2.0 * t;
      sum.depth += tips * t;
      sum.cube += tips * t * t * t;
    });
    return sum;
  }

  static constexpr double nan = std::numeric_limits<double>::quiet_NaN();
  double tips_per_mm2_ = nan;
  double spread_um_ = nan;
  double softness_ = nan;
  double plane_ = nan;
  double base_height_ = nan;
  double base_depth_ = nan;
  double slope_ = nan;
  double active_share_ = nan;
  double mean_depth_ = nan;
  double rms_depth_ = nan;
  double groove_depth_ = nan;
  double load_residual_ = nan;
};

/// Solves the balance between the pressure on a sheet and the load that its grain tips carry.
///
/// Tips stand at Gaussian heights h of standard deviation s = d sqrt(tip_spread^2 +
/// (log_spread / 2)^2), cut off at 8 s, packing / d^2 of them per area. Each is a cone whose front
/// half carries F = A delta^2 at depth delta, A = pi H / (2 tan^2 flank), on a spring
/// k = modulus d. With the backing at height z a tip at h > z sinks in by delta, where
/// h - z = delta + A delta^2 / k; z follows from
///
///   packing / d^2 * integral over h of A delta(h - z)^2 N(h; 0, s) = P
///
/// delta^2 is log-concave in h, so the load is log-concave in z (Prekopa) and Newton's iteration on
/// its logarithm, started where all tips at the mean height would carry P, cannot fail.
///
/// @code
/// const Contact touch = contact({.size_um = grade("P600").median_um,
///                                .log_spread = 0.2,
///                                .tip_spread = 0.15,
///                                .modulus_mpa = 20,
///                                .pressure_kpa = 2,
///                                .hardness_mpa = 200});
/// touch.mean_depth_um();   // 0.24
/// touch.active_per_mm2();  // 3.2
/// @endcode
///
/// @param input  sheet, pressure and film; see ContactInput for units and ranges
/// @return       the contact; depths [um], densities [1/mm2]
/// Throws:    OutOfRange where a member or the spread of the tips is outside its range
/// NaN:       NaN in, a Contact of NaN out
/// Accuracy:  load balanced to 1e-12 relative over the whole domain; mean depth and density to 1e-11
/// Complexity: about 5 Newton steps of 96 exponentials, 5 us
/// Source:    Gaussian heights and force balance: Xi & Zhou, Int. J. Mach. Tools Manuf. 45:365-372
///            (2005); cone with its front half in contact, from memory: Rabinowicz, Friction and
///            Wear of Materials; a spring per grain: assumption
inline Contact contact(const ContactInput& input) {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  constexpr auto where = "contact";
  Contact result;
  if (detail::any_nan(input.size_um, input.log_spread, input.tip_spread, input.modulus_mpa,
                      input.pressure_kpa, input.hardness_mpa, input.flank_deg, input.packing)) {
    return result;
  }
  detail::require_range(input.size_um, 0.01, 1e4, "size_um", "um", where);
  detail::require_range(input.log_spread, 0.0, 1.0, "log_spread", "", where);
  detail::require_range(input.tip_spread, 0.0, 1.0, "tip_spread", "", where);
  detail::require_range(input.modulus_mpa, 0.01, infinity, "modulus_mpa", "MPa", where);
  detail::require_range(input.pressure_kpa, 0.01, 1e3, "pressure_kpa", "kPa", where);
  detail::require_range(input.hardness_mpa, 1.0, 1e5, "hardness_mpa", "MPa", where);
  detail::require_range(input.flank_deg, 1.0, 80.0, "flank_deg", "deg", where);
  detail::require_range(input.packing, 0.01, 1.0, "packing", "", where);
  const double spread = std::hypot(input.tip_spread, 0.5 * input.log_spread);  // s / d
  detail::require_range(spread, 1e-3, 2.0, "spread of the tips", "", where);

  const double tangent = std::tan(input.flank_deg * (std::numbers::pi / 180.0));
  const double cone_mpa = std::numbers::pi * input.hardness_mpa / (2.0 * tangent * tangent);
  const double pressure_mpa = 1e-3 * input.pressure_kpa;
  const double load = pressure_mpa / (input.packing * spread * spread * cone_mpa);
  result.tips_per_mm2_ = 1e6 * input.packing / (input.size_um * input.size_um);
  result.spread_um_ = input.size_um * spread;
  result.softness_ = cone_mpa * spread / input.modulus_mpa;
  result.set_plane(-(std::sqrt(load) + result.softness_ * load));

  Contact::Moments moments = result.moments();
  constexpr int most_steps = 50;  // 10 are enough on the whole domain
  for (int step = 0; step < most_steps; ++step) {
    const double ratio = moments.load / load;
    result.load_residual_ = ratio - 1.0;
    if (std::abs(result.load_residual_) <= 1e-13) break;
    const double next = result.plane_ + std::log(ratio) * moments.load / moments.load_slope;
    result.set_plane(next < Contact::cut ? next : 0.5 * (result.plane_ + Contact::cut));
    moments = result.moments();
  }
  result.active_share_ = detail::normal_tail(result.plane_) - Contact::cut_tail();
  result.mean_depth_ = moments.depth / result.active_share_;
  result.rms_depth_ = std::sqrt(moments.load / result.active_share_);
  result.groove_depth_ =
      std::sqrt(moments.cube / moments.load * std::sqrt(moments.cube / moments.depth));
  return result;
}

}  // namespace levigate
