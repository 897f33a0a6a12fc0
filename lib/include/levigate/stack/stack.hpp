// The paper on hand, and its sheets with their labels read.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/faults.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/stack/sheet.hpp"

namespace levigate::inline v0 {

/// All sheets, in the order in which the user lists them: ties between plans go by it.
struct Stack {
  std::optional<System> bare_number;
  std::vector<Sheet> sheets;

  friend bool operator==(const Stack&, const Stack&) = default;
};

/// Throws: BadInput for two sheets of one id.
void require_unlike_ids(const Stack& stack, std::string_view where);

template <std::same_as<Stack> Value>
inline constexpr auto described<Value> =
    describe<Value>("Stack", "The paper on hand, in the order in which it is listed.",
                    member<&Value::bare_number>(
                        "bare_number", "the system of labels that are a bare number; none: ask")
                        .with_none("ask"),
                    member<&Value::sheets>("sheets", "one entry a kind"))
        .rule(rule_by<&require_unlike_ids>);

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
