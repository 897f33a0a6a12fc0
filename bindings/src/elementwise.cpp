#include "elementwise.hpp"

#include "as_json.hpp"
#include "levigate/faults.hpp"

namespace levigate_python {

namespace {

/// The numbers as doubles. Text, None, truth values and objects are refused: numpy would make
/// numbers of some of them.
/// Throws: TypeError
py::array_t<double> as_doubles(const char* name, const py::object& given) {
  const py::array array = py::module_::import("numpy").attr("asarray")(without_unit(name, given));
  if (const char kind = array.dtype().kind(); kind == 'f' || kind == 'i' || kind == 'u') {
    return py::array_t<double, py::array::forcecast>(array);
  }
  throw py::type_error(std::string(name) + " must be a number or an array of numbers, not " +
                       std::string(py::repr(given)).substr(0, 60));
}

/// The arguments of a call in order.
/// Throws: TypeError where one is missing, unknown or not named
std::vector<py::object> in_order(const std::string& function,
                                 const std::vector<NumberArgument>& arguments,
                                 const py::args& unnamed, const py::kwargs& given) {
  if (!unnamed.empty()) throw py::type_error(function + "() takes named arguments only");
  std::vector<py::object> result;
  std::size_t used = 0;
  for (const NumberArgument& argument : arguments) {
    if (given.contains(argument.name)) {
      result.push_back(given[argument.name]);
      ++used;
    } else if (argument.otherwise) {
      result.push_back(py::float_(*argument.otherwise));
    } else {
      throw py::type_error(function + "() needs " + argument.name);
    }
  }
  if (used == given.size()) return result;
  for (const auto& [key, value] : given) {
    const auto name = key.cast<std::string>();
    if (std::none_of(arguments.begin(), arguments.end(),
                     [&](const NumberArgument& known) { return known.name == name; })) {
      throw py::type_error(function + "() has no argument " + name);
    }
  }
  return result;
}

std::string signature(const std::string& name, const std::vector<NumberArgument>& arguments,
                      const char* result) {
  std::string text = name + "(*";
  for (const NumberArgument& argument : arguments) {
    text += std::string(", ") + argument.name + ": float | numpy.ndarray";
    if (argument.otherwise) text += " = " + std::string(py::repr(py::float_(*argument.otherwise)));
  }
  return text + ") -> " + result;
}

}  // namespace

Broadcast::Broadcast(std::span<const char* const> names, std::span<const py::object> given)
    : step_(given.size(), 0) {
  const py::module_ numpy = py::module_::import("numpy");
  py::tuple shapes(given.size());
  for (std::size_t i = 0; i < given.size(); ++i) {
    columns_.push_back(as_doubles(names[i], given[i]));
    shapes[i] = columns_[i].attr("shape");
  }
  const py::object shape = numpy.attr("broadcast_shapes")(*shapes);
  shape_ = shape.cast<std::vector<py::ssize_t>>();
  for (std::size_t i = 0; i < given.size(); ++i) {
    if (columns_[i].size() != 1) {
      columns_[i] = numpy.attr("ascontiguousarray")(numpy.attr("broadcast_to")(columns_[i], shape));
      step_[i] = 1;
    }
  }
  for (const py::ssize_t extent : shape_) size_ *= static_cast<std::size_t>(extent);
}

void Broadcast::for_each(const std::function<void(std::size_t, const double*)>& visit) const {
  std::vector<const double*> data;
  for (const auto& column : columns_) data.push_back(column.data());
  std::vector<double> values(data.size());
  const py::gil_scoped_release others_may_run;
  for (std::size_t at = 0; at < size_; ++at) {
    for (std::size_t i = 0; i < data.size(); ++i) values[i] = data[i][at * step_[i]];
    try {
      visit(at, values.data());
    } catch (const levigate::Error& error) {
      std::vector<levigate::Fault> faults = error.faults();
      for (levigate::Fault& fault : faults) fault.message += place(at);
      levigate::throw_faults(std::move(faults));
    }
  }
}

std::string Broadcast::place(std::size_t at) const {
  std::string text;
  for (auto extent = shape_.rbegin(); extent != shape_.rend(); ++extent) {
    const auto count = static_cast<std::size_t>(*extent);
    text = std::to_string(at % count) + (text.empty() ? "" : ", ") + text;
    at /= count;
  }
  return text.empty() ? text : ", at index [" + text + "]";
}

Numbers elementwise(const Broadcast& columns, const OfElement& f) {
  py::array_t<double> result(columns.shape());
  double* out = result.mutable_data();
  columns.for_each([&](std::size_t at, const double* values) { out[at] = f(values); });
  if (columns.scalar()) return py::float_(out[0]);
  return result;
}

void def_numbers(py::module_& m, const char* name, std::vector<NumberArgument> arguments,
                 const char* result, std::function<py::object(const Broadcast&)> make,
                 const char* doc) {
  const std::string whole = signature(name, arguments, result) + "\n\n" + doc + "\n";
  std::vector<const char*> names;
  for (const NumberArgument& argument : arguments) names.push_back(argument.name);
  py::options options;
  options.disable_function_signatures();
  m.def(
      name,
      [function = std::string(name), arguments = std::move(arguments), names = std::move(names),
       make = std::move(make)](const py::args& unnamed, const py::kwargs& given) {
        return make(Broadcast(names, in_order(function, arguments, unnamed, given)));
      },
      whole.c_str());
}

void def_elementwise(py::module_& m, const char* name, std::vector<NumberArgument> arguments,
                     OfElement f, const char* doc) {
  def_numbers(
      m, name, std::move(arguments), "float | numpy.ndarray",
      [f = std::move(f)](const Broadcast& columns) { return elementwise(columns, f); }, doc);
}

}  // namespace levigate_python
