// Values that a user makes: by keywords, from a dictionary, from another one with changes.
#pragma once

#include "as_json.hpp"
#include "bind.hpp"
#include "levigate/bench/bench.hpp"
#include "levigate/io/value.hpp"

namespace levigate_python {

/// Docstring of a constructor that takes these keys by name.
std::string doc_of_keywords(const py::object& type, const std::vector<levigate::ValueKey>& keys,
                            const char* doc);

/// What add_pickle() gives to pickle.
py::object unpickled(const py::object& type, const py::tuple& state);

/// All members of a value for pickle, and back.
py::tuple state_of(const levigate::Description& description, const void* at);
void set_state(const levigate::Description& description, void* at, const py::tuple& state);

/// Pickles a class whose instances hold a value beside the bench that it was made on.
template <typename OnBench, typename Value>
void pickle_on_bench(py::module_& m, py::class_<OnBench>& type, Value OnBench::*value) {
  // Pickle finds a function by its name in the module, and none of a class.
  const std::string name = "_unpickled_" + std::string(py::str(type.attr("__name__")));
  m.def(
      name.c_str(),
      [value](const levigate::Bench& bench, const py::tuple& state) {
        OnBench made{bench, {}};
        set_state(levigate::description_of<Value>(), &(made.*value), state);
        return made;
      },
      "What pickle makes again.\n\nIts arguments are those of __reduce__().");
  type.def("__reduce__",
           [value, function = py::object(m.attr(name.c_str()))](const OnBench& self) -> py::tuple {
             return py::make_tuple(
                 function, py::make_tuple(self.bench, state_of(levigate::description_of<Value>(),
                                                               &(self.*value))));
           });
}

/// Reads any value of a job or a stack from Python data.
template <typename Value>
struct FromData {
  static Value read(const py::object& data) {
    Value value{};
    levigate::value_from_json(json_text(data), levigate::description_of<Value>(), &value);
    return value;
  }
};

template <>
struct FromData<levigate::Film> {
  static levigate::Film read(const py::object& data) {
    return levigate::film_from_json(json_text(data));
  }
};

/// What is not None: as an argument, that says that nothing is given.
inline py::dict told(const py::dict& given) {
  py::dict result;
  for (const auto& [name, value] : given) {
    if (!value.is_none()) result[name] = value;
  }
  return result;
}

inline constexpr auto keywords_doc =
    "By keywords, as the keys of a file. A part may be a value, a dictionary or the name of a "
    "profile. None: not given.\n\nRaises BadInput for all faults at once, OutOfRange.";

/// Adds the constructor, from_dict(), to_dict() and __replace__() to a class, where it has them not.
/// `keys`: of its dictionary
template <typename Value>
void make_by_keywords(ValueClass<Value>& type, const std::vector<levigate::ValueKey>& keys) {
  py::options options;
  options.disable_function_signatures();
  type.def(py::init([](const py::kwargs& given) { return FromData<Value>::read(told(given)); }),
           doc_of_keywords(type, keys, keywords_doc).c_str());
  options.enable_function_signatures();
  if (!py::hasattr(type, "from_dict")) {
    type.def_static(
        "from_dict", [](const py::dict& data) { return FromData<Value>::read(data); },
        py::arg("data"), "From a dictionary as in a file.\n\nRaises as the constructor.");
  }
  if (!py::hasattr(type, "to_dict")) {
    type.def(
        "to_dict",
        [](const py::object& self) -> py::dict {
          const HeldValue held = held_value(self);
          return from_json_text(levigate::value_to_json(*held.description, held.at));
        },
        "As a dictionary as in a file.");
  }
  const std::string name = "levigate._core." + std::string(py::str(type.attr("__name__")));
  options.disable_function_signatures();
  type.def(
      "__replace__",
      [](const py::object& self, const py::kwargs& changes) {
        const py::dict data = self.attr("to_dict")();
        data.attr("update")(changes);
        return py::type::of(self).attr("from_dict")(told(data));
      },
      ("__replace__(self: " + name + ", **kwargs) -> " + name +
       "\n\nA copy with other members, for copy.replace().\n")
          .c_str());
}

template <levigate::Described Value>
void make_by_keywords(ValueClass<Value>& type) {
  make_by_keywords(type, levigate::value_keys(levigate::description_of<Value>()));
}

/// The class of a described value that has no more members than the description.
template <levigate::Described Value>
void made_by_keywords(py::module_& m) {
  ValueClass<Value> type = describe_class<Value>(m);
  type.finish();
  make_by_keywords(type);
}

}  // namespace levigate_python
