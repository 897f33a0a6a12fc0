// The bench. The work of the compiled library: see levigate/detail/work.hpp.
#include "levigate/bench/work/bench.hpp"
#include "levigate/bench/work/spray.hpp"
