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

LEVIGATE_WORK void validate(const Sheet& sheet, std::string_view where) {
  if (sheet.id.empty()) throw BadInput("id is empty, in " + std::string(where));
  const std::string place = std::string(where) + " ('" + sheet.id + "')";
  if (sheet.label.find_first_not_of(" \t\r\n") == std::string::npos) {
    throw BadInput("label is empty, in " + place);
  }
  if (sheet.size_um) detail::require_range(*sheet.size_um, 0.01, 1e4, "size_um", "um", place);
  detail::require_range(sheet.width_mm, 1.0, 1e4, "width_mm", "mm", place);
  detail::require_range(sheet.height_mm, 1.0, 1e4, "height_mm", "mm", place);
  if (sheet.worn_um) detail::require_range(*sheet.worn_um, 0.01, 1e4, "worn_um", "um", place);
  if (sheet.coarsest_scratch_um) {
    detail::require_range(*sheet.coarsest_scratch_um, 1e-3, 1e3, "coarsest_scratch_um", "um",
                          place);
  }
  if (sheet.coarsest_paper_um) {
    detail::require_range(*sheet.coarsest_paper_um, 0.01, 1e4, "coarsest_paper_um", "um", place);
  }
  detail::require_range(sheet.wear_share, 1e-3, 1.0, "wear_share", "", place);
  if (sheet.on_hand) detail::require_range(*sheet.on_hand, 0.0, 1e6, "on_hand", "sheets", place);
  if (sheet.price) detail::require_range(*sheet.price, 0.0, 1e6, "price", "", place);
  validate(sheet.backing, place + ", backing");
  if (sheet.block) validate(*sheet.block, place + ", block");
}

LEVIGATE_WORK Grade grade_of(const Sheet& sheet, std::optional<System> bare_number) {
  if (sheet.size_um) {
    return sized_grade(sheet.label, *sheet.size_um, sheet.system ? sheet.system : bare_number);
  }
  if (!sheet.system) return grade(sheet.label, bare_number);
  const Grade read = grade(sheet.label, sheet.system);
  if (read.system == *sheet.system) return read;
  throw BadInput("label '" + sheet.label + "' reads as " + std::string(to_string(read.system)) +
                 ", but system says " + std::string(to_string(*sheet.system)) + ", in sheet '" +
                 sheet.id + "'");
}

}  // namespace levigate
