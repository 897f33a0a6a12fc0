// Writing stacks and jobs as JSON that reads back equal.
#pragma once

#include <string>

#include "levigate/error.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// A stack as JSON text of format levigate.stack/1, which stack_from_json reads back equal.
/// Throws: BadInput where a sheet has only some of the numbers of a compound
std::string to_json(const Stack& stack);

/// A job as JSON text of format levigate.job/1, which job_from_json reads back equal: film by its mean and
/// spread, every rule with its value.
/// Throws: BadInput for what the format has no place for: scratched_by with a size of its own, a gloss with a label that names
///         no band of sheen, a wheel as a zone's block
std::string to_json(const Job& job);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/write.hpp"
#endif
