// The exceptions of the module: the C++ classes under the same names, all ValueError underneath.
#include "bind.hpp"
#include "levigate/error.hpp"

namespace levigate_python {

namespace {

py::object add_exception(py::module_& m, const char* name, const py::object& base,
                         const char* doc) {
  const std::string qualified = std::string("levigate.") + name;
  auto type = py::reinterpret_steal<py::object>(
      PyErr_NewExceptionWithDoc(qualified.c_str(), doc, base.ptr(), nullptr));
  if (!type) throw py::error_already_set();
  m.attr(name) = type;
  return type;
}

void add_leaf(py::module_& m, const char* name, levigate::ErrorCode code, const char* doc) {
  add_exception(m, name, m.attr("Error"), doc).attr("code") = static_cast<int>(code);
}

const char* python_name(levigate::ErrorCode code) {
  switch (code) {
    case levigate::ErrorCode::unknown_grade: return "UnknownGrade";
    case levigate::ErrorCode::ambiguous_label: return "AmbiguousLabel";
    case levigate::ErrorCode::out_of_range: return "OutOfRange";
    case levigate::ErrorCode::bad_input: return "BadInput";
    case levigate::ErrorCode::no_plan: return "NoPlan";
  }
  return "Error";
}

py::object as_python(const levigate::Error& error) {
  return py::module_::import("levigate._core").attr(python_name(error.code()))(error.what());
}

void translate(std::exception_ptr thrown) {
  try {
    std::rethrow_exception(thrown);
  } catch (const levigate::BadInput& error) {
    const py::object raised = as_python(error);
    raised.attr("pointer") = error.pointer();
    raised.attr("line") = error.line();
    PyErr_SetObject(py::type::of(raised).ptr(), raised.ptr());
  } catch (const levigate::Error& error) {
    const py::object raised = as_python(error);
    PyErr_SetObject(py::type::of(raised).ptr(), raised.ptr());
  }
}

}  // namespace

void bind_errors(py::module_& m) {
  using levigate::ErrorCode;
  add_exception(m, "Error", py::reinterpret_borrow<py::object>(PyExc_ValueError),
                "Root of what the library raises. `code` is stable between versions.");
  add_leaf(m, "UnknownGrade", ErrorCode::unknown_grade, "No system held here has this grade.");
  add_leaf(m, "AmbiguousLabel", ErrorCode::ambiguous_label, "More than one system has this grade.");
  add_leaf(m, "OutOfRange", ErrorCode::out_of_range, "A number outside the domain of a formula.");
  add_leaf(m, "BadInput", ErrorCode::bad_input,
           "Input without the shape or sense asked for. `pointer` is the JSON pointer of the "
           "value, `line` its line counted from 1 (0: not from a file).");
  m.attr("BadInput").attr("pointer") = "";
  m.attr("BadInput").attr("line") = 0;
  add_leaf(m, "NoPlan", ErrorCode::no_plan, "A plan that must exist does not.");
  py::register_exception_translator(&translate);
}

}  // namespace levigate_python
