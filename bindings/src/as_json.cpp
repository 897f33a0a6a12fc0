// Python data for JSON, and numbers that carry a unit.
#include "as_json.hpp"

#include <map>

#include "levigate/io/value.hpp"
#include "levigate/told_unit.hpp"

namespace levigate_python {

namespace {

/// A unit as Python's libraries of units spell it: "cm2" as "cm**2".
std::string spelt_for_units(std::string_view ending) {
  static const std::map<std::string_view, std::string> others{{"c", "degC"},
                                                              {"f", "degF"},
                                                              {"k", "K"},
                                                              {"mil", "thou"},
                                                              {"n", "N"},
                                                              {"kpa", "kPa"},
                                                              {"mpa", "MPa"},
                                                              {"gpa", "GPa"},
                                                              {"lbf", "lbf"},
                                                              {"m_s", "m/s"},
                                                              {"m_min", "m/min"},
                                                              {"ft_s", "ft/s"},
                                                              {"ft_min", "ft/min"},
                                                              {"mm2", "mm**2"},
                                                              {"cm2", "cm**2"},
                                                              {"m2", "m**2"},
                                                              {"in2", "inch**2"},
                                                              {"ft2", "ft**2"},
                                                              {"mm3", "mm**3"},
                                                              {"in", "inch"},
                                                              {"minutes", "min"},
                                                              {"hours", "h"},
                                                              {"days", "day"},
                                                              {"deg", "degree"},
                                                              {"um_per_coat", "um"},
                                                              {"mil_per_coat", "thou"},
                                                              {"w", "W"}};
  const auto found = others.find(ending);
  return found == others.end() ? std::string(ending) : found->second;
}

/// The ending of a name that says its unit; empty where none does.
std::string_view ending_of(const std::string& name) {
  if (const auto parts = levigate::name_parts(name); parts.unit) return parts.unit->ending;
  for (const std::string_view ending : {"deg", "w"}) {
    if (name.ends_with("_" + std::string(ending))) return ending;
  }
  return {};
}

bool has_unit(const py::object& given) {
  return (py::hasattr(given, "magnitude") && py::hasattr(given, "units")) ||
         (py::hasattr(given, "value") && py::hasattr(given, "unit"));
}

}  // namespace

py::object without_unit(const std::string& name, const py::object& given) {
  if (py::isinstance<py::float_>(given) || py::isinstance<py::int_>(given)) return given;
  if (py::hasattr(given, "mask") && py::hasattr(given, "filled")) {
    throw py::type_error(name + " is a masked array: give the numbers that count, as compressed()");
  }
  if (!has_unit(given)) return given;
  const std::string_view ending = ending_of(name);
  const std::string shown = std::string(py::str(given)).substr(0, 60);
  if (ending.empty()) {
    throw py::type_error(name + " = " + shown + " carries a unit, and " + name +
                         " is a plain number");
  }
  try {
    const py::object converted = given.attr("to")(spelt_for_units(ending));
    return py::hasattr(converted, "magnitude") ? converted.attr("magnitude")
                                               : converted.attr("value");
  } catch (py::error_already_set& error) {
    throw py::type_error(name + " = " + shown + " is not to be had in " + spelt_for_units(ending) +
                         ": " + std::string(py::str(error.value())));
  }
}

py::object plain_data(const py::handle& data, const std::string& key) {
  const auto given = py::reinterpret_borrow<py::object>(data);
  if (given.is_none() || py::isinstance<py::str>(given) || py::isinstance<py::float_>(given) ||
      py::isinstance<py::int_>(given)) {
    return given;
  }
  if (py::isinstance<py::dict>(given)) {
    py::dict plain;
    for (const auto& [name, value] : py::reinterpret_borrow<py::dict>(given))
      plain[name] = plain_data(value, std::string(py::str(name)));
    return plain;
  }
  if (const HeldValue held = held_value(given); held.description)
    return from_json_text(levigate::value_to_json(*held.description, held.at));
  const py::object number = without_unit(key, given);
  if (py::hasattr(number, "tolist")) return number.attr("tolist")();
  if (py::isinstance<py::list>(number) || py::isinstance<py::tuple>(number)) {
    py::list plain;
    for (const py::handle item : number) plain.append(plain_data(item, key));
    return plain;
  }
  if (py::isinstance<py::float_>(number) || py::isinstance<py::int_>(number)) return number;
  throw py::type_error(std::string(py::repr(given)).substr(0, 60) + " is no data for JSON");
}

}  // namespace levigate_python
