// Simulations. The work of the compiled library: see levigate/detail/work.hpp.
#include "levigate/risk/work/buy.hpp"
#include "levigate/risk/work/calibrate.hpp"
#include "levigate/risk/work/compare.hpp"
#include "levigate/risk/work/share.hpp"
#include "levigate/risk/work/simulate.hpp"
#include "levigate/risk/work/simulation.hpp"
#include "levigate/risk/work/sources.hpp"
#include "levigate/risk/work/together.hpp"
