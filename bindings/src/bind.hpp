// What each bind_<area>.cpp adds to the module, and what they share. The only place that includes
// pybind11, so that its order is the same everywhere.
#pragma once

#include <pybind11/numpy.h>
#include <pybind11/pybind11.h>
#include <pybind11/stl.h>
#include <pybind11/typing.h>

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "levigate/detail/profile.hpp"
#include "levigate/grade/system.hpp"

/// A system is its name in Python.
template <>
struct pybind11::detail::type_caster<levigate::System> {
  PYBIND11_TYPE_CASTER(levigate::System, const_name("str"));

  bool load(handle given, bool) {
    if (!isinstance<str>(given)) return false;
    const auto text = given.cast<std::string>();
    if (const auto found = levigate::system_named(text)) {
      value = *found;
      return true;
    }
    std::vector<std::string_view> known;
    for (const auto system : levigate::all_systems) known.push_back(levigate::to_string(system));
    throw levigate::BadInput(levigate::detail::unknown_name_text("system", text, known));
  }

  static handle cast(levigate::System system, return_value_policy, handle) {
    return str(std::string(levigate::to_string(system))).release();
  }
};

namespace levigate_python {

namespace py = pybind11;

/// What stands in for the system of a bare number where there is none: ask.
inline constexpr auto ask = "ask";

/// The rule for bare numbers from its name: "ask" or a system.
inline std::optional<levigate::System> bare_rule(const std::string& name) {
  if (name == ask) return std::nullopt;
  return py::cast(name).cast<levigate::System>();
}

/// A class of read-only members. Its instances have a text, equality by members, and copies, which
/// are the instance itself.
template <typename Value>
class ValueClass : public py::class_<Value> {
 public:
  ValueClass(py::module_& m, const char* name, const char* doc) : py::class_<Value>(m, name, doc) {}

  /// A member, or what a function makes of the value.
  template <typename Get>
  ValueClass& has(const char* name, Get get, const char* doc) {
    if constexpr (std::is_member_object_pointer_v<Get>) {
      this->def_readonly(name, get, doc);
    } else {
      this->def_property_readonly(name, get, doc);
    }
    names_.push_back(name);
    return *this;
  }

  /// To be called last: text, equality and copies over all members so far.
  void finish() {
    this->def("__repr__", [names = names_](const py::object& self) {
      std::string text = py::str(py::type::of(self).attr("__name__"));
      const char* before = "(";
      for (const char* name : names) {
        text += before + std::string(name) + "=" + std::string(py::repr(self.attr(name)));
        before = ", ";
      }
      return text + ")";
    });
    this->def("__eq__", [names = names_](const py::object& self, const py::object& other) {
      return py::type::of(self).is(py::type::of(other)) &&
             std::all_of(names.begin(), names.end(),
                         [&](const char* name) { return self.attr(name).equal(other.attr(name)); });
    });
    this->def("__copy__", [](const py::object& self) { return self; });
    this->def("__deepcopy__", [](const py::object& self, const py::dict&) { return self; });
  }

 private:
  std::vector<const char*> names_;
};

void bind_errors(py::module_& m);
void bind_grade(py::module_& m);
void bind_source(py::module_& m);
void bind_stack(py::module_& m);
void bind_contact(py::module_& m);
void bind_surface(py::module_& m);
void bind_film(py::module_& m);
void bind_job(py::module_& m);
void bind_why(py::module_& m);
void bind_plan(py::module_& m);
void bind_simulation(py::module_& m);
void bind_simulate(py::module_& m);
void bind_text(py::module_& m);
void bind_wheel(py::module_& m);
void bind_heat(py::module_& m);
void bind_local(py::module_& m);
void bind_coat(py::module_& m);
void bind_care(py::module_& m);
void bind_compound(py::module_& m);
void bind_mark(py::module_& m);
void bind_journal(py::module_& m);
void bind_recover(py::module_& m);
void bind_shop(py::module_& m);
void bind_learn(py::module_& m);

}  // namespace levigate_python
