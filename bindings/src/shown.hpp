// How a notebook shows a value, and its rows for tables: Python code beside the module makes both.
#pragma once

#include "bind.hpp"

namespace levigate_python {

/// Gives a class _repr_html_(), by the function of levigate._notebook for it.
inline void add_html(const py::object& type) {
  const char* name = "_repr_html_";
  type.attr(name) = py::cpp_function(
      [](const py::object& self) -> py::str {
        return py::module_::import("levigate._notebook").attr("html")(self);
      },
      py::name(name), py::is_method(type), "The value as a table, as a notebook shows it.");
}

/// Gives a class to_records(), by the function of levigate._notebook for it.
inline void add_records(const py::object& type, const char* doc) {
  const char* name = "to_records";
  type.attr(name) = py::cpp_function(
      [](const py::object& self) -> py::typing::List<py::dict> {
        return py::module_::import("levigate._notebook").attr("records")(self);
      },
      py::name(name), py::is_method(type), doc);
}

}  // namespace levigate_python
