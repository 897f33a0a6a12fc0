// An error of the library as the exception that Python raises for it.
#pragma once

#include "bind.hpp"
#include "levigate/error.hpp"

namespace levigate_python {

/// The exception with all that the error says, not raised.
py::object exception_of(const levigate::Error& error);

}  // namespace levigate_python
