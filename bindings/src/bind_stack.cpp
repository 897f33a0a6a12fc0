// The paper on hand: sheets, stack, check.
#include <pybind11/stl/filesystem.h>

#include <map>

#include "levigate/io/json.hpp"
#include "levigate/stack/block_table.hpp"
#include "levigate/stack/check.hpp"
#include "levigate/text/sentences.hpp"
#include "made.hpp"
#include "named.hpp"
#include "rules.hpp"
#include "shown.hpp"

namespace levigate_python {

/// A block is what the values hold; a wheel or a machine is given as what it is.
template <>
struct FromData<Face> {
  static Face read(const py::object& data) { return Face(FromData<levigate::Block>::read(data)); }
};

namespace {

py::dict face_dict(const Face& face) {
  return from_json_text(
      levigate::value_to_json(levigate::description_of<levigate::Block>(), &face.block));
}

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

/// The sheet of that id, or null.
const Sheet* sheet_with_id(const Stack& stack, const std::string& id) {
  const auto found = std::find_if(stack.sheets.begin(), stack.sheets.end(),
                                  [&](const Sheet& sheet) { return sheet.id == id; });
  return found == stack.sheets.end() ? nullptr : &*found;
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
  made_by_keywords<Backing>(m);
  const levigate::Description& of_block = levigate::description_of<Block>();
  register_object(of_block, [](const void* value, py::handle) {
    return py::cast(Face(*static_cast<const Block*>(value)));
  });
  ValueClass<Face> face(m, "Block", "A block, or a pad that is its own tool.");
  face.describe(of_block,
                [](py::handle self) -> const void* { return &self.cast<const Face&>().block; }, {})
      .has(
          "pressure_kpa", [](const Face& f) { return f.block.pressure_kpa(); },
          "force over area [kPa]")
      .has("wheel", &Face::wheel, "where it is a buffing wheel, or None")
      .has("machine", &Face::machine, "where it is a hand-held machine, or None")
      .finish();
  make_by_keywords(face, levigate::value_keys(of_block));
  m.def(
      "_unpickled_Block",
      [](const py::dict& block, const std::optional<levigate::Wheel>& wheel,
         const std::optional<levigate::Machine>& machine) {
        Face made = FromData<Face>::read(block);
        made.wheel = wheel;
        made.machine = machine;
        return made;
      },
      "What pickle makes again.\n\nIts arguments are those of __reduce__().");
  face.def("__reduce__",
           [function = py::object(m.attr("_unpickled_Block"))](const Face& f) -> py::tuple {
             return py::make_tuple(function, py::make_tuple(face_dict(f), f.wheel, f.machine));
           });
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
  make_by_keywords(sheet);
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
  stack.def("__len__", [](const Stack& s) { return s.sheets.size(); });
  stack.def(
      "__iter__",
      [](const Stack& s) { return py::make_iterator(s.sheets.begin(), s.sheets.end()); },
      py::keep_alive<0, 1>());
  stack.def(
      "__contains__",
      [](const Stack& s, const std::string& id) { return sheet_with_id(s, id) != nullptr; },
      arg("id"), "Whether a sheet has that id.");
  stack.def(
      "__getitem__",
      [](const Stack& s, const std::variant<py::ssize_t, std::string>& key) {
        if (const auto* id = std::get_if<std::string>(&key)) {
          if (const Sheet* sheet = sheet_with_id(s, *id)) return *sheet;
          std::vector<std::string_view> ids;
          for (const Sheet& sheet : s.sheets) ids.push_back(sheet.id);
          throw py::key_error(levigate::detail::unknown_name_text("sheet", *id, ids));
        }
        const auto count = static_cast<py::ssize_t>(s.sheets.size());
        const py::ssize_t at = std::get<0>(key);
        if (at < -count || at >= count)
          throw py::index_error("sheet " + std::to_string(at) + " of " + std::to_string(count));
        return s.sheets[static_cast<std::size_t>(at < 0 ? at + count : at)];
      },
      arg("key"),
      "The sheet of that id, or at that place.\n\nRaises KeyError with the nearest id, "
      "IndexError.");
  stack.def_property_readonly("grades", &levigate::grades_of,
                              "grades of the sheets, in the order of the stack");

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
