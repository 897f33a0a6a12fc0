// JSON in and out: stacks and jobs both ways, results out. This folder is the only place that includes
// nlohmann/json.
#pragma once

#include "levigate/io/file.hpp"
#include "levigate/io/read.hpp"
#include "levigate/io/write.hpp"
#include "levigate/io/write_plan.hpp"
