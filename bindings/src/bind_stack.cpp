// The paper on hand: sheets, stack, check.
#include <pybind11/stl/filesystem.h>

#include "as_json.hpp"
#include "levigate/io/json.hpp"
#include "levigate/stack/check.hpp"
#include "levigate/wheel/wheel.hpp"
#include "rules.hpp"

namespace levigate_python {

namespace {

using levigate::Backing;
using levigate::Block;
using levigate::Finding;
using levigate::Rules;
using levigate::Sheet;
using levigate::Stack;
using levigate::Wheel;
using py::arg;

std::optional<Wheel> wheel(const Block& block) {
  if (!block.wheel) return std::nullopt;
  return levigate::wheel_of(block);
}

py::dict sheet_dict(const Sheet& sheet) {
  return from_json_text(levigate::to_json(Stack{{}, {sheet}}))["sheets"][py::int_(0)];
}

using SheetOrDict = py::typing::Union<Sheet, py::dict>;

Stack stack_of(const py::typing::Iterable<SheetOrDict>& sheets, const std::string& bare_number) {
  py::list data;
  for (const py::handle sheet : sheets) {
    data.append(py::isinstance<Sheet>(sheet) ? sheet_dict(sheet.cast<Sheet>())
                                             : py::reinterpret_borrow<py::object>(sheet));
  }
  return levigate::stack_from_json(json_text(
      py::dict(arg("bare_number") = bare_number, arg("sheets") = data), levigate::stack_format));
}

void bind_parts(py::module_& m) {
  ValueClass<Backing>(m, "Backing", "What carries the grain of a sheet.")
      .has("name", &Backing::name, "name of the profile, or the user's own")
      .has("tip_spread", &Backing::tip_spread, "sd of the tips' heights over the grain size")
      .has("modulus_mpa", &Backing::modulus_mpa, "modulus under one grain [MPa]")
      .has("life_m", &Backing::life_m, "block travel that one piece lasts [m]")
      .has("clean_every_m", &Backing::clean_every_m, "block travel between two cleanings [m]")
      .has("fade_m", &Backing::fade_m, "travel over which clogging takes hold [m]")
      .has("floor", &Backing::floor, "share of the fresh rate that clogged paper keeps")
      .has("rate_factor", &Backing::rate_factor, "learned: removal rate over what is computed")
      .has("scratch_factor", &Backing::scratch_factor, "learned: depth over what is computed")
      .finish();
  ValueClass<Block>(m, "Block", "A block, or a pad that is its own tool.")
      .has("name", &Block::name, "name of the profile, or the user's own")
      .has("modulus_mpa", &Block::modulus_mpa, "modulus of the face on the work [MPa]")
      .has("area_cm2", &Block::area_cm2, "area in contact [cm2]")
      .has("force_n", &Block::force_n, "pressing force [N]")
      .has("speed_m_s", &Block::speed_m_s, "mean sliding speed [m/s]")
      .has("duty", &Block::duty, "share of the time that is spent sanding")
      .has("wrap", &Block::wrap, "area of abrasive of one piece over area_cm2")
      .has("pressure_kpa", &Block::pressure_kpa, "force over area [kPa]")
      .has("wheel", &wheel, "where it is a buffing wheel, or None")
      .finish();
  ValueClass<Sheet> sheet(m, "Sheet", "One kind of abrasive in the drawer.");
  sheet.has("id", &Sheet::id, "the user's own name for it, unique in a stack")
      .has("maker", &Sheet::maker, "may be empty")
      .has("label", &Sheet::label, "as printed on the back")
      .has("system", &Sheet::system, "where the label does not say it, or None")
      .has("size_um", &Sheet::size_um, "the user's own median size [um], or None")
      .has("backing", &Sheet::backing, "what carries the grain")
      .has("block", &Sheet::block, "where the sheet is its own tool, or None")
      .has("width_mm", &Sheet::width_mm, "of one sheet [mm]")
      .has("height_mm", &Sheet::height_mm, "of one sheet [mm]")
      .has("worn_um", &Sheet::worn_um, "of a compound: its grain broken down [um], or None")
      .has("coarsest_scratch_um", &Sheet::coarsest_scratch_um,
           "of a compound: deepest scratch it takes out [um], or None")
      .has("coarsest_paper_um", &Sheet::coarsest_paper_um,
           "of a compound: grain of the paper it may follow [um], or None")
      .has("wear_share", &Sheet::wear_share, "of the rate of held grain that its grain reaches")
      .has("on_hand", &Sheet::on_hand, "sheets in the drawer; None: no limit")
      .has("price", &Sheet::price, "of one sheet, in any currency of hundred cents, or None")
      .finish();
  sheet.def("to_dict", &sheet_dict, "The sheet as a dictionary, as it stands in a file.");
}

}  // namespace

void bind_stack(py::module_& m) {
  bind_parts(m);
  bind_rules(m);
  ValueClass<Stack> stack(m, "Stack", "The paper on hand, in the user's order.");
  stack
      .has(
          "bare_number",
          [](const Stack& s) {
            return s.bare_number ? std::string(levigate::to_string(*s.bare_number)) : ask;
          },
          "system of labels that are a bare number, or \"ask\"")
      .has("sheets", &Stack::sheets, "the sheets")
      .finish();
  stack.def(py::init(&stack_of), arg("sheets"), arg("bare_number") = ask,
            "From sheets: Sheet objects, or dictionaries as they stand in a file.\n\n"
            "Raises BadInput with pointer, OutOfRange.");
  stack.def_static("load", &levigate::load_stack, arg("path"),
                   "Reads a file of format levigate.stack/1.\n\n"
                   "Raises BadInput with pointer and line, OutOfRange.");
  stack.def_static(
      "from_json", [](const std::string& text) { return levigate::stack_from_json(text); },
      arg("text"), "From JSON text of format levigate.stack/1.\n\nRaises as load().");
  stack.def_static(
      "from_dict",
      [](const py::dict& data) {
        return levigate::stack_from_json(json_text(data, levigate::stack_format));
      },
      arg("data"), "From a dictionary as it stands in a file.\n\nRaises as load().");
  stack.def("to_json", py::overload_cast<const Stack&>(&levigate::to_json),
            "JSON text that from_json() reads back equal.");
  stack.def(
      "to_dict", [](const Stack& s) -> py::dict { return from_json_text(levigate::to_json(s)); },
      "The stack as a dictionary, as it stands in a file.");
  stack.def_property_readonly("grades", &levigate::grades_of,
                              "grades of the sheets, in the order of the stack");
  stack.def(py::pickle([](const Stack& s) { return levigate::to_json(s); },
                       [](const std::string& text) { return levigate::stack_from_json(text); }));

  ValueClass<Finding> finding(m, "Finding", "What a check has to say.");
  finding
      .has(
          "kind", [](const Finding& f) { return levigate::to_string(f.kind); },
          "what it is about, as \"gap\"")
      .has(
          "severity", [](const Finding& f) { return levigate::to_string(f.severity); },
          "\"note\", \"warning\" or \"error\"")
      .has("sheets", &Finding::sheets, "ids of the sheets it is about")
      .has("message", &Finding::message, "a sentence with names, sizes and limits")
      .finish();
  finding.def(
      "to_dict",
      [](const Finding& f) -> py::dict {
        return from_json_text(levigate::to_json(std::vector{f}))[py::int_(0)];
      },
      "The finding as a dictionary, as it stands in the JSON of a plan.");
  m.def(
      "check",
      [](const Stack& s, const std::optional<RulesOrDict>& rules) {
        return levigate::check(s, rules ? rules_of(*rules) : Rules{});
      },
      arg("stack"), arg("rules") = py::none(),
      "Everything to say of a stack under the step-up rule.\n\n"
      "rules: Rules, or a dictionary of those that differ from the defaults. Raises BadInput,\n"
      "OutOfRange; a label that cannot be read is a finding.");
}

}  // namespace levigate_python
