// What labels mean, as one table.
#pragma once

#include <string>
#include <vector>

#include "levigate/grade/meanings.hpp"

namespace levigate::inline v0 {

/// A row for each meaning of each label: its size, and the nearest grade of each system that was asked for. What is not plain to see
/// of a label stands below.
std::string meanings_text(const std::vector<LabelMeanings>& labels);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/text/work/meanings.hpp"
#endif
