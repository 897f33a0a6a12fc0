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
#include "levigate/stack/machine.hpp"
#include "levigate/stack/polish.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK void require_fitting_machine(const Sheet& sheet, std::string_view where) {
  const Machine* machine = machine_of(sheet);
  if (!machine) return;
  const bool compound = polish_of(sheet) != nullptr;
  const std::string on = "machine '" + machine->name + "' takes no ";
  if (compound && !machine->polishes()) {
    throw BadInput::of(
        "machine",
        "use a polisher: " + on + "compound, as its friction is 0, in " + std::string(where),
        {"compound"});
  }
  if (!compound && machine->is_rotary()) {
    throw BadInput::of("machine", on + "paper: a rotary takes compound, in " + std::string(where));
  }
}

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
