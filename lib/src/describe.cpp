// Descriptions. The work of the compiled library: see levigate/detail/work.hpp.
#include "levigate/detail/work/faults.hpp"
