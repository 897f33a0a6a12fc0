// What is believed before any journal: noises, and what bands have in common.
#pragma once

#include "levigate/source.hpp"

namespace levigate::inline v0 {

/// By how much the logarithm of a step's minutes, or of a scratch, varies from one time to the next where all else is the same,
/// before a journal tells, and how many observations that guess is worth.
inline constexpr double prior_minutes_noise = 0.3;

inline constexpr double prior_scratch_noise = 0.2;

inline constexpr double prior_noise_weight = 4;

inline constexpr Source noise_source{
    Basis::assumption,
    "a step takes a third more or less from one day to the next, a loupe reads to a fifth; held "
    "loosely, as four observations"};

/// By how much the mean film of the same coats varies from one job to the next [um].
inline constexpr double film_noise_um = 5;

inline constexpr Source film_noise_source{Basis::assumption,
                                          "a tenth of a usual round of coats, by hand"};

/// Share of the band of cutting_efficiency, as variance, that all abrasives on a coating have in common.
inline constexpr double common_wear_share = 0.5;

inline constexpr Source common_wear_source{Basis::assumption,
                                           "a cutting efficiency belongs to coating and abrasive "
                                           "together; half of what is open is laid to either"};

/// Density of a dry clear coat [g/cm3], the share by which it may be off, and the error of one weighing [g].
inline constexpr double coat_density_g_cm3 = 1.2;

inline constexpr double coat_density_share = 0.06;

inline constexpr double weighing_error_g = 0.01;

inline constexpr Source weighing_source{
    Basis::from_memory,
    "dry clear coats weigh 1.1 to 1.3 g/cm3; a kitchen balance of 0.01 g reads to its last digit"};

/// A usual round of coats [um].
inline constexpr double usual_film_um = 60;

inline constexpr Source usual_film_source{
    Basis::assumption, "two coats of 30 um, about what a round of a clear coat leaves"};

}  // namespace levigate
