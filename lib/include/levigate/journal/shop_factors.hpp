// What a shop has learned, as planning takes it for a job and a stack. Shop itself is in journal/learned.hpp.
#pragma once

#include <string_view>

#include "levigate/error.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/plan/factors.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// What is known of the rate of a backing on a coating: of the pair, else of all backings on the coating, else nothing.
///
/// @param shop     what journals taught; the row is one of its own
/// @param coating  its name
/// @param backing  its name
/// @return         the row, or null
/// Throws:    nothing
/// Source:    -
const LearnedPair* rate_of(const Shop& shop, std::string_view coating, std::string_view backing);

/// What a shop has learned of a job and a stack, as planning takes it: medians of the person's pace, of rates and of scratches by the
/// names of coating and backing, 1 where nothing is known; and what is added to films told by their coats.
///
///   film_se^2 = s^2 + film_noise^2,   s = (high - low) / (2 x 1.6449)
///
/// @param shop   what journals taught
/// @param job    whose coating counts
/// @param stack  whose backings count
/// @return       the factors, one of each sheet
/// Throws:    as validate(Shop)
/// NaN:       of the shop rejected
/// Accuracy:  medians exact
/// Source:    learn(); prior_table
Factors factors_of(const Shop& shop, const Job& job, const Stack& stack);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/journal/work/shop_factors.hpp"
#endif
