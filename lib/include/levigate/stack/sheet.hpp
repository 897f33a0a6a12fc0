// One piece of abrasive in the drawer: paper for a block, a pad that is its own tool, or a polishing compound.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>

#include "levigate/error.hpp"
#include "levigate/faults.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/polish.hpp"
#include "levigate/stack/tool.hpp"

namespace levigate::inline v0 {

/// Paper goes on the block of the zone.
struct Paper {
  friend bool operator==(const Paper&, const Paper&) = default;
};

/// A pad, or abrasive on a wheel: it is its own tool.
struct Pad {
  Tool tool;

  friend bool operator==(const Pad&, const Pad&) = default;
};

template <std::same_as<Paper> Value>
inline constexpr auto described<Value> =
    describe<Value>("Paper", "Paper, which goes on the block of the zone.");

template <std::same_as<Pad> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Pad", "A pad that is its own tool.",
    member<&Value::tool>("tool", "that takes the place of the zone's block").flat());

/// What is known of one kind of abrasive on hand. Sheets of one kind are one entry.
struct Sheet {
  std::string id;
  std::string maker;
  std::string label;
  std::optional<System> system;
  std::optional<double> size_um;
  Backing backing;
  std::variant<Paper, Pad, Polish> kind{};
  double width_mm = 0;
  double height_mm = 0;
  std::optional<double> on_hand;
  std::optional<double> price;

  double area_cm2() const noexcept { return width_mm * height_mm / 100.0; }

  friend bool operator==(const Sheet&, const Sheet&) = default;
};

/// Throws: BadInput where compound lies on a machine that takes paper alone, or paper on a rotary.
void require_fitting_machine(const Sheet& sheet, std::string_view where);

template <std::same_as<Sheet> Value>
inline constexpr auto described<Value> =
    describe<Value>(
        "Sheet", "One kind of abrasive on hand.",
        member<&Value::id>("id", "the user's own name for it; unique in a stack")
            .not_empty()
            .such_as("\"a-p400\""),
        member<&Value::maker>("maker", "may be empty").optional().such_as("\"Maker A\""),
        member<&Value::label>("label", "as printed on the back").not_empty().such_as("\"P400\""),
        member<&Value::system>("system", "of the label, where the label does not say it"),
        member<&Value::size_um>("size_um", Within{0.01, 1e4},
                                "the user's own size; replaces the label's"),
        member<&Value::backing>("backing", "what carries the grain"),
        member<&Value::kind>("kind", "paper, a pad that is its own tool, or a compound").flat(),
        member<&Value::width_mm>("width_mm", Within{1, 1e4}, "of one piece").such_as("230"),
        member<&Value::height_mm>("height_mm", Within{1, 1e4}, "of one piece").such_as("280"),
        member<&Value::on_hand>("on_hand", Within{0, 1e6}, "sheets in the drawer; none: no limit")
            .in_unit("sheets")
            .such_as("3"),
        member<&Value::price>("price", Within{0, 1e6},
                              "of one sheet, in any currency of hundred cents"))
        .rule(rule_by<&require_fitting_machine>);

/// The compound, where a sheet is one; else null.
inline const Polish* polish_of(const Sheet& sheet) noexcept {
  return std::get_if<Polish>(&sheet.kind);
}

/// The tool that takes the place of the zone's block; null where the sheet goes on that.
inline const Tool* tool_of(const Sheet& sheet) noexcept {
  if (const Pad* pad = std::get_if<Pad>(&sheet.kind)) return &pad->tool;
  const Polish* polish = polish_of(sheet);
  return polish && polish->tool ? &*polish->tool : nullptr;
}

/// The wheel that a sheet works on; else null.
inline const Wheel* wheel_of(const Sheet& sheet) noexcept {
  const Tool* tool = tool_of(sheet);
  return tool ? as_wheel(*tool) : nullptr;
}

/// The hand-held machine that a sheet works on; else null.
inline const Machine* machine_of(const Sheet& sheet) noexcept {
  const Tool* tool = tool_of(sheet);
  return tool ? as_machine(*tool) : nullptr;
}

/// Between the names of a backing and of a machine, in a name under which a pace is learned.
inline constexpr std::string_view on_machine = " on the ";

/// The name under which the pace and the scratches of a sheet are learned: its backing's. A machine keeps its own, with its name, as it
/// is no hand; `by_hand`: of a zone that the hand works in its place.
inline std::string learned_name(const Sheet& sheet, bool by_hand = false) {
  const Machine* machine = machine_of(sheet);
  if (!machine || by_hand) return sheet.backing.name;
  return sheet.backing.name + std::string(on_machine) + machine->name;
}

/// The names of backing and machine in such a name; that of a machine is empty where the hand sets the pace.
inline std::pair<std::string_view, std::string_view> backing_and_machine(std::string_view learned) {
  const std::size_t at = learned.rfind(on_machine);
  if (at == std::string_view::npos) return {learned, {}};
  return {learned.substr(0, at), learned.substr(at + on_machine.size())};
}

/// The grade that a sheet's label stands for: its own size where it has one, else the label read in its own system,
/// else the label with the stack's rule for bare numbers.
///
/// Throws: UnknownGrade, AmbiguousLabel as grade(); BadInput where the label belongs to another system than `system`
Grade grade_of(const Sheet& sheet, std::optional<System> bare_number);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/stack/work/sheet.hpp"
#endif
