// The film on the work: how thick it is, from coats or from gauge readings, and how sure that is.
// Only the last round counts: coats laid within the recoat window fuse into one film, but sanding
// through into the round below shows as a ring (a witness line).
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "levigate/choices.hpp"
#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"
#include "levigate/faults.hpp"

namespace levigate::inline v0 {

/// How the mean of a film was got, which tells its error.
enum class FilmHow {
  stated,         ///< stated with its error
  gauge,          ///< from readings
  wet_comb,       ///< from the wet film, the volume solids and the thinner
  coats_counted,  ///< from the number of coats and what one usually leaves
};

template <>
inline constexpr auto choices<FilmHow> = std::to_array({FilmHow::stated, FilmHow::gauge,
                                                        FilmHow::wet_comb, FilmHow::coats_counted});

constexpr std::string_view to_string(FilmHow how) noexcept {
  switch (how) {
    case FilmHow::stated: return "stated";
    case FilmHow::gauge: return "gauge";
    case FilmHow::wet_comb: return "wet comb";
    case FilmHow::coats_counted: return "coats counted";
  }
  return "";
}

/// Dry thickness of one round of coats on one zone.
struct Film {
  double mean_um = 0;
  double sd_um = 0;
  double mean_se_um = 0;
  double sd_se_um = 0;
  std::size_t readings = 0;
  FilmHow how = FilmHow::stated;
  std::optional<double> dry_um_per_coat{};
  bool usual_spread = false;

  friend bool operator==(const Film&, const Film&) = default;
};

template <std::same_as<Film> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Film", "Dry thickness of one round of coats on one zone.",
    member<&Value::mean_um>("mean_um", Within{0, 2e4}, "mean over the zone").such_as("90"),
    member<&Value::sd_um>("sd_um", Within{0, 2e4}, "standard deviation from spot to spot")
        .such_as("5"),
    member<&Value::mean_se_um>("mean_se_um", Within{0, 2e4},
                               "standard error of mean_um; 0 where it is taken as known")
        .optional(),
    member<&Value::sd_se_um>("sd_se_um", Within{0, 2e4},
                             "standard error of sd_um; 0 where it is taken as known")
        .left_out_as_made(),
    member<&Value::readings>("readings", Within{0, 1e6},
                             "number of gauge readings it rests on; 0: none")
        .left_out_as_made(),
    member<&Value::how>("how", "how mean_um was got, which tells its error where none is given")
        .left_out_as_made(),
    member<&Value::dry_um_per_coat>("dry_um_per_coat", Within{0, 2000},
                                    "dry film of one of its coats; none: not known")
        .in_unit("um"),
    member<&Value::usual_spread>("usual_spread", "true: nobody told sd_um, it is taken as usual")
        .only_where_told());

/// Film estimated from a gauge's readings at independent spots of the zone.
///
///   mean, sd: of the sample (n - 1);  mean_se = sd / sqrt(n);  sd_se = sd / sqrt(2 (n - 1))
///
/// @param readings_um  thickness at each spot [um], at least 2, each 0 to 20 000
/// @return             the film [um]
/// Throws:    BadInput for fewer than 2 readings; OutOfRange where a reading is outside its range
/// NaN:       rejected as OutOfRange
/// Accuracy:  1e-14 relative; sd_se is the large-sample value for a normal film
/// Source:    normal sampling theory, from memory (Kenney & Keeping, Mathematics of Statistics)
inline Film film_from_readings(std::span<const double> readings_um) {
  constexpr auto where = "film_from_readings";
  if (readings_um.size() < 2) {
    throw BadInput::of("readings_um", "readings_um has " + std::to_string(readings_um.size()) +
                                          " entries, at least 2 are needed for a spread, in " +
                                          where);
  }
  const auto count = static_cast<double>(readings_um.size());
  double sum = 0;
  for (std::size_t i = 0; i < readings_um.size(); ++i) {
    detail::require_range(readings_um[i], 0.0, 2e4, "readings_um[" + std::to_string(i) + "]", "um",
                          where);
    sum += readings_um[i];
  }
  const double mean = sum / count;
  double squares = 0;
  for (const double reading : readings_um) squares += (reading - mean) * (reading - mean);
  const double sd = std::sqrt(squares / (count - 1.0));
  return {mean,
          sd,
          sd / std::sqrt(count),
          sd / std::sqrt(2.0 * (count - 1.0)),
          readings_um.size(),
          FilmHow::gauge};
}

/// Standard deviation to predict a single spot with, the uncertainty of the estimate included.
///
///   sqrt(sd^2 + sd_se^2 + mean_se^2)
///
/// By the law of total variance: E[variance] = E[sigma]^2 + Var[sigma] is sd^2 + sd_se^2, and
/// Var[mean] is mean_se^2. The far tail is lighter than the exact one of a film known from few
/// readings (Student's t): at a chance of 1e-4 a spot the exact quantile lies 1.58 times as far out
/// for 10 readings, 1.13 times for 30, 1.04 times for 100.
///
/// @param film  the film [um]
/// @return      standard deviation of one spot about film.mean_um [um]
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  2 ulp
/// Source:    law of total variance
inline double spot_sd_um(const Film& film) {
  return std::hypot(film.sd_um, film.sd_se_um, film.mean_se_um);
}

/// Dry film that a wet film leaves.
///
///   dry = wet volume_solids / (1 + thinner)
///
/// @param wet_um         thickness as sprayed [um], 0 to 20 000
/// @param volume_solids  share of the paint's volume that stays (dimensionless), 0 to 1
/// @param thinner        volume of thinner per volume of paint (dimensionless), 0 to 10
/// @return               thickness of the dry film [um]
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  2 ulp
/// Source:    conservation of volume; common practice of the trade
inline double dry_film_um(double wet_um, double volume_solids, double thinner = 0.0) {
  if (detail::any_nan(wet_um, volume_solids, thinner)) return std::nan("");
  constexpr auto where = "dry_film_um";
  detail::require_range(wet_um, 0.0, 2e4, "wet_um", "um", where);
  detail::require_range(volume_solids, 0.0, 1.0, "volume_solids", "", where);
  detail::require_range(thinner, 0.0, 10.0, "thinner", "", where);
  return wet_um * volume_solids / (1.0 + thinner);
}

/// Wet film that leaves a dry film: the inverse of dry_film_um.
///
/// @param dry_um         thickness of the dry film [um], 0 to 20 000
/// @param volume_solids  share of the paint's volume that stays (dimensionless), 0.001 to 1
/// @param thinner        volume of thinner per volume of paint (dimensionless), 0 to 10
/// @return               thickness to spray [um]
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  2 ulp
/// Source:    conservation of volume; common practice of the trade
inline double wet_film_um(double dry_um, double volume_solids, double thinner = 0.0) {
  if (detail::any_nan(dry_um, volume_solids, thinner)) return std::nan("");
  constexpr auto where = "wet_film_um";
  detail::require_range(dry_um, 0.0, 2e4, "dry_um", "um", where);
  detail::require_range(volume_solids, 1e-3, 1.0, "volume_solids", "", where);
  detail::require_range(thinner, 0.0, 10.0, "thinner", "", where);
  return dry_um * (1.0 + thinner) / volume_solids;
}

}  // namespace levigate
