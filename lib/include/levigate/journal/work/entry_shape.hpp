// Which members each kind of entry has.
#pragma once

#include <string_view>
#include <vector>

#include "levigate/journal/entry_kind.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Members that a kind needs and those it may have, beside at, job and text.
struct EntryShape {
  std::vector<std::string_view> needs;
  std::vector<std::string_view> may = {};
};

inline EntryShape shape_of(EntryKind kind) {
  switch (kind) {
    case EntryKind::step_begun: return {{"sheet"}, {"zone", "direction_deg", "minutes"}};
    case EntryKind::step_ended:
      return {{"sheet", "minutes"}, {"zone", "sheets_used", "removal_um", "overcut"}};
    case EntryKind::cleaned: return {{"sheet"}};
    case EntryKind::film_read: return {{"zone", "readings_um"}};
    case EntryKind::scratch_read: return {{"zone", "sheet"}, {"width_um", "ra_um"}};
    case EntryKind::patch_worked:
      return {{"sheet", "tool", "area_cm2", "minutes"},
              {"zone", "before_um", "after_um", "before_g", "after_g"}};
    case EntryKind::mark_found: return {{"mark"}};
    case EntryKind::note: return {{"text"}};
    case EntryKind::struck: return {{"line", "text"}};
  }
  return {};
}

}  // namespace detail

}  // namespace levigate
