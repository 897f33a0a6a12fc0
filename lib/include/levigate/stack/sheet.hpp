// One piece of abrasive in the drawer: a sheet, or a pad that is its own tool.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "levigate/grade/grade.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/block.hpp"

namespace levigate::inline v0 {

/// What is known of one kind of paper on hand. Sheets of one kind are one entry.
struct Sheet {
  std::string id;                 ///< the user's own name for it; unique in a stack
  std::string maker;              ///< may be empty
  std::string label;              ///< as printed on the back
  std::optional<System> system;   ///< where the label does not say it
  std::optional<double> size_um;  ///< the user's own size [um]; stands above the label's
  Backing backing;
  std::optional<Block>
      block;  ///< where the sheet is its own tool: takes the place of the zone's block
  double width_mm = 0;
  double height_mm = 0;
  std::optional<double> worn_um;  ///< of a compound: its grain once broken down in use [um]
  std::optional<double> coarsest_scratch_um;  ///< of a compound: deepest scratch it takes out [um]
  std::optional<double>
      coarsest_paper_um;          ///< the same, as grain of the paper that it may follow [um]
  double wear_share = 1;          ///< of the rate of held grain that loose grain reaches
  std::optional<double> on_hand;  ///< sheets in the drawer; none: no limit
  std::optional<double> price;    ///< of one sheet, in any currency of hundred cents

  double area_cm2() const noexcept { return width_mm * height_mm / 100.0; }
};

/// Whether it takes out scratches down to a depth, as a compound does, instead of keeping to a ratio.
inline bool is_compound(const Sheet& sheet) {
  return sheet.coarsest_scratch_um.has_value() || sheet.coarsest_paper_um.has_value();
}

/// Throws: BadInput for an empty id or label; OutOfRange for a member outside its range.
void validate(const Sheet& sheet, std::string_view where);

/// The grade that a sheet's label stands for: its own size where it has one, else the label read in its own system,
/// else the label with the stack's rule for bare numbers.
///
/// Throws: UnknownGrade, AmbiguousLabel as grade(); BadInput where the label belongs to another system than `system`
Grade grade_of(const Sheet& sheet, std::optional<System> bare_number);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/stack/work/sheet.hpp"
#endif
