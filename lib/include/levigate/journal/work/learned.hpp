// The work behind journal/learned.hpp: defines what it declares.
#pragma once

#include "levigate/journal/learned.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/journal/work/factor.hpp"
#include "levigate/journal/work/prior.hpp"

namespace levigate::inline v0 {

namespace detail {

LEVIGATE_WORK LearnedFactor untaught_person() { return prior_factor(duty_variance()); }

}  // namespace detail

}  // namespace levigate
