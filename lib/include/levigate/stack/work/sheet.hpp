// The work behind stack/sheet.hpp: defines what it declares.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "levigate/stack/sheet.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/grade/sized.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/block.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Grade grade_of(const Sheet& sheet, std::optional<System> bare_number) {
  const Polish* polish = polish_of(sheet);
  if (polish || sheet.size_um) {
    return sized_grade(sheet.label, polish ? polish->size_um : *sheet.size_um,
                       sheet.system ? sheet.system : bare_number);
  }
  if (!sheet.system) return grade(sheet.label, bare_number);
  const Grade read = grade(sheet.label, sheet.system);
  if (read.system == *sheet.system) return read;
  throw BadInput("label '" + sheet.label + "' reads as " + std::string(to_string(read.system)) +
                 ", but system says " + std::string(to_string(*sheet.system)) + ", in sheet '" +
                 sheet.id + "'");
}

}  // namespace levigate
