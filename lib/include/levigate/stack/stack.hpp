// The paper on hand, and its sheets with their labels read.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/grade/spread.hpp"
#include "levigate/stack/sheet.hpp"

namespace levigate::inline v0 {

/// All sheets, in the order in which the user lists them: ties between plans go by it.
struct Stack {
  std::optional<System> bare_number;  ///< the system of labels that are a bare number; none: ask
  std::vector<Sheet> sheets;
};

/// Throws: BadInput for two sheets of one id; and what validate(Sheet) throws.
inline void validate(const Stack& stack, std::string_view where = "") {
  std::set<std::string_view> ids;
  for (std::size_t i = 0; i < stack.sheets.size(); ++i) {
    const std::string place = std::string(where) + "/sheets/" + std::to_string(i);
    validate(stack.sheets[i], place);
    if (!ids.insert(stack.sheets[i].id).second) {
      throw BadInput("id '" + stack.sheets[i].id + "' stands twice, the second time in " + place,
                     place + "/id");
    }
  }
}

/// The grades of all sheets, in the order of the stack.
/// Throws: UnknownGrade, AmbiguousLabel, BadInput, naming the sheet; check() lists them all without throwing.
inline std::vector<Grade> grades_of(const Stack& stack) {
  std::vector<Grade> grades;
  for (std::size_t i = 0; i < stack.sheets.size(); ++i) {
    const Sheet& sheet = stack.sheets[i];
    const std::string place = ", in /sheets/" + std::to_string(i) + "/label ('" + sheet.id + "')";
    try {
      grades.push_back(grade_of(sheet, stack.bare_number));
    } catch (const AmbiguousLabel& error) {
      throw AmbiguousLabel(error.what() + place);
    } catch (const UnknownGrade& error) {
      throw UnknownGrade(error.what() + place);
    }
  }
  return grades;
}

/// The position of the sheet of that id. Throws: BadInput where there is none, naming the nearest.
inline std::size_t sheet_index(const Stack& stack, std::string_view id) {
  std::vector<std::string_view> known;
  for (std::size_t i = 0; i < stack.sheets.size(); ++i) {
    if (stack.sheets[i].id == id) return i;
    known.push_back(stack.sheets[i].id);
  }
  throw BadInput(detail::unknown_name_text("sheet", id, known));
}

}  // namespace levigate
