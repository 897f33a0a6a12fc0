// Table of contents of levigate._core. Order: a class before the functions that name it, so that
// signatures show Python names.
#include "bind.hpp"
#include "levigate/version.hpp"

PYBIND11_MODULE(_core, m) {
  m.attr("__version__") = levigate::version_string;
  levigate_python::bind_errors(m);
}
