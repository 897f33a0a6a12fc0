// Cards. The work of the compiled library: see levigate/detail/work.hpp.
#include "levigate/text/work/bench_card.hpp"
#include "levigate/text/work/buying.hpp"
#include "levigate/text/work/calibration.hpp"
#include "levigate/text/work/comparison.hpp"
#include "levigate/text/work/findings.hpp"
#include "levigate/text/work/sentences.hpp"
#include "levigate/text/work/together.hpp"
#include "levigate/text/work/way_back.hpp"
