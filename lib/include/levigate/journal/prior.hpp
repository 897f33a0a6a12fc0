// What is believed before any journal: noises, and what bands have in common.
// The numbers and their sources stand in data/profiles/prior.json.
#pragma once

#include "levigate/journal/prior_table.hpp"

namespace levigate::inline v0 {

/// By how much the logarithm of a step's minutes, or of a scratch, varies from one time to the next where all else is the same,
/// before a journal tells, and how many observations that guess is worth.
inline constexpr double prior_minutes_noise = prior_table[0].minutes_noise.value;

inline constexpr double prior_scratch_noise = prior_table[0].scratch_noise.value;

inline constexpr double prior_noise_weight = prior_table[0].noise_weight.value;

/// By how much the mean film of the same coats varies from one job to the next [um].
inline constexpr double film_noise_um = prior_table[0].film_noise_um.value;

/// A usual round of coats [um].
inline constexpr double usual_film_um = prior_table[0].usual_film_um.value;

/// Share of the band of cutting_efficiency, as variance, that all abrasives on a coating have in common.
inline constexpr double common_wear_share = prior_table[0].common_wear_share.value;

/// Density of a dry clear coat [g/cm3], the share by which it may be off, and the error of one weighing [g].
inline constexpr double coat_density_g_cm3 = prior_table[0].coat_density_g_cm3.value;

inline constexpr double coat_density_share = prior_table[0].coat_density_share.value;

inline constexpr double weighing_error_g = prior_table[0].weighing_error_g.value;

}  // namespace levigate
