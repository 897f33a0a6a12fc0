// Functions of numbers for Python: of numbers a number, of arrays an array, broadcast as numpy does.
#pragma once

#include <array>
#include <tuple>

#include "bind.hpp"
#include "levigate/faults.hpp"

namespace levigate_python {

/// A number or an array of numbers.
using Numbers = py::typing::Union<py::float_, py::array>;

/// The numbers as doubles. Text, None, truth values and objects are refused: numpy would make
/// numbers of some of them.
/// Throws: TypeError
inline py::array_t<double> as_doubles(const char* name, const py::object& given) {
  const py::array array = py::module_::import("numpy").attr("asarray")(given);
  if (const char kind = array.dtype().kind(); kind == 'f' || kind == 'i' || kind == 'u') {
    return py::array_t<double, py::array::forcecast>(array);
  }
  throw py::type_error(std::string(name) + " must be a number or an array of numbers, not " +
                       std::string(py::repr(given)).substr(0, 60));
}

/// Arguments broadcast against each other, to be read element by element.
template <std::size_t n>
class Broadcast {
 public:
  /// Throws: TypeError for what are not numbers; ValueError where shapes do not match
  Broadcast(const std::array<const char*, n>& names, const std::array<Numbers, n>& given) {
    const py::module_ numpy = py::module_::import("numpy");
    py::tuple shapes(n);
    for (std::size_t i = 0; i < n; ++i) {
      columns_[i] = as_doubles(names[i], given[i]);
      shapes[i] = columns_[i].attr("shape");
    }
    const py::object shape = numpy.attr("broadcast_shapes")(*shapes);
    shape_ = shape.cast<std::vector<py::ssize_t>>();
    for (std::size_t i = 0; i < n; ++i) {
      if (columns_[i].size() != 1) {
        columns_[i] =
            numpy.attr("ascontiguousarray")(numpy.attr("broadcast_to")(columns_[i], shape));
        step_[i] = 1;
      }
    }
    for (const py::ssize_t extent : shape_) size_ *= static_cast<std::size_t>(extent);
  }

  const std::vector<py::ssize_t>& shape() const { return shape_; }
  std::size_t size() const { return size_; }
  bool scalar() const { return shape_.empty(); }

  /// Calls visit(index, values) for every element in order, other Python threads running meanwhile.
  /// Throws: what visit throws, with the element named
  template <typename Visit>
  void for_each(Visit visit) const {
    std::array<const double*, n> data{};
    for (std::size_t i = 0; i < n; ++i) data[i] = columns_[i].data();
    const py::gil_scoped_release others_may_run;
    for (std::size_t at = 0; at < size_; ++at) {
      std::array<double, n> values;
      for (std::size_t i = 0; i < n; ++i) values[i] = data[i][at * step_[i]];
      try {
        visit(at, values);
      } catch (const levigate::Error& error) {
        std::vector<levigate::Fault> faults = error.faults();
        for (levigate::Fault& fault : faults) fault.message += place(at);
        levigate::throw_faults(std::move(faults));
      }
    }
  }

 private:
  /// ", at index [1, 2]"; nothing for a scalar.
  std::string place(std::size_t at) const {
    std::string text;
    for (auto extent = shape_.rbegin(); extent != shape_.rend(); ++extent) {
      const auto count = static_cast<std::size_t>(*extent);
      text = std::to_string(at % count) + (text.empty() ? "" : ", ") + text;
      at /= count;
    }
    return text.empty() ? text : ", at index [" + text + "]";
  }

  std::array<py::array_t<double>, n> columns_;
  std::array<std::size_t, n> step_{};
  std::vector<py::ssize_t> shape_;
  std::size_t size_ = 1;
};

/// f of every element.
template <std::size_t n, typename F>
Numbers elementwise(const std::array<const char*, n>& names, const std::array<Numbers, n>& given,
                    F f) {
  const Broadcast<n> columns(names, given);
  py::array_t<double> result(columns.shape());
  double* out = result.mutable_data();
  columns.for_each([&](std::size_t at, const std::array<double, n>& values) {
    out[at] = std::apply(f, values);
  });
  if (columns.scalar()) return py::float_(out[0]);
  return result;
}

template <typename>
using EachNumbers = Numbers;

/// Adds a function of numbers, f(double...), with named arguments only.
template <typename F, typename... Arguments>
void def_elementwise(py::module_& m, const char* name, F f, const char* doc,
                     Arguments... arguments) {
  const std::array<const char*, sizeof...(Arguments)> names{arguments.name...};
  m.def(
      name,
      [names, f](const EachNumbers<Arguments>&... given) {
        return elementwise<sizeof...(Arguments)>(names, {given...}, f);
      },
      py::kw_only(), arguments..., doc);
}

}  // namespace levigate_python
