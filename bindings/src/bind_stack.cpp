// The paper on hand: sheets, stack, check.
#include <pybind11/stl/filesystem.h>

#include <map>

#include "as_json.hpp"
#include "levigate/io/json.hpp"
#include "levigate/stack/block_table.hpp"
#include "levigate/stack/check.hpp"
#include "levigate/text/sentences.hpp"
#include "named.hpp"
#include "rules.hpp"
#include "shown.hpp"

namespace levigate_python {

namespace {

using levigate::Backing;
using levigate::Block;
using levigate::Finding;
using levigate::Polish;
using levigate::Rules;
using levigate::Sheet;
using levigate::Stack;
using py::arg;

std::optional<Face> block(const Sheet& sheet) {
  const levigate::Tool* tool = levigate::tool_of(sheet);
  return tool ? std::optional(Face(*tool)) : std::nullopt;
}

/// A number of the compound that a sheet is, or None.
template <typename Get>
auto of_polish(Get get) {
  return [get](const Sheet& sheet) -> std::optional<double> {
    const Polish* polish = levigate::polish_of(sheet);
    return polish ? get(*polish) : std::nullopt;
  };
}

/// The reach of a compound, where it is given as a Reach.
template <typename Reach>
std::optional<double> reach(const Polish& polish, double Reach::*number) {
  const auto* found = std::get_if<Reach>(&polish.reach);
  return found ? std::optional(found->*number) : std::nullopt;
}

py::dict sheet_dict(const Sheet& sheet) {
  return from_json_text(levigate::to_json(Stack{{}, {sheet}}))["sheets"][py::int_(0)];
}

using SheetOrDict = py::typing::Union<Sheet, py::dict>;

/// The rule for bare numbers: "ask" or a system, or one for each maker.
using BareRule = py::typing::Union<py::str, py::typing::Dict<py::str, py::str>>;

BareRule bare_rule_of(const Stack& stack) {
  return from_json_text(levigate::to_json(levigate::without_sheets(stack)))["bare_number"];
}

Stack stack_of(const py::typing::Iterable<SheetOrDict>& sheets, const BareRule& bare_number) {
  py::list data;
  for (const py::handle sheet : sheets) {
    data.append(py::isinstance<Sheet>(sheet) ? sheet_dict(sheet.cast<Sheet>())
                                             : py::reinterpret_borrow<py::object>(sheet));
  }
  return levigate::stack_from_json(json_text(
      py::dict(arg("bare_number") = bare_number, arg("sheets") = data), levigate::stack_format));
}

void bind_parts(py::module_& m) {
  describe_class<Backing>(m).finish();
  const levigate::Description& of_block = levigate::description_of<Block>();
  register_object(of_block, [](const void* value, py::handle) {
    return py::cast(Face(*static_cast<const Block*>(value)));
  });
  ValueClass<Face>(m, "Block", "A block, or a pad that is its own tool.")
      .describe(of_block,
                [](py::handle self) -> const void* { return &self.cast<const Face&>().block; }, {})
      .has(
          "pressure_kpa", [](const Face& face) { return face.block.pressure_kpa(); },
          "force over area [kPa]")
      .has("wheel", &Face::wheel, "where it is a buffing wheel, or None")
      .has("machine", &Face::machine, "where it is a hand-held machine, or None")
      .finish();
  ValueClass<Sheet> sheet = describe_class<Sheet>(m, {"kind"});
  sheet
      .has(
          "size_um",
          [](const Sheet& s) {
            const Polish* polish = levigate::polish_of(s);
            return polish ? std::optional(polish->size_um) : s.size_um;
          },
          "the user's own median size [um], or None")
      .has("block", &block, "where the sheet is its own tool, or None")
      .has("worn_um", of_polish([](const Polish& p) { return std::optional(p.worn_um); }),
           "of a compound: its grain broken down [um], or None")
      .has("coarsest_scratch_um", of_polish([](const Polish& p) {
             return reach(p, &levigate::ScratchReach::coarsest_scratch_um);
           }),
           "of a compound: deepest scratch it takes out [um], or None")
      .has("coarsest_paper_um", of_polish([](const Polish& p) {
             return reach(p, &levigate::PaperReach::coarsest_paper_um);
           }),
           "of a compound: grain of the paper it may follow [um], or None")
      .has(
          "wear_share",
          [](const Sheet& s) {
            const Polish* polish = levigate::polish_of(s);
            return polish ? polish->wear_share : 1.0;
          },
          "of the rate of held grain that its grain reaches")
      .finish();
  sheet.def("to_dict", &sheet_dict, "The sheet as a dictionary, as in a file.");
}

}  // namespace

void bind_stack(py::module_& m) {
  m.attr("BLOCKS") = names_of(levigate::block_table);
  bind_parts(m);
  bind_rules(m);
  ValueClass<Stack> stack = describe_class<Stack>(m, {"bare_number", "bare_number_by_maker"});
  stack
      .has("bare_number", &bare_rule_of,
           "system of labels that are a bare number, or \"ask\"; or that of each maker")
      .finish();
  stack.def(py::init(&stack_of), arg("sheets"), arg("bare_number") = ask,
            "From sheets: Sheet objects, or dictionaries as in a file.\n\n"
            "bare_number: a system, \"ask\", or a dictionary of systems by maker.\n\n"
            "Raises BadInput with pointer, OutOfRange.");
  stack.def_static("load", &levigate::load_stack, arg("path"),
                   "Reads a file of format levigate.stack/1.\n\n"
                   "Raises BadInput with pointer and line, OutOfRange.");
  stack.def_static(
      "from_json",
      [](const std::string& text, const std::string& file) {
        return levigate::stack_from_json(text, file);
      },
      arg("text"), arg("file") = "",
      "From JSON text of format levigate.stack/1.\n\n"
      "file: its name for messages. Raises as load().");
  stack.def_static(
      "from_dict",
      [](const py::dict& data) {
        return levigate::stack_from_json(json_text(data, levigate::stack_format));
      },
      arg("data"), "From a dictionary as in a file.\n\nRaises as load().");
  stack.def("to_json", py::overload_cast<const Stack&>(&levigate::to_json),
            "JSON text that from_json() reads back equal.");
  stack.def(
      "to_dict", [](const Stack& s) -> py::dict { return from_json_text(levigate::to_json(s)); },
      "The stack as a dictionary, as in a file.");
  add_html(stack);
  add_records(stack,
              "The sheets as rows for a table, one for each: pandas.DataFrame takes them.\n\n"
              "What begins with grade_ is of the grade that the label means, None where it is "
              "not\nsettled.");
  stack.def(
      "sheet_called",
      [](const Stack& s, const std::string& name) {
        return s.sheets[levigate::sheet_called(s, levigate::grades_of(s), name)];
      },
      arg("name"),
      "The sheet of that id, or the one sheet that a label can mean.\n\n"
      "Raises BadInput where there is none, naming the nearest id; AmbiguousLabel where several\n"
      "sheets have the label; as grades.");
  stack.def_property_readonly("grades", &levigate::grades_of,
                              "grades of the sheets, in the order of the stack");
  stack.def(py::pickle([](const Stack& s) { return levigate::to_json(s); },
                       [](const std::string& text) { return levigate::stack_from_json(text); }));

  describe_class<levigate::Named>(m).finish();
  describe_class<levigate::Quantity>(m).finish();
  ValueClass<Finding> finding = describe_class<Finding>(m, {"numbers"});
  finding
      .has(
          "numbers",
          [](const Finding& f) {
            std::map<std::string, double> numbers;
            for (const levigate::Quantity& one : f.numbers) numbers.emplace(one.name, one.value);
            return numbers;
          },
          "what it rests on, by name with the unit as suffix")
      .has(
          "message", [](const Finding& f) { return levigate::sentence(f); },
          "a sentence with names, sizes and limits")
      .finish();
  finding.def(
      "to_dict",
      [](const Finding& f) -> py::dict {
        return from_json_text(levigate::to_json(std::vector{f}))[py::int_(0)];
      },
      "The finding as a dictionary, as in the JSON of a plan.");
  m.def(
      "check",
      [](const Stack& s, const std::optional<RulesOrDict>& rules) {
        return levigate::check(s, rules ? rules_of(*rules) : Rules{});
      },
      arg("stack"), arg("rules") = py::none(),
      "All findings on a stack under the step-up rule.\n\n"
      "rules: Rules, or a dictionary of those that differ from the defaults. Raises BadInput,\n"
      "OutOfRange; a label that cannot be read is a finding.");
}

}  // namespace levigate_python
