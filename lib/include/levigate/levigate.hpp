// The whole library but io/ (needs nlohmann/json) and text/ (needs fmt): what is here needs the
// standard library only. A repository check keeps the list complete and sorted.
#pragma once

#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/plan/search.hpp"
#include "levigate/source.hpp"
#include "levigate/sourced.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/backing_table.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/block_table.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/stack/rule_table.hpp"
#include "levigate/stack/step_rule.hpp"
#include "levigate/surface/coating.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/levelling.hpp"
#include "levigate/surface/removal.hpp"
#include "levigate/surface/sheen.hpp"
#include "levigate/units.hpp"
#include "levigate/version.hpp"
