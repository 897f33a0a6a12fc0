// Errors that all spots of a zone share: of the film's mean, of its spread, and of the orange peel.
// They move the whole zone, where the film's spread and the hand's unevenness differ from spot to spot.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <string_view>

#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"
#include "levigate/stack/rule_table.hpp"

namespace levigate::inline v0 {

/// Errors that all spots of a zone share. As made there are none.
///
///   sigma = sd sqrt(df / chi2_df),   df = max(1, sd^2 / (2 sd_se^2))
///   mean' = mean + N(0, 1) sqrt(mean_se^2 + s^2 ((sigma / sd)^2 - 1)),   s^2 = min(mean_se^2, sd^2 / readings)
///   depth' = depth + R(peel peel_factor^N(0, 1)) - R(peel)
///
/// with R levelling_removal_um(). Of n readings df is n - 1 and the mean has Student's t distribution. Where df is held at 1, sd is
/// taken for sqrt(2) sd_se.
struct CommonErrors {
  double mean_se_um = 0;  ///< standard error of the film's mean [um], 0 to 20 000
  double sd_se_um = 0;    ///< standard error of its spread [um], 0 to 20 000
  double readings =
      0;  ///< that mean and spread rest on (dimensionless), 0 to 1e6; 0: mean and spread err independently
  double peel_um =
      0;  ///< height of the waves that the depth levels, peak to valley [um], 0 to 10 000
  double peel_factor =
      1;  ///< by which peel_um may be off, one standard deviation (dimensionless), 1 to 10
  double critical_um = 0;  ///< critical_amplitude_um() of what levels them [um], 0 (rigid) to 1e9
  double residual_um =
      rule_table[0].residual_peel_um.value;  ///< height that may stay [um], 0.001 to 10 000

  friend bool operator==(const CommonErrors&, const CommonErrors&) = default;
};

namespace detail {

/// Whether there is no error that all spots share.
inline bool none_common(const CommonErrors& errors) {
  return errors.mean_se_um == 0.0 && errors.sd_se_um == 0.0 &&
         (errors.peel_um == 0.0 || errors.peel_factor == 1.0);
}

inline bool any_nan(const CommonErrors& errors) {
  return any_nan(errors.mean_se_um, errors.sd_se_um, errors.readings, errors.peel_um,
                 errors.peel_factor, errors.critical_um, errors.residual_um);
}

/// Throws: OutOfRange where an error is outside its range
inline void require_common(const CommonErrors& errors, std::string_view where) {
  require_range(errors.mean_se_um, 0.0, 2e4, "mean_se_um", "um", where);
  require_range(errors.sd_se_um, 0.0, 2e4, "sd_se_um", "um", where);
  require_range(errors.readings, 0.0, 1e6, "readings", "", where);
  require_range(errors.peel_um, 0.0, 1e4, "peel_um", "um", where);
  require_range(errors.peel_factor, 1.0, 10.0, "peel_factor", "", where);
  require_range(errors.critical_um, 0.0, 1e9, "critical_um", "um", where);
  require_range(errors.residual_um, 1e-3, 1e4, "residual_um", "um", where);
}

/// How the spread of a film and the error of its mean go together.
struct FilmSampling {
  double df = std::numeric_limits<double>::infinity();
  double scale_um = 0;    ///< sigma = scale sqrt(df / chi2)
  double sampled_um = 0;  ///< part of the mean's error that goes with sigma
  double other_um = 0;    ///< part that does not

  double mean_error_um(double sigma_um) const {
    if (sampled_um == 0.0) return other_um;
    return std::hypot(other_um, sampled_um * (sigma_um / scale_um));
  }
};

inline FilmSampling film_sampling(double sd_um, double mean_se_um, double sd_se_um,
                                  double readings) {
  FilmSampling law{.scale_um = sd_um, .other_um = mean_se_um};
  if (sd_se_um == 0.0) return law;
  law.scale_um = std::max(sd_um, std::sqrt(2.0) * sd_se_um);
  const double ratio = law.scale_um / sd_se_um;
  law.df = std::max(1.0, 0.5 * ratio * ratio);
  if (readings == 0.0) return law;
  law.sampled_um = std::min(mean_se_um, law.scale_um / std::sqrt(readings));
  law.other_um = std::sqrt((mean_se_um - law.sampled_um) * (mean_se_um + law.sampled_um));
  return law;
}

}  // namespace detail

}  // namespace levigate
