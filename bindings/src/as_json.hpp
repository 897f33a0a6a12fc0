// Dictionaries in and out, by way of JSON text: checks and errors are then the
// same as for files.
#pragma once

#include <string>

#include "bind.hpp"
#include "levigate/io/formats.hpp"

namespace levigate_python {

/// JSON text of Python data; numpy's numbers and arrays are taken as numbers and lists.
/// Throws: TypeError for what JSON has no form for
inline std::string json_text(const py::object& data) {
  const auto plain = [](const py::object& value) -> py::object {
    if (py::hasattr(value, "tolist")) return value.attr("tolist")();
    throw py::type_error(std::string(py::repr(value)).substr(0, 60) + " is no data for JSON");
  };
  return py::module_::import("json")
      .attr("dumps")(data, py::arg("default") = py::cpp_function(plain))
      .cast<std::string>();
}

/// JSON text of a whole file's data, its format tag added where it is missing.
inline std::string json_text(const py::dict& data, std::string_view format) {
  py::dict whole(py::arg("format") = format);
  whole.attr("update")(data);
  return json_text(whole);
}

inline py::object from_json_text(const std::string& text) {
  return py::module_::import("json").attr("loads")(text);
}

}  // namespace levigate_python
