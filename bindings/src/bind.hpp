// What each bind_<area>.cpp adds to the module. The only place that includes pybind11, so that its
// order is the same everywhere.
#pragma once

#include <pybind11/numpy.h>
#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

namespace levigate_python {

namespace py = pybind11;

void bind_errors(py::module_& m);

}  // namespace levigate_python
