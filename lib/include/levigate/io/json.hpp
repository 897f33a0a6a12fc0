// JSON in and out: stacks, jobs and lines of a journal both ways, results out.
// This folder is the only place that includes nlohmann/json. The journal as a file is in io/journal.hpp.
#pragma once

#include "levigate/io/file.hpp"
#include "levigate/io/read.hpp"
#include "levigate/io/read_journal.hpp"
#include "levigate/io/shop.hpp"
#include "levigate/io/value.hpp"
#include "levigate/io/write.hpp"
#include "levigate/io/write_buying.hpp"
#include "levigate/io/write_calibration.hpp"
#include "levigate/io/write_comparison.hpp"
#include "levigate/io/write_errors.hpp"
#include "levigate/io/write_plan.hpp"
#include "levigate/io/write_simulation.hpp"
#include "levigate/io/write_spraying.hpp"
#include "levigate/io/write_together.hpp"
#include "levigate/io/write_way_back.hpp"
#include "levigate/io/write_when_done.hpp"
