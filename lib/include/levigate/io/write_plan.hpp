// Results as JSON: plans both ways, findings, conversions.
// Every key is always there; what does not apply is null.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "levigate/grade/convert.hpp"
#include "levigate/grade/meanings.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/stack/finding.hpp"

namespace levigate::inline v0 {

/// A plan as JSON text of format levigate.plan/1.
std::string to_json(const Plan& plan);

/// A plan from that text, equal to the one it was written from.
///
/// @param text  the JSON text, UTF-8
/// @param file  its name for messages; may be empty
/// @return      the plan
/// Throws:    BadInput, with pointer and line, for text that is not of the format; OutOfRange for a number outside its range
/// Source:    data/schema/plan.schema.json
Plan plan_from_json(std::string_view text, std::string_view file = "");

/// Findings as the JSON text of an array.
std::string to_json(const std::vector<Finding>& findings);

/// A conversion as the JSON text of an object.
std::string to_json(const Equivalent& equivalent);

/// What a label may mean, as the JSON text of an object.
std::string to_json(const LabelMeanings& label);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/write_plan.hpp"
#endif
