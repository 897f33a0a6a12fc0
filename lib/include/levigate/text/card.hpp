// Plain text out: bench card, comparison, findings, conversions.
// This folder is the only place that includes fmt.
#pragma once

#include "levigate/text/bench_card.hpp"
#include "levigate/text/bench_sheet.hpp"
#include "levigate/text/buying.hpp"
#include "levigate/text/calibration.hpp"
#include "levigate/text/comparison.hpp"
#include "levigate/text/findings.hpp"
#include "levigate/text/meanings.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/text/spraying.hpp"
#include "levigate/text/together.hpp"
#include "levigate/text/way_back.hpp"
#include "levigate/text/when_done.hpp"
