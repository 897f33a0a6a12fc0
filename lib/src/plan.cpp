// Plans. The work of the compiled library: see levigate/detail/work.hpp.
#include "levigate/plan/work/plan.hpp"
#include "levigate/plan/work/caution.hpp"
#include "levigate/plan/work/job.hpp"
#include "levigate/plan/work/rules.hpp"
#include "levigate/plan/work/sources.hpp"
