// Where numbers and formulas come from.
#include "bind.hpp"
#include "levigate/film/gauge_table.hpp"
#include "levigate/film/gun_table.hpp"
#include "levigate/named_profile.hpp"
#include "levigate/plan/sources.hpp"
#include "levigate/risk/sources.hpp"
#include "levigate/stack/backing_table.hpp"
#include "levigate/stack/block_table.hpp"
#include "levigate/stack/machine_table.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/peel_height_table.hpp"
#include "levigate/unit_of.hpp"
#include "levigate/wheel/compound_table.hpp"
#include "levigate/wheel/sources.hpp"
#include "levigate/wheel/wheel_table.hpp"

namespace levigate_python {

namespace {

using levigate::Formula;
using levigate::NamedProfile;
using levigate::Sourced;
using py::arg;

/// Throws: BadInput where only a part of the end is a unit
std::string unit_of(const std::string& name) {
  try {
    return std::string(levigate::unit_of(name));
  } catch (const std::logic_error&) {
    throw levigate::BadInput("the end of '" + name + "' is no unit of a name");
  }
}

using SourcedOrFormula = py::typing::Union<Formula, Sourced>;

Sourced number(const std::string& name, const std::string& field) {
  std::vector<levigate::NamedNumber> all = levigate::named_numbers();
  for (const auto& more : {levigate::wheel_numbers(), levigate::learning_numbers()}) {
    all.insert(all.end(), more.begin(), more.end());
  }
  return levigate::number_named(all, name, field);
}

std::vector<NamedProfile> profiles(const std::string& kind) {
  using levigate::named_profiles;
  const std::pair<std::string_view, std::vector<NamedProfile>> all[] = {
      {"coating", named_profiles(levigate::coating_table)},
      {"backing", named_profiles(levigate::backing_table)},
      {"block", named_profiles(levigate::block_table)},
      {"compound", named_profiles(levigate::compound_table)},
      {"gauge", named_profiles(levigate::gauge_table)},
      {"gun", named_profiles(levigate::gun_table)},
      {"machine", named_profiles(levigate::machine_table)},
      {"peel", named_profiles(levigate::peel_height_table)},
      {"wheel", named_profiles(levigate::wheel_table)}};
  std::vector<std::string_view> known;
  for (const auto& [name, found] : all) {
    if (name == kind) return found;
    known.push_back(name);
  }
  throw levigate::BadInput(levigate::detail::unknown_name_text("kind", kind, known));
}

}  // namespace

void bind_source(py::module_& m) {
  ValueClass<Formula>(m, "Formula", "A formula, and what it rests on.")
      .has("function", &Formula::function, "name of the function")
      .has("formula", &Formula::formula, "in symbols")
      .has(
          "basis", [](const Formula& f) { return levigate::to_string(f.source.basis); },
          "what it rests on, as \"standard\"")
      .has(
          "citation", [](const Formula& f) { return f.source.citation; }, "where it comes from")
      .finish();
  ValueClass<Sourced>(m, "Sourced", "A number of a profile, and what it rests on.")
      .has("value", &Sourced::value, "the value used, in the unit of its name")
      .has("low", &Sourced::low, "low end of the band it is believed to lie in")
      .has("high", &Sourced::high, "high end of the band")
      .has(
          "basis", [](const Sourced& s) { return levigate::to_string(s.source.basis); },
          "what it rests on, as \"from memory\"")
      .has(
          "citation", [](const Sourced& s) { return s.source.citation; }, "where it comes from")
      .finish();

  ValueClass<NamedProfile>(m, "NamedProfile", "A profile by its name, without its numbers.")
      .has("name", &NamedProfile::name, "its own, which is stored and printed")
      .has("note", &NamedProfile::note, "what it is of; may be empty")
      .has("also", &NamedProfile::also, "other names that people call it by")
      .finish();

  m.def(
      "profiles", &profiles, arg("kind"),
      "The profiles of a kind, in their order, a NamedProfile each.\n\n"
      "kind: \"coating\", \"backing\", \"block\", \"compound\", \"gauge\", \"gun\", \"machine\",\n"
      "\"peel\" or \"wheel\". Raises BadInput with the nearest kind.");
  m.def(
      "profile_called",
      [](const std::string& kind, const std::string& name) -> NamedProfile {
        return levigate::detail::profile_named(profiles(kind), name, kind);
      },
      arg("kind"), arg("name"),
      "The profile of that name, or of another name that people call it by.\n\n"
      "kind: as for profiles(). Case and spaces do not matter. Raises BadInput with the nearest\n"
      "name.");
  m.def(
      "formulas",
      [] { return std::vector(std::begin(levigate::formulas), std::end(levigate::formulas)); },
      "The formulas, each with its basis and citation.");
  m.def(
      "source",
      [](const std::string& name, const std::optional<std::string>& field) -> SourcedOrFormula {
        if (!field) return py::cast(levigate::source(name));
        return py::cast(number(name, *field));
      },
      arg("name"), arg("field") = py::none(),
      "Where a formula or a number comes from.\n\n"
      "name alone: of a function, for its Formula. With field, a Sourced number: name is that of\n"
      "a coating, backing, block, machine, gauge, wheel or compound, or \"rule\", \"model\", "
      "\"edge\", "
      "\"defect\",\n"
      "\"search\", \"prior\" or \"patch\"; field is\n"
      "its quantity, as in source(\"hard block\", \"force_n\"). Raises BadInput with the nearest\n"
      "name. Grades have their own: Grade.sources.");
  m.def(
      "unit_of", &unit_of, arg("name"),
      "The unit that the end of a name stands for, as \"um\" of film_left_um; empty where none.\n\n"
      "Raises BadInput for an end of which only a part is a unit.");
}

}  // namespace levigate_python
