// What a line of a journal tells of.
#pragma once

#include <array>
#include <string_view>

#include "levigate/choices.hpp"

namespace levigate::inline v0 {

/// What happened, and which members an entry of it has.
enum class EntryKind {
  step_begun,  ///< sheet; zone, direction_deg where known; minutes: worked so far, where it is told again
  step_ended,    ///< sheet, minutes; zone, sheets_used, removal_um where known
  cleaned,       ///< sheet: washed or brushed
  film_read,     ///< zone, readings_um
  scratch_read,  ///< zone, sheet that left it, and width_um by loupe or ra_um by a roughness tester
  patch_worked,  ///< sheet, tool, area_cm2, minutes; before_um and after_um, or before_g and after_g, or zone: until its
                 ///< shiny spots were gone
  mark_found,    ///< mark, which names its zone
  note,          ///< text
  struck,  ///< line, text: an earlier line that was wrong, and why; it stays, and no reader counts it
};

constexpr std::string_view to_string(EntryKind kind) noexcept {
  switch (kind) {
    case EntryKind::step_begun: return "step begun";
    case EntryKind::step_ended: return "step ended";
    case EntryKind::cleaned: return "cleaned";
    case EntryKind::film_read: return "film read";
    case EntryKind::scratch_read: return "scratch read";
    case EntryKind::patch_worked: return "patch worked";
    case EntryKind::mark_found: return "mark found";
    case EntryKind::note: return "note";
    case EntryKind::struck: return "struck";
  }
  return "";
}

inline constexpr auto all_entry_kinds =
    std::to_array({EntryKind::step_begun, EntryKind::step_ended, EntryKind::cleaned,
                   EntryKind::film_read, EntryKind::scratch_read, EntryKind::patch_worked,
                   EntryKind::mark_found, EntryKind::note, EntryKind::struck});

template <>
inline constexpr auto choices<EntryKind> = all_entry_kinds;

}  // namespace levigate
