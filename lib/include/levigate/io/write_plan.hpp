// Writing results as JSON: plans, findings, conversions. Every key is always there; what does not apply is
// null.
#pragma once

#include <string>
#include <vector>

#include "levigate/grade/convert.hpp"
#include "levigate/io/write.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/stack/finding.hpp"

namespace levigate::inline v0 {

/// A plan as JSON text of format levigate.plan/1.
std::string to_json(const Plan& plan);

/// Findings as the JSON text of an array.
std::string to_json(const std::vector<Finding>& findings);

/// A conversion as the JSON text of an object.
std::string to_json(const Equivalent& equivalent);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/write_plan.hpp"
#endif
