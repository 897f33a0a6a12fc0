// Errors as JSON: each fault with its members, so that a program need not read the message.
// Every key is always there; what does not apply is null or empty.
#pragma once

#include <string>
#include <vector>

#include "levigate/error.hpp"

namespace levigate::inline v0 {

/// A fault, and the input that it is in.
struct FaultOf {
  Fault fault;
  std::string file{};  ///< name of the input; empty: of none
};

/// Faults as JSON text, as the command prints them with --json: an object whose "errors" holds one object a fault. Its keys are the
/// members of Fault, with the number of its code, and "file".
/// Throws: nothing but what memory asks for
std::string errors_json(const std::vector<FaultOf>& faults);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/write_errors.hpp"
#endif
