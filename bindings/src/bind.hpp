// What each bind_<area>.cpp adds to the module, and what they share. The only place that includes
// pybind11, so that its order is the same everywhere.
#pragma once

#include <pybind11/numpy.h>
#include <pybind11/pybind11.h>
#include <pybind11/stl.h>
#include <pybind11/typing.h>

#include <algorithm>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/choices.hpp"
#include "levigate/describe.hpp"
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

/// The system of a bare number where none is given: ask.
inline constexpr auto ask = "ask";

/// The rule for bare numbers from its name: "ask" or a system.
inline std::optional<levigate::System> bare_rule(const std::string& name) {
  if (name == ask) return std::nullopt;
  return py::cast(name).cast<levigate::System>();
}

/// The names of the enumerators of a type, in order.
template <typename Enum>
py::tuple names_of() {
  py::tuple names(levigate::choices<Enum>.size());
  for (std::size_t i = 0; i < names.size(); ++i)
    names[i] = py::str(std::string(to_string(levigate::choices<Enum>[i])));
  return names;
}

/// The names of the rows of a table of profiles, in order.
template <typename Row, std::size_t count>
py::tuple names_of(const Row (&table)[count]) {
  py::tuple names(count);
  for (std::size_t i = 0; i < count; ++i) names[i] = py::str(std::string(table[i].name));
  return names;
}

/// The value of a Python object that is known to be of its class.
using ValueOf = const void* (*)(py::handle);
/// The Python object of a value inside another one, which keeps it alive.
using ObjectOf = py::object (*)(const void* value, py::handle owner);

/// Gives a class a read-only property for each member of a description.
/// Returns: their names
std::vector<std::string> add_members(const py::object& type,
                                     const levigate::Description& description, ValueOf value_of,
                                     std::initializer_list<std::string_view> hidden);

/// From now on members of that type become these objects.
void register_object(const levigate::Description& description, ObjectOf object_of);

/// Gives a class a text over the attributes of these names, and copies, which are the instance
/// itself. Equality is by the members of the description, unless it is null, and by further attributes.
void add_text_equality_copies(const py::object& type, std::vector<std::string> names,
                              std::vector<std::string> further,
                              const levigate::Description* description, ValueOf value_of);

/// A Python object that holds a value as it is made.
using MakeOf = py::object (*)();

/// Pickles instances of a class by all members of the description.
void add_pickle(const py::object& type, const levigate::Description& description, ValueOf value_of,
                MakeOf make);

/// The value in an object of a class that add_pickle() knows, with its description.
struct HeldValue {
  const levigate::Description* description = nullptr;  ///< null: it is of no such class
  const void* at = nullptr;
};
HeldValue held_value(py::handle object);

/// Names of the members that are numbers.
std::vector<std::string_view> numbers_of(const levigate::Description& description);

/// Sets numbers of a value by the names of its members.
/// @param noun  what such a number is called: "rule"
/// Throws: BadInput for a name that is none of them, with the nearest
void set_numbers(const levigate::Description& description, void* value, const py::dict& given,
                 std::string_view noun);

/// Docstring of a constructor that takes numbers by name, each of them optional.
/// @param unnamed  what comes before them, as signatures spell it: "name: str", or nothing
std::string doc_of_init(const py::object& type, const std::string& unnamed,
                        const std::vector<std::string_view>& numbers, const char* doc);

/// A class of read-only members. Its instances have a text, equality by members, and copies.
template <typename Value>
class ValueClass : public py::class_<Value> {
 public:
  ValueClass(py::module_& m, const char* name, const char* doc) : py::class_<Value>(m, name, doc) {}

  /// Properties of members in place, by the description of the value that value_of() finds.
  ValueClass& describe(const levigate::Description& description, ValueOf value_of,
                       std::initializer_list<std::string_view> hidden) {
    names_ = add_members(*this, description, value_of, hidden);
    description_ = &description;
    value_of_ = value_of;
    return *this;
  }

  /// A member, or what a function makes of the value; in place of a member of that name.
  template <typename Get>
  ValueClass& has(const char* name, Get get, const char* doc) {
    if constexpr (std::is_member_object_pointer_v<Get>) {
      this->def_readonly(name, get, doc);
    } else {
      this->def_property_readonly(name, get, doc);
    }
    if (std::find(names_.begin(), names_.end(), name) == names_.end()) {
      names_.emplace_back(name);
      further_.emplace_back(name);
    }
    return *this;
  }

  /// To be called last: text, equality and copies over all members so far.
  void finish() {
    add_text_equality_copies(*this, names_, further_, description_, value_of_);
    if constexpr (std::is_default_constructible_v<Value>) {
      if (description_)
        add_pickle(*this, *description_, value_of_, [] { return py::cast(Value{}); });
    }
  }

 private:
  std::vector<std::string> names_;
  std::vector<std::string> further_;  // of names_: not from the description
  const levigate::Description* description_ = nullptr;
  ValueOf value_of_ = nullptr;
};

/// The class of a described type, with all of its members but the hidden ones.
template <levigate::Described Value>
ValueClass<Value> describe_class(py::module_& m,
                                 std::initializer_list<std::string_view> hidden = {}) {
  const levigate::Description& description = levigate::description_of<Value>();
  register_object(description, [](const void* value, py::handle owner) {
    return py::cast(static_cast<const Value*>(value), py::return_value_policy::reference_internal,
                    owner);
  });
  ValueClass<Value> made(m, std::string(description.name).c_str(),
                         std::string(description.about).c_str());
  made.describe(
      description, [](py::handle self) -> const void* { return &self.cast<const Value&>(); },
      hidden);
  return made;
}

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
void bind_together(py::module_& m);
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
void bind_bench(py::module_& m);
void bind_bench_questions(py::module_& m);
void bind_buy(py::module_& m);
void bind_spray(py::module_& m);

}  // namespace levigate_python
