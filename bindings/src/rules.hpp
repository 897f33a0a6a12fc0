// The rules of a plan, and how they are given: as an object, or as a dictionary of what differs.
#pragma once

#include <variant>

#include "bind.hpp"
#include "levigate/plan/rules.hpp"

namespace levigate_python {

using RulesOrDict = std::variant<levigate::Rules, py::typing::Dict<py::str, py::float_>>;

/// Throws: BadInput for an unknown rule, OutOfRange
levigate::Rules rules_of(const RulesOrDict& given);

void bind_rules(py::module_& m);

}  // namespace levigate_python
