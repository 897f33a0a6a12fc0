// Which entries of a journal belong to one step.
#pragma once

#include "levigate/journal/entry.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Whether an entry that ends a step ends one that the other began: of the same job and sheet, with a zone in common.
inline bool ends(const Entry& ended, const Entry& begun) {
  return ended.kind == EntryKind::step_ended && begun.kind == EntryKind::step_begun &&
         ended.job == begun.job && ended.sheet == begun.sheet &&
         (ended.zone == begun.zone || ended.zone.empty() || begun.zone.empty());
}

/// Whether an entry covers all zones of another.
inline bool covers(const Entry& entry, const Entry& other) {
  return entry.zone.empty() || entry.zone == other.zone;
}

}  // namespace detail

}  // namespace levigate
