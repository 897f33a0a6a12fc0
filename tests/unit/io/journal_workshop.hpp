// Entries of every kind for the tests of journals.
#pragma once

#include <string>
#include <vector>

#include "levigate/io/entry.hpp"
#include "levigate/io/read_journal.hpp"

namespace journal_workshop {

using namespace levigate;

inline Entry entry(EntryKind kind) {
  Entry result;
  result.kind = kind;
  result.at = "2026-03-01T09:30:00Z";
  result.job = "walnut clock case";
  return result;
}

inline Entry note(std::string text) {
  Entry result = entry(EntryKind::note);
  result.text = std::move(text);
  return result;
}

/// One of each kind, with all that the kind may have.
inline std::vector<Entry> one_of_each() {
  Entry begun = entry(EntryKind::step_begun);
  begun.sheet = "P800 wet";
  begun.zone = "top";
  begun.direction_deg = 45;
  Entry ended = entry(EntryKind::step_ended);
  ended.sheet = "P800 wet";
  ended.minutes = 12.3;
  ended.sheets_used = 0.1;
  Entry cleaned = entry(EntryKind::cleaned);
  cleaned.sheet = "P800 wet";
  Entry film = entry(EntryKind::film_read);
  film.zone = "left side";
  film.readings_um = {98, 101.5, 0.1};
  Entry scratch = entry(EntryKind::scratch_read);
  scratch.zone = "top";
  scratch.sheet = "P800 wet";
  scratch.width_um = 3.3;
  Entry rough = scratch;
  rough.width_um.reset();
  rough.ra_um = 1e-4;
  Entry found = entry(EntryKind::mark_found);
  found.mark.emplace();
  found.mark->kind = MarkKind::cluster;
  found.mark->zone = "top";
  found.mark->seen = Seen::loupe;
  found.mark->width_um = 4;
  found.mark->direction_deg = 90;
  found.mark->count = 3;
  found.text = "near the edge";
  Entry wave = entry(EntryKind::mark_found);
  wave.mark.emplace();
  wave.mark->kind = MarkKind::wave;
  wave.mark->zone = "top";
  wave.mark->height_um = 1.5;
  Entry struck = entry(EntryKind::struck);
  struck.line = 2;
  struck.text = "twelve minutes were of the door";
  return {begun, ended,   cleaned,
          film,  scratch, rough,
          found, wave,    note("\"quoted\", \\ \n\t\x01 B\xC3\xBCrste"),
          struck};
}

inline std::string lines_of(const std::vector<Entry>& entries) {
  std::string text;
  for (const Entry& each : entries) text += to_json(each);
  return text;
}

}  // namespace journal_workshop
