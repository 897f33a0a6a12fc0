// Findings and conversions as plain text.
#pragma once

#include <string>
#include <vector>

#include "levigate/grade/convert.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/stack/finding.hpp"

namespace levigate::inline v0 {

/// All findings, one paragraph each, errors first.
std::string findings_text(const std::vector<Finding>& findings);

/// What a conversion found: the nearest grade, how near, and its neighbours.
std::string equivalent_text(const Grade& given, const Equivalent& found);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/text/work/findings.hpp"
#endif
