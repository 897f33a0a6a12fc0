// How well a film gauge knows the film.
#pragma once

#include <cmath>
#include <span>
#include <string_view>

#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"
#include "levigate/film/film.hpp"
#include "levigate/film/usual_film_table.hpp"

namespace levigate::inline v0 {

/// Accuracy of a film gauge, or of working the film out: fixed_um + share x reading.
struct Gauge {
  double fixed_um = 0;
  double share = 0;
};

template <std::same_as<Gauge> Value>
inline constexpr auto described<Value> =
    describe<Value>("Gauge", "Accuracy of a film gauge.",
                    member<&Value::fixed_um>("fixed_um", Within{0, 1e3}, "whatever it reads"),
                    member<&Value::share>("share", Within{0, 1}, "of the reading"));

/// The gauge of that name in the profiles.
/// Throws: BadInput where there is none, naming the nearest.
Gauge gauge_named(std::string_view name);

namespace detail {

/// Throws: OutOfRange where a number of a gauge is outside its range, or NaN
inline void require_gauge(const Gauge& gauge, std::string_view where) {
  require_range(gauge.fixed_um, 0.0, 1e3, "fixed_um", "um", where);
  require_range(gauge.share, 0.0, 1.0, "share", "", where);
}

}  // namespace detail

/// Standard uncertainty of a thickness that comes from the gauge's accuracy, taken as the half-width of
/// an even distribution.
///
///   u = (fixed_um + share mean_um) / sqrt(3)
///
/// @param gauge    see Gauge for units and ranges
/// @param mean_um  thickness [um], 0 to 20 000
/// @return         standard uncertainty [um]
/// Throws:    OutOfRange where a number is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  3 ulp
/// Source:    type B evaluation, from memory (Guide to the Expression of Uncertainty in Measurement)
inline double uncertainty_um(const Gauge& gauge, double mean_um) {
  if (detail::any_nan(gauge.fixed_um, gauge.share, mean_um)) return std::nan("");
  constexpr auto where = "uncertainty_um";
  detail::require_gauge(gauge, where);
  detail::require_range(mean_um, 0.0, 2e4, "mean_um", "um", where);
  return (gauge.fixed_um + gauge.share * mean_um) / std::sqrt(3.0);
}

/// film_from_readings() with the accuracy of the gauge in it. Its error is common to all readings, so
/// more of them do not reduce it: mean_se = hypot(sd / sqrt(n), uncertainty_um).
///
/// @param readings_um  thickness at each spot [um], at least 2, each 0 to 20 000
/// @param gauge        see Gauge for units and ranges
/// @return             the film [um]
/// Throws:    as film_from_readings(), uncertainty_um()
/// NaN:       rejected as OutOfRange
/// Accuracy:  1e-14 relative
/// Source:    that of film_from_readings(), uncertainty_um()
inline Film film_from_gauge(std::span<const double> readings_um, const Gauge& gauge) {
  Film film = film_from_readings(readings_um);
  detail::require_gauge(gauge, "film_from_gauge");
  film.mean_se_um = std::hypot(film.mean_se_um, uncertainty_um(gauge, film.mean_um));
  return film;
}

/// Film of a zone that a gauge read at one spot. It tells no spread: that is taken for what the zone is stated to have, and the
/// mean is as uncertain as a spot of it.
///
///   mean = reading,   mean_se = sqrt(sd^2 + sd_se^2 + uncertainty_um^2)
///
/// @param reading_um  thickness at the spot [um], 0 to 20 000
/// @param sd_um       standard deviation from spot to spot, as stated [um], 0 to 20 000
/// @param sd_se_um    standard error of sd_um [um], 0 to 20 000
/// @param gauge       see Gauge for units and ranges
/// @return            the film [um], with sd and sd_se as stated
/// Throws:    OutOfRange where a number is outside its range
/// NaN:       rejected as OutOfRange
/// Accuracy:  1e-14 relative
/// Source:    propagation of uncertainty, one reading taken for the mean
inline Film film_from_reading(double reading_um, double sd_um, double sd_se_um,
                              const Gauge& gauge) {
  constexpr auto where = "film_from_reading";
  detail::require_range(reading_um, 0.0, 2e4, "reading_um", "um", where);
  detail::require_range(sd_um, 0.0, 2e4, "sd_um", "um", where);
  detail::require_range(sd_se_um, 0.0, 2e4, "sd_se_um", "um", where);
  detail::require_gauge(gauge, where);
  return {reading_um, sd_um, std::hypot(sd_um, sd_se_um, uncertainty_um(gauge, reading_um)),
          sd_se_um,   1,     FilmHow::gauge};
}

namespace detail {

/// The spread of a film of which nobody told one [um].
inline double usual_sd_um(double mean_um) { return usual_film_table[0].film_cv.value * mean_um; }

/// Standard uncertainty of a mean that was got so, for the ways that a profile of gauges tells [um].
inline double uncertainty_of_way_um(FilmHow how, double mean_um) {
  return uncertainty_um(gauge_named(to_string(how)), mean_um);
}

/// Whether the way that a mean was got tells an error that grows with it.
inline bool tells_error(FilmHow how) noexcept {
  return how == FilmHow::coats_counted || how == FilmHow::wet_comb;
}

}  // namespace detail

/// Film of a round of equal coats.
///
///   mean = coats dry_um_per_coat,   mean_se = uncertainty_um() of "coats counted", or of "wet comb"
///
/// @param coats            of the round, 1 to 1000
/// @param dry_um_per_coat  dry film of a coat [um], 0 to 2000
/// @param sd_um            standard deviation of the whole film from spot to spot [um], 0 to 20 000
/// @param how              how a coat is known: coats_counted or wet_comb
/// @return                 the film [um], its spread taken as known
/// Throws:    OutOfRange where a number is outside its range, or the mean is beyond 20 000 um; BadInput for another way
/// NaN:       rejected as OutOfRange
/// Accuracy:  3 ulp
/// Source:    arithmetic; the error: data/profiles/gauges.json
inline Film film_from_coats(int coats, double dry_um_per_coat, double sd_um,
                            FilmHow how = FilmHow::coats_counted) {
  constexpr auto where = "film_from_coats";
  detail::require_range(coats, 1, 1000, "coats", "", where);
  detail::require_range(dry_um_per_coat, 0.0, 2000.0, "dry_um_per_coat", "um", where);
  detail::require_range(sd_um, 0.0, 2e4, "sd_um", "um", where);
  const double mean_um = coats * dry_um_per_coat;
  return {mean_um, sd_um,          detail::uncertainty_of_way_um(how, mean_um), 0.0, 0,
          how,     dry_um_per_coat};
}

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/film/work/gauge.hpp"
#endif
