// The progress that a caller in Python hears, and Ctrl-C, for long work.
#pragma once

#include <cstdint>
#include <optional>

#include "bind.hpp"
#include "levigate/progress.hpp"

namespace levigate_python {

using Tell = py::typing::Callable<py::object(std::int64_t, std::int64_t)>;

/// Calls `tell` with the interpreter's lock, which the threads work without; looks for Ctrl-C as well.
inline levigate::Progress progress_of(const std::optional<Tell>& tell) {
  return [&tell](std::int64_t done, std::int64_t of) {
    const py::gil_scoped_acquire locked;
    if (PyErr_CheckSignals() != 0) throw py::error_already_set();
    return !tell || !(*tell)(done, of).is(py::bool_(false));
  };
}

}  // namespace levigate_python
