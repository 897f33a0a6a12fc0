// What a glossmeter reads off a sanded film: the mirror image and the light that grooves throw into its receptor.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <string_view>

#include "levigate/choices.hpp"
#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"
#include "levigate/source.hpp"
#include "levigate/surface/sheen.hpp"

namespace levigate::inline v0 {

/// How the grooves lie to the plane of incidence, which holds the lamp, the receptor and the normal.
enum class Lay {
  across,  ///< at right angles to it: light scatters within the plane
  along,   ///< parallel to it: light scatters to the sides
};

constexpr std::string_view to_string(Lay lay) noexcept {
  switch (lay) {
    case Lay::across: return "across";
    case Lay::along: return "along";
  }
  return "";
}

template <>
inline constexpr auto choices<Lay> = std::to_array({Lay::across, Lay::along});

/// Angles that the receptor of a meter takes in on either side of the mirror image.
struct Receptor {
  double angle_deg;     ///< of incidence, from the normal [deg]
  double in_plane_deg;  ///< in the plane of incidence [deg]
  double sideways_deg;  ///< at right angles to it [deg]
  Source source;
};

inline constexpr auto receptors = std::to_array<Receptor>({
    {20.0, 0.9, 1.8, {Basis::from_memory, "ISO 2813, geometry of the meter"}},
    {60.0, 2.2, 5.85, {Basis::from_memory, "ISO 2813, geometry of the meter"}},
    {85.0, 2.0, 3.0, {Basis::from_memory, "ISO 2813, geometry of the meter"}},
});

/// A sanded film under a meter.
struct MeterInput {
  double refractive_index;  ///< of the film n (dimensionless), 1 to 4
  double angle_deg;         ///< of the meter [deg]: 20, 60 or 85
  double rq_um;             ///< root mean square roughness Rq across the lay [um], 0 to 1000
  double flank_deg;         ///< angle of the flanks of the grooves with the film [deg], 1 to 80
  Lay lay;
};

/// The four numbers of meter_reading_gu(), fitted to the exact two-point law of a surface of V grooves
/// at phases X from 0.1 to 10; see there.
inline constexpr double edges_per_rq = 0.97;
inline constexpr double edge_gain = 0.38;
inline constexpr double facet_gain = 0.06;
inline constexpr double gain_phase = 1.8;
inline constexpr Source meter_source{Basis::computed,
                                     "simulation, tests/property/meter_simulation_test.cpp"};

namespace detail {

/// Share of the light that lies within `reach` on either side of the mirror image, for grooves whose
/// Rq is `phase`. Wave numbers are in units of (tangent of the flank) / Rq.
inline double share_within(double phase, double reach) {
  if (phase < 1e-8) return 1.0;
  const double specular = std::exp(-phase * phase);
  const double scattered = -std::expm1(-phase * phase);
  const double u = phase / gain_phase;
  const double half = 2.0 * u / (1.0 + u * u);
  const double gain = half * half * half;  // 1 at gain_phase, 0 far from it
  const double facet = phase / std::sqrt(scattered) * (1.0 + facet_gain * gain);
  const double width = edges_per_rq * (1.0 + edge_gain * gain);  // always below facet
  const double centre = std::sqrt((facet - width) * (facet + width));
  const double above = reach + centre;
  const double below = reach - centre;
  const double width2 = width * width;
  const double lobes =
      std::atan(above / width) + std::atan(below / width) +
      0.5 * width / centre * std::log((width2 + above * above) / (width2 + below * below));
  return specular + scattered * std::clamp(lobes / std::numbers::pi, 0.0, 1.0);
}

/// The phase beyond which share_within(phase, ratio phase) rises again, for ratio above 1: there the
/// receptor takes in the mirror images in the flanks. The share has one minimum, and a golden section
/// in the logarithm of the phase finds it.
inline double phase_of_least_share(double ratio, double low) {
  constexpr double golden = 0.61803398874989485;
  constexpr double highest = 100.0;  // met where ratio is within 1e-4 of 1
  const auto share = [ratio](double log_phase) {
    const double phase = std::exp(log_phase);
    return share_within(phase, ratio * phase);
  };
  double from = std::log(low);
  double to = std::log(highest);
  double left = to - golden * (to - from);
  double right = from + golden * (to - from);
  double share_left = share(left);
  double share_right = share(right);
  while (to - from > 1e-4) {
    if (share_left < share_right) {
      to = right;
      right = left;
      share_right = share_left;
      share_left = share(left = to - golden * (to - from));
    } else {
      from = left;
      left = right;
      share_left = share_right;
      share_right = share(right = from + golden * (to - from));
    }
  }
  return std::exp(0.5 * (from + to));
}

inline const Receptor& receptor_at(double angle_deg) {
  for (const Receptor& receptor : receptors) {
    if (receptor.angle_deg == angle_deg) return receptor;
  }
  throw BadInput::of("angle_deg", "angle_deg = " + number_text(angle_deg) +
                                      " deg is no angle of a meter: it has 20, 60 and 85 deg");
}

}  // namespace detail

/// What a glossmeter reads off a film that grooves cover, in gloss units (GU).
///
/// Light is a wave reflected by the profile without shadows (scalar Kirchhoff). Its power over the
/// wave number q along the profile is the Fourier transform of C(t) = E[exp(i k (h(0) - h(t)))],
/// k = 4 pi cos i / lambda. Flanks have the slopes +-T, T = tan flank, and meet at edges. C(t) is
/// taken as that of a damped oscillator, which has the right height, curvature and kink at t = 0:
///
///   C = e^(-X^2) + (1 - e^(-X^2)) e^(-a s) (cos w s + a/w sin w s),   s = t T / Rq,  X = k Rq,
///   w^2 = b^2 - a^2,  b = X / sqrt(1 - e^(-X^2)) (1 + 0.06 B),  a = 0.97 (1 + 0.38 B),
///   B = (2 u / (1 + u^2))^3,  u = X / 1.8
///
/// a is the mean number of edges on a length Rq / T over 2; B and its gains are fitted. With
/// K = q Rq / T at the rim of the receptor, q = 2 pi cos i sin(dx) / lambda in the plane of incidence
/// and 2 pi sin(dx) / lambda sideways, the receptor takes in the share
///
///   S = e^(-X^2) + (1 - e^(-X^2)) / pi (atan((K + w)/a) + atan((K - w)/a)
///         + a / (2 w) ln((a^2 + (K + w)^2) / (a^2 + (K - w)^2)))
///
/// and the meter reads S times the gloss of the smooth film. Where K > X the receptor takes in the
/// mirror images in the flanks, and S has a minimum over X; beyond it S stays there. The reading so
/// never rises with Rq. It lies between gloss_gu(n, i, Rq) and gloss_gu(n, i, 0).
///
/// @param input  film and meter; see MeterInput for units and ranges
/// @return       reading [GU]
/// Throws:    OutOfRange where a member is outside its range, BadInput for an angle of no meter
/// NaN:       NaN in, NaN out
/// Accuracy:  3 GU for sheets of 2 to 60 um on backings up to 200 MPa and flanks of 8 to 16 degrees, as
///            a law of sharp V grooves in one direction with one flank angle. On rigid backings 6 GU, with Rq by rq_um(),
///            and a lower bound beyond the minimum of S. Shades that steep flanks throw at 85 degrees
///            are left out, and the image of the lamp counts as a point.
/// Complexity: 0.15 us, 1.5 us beyond K = 1.15 where K > X
/// Source:    meter_source; scalar Kirchhoff theory, from memory: Beckmann & Spizzichino, The
///            Scattering of Electromagnetic Waves from Rough Surfaces (1963)
inline double meter_reading_gu(const MeterInput& input) {
  if (detail::any_nan(input.refractive_index, input.angle_deg, input.rq_um, input.flank_deg)) {
    return std::nan("");
  }
  constexpr double rad_per_deg = std::numbers::pi / 180.0;
  const Receptor& receptor = detail::receptor_at(input.angle_deg);
  detail::require_range(input.rq_um, 0.0, 1e3, "rq_um", "um", "meter_reading_gu");
  detail::require_range(input.flank_deg, 1.0, 80.0, "flank_deg", "deg", "meter_reading_gu");
  const double smooth_gu = gloss_gu(input.refractive_index, input.angle_deg, 0.0);
  const double cosine = std::cos(input.angle_deg * rad_per_deg);
  const bool across = input.lay == Lay::across;
  const double rim =
      std::sin((across ? receptor.in_plane_deg : receptor.sideways_deg) * rad_per_deg);
  // K / X: angle of the rim over that of the mirror image in a flank.
  const double ratio =
      (across ? rim : rim / cosine) / (2.0 * std::tan(input.flank_deg * rad_per_deg));
  double phase = specular_phase(input.angle_deg, input.rq_um);
  constexpr double falling_reach = 1.15;  // S falls with X as long as K is below, for every ratio
  if (ratio > 1.0 && ratio * phase > falling_reach) {
    phase = std::min(phase, detail::phase_of_least_share(ratio, falling_reach / ratio));
  }
  return smooth_gu * detail::share_within(phase, ratio * phase);
}

/// The reading to expect where nobody says how the meter lies to the grooves: the mean of both lays.
///
///   (meter_reading_gu(across) + meter_reading_gu(along)) / 2
///
/// @param refractive_index  of the film n (dimensionless), 1 to 4
/// @param angle_deg         of the meter [deg]: 20, 60 or 85
/// @param rq_um             root mean square roughness Rq across the lay [um], 0 to 1000
/// @param flank_deg         angle of the flanks of the grooves with the film [deg], 1 to 80
/// @return                  reading [GU]
/// Throws:    as meter_reading_gu()
/// NaN:       NaN in, NaN out
/// Accuracy:  that of meter_reading_gu()
/// Source:    that of meter_reading_gu(); that both lays are as likely: assumption
inline double mean_reading_gu(double refractive_index, double angle_deg, double rq_um,
                              double flank_deg) {
  const auto reading = [&](Lay lay) {
    return meter_reading_gu({refractive_index, angle_deg, rq_um, flank_deg, lay});
  };
  return 0.5 * (reading(Lay::across) + reading(Lay::along));
}

}  // namespace levigate
