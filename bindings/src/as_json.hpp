// Dictionaries in and out, by way of JSON text: checks and errors are then the
// same as for files.
#pragma once

#include <string>

#include "bind.hpp"
#include "levigate/io/formats.hpp"

namespace levigate_python {

/// Python data for JSON: values of this module as dictionaries, numpy's numbers and arrays as numbers
/// and lists, a quantity with a unit in the unit of its key.
/// Throws: TypeError for what JSON has no form for
py::object plain_data(const py::handle& data, const std::string& key);

/// A number without its unit, in the unit that a name ends with, where it has one; else as it is.
/// Throws: TypeError for a masked array, and for a unit where the name says none
py::object without_unit(const std::string& name, const py::object& given);

/// JSON text of Python data.
inline std::string json_text(const py::object& data) {
  return py::module_::import("json").attr("dumps")(plain_data(data, "")).cast<std::string>();
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
