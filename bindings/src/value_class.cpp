// Classes of values from their descriptions: one implementation for all types.
#include <map>
#include <set>

#include "bind.hpp"
#include "levigate/error.hpp"
#include "levigate/faults.hpp"
#include "levigate/io/value.hpp"
#include "made.hpp"

namespace levigate_python {

namespace {

using levigate::Description;
using levigate::Form;
using levigate::Kind;
using levigate::Member;

/// By the name of the type: a member may bring a description of its own.
std::map<std::string_view, ObjectOf>& objects() {
  static std::map<std::string_view, ObjectOf> all;
  return all;
}

py::str text_of(std::string_view text) { return {text.data(), text.size()}; }

/// The Python object of what a member holds; `owner` keeps what lies inside it alive.
py::object object_of(const Kind& kind, const void* at, py::handle owner) {
  switch (kind.form) {
    case Form::number: return py::float_(kind.number(at));
    case Form::whole:
      if (kind.natural) return py::int_(static_cast<std::uint64_t>(kind.whole(at)));
      return py::int_(kind.whole(at));
    case Form::truth: return py::bool_(kind.whole(at) != 0);
    case Form::text: return text_of(kind.text(at));
    case Form::choice: return text_of(kind.choice(static_cast<std::size_t>(kind.whole(at))));
    case Form::value: return objects().at(kind.described().name)(at, owner);
    case Form::maybe:
      if (kind.size(at) == 0) return py::none();
      return object_of(*kind.of, kind.item(at, 0), owner);
    case Form::list: {
      py::list all(kind.size(at));
      for (std::size_t i = 0; i < kind.size(at); ++i) {
        all[i] = object_of(*kind.of, kind.item(at, i), owner);
      }
      return all;
    }
    case Form::either: return object_of(*kind.held(at), kind.item(at, 0), owner);
  }
  return py::none();
}

/// Type of such an object, as signatures spell it.
std::string type_of(const Kind& kind) {
  switch (kind.form) {
    case Form::number: return "float";
    case Form::whole: return "int";
    case Form::truth: return "bool";
    case Form::text: return "str";
    case Form::choice: {
      std::string names;
      for (std::size_t i = 0; i < kind.size(nullptr); ++i) {
        names += (i == 0 ? "\"" : ", \"") + std::string(kind.choice(i)) + "\"";
      }
      return "typing.Literal[" + names + "]";
    }
    case Form::value: return "levigate._core." + std::string(kind.described().name);
    case Form::maybe: return type_of(*kind.of) + " | None";
    case Form::list: return "list[" + type_of(*kind.of) + "]";
    case Form::either: break;  // which kinds it may be, a kind does not say
  }
  return "object";
}

/// Type of what may be given for a member: values too as dictionaries, and profiles by their names.
std::string given_type_of(const Kind& kind, bool named) {
  if (kind.form == Form::maybe) return given_type_of(*kind.of, named) + " | None";
  if (kind.form == Form::list)
    return "collections.abc.Sequence[" + given_type_of(*kind.of, named) + "]";
  if (kind.form != Form::value) return type_of(kind);
  std::string name(kind.described().name);
  if (name == "LaidFilm") name = "Film";
  const std::string others = named ? "dict | str" : "dict";
  return objects().count(name) ? "levigate._core." + name + " | " + others : others;
}

/// Name of a class, as signatures spell it.
std::string name_of(const py::object& type) {
  return "levigate._core." + std::string(py::str(type.attr("__name__")));
}

/// What a member is, with its unit and range: "of the wheel [mm], 10 to 2000".
std::string doc_of(const Member& member) {
  std::string doc(member.about);
  if (!member.unit.empty()) doc += " [" + std::string(member.unit) + "]";
  const bool low = std::isfinite(member.low), high = std::isfinite(member.high);
  if (low || high) doc += ", ";
  if (low) doc += (high ? "" : "at least ") + levigate::detail::number_text(member.low);
  if (high) doc += (low ? " to " : "at most ") + levigate::detail::number_text(member.high);
  return doc;
}

/// Reads a member of an instance of one class.
struct Getter {
  std::vector<const Member*> path;  // through the values that are spread over their owner
  ValueOf value_of;
  PyObject* type;  // lives as long as the module

  py::object operator()(const py::object& self) const {
    if (PyObject_TypeCheck(self.ptr(), reinterpret_cast<PyTypeObject*>(type)) == 0) {
      throw py::type_error(std::string(path.back()->name) + " is of " +
                           std::string(py::repr(py::handle(type))) + ", not of " +
                           std::string(py::repr(py::type::of(self))));
    }
    const void* at = value_of(self);
    for (const Member* member : path) at = member->in(at);
    return object_of(*path.back()->kind, at, self);
  }
};

void add_property(const py::object& type, std::vector<const Member*> path, ValueOf value_of) {
  const Member& member = *path.back();
  const std::string name(member.name), doc = doc_of(member);
  const std::string signature =
      "(self: " + name_of(type) + ") -> " + type_of(*member.kind) + "\n\n" + doc + "\n";
  py::options options;
  options.disable_function_signatures();
  const py::cpp_function get(Getter{std::move(path), value_of, type.ptr()}, py::name(name.c_str()),
                             py::doc(signature.c_str()));
  type.attr(name.c_str()) =
      py::handle(reinterpret_cast<PyObject*>(&PyProperty_Type))(get, py::none(), py::none(), doc);
}

template <typename Function>
void add_method(py::object type, const char* name, Function function) {
  py::detail::add_class_method(
      type, name, py::cpp_function(std::move(function), py::name(name), py::is_method(type)));
}

/// Adds the members of a value, those of values that are spread over it in their place.
void add_members(const py::object& type, const Description& description, ValueOf value_of,
                 std::initializer_list<std::string_view> hidden,
                 const std::vector<const Member*>& before, std::vector<std::string>& names) {
  for (const Member& member : description.members) {
    if (std::find(hidden.begin(), hidden.end(), member.name) != hidden.end()) continue;
    std::vector<const Member*> path = before;
    path.push_back(&member);
    if (member.spread && member.kind->form == Form::value) {
      add_members(type, member.kind->described(), value_of, hidden, path, names);
      continue;
    }
    add_property(type, std::move(path), value_of);
    names.emplace_back(member.name);
  }
}

}  // namespace

void register_object(const Description& description, ObjectOf make) {
  objects().emplace(description.name, make);
}

std::vector<std::string> add_members(const py::object& type, const Description& description,
                                     ValueOf value_of,
                                     std::initializer_list<std::string_view> hidden) {
  std::vector<std::string> names;
  add_members(type, description, value_of, hidden, {}, names);
  return names;
}

namespace {

/// Whether a member is a number, or one or none.
bool is_number(const Member& member) {
  const levigate::Kind& kind = *member.kind;
  return kind.form == Form::number || (kind.form == Form::maybe && kind.of->form == Form::number);
}

}  // namespace

std::vector<std::string_view> numbers_of(const Description& description) {
  std::vector<std::string_view> names;
  for (const Member& member : description.members) {
    if (is_number(member)) names.push_back(member.name);
  }
  return names;
}

void set_numbers(const Description& description, void* value, const py::dict& given,
                 std::string_view noun) {
  for (const auto& [key, number] : given) {
    const auto name = key.cast<std::string>();
    const Member* member = description.find(name);
    if (!member || !is_number(*member)) {
      throw levigate::BadInput(
          levigate::detail::unknown_name_text(std::string(noun), name, numbers_of(description)));
    }
    void* at = member->in_mutable(value);
    const bool maybe = member->kind->form == Form::maybe;
    const levigate::Kind& kind = maybe ? *member->kind->of : *member->kind;
    kind.set_number(maybe ? member->kind->add(at) : at, number.cast<double>());
  }
}

std::string doc_of_init(const py::object& type, const std::string& unnamed,
                        const std::vector<std::string_view>& numbers, const char* doc) {
  std::string text = "__init__(self: " + name_of(type) + (unnamed.empty() ? "" : ", ") + unnamed;
  const char* before = ", *, ";
  for (const std::string_view name : numbers) {
    text += before + std::string(name) + ": float = ...";
    before = ", ";
  }
  return text + ") -> None\n\n" + doc + "\n";
}

void add_text_equality_copies(const py::object& type, std::vector<std::string> names,
                              std::vector<std::string> further, const Description* description,
                              ValueOf value_of) {
  add_method(type, "__repr__", [names = std::move(names)](const py::object& self) {
    std::string text = py::str(py::type::of(self).attr("__name__"));
    const char* before = "(";
    for (const std::string& name : names) {
      text += before + name + "=" + std::string(py::repr(self.attr(name.c_str())));
      before = ", ";
    }
    return text + ")";
  });
  add_method(type, "__eq__",
             [names = std::move(further), description, value_of](const py::object& self,
                                                                 const py::object& other) {
               if (!py::type::of(self).is(py::type::of(other))) return false;
               if (description) {
                 const void *a = value_of(self), *b = value_of(other);
                 for (const Member& member : description->members) {
                   if (!levigate::same(*member.kind, member.in(a), member.in(b))) return false;
                 }
               }
               return std::all_of(names.begin(), names.end(), [&](const std::string& name) {
                 return self.attr(name.c_str()).equal(other.attr(name.c_str()));
               });
             });
  add_method(type, "__copy__", [](const py::object& self) { return self; });
  add_method(type, "__deepcopy__", [](const py::object& self, const py::dict&) { return self; });
}

namespace {

struct Pickled {
  const Description* description;
  ValueOf value_of;
  MakeOf make;
};

std::map<PyTypeObject*, Pickled>& pickled() {
  static std::map<PyTypeObject*, Pickled> all;
  return all;
}

py::object item_state(const Kind& kind, const void* at);

}  // namespace

py::tuple state_of(const Description& description, const void* at) {
  py::tuple state(description.members.size());
  for (std::size_t i = 0; i < state.size(); ++i) {
    const Member& member = description.members[i];
    state[i] = item_state(*member.kind, member.in(at));
  }
  return state;
}

namespace {

py::object item_state(const Kind& kind, const void* at) {
  switch (kind.form) {
    case Form::number: return py::float_(kind.number(at));
    case Form::whole:
    case Form::truth: return py::int_(kind.whole(at));
    case Form::text: return text_of(kind.text(at));
    case Form::choice: return text_of(kind.choice(static_cast<std::size_t>(kind.whole(at))));
    case Form::value: return state_of(kind.described(), at);
    case Form::either:
      return py::make_tuple(kind.whole(at), item_state(*kind.held(at), kind.item(at, 0)));
    case Form::maybe:
    case Form::list: break;
  }
  py::tuple items(kind.size(at));
  for (std::size_t i = 0; i < items.size(); ++i) items[i] = item_state(*kind.of, kind.item(at, i));
  return items;
}

[[noreturn]] void fail_state(std::string_view what) {
  throw py::value_error("this was pickled by another version of levigate: " + std::string(what));
}

/// Text that a value only points to. There are as many as a table has.
std::string_view kept(std::string text) {
  static std::set<std::string, std::less<>> all;
  return *all.insert(std::move(text)).first;
}

void set_item(const Kind& kind, void* at, const py::object& state);

}  // namespace

void set_state(const Description& description, void* at, const py::tuple& state) {
  if (state.size() != description.members.size()) fail_state(description.name);
  for (std::size_t i = 0; i < state.size(); ++i) {
    const Member& member = description.members[i];
    set_item(*member.kind, member.in_mutable(at), state[i]);
  }
}

namespace {

void set_item(const Kind& kind, void* at, const py::object& state) {
  switch (kind.form) {
    case Form::number: kind.set_number(at, state.cast<double>()); return;
    case Form::whole:
    case Form::truth: kind.set_whole(at, state.cast<std::int64_t>()); return;
    case Form::text:
      if (kind.set_text) {
        kind.set_text(at, state.cast<std::string>());
      } else {
        *static_cast<std::string_view*>(at) = kept(state.cast<std::string>());
      }
      return;
    case Form::choice: {
      const auto name = state.cast<std::string>();
      for (std::size_t i = 0; i < kind.size(nullptr); ++i) {
        if (kind.choice(i) == name) return kind.set_whole(at, static_cast<std::int64_t>(i));
      }
      fail_state(name);
    }
    case Form::value: set_state(kind.described(), at, state.cast<py::tuple>()); return;
    case Form::either: {
      const auto pair = state.cast<py::tuple>();
      const auto chosen = pair[0].cast<std::size_t>();
      if (chosen >= kind.kinds.size()) fail_state("choice");
      set_item(*kind.kinds[chosen], kind.choose(at, chosen), pair[1]);
      return;
    }
    case Form::maybe:
    case Form::list: break;
  }
  kind.clear(at);
  for (const py::handle item : state)
    set_item(*kind.of, kind.add(at), py::reinterpret_borrow<py::object>(item));
}

}  // namespace

HeldValue held_value(py::handle object) {
  const auto found = pickled().find(Py_TYPE(object.ptr()));
  if (found == pickled().end()) return {};
  return {found->second.description, found->second.value_of(object)};
}

void add_pickle(const py::object& type, const Description& description, ValueOf value_of,
                MakeOf make) {
  pickled().emplace(reinterpret_cast<PyTypeObject*>(type.ptr()),
                    Pickled{&description, value_of, make});
  add_method(type, "__reduce__", [](const py::object& self) -> py::tuple {
    const HeldValue held = held_value(self);
    return py::make_tuple(py::module_::import("levigate._core").attr("_unpickled"),
                          py::make_tuple(py::type::of(self), state_of(*held.description, held.at)));
  });
}

py::object unpickled(const py::object& type, const py::tuple& state) {
  const auto found = pickled().find(reinterpret_cast<PyTypeObject*>(type.ptr()));
  if (found == pickled().end()) fail_state(std::string(py::repr(type)));
  py::object made = found->second.make();
  set_state(*found->second.description, const_cast<void*>(found->second.value_of(made)), state);
  return made;
}

std::string doc_of_keywords(const py::object& type, const std::vector<levigate::ValueKey>& keys,
                            const char* doc) {
  std::string text = "__init__(self: " + name_of(type);
  const char* before = ", *, ";
  for (const levigate::ValueKey& key : keys) {
    text += before + std::string(key.name) + ": " + given_type_of(*key.kind, key.named) +
            (key.needed ? "" : " = ...");
    before = ", ";
  }
  return text + ") -> None\n\n" + doc + "\n";
}

}  // namespace levigate_python
