// One line of the journal: something that really happened at the bench, and when.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/recover/mark.hpp"

namespace levigate::inline v0 {

enum class EntryKind {
  step_begun,    ///< sheet; zone, direction_deg where known
  step_ended,    ///< sheet, minutes; zone, sheets_used, removal_um where known
  cleaned,       ///< sheet: washed or brushed
  film_read,     ///< zone, readings_um
  scratch_read,  ///< zone, sheet that left it, and width_um by loupe or ra_um by a roughness tester
  mark_found,    ///< mark, which names its zone
  note,          ///< text
};

constexpr std::string_view to_string(EntryKind kind) noexcept {
  switch (kind) {
    case EntryKind::step_begun: return "step begun";
    case EntryKind::step_ended: return "step ended";
    case EntryKind::cleaned: return "cleaned";
    case EntryKind::film_read: return "film read";
    case EntryKind::scratch_read: return "scratch read";
    case EntryKind::mark_found: return "mark found";
    case EntryKind::note: return "note";
  }
  return "";
}

inline constexpr EntryKind all_entry_kinds[] = {
    EntryKind::step_begun,   EntryKind::step_ended, EntryKind::cleaned, EntryKind::film_read,
    EntryKind::scratch_read, EntryKind::mark_found, EntryKind::note};

/// The kind of that name. Throws: BadInput with the nearest name where there is none.
EntryKind entry_kind_named(std::string_view name);

/// One entry. Which members a kind has stands at the kind; the others are empty.
struct Entry {
  EntryKind kind = EntryKind::note;
  std::string at{};     ///< when, as RFC 3339 writes it: 2026-03-01T09:30:00Z
  std::string job{};    ///< name of the job
  std::string zone{};   ///< empty: all zones, where the kind does not need it
  std::string sheet{};  ///< id
  std::optional<double>
      minutes{};  ///< sanding and all that belongs to it, without the change [min], 0 to 1e5
  std::optional<double> sheets_used{};  ///< 0 to 1e5
  std::optional<double>
      removal_um{};  ///< film taken off, where it is not what the scratches before asked for [um], 0 to 1e4
  std::optional<double>
      direction_deg{};  ///< of the strokes against the length of the zone [deg], 0 to 180
  std::vector<double> readings_um{};  ///< of a film gauge [um], each 0 to 20 000
  std::optional<double> width_um{};   ///< of the deepest usual scratches [um], 0.1 to 1000
  std::optional<double> ra_um{};      ///< [um], 0.0001 to 1000
  std::optional<Mark> mark{};
  std::string text{};  ///< any words; with every kind

  friend bool operator==(const Entry&, const Entry&) = default;
};

/// Throws: BadInput where a member is missing that the kind needs or given that it does not have, `at` is no date and
/// time of RFC 3339, job is empty, or a text is not UTF-8; OutOfRange where a number is outside its range.
void validate(const Entry& entry, std::string_view where);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/journal/work/entry.hpp"
#endif
