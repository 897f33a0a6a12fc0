// Functions of numbers for Python: of numbers a number, of arrays an array, broadcast as numpy does.
#pragma once

#include <functional>
#include <span>
#include <type_traits>

#include "bind.hpp"

namespace levigate_python {

/// A number or an array of numbers.
using Numbers = py::typing::Union<py::float_, py::array>;

/// Arguments broadcast against each other, to be read element by element.
class Broadcast {
 public:
  /// Throws: TypeError for what are not numbers; ValueError where shapes do not match
  Broadcast(std::span<const char* const> names, std::span<const py::object> given);

  const std::vector<py::ssize_t>& shape() const { return shape_; }
  std::size_t size() const { return size_; }
  bool scalar() const { return shape_.empty(); }

  /// The numbers of an argument that is an array, or the one number that it is.
  std::span<const double> column(std::size_t argument) const {
    const auto& numbers = columns_[argument];
    return {numbers.data(), static_cast<std::size_t>(numbers.size())};
  }

  /// Calls visit(index, values) for every element in order, other Python threads running meanwhile.
  /// Throws: what visit throws, with the element named
  void for_each(const std::function<void(std::size_t, const double*)>& visit) const;

 private:
  /// ", at index [1, 2]"; nothing for a scalar.
  std::string place(std::size_t at) const;

  std::vector<py::array_t<double>> columns_;
  std::vector<std::size_t> step_;
  std::vector<py::ssize_t> shape_;
  std::size_t size_ = 1;
};

/// A function of one element: of as many numbers as there are arguments.
using OfElement = std::function<double(const double*)>;

/// f of every element.
Numbers elementwise(const Broadcast& columns, const OfElement& f);

/// An argument by its name, and what it is where it is not given.
struct NumberArgument {
  const char* name;
  std::optional<double> otherwise;

  NumberArgument(const py::arg& named) : name(named.name) {}
  NumberArgument(const py::arg_v& named)
      : name(named.name), otherwise(named.value.cast<double>()) {}
};

/// Adds a function of numbers or arrays, with named arguments only.
/// @param result  what it returns, as signatures spell it
/// @param make    makes that of the arguments
void def_numbers(py::module_& m, const char* name, std::vector<NumberArgument> arguments,
                 const char* result, std::function<py::object(const Broadcast&)> make,
                 const char* doc);

void def_elementwise(py::module_& m, const char* name, std::vector<NumberArgument> arguments,
                     OfElement f, const char* doc);

/// Adds f(double...) as a function of numbers.
template <typename F, typename... Arguments>
void def_elementwise(py::module_& m, const char* name, F f, const char* doc,
                     const Arguments&... arguments) {
  const auto of_element = [f](const double* x) {
    return [&]<std::size_t... i>(std::index_sequence<i...>) { return f(x[i]...); }
    (std::index_sequence_for<Arguments...>{});
  };
  def_elementwise(m, name, std::vector<NumberArgument>{arguments...}, OfElement(of_element), doc);
}

}  // namespace levigate_python
