// The exceptions of the module: the C++ classes under the same names, all ValueError underneath.
#include "errors.hpp"

#include <tuple>

namespace levigate_python {

namespace {

using levigate::Fault;

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

/// What one fault says, which an exception says of its first one.
constexpr const char* of_first[] = {"quantity", "value", "unit", "low", "high", "pointer", "line"};

void bind_fault(py::module_& m) {
  ValueClass<Fault> fault(m, "Fault", "One thing that is wrong with what was given.");
  fault
      .has(
          "code", [](const Fault& f) { return static_cast<int>(f.code); },
          "that of the exception for it alone, stable between versions")
      .has("message", &Fault::message, "all of it in words")
      .has("quantity", &Fault::quantity, "what is wrong, by its name, as \"area_cm2\"; or empty")
      .has("value", &Fault::value, "that is outside its range, or None")
      .has("unit", &Fault::unit, "of value, low and high; or empty")
      .has("low", &Fault::low, "least that is allowed, or None")
      .has("high", &Fault::high, "most that is allowed, or None")
      .has("pointer", &Fault::pointer, "JSON pointer of the value in its file; or empty")
      .has("line", &Fault::line, "of the value in its file, from 1; 0: not from a file")
      .has("contradicts", &Fault::contradicts, "what it does not go with, by name")
      .has("example", &Fault::example, "of what a file may hold there; or empty")
      .finish();
  using Parts = std::tuple<int, std::string, std::string, std::optional<double>, std::string,
                           std::optional<double>, std::optional<double>, std::string, int,
                           std::vector<std::string>, std::string>;
  fault.def(py::pickle(
      [](const Fault& f) -> Parts {
        return {static_cast<int>(f.code),
                f.message,
                f.quantity,
                f.value,
                f.unit,
                f.low,
                f.high,
                f.pointer,
                f.line,
                f.contradicts,
                f.example};
      },
      [](const Parts& parts) {
        return std::apply(
            [](int code, const auto&... others) {
              return Fault{static_cast<levigate::ErrorCode>(code), others...};
            },
            parts);
      }));
}

/// The root of the exceptions. One that Python code makes has a message alone.
void add_root(py::module_& m) {
  const py::object root = add_exception(
      m, "Error", py::reinterpret_borrow<py::object>(PyExc_ValueError),
      "Root of what the library raises. `code` is stable between versions.\n\n"
      "`faults` holds all faults of the input. quantity, value, unit, low, high, pointer\n"
      "and line are those of the first: see Fault.");
  const py::object none = py::cast(Fault{});
  for (const char* name : of_first) root.attr(name) = none.attr(name);
  root.attr("_faults") = py::tuple();
  const py::object property = py::module_::import("builtins").attr("property");
  root.attr("faults") =
      property(py::cpp_function([](const py::object& self) -> py::typing::List<Fault> {
                 return py::list(self.attr("_faults"));
               }),
               py::none(), py::none(), "all faults of the input, a Fault each");
}

}  // namespace

py::object exception_of(const levigate::Error& error) {
  const py::object type = py::module_::import("levigate._core").attr(python_name(error.code()));
  const py::object raised = type(error.what());
  const py::tuple faults = py::tuple(py::cast(error.faults()));
  for (const char* name : of_first) raised.attr(name) = faults[0].attr(name);
  raised.attr("_faults") = faults;
  return raised;
}

namespace {

void translate(std::exception_ptr thrown) {
  try {
    std::rethrow_exception(thrown);
  } catch (const levigate::Error& error) {
    const py::object raised = exception_of(error);
    PyErr_SetObject(py::type::handle_of(raised).ptr(), raised.ptr());
  }
}

}  // namespace

void bind_errors(py::module_& m) {
  using levigate::ErrorCode;
  bind_fault(m);
  add_root(m);
  add_leaf(m, "UnknownGrade", ErrorCode::unknown_grade, "No system held here has this grade.");
  add_leaf(m, "AmbiguousLabel", ErrorCode::ambiguous_label, "More than one system has this grade.");
  add_leaf(m, "OutOfRange", ErrorCode::out_of_range, "A number outside the domain of a formula.");
  add_leaf(m, "BadInput", ErrorCode::bad_input,
           "Input without the shape or sense asked for, or several faults of whatever kind.");
  add_leaf(m, "NoPlan", ErrorCode::no_plan, "A plan that must exist does not.");
  py::register_exception_translator(&translate);
}

}  // namespace levigate_python
