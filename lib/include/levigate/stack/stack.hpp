// The paper on hand, and its sheets with their labels read.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/faults.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/stack/sheet.hpp"

namespace levigate::inline v0 {

/// What a bare number on the sheets of one maker is.
struct MakerSystem {
  std::string maker;
  System system = System::fepa_p;

  friend bool operator==(const MakerSystem&, const MakerSystem&) = default;
};

template <std::same_as<MakerSystem> Value>
inline constexpr auto described<Value> = describe<Value>(
    "MakerSystem", "What a bare number on the sheets of one maker is.",
    member<&Value::maker>("maker", "of the sheets; case and spacing are free").not_empty(),
    member<&Value::system>("system", "of their bare numbers"));

/// All sheets, in the order in which the user lists them: ties between plans go by it.
struct Stack {
  std::optional<System> bare_number;
  std::vector<Sheet> sheets;
  std::vector<MakerSystem> bare_number_by_maker{};

  friend bool operator==(const Stack&, const Stack&) = default;
};

/// Throws: BadInput for two sheets of one id, and for two rules for one maker.
void require_unlike_ids(const Stack& stack, std::string_view where);

/// Of a stack, for messages.
inline constexpr std::string_view example_sheets =
    R"([{"id": "a-p400", "label": "P400", "backing": "latex paper", "width_mm": 230, "height_mm": 280}])";

template <std::same_as<Stack> Value>
inline constexpr auto described<Value> =
    describe<Value>("Stack", "The paper on hand, in the order in which it is listed.",
                    member<&Value::bare_number>(
                        "bare_number", "the system of labels that are a bare number; none: ask")
                        .with_none("ask"),
                    member<&Value::bare_number_by_maker>("bare_number_by_maker",
                                                         "and that of one maker's sheets")
                        .left_out_as_made(),
                    member<&Value::sheets>("sheets", "one entry a kind").such_as(example_sheets))
        .rule(rule_by<&require_unlike_ids>);

/// The rule for bare numbers of one maker's sheets; null where the stack has none for that maker.
const MakerSystem* rule_of_maker(const Stack& stack, std::string_view maker);

/// What a bare number on a sheet is: by the rule for its maker, else by that for all; none: it is asked.
std::optional<System> bare_number_of(const Stack& stack, const Sheet& sheet);

/// The same stack without its sheets: its rules for bare numbers.
inline Stack without_sheets(const Stack& stack) {
  return {stack.bare_number, {}, stack.bare_number_by_maker};
}

/// The grades of all sheets, in the order of the stack.
/// Throws: UnknownGrade, AmbiguousLabel, OutOfRange, BadInput, naming the sheet; BadInput for all at once where there are several.
/// check() lists them without throwing.
std::vector<Grade> grades_of(const Stack& stack);

/// The position of the sheet of that id. Throws: BadInput where there is none, naming the nearest.
std::size_t sheet_index(const Stack& stack, std::string_view id);

/// The position of the sheet of that id, or of the one sheet that a label can mean: it is printed so, or its grade is among those that
/// the label can stand for.
/// @param stack   the paper on hand
/// @param grades  of its sheets
/// @param name    id or label; an id comes first
/// @return        position in the stack
/// Throws: BadInput where there is none, naming the nearest id; AmbiguousLabel where several sheets have the label, naming them
/// Source: -
std::size_t sheet_called(const Stack& stack, const std::vector<Grade>& grades,
                         std::string_view name);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/stack/work/stack.hpp"
#endif
