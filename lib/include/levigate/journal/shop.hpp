// What journals taught a shop: a person's pace, rates and scratches by coating and backing, film by coating, each with how sure
// that is; and a job and a stack with it.
#pragma once

#include <string_view>

#include "levigate/journal/learned.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// Throws: OutOfRange where a member is outside the range stated at it; BadInput unless low_um <= offset_um <= high_um.
void validate(const LearnedFilm& film, std::string_view where);

/// Throws: OutOfRange where a member is outside the range stated at it.
void validate(const LearnedNoise& noise, std::string_view where);

/// Throws: OutOfRange where a member is outside the range stated at it; BadInput where a factor is not between low and high, a pair
///         or a job stands twice, or correlations contradict each other.
void validate(const Shop& shop);

/// What is known of the rate of a backing on a coating: of the pair, else of all backings on the coating, else nothing.
///
/// @param shop     what journals taught; the row is one of its own
/// @param coating  its name
/// @param backing  its name
/// @return         the row, or null
/// Throws:    nothing
/// Source:    -
const LearnedPair* rate_of(const Shop& shop, std::string_view coating, std::string_view backing);

/// Job and stack with the medians of the shop, in place of what a shop gave them before: duty_factor, rate_factor and
/// scratch_factor, which are 1 where nothing is known, and films that are not from readings, which are moved by their coating's
/// offset. Edges hold a share of the film only and are moved only where it takes film from them.
///
///   mean' = mean + offset,   mean_se'^2 = mean_se^2 + s^2 + film_noise^2,   s = (high - low) / (2 x 1.6449)
///
/// @param job    with its films as coats or a shop have them; see Film::moved_um
/// @param stack  of any factors
/// @param shop   what journals taught
/// @return       job and stack; given to it again, they stay as they are
/// Throws:    as validate(Shop)
/// NaN:       of the shop rejected; of the job kept, for plan() to refuse
/// Accuracy:  medians exact; films 1e-12 um
/// Source:    learn(); film_noise_source
JobAndStack with_shop(Job job, Stack stack, const Shop& shop);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/journal/work/shop.hpp"
#endif
