// What journals can show of a job: minutes, scratches and film as they were, each beside what was computed.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/choices.hpp"
#include "levigate/version.hpp"

namespace levigate::inline v0 {

/// The place of an observation or a reason in the journal.
struct Place {
  std::size_t entry =
      0;  ///< position among the entries given, from 0; the last where there are several
  std::string at;
  std::size_t line =
      0;  ///< of a journal's file, from 1: the position where a bench does not know it; 0: none told

  friend bool operator==(const Place&, const Place&) = default;
};

/// Minutes of a step in one zone, or in all, or of a patch.
struct PaceSeen {
  std::string coating;
  std::string backing;
  std::string sheet;
  std::string zone;              ///< empty: all
  double predicted_minutes = 0;  ///< sanding, without the change
  double actual_minutes = 0;     ///< of all entries of the step together
  Place place;
  double log_sd = 0;     ///< of the logarithm of what came off a patch: how sure it is; 0 of a step
  bool machine = false;  ///< whether a machine worked, which tells nothing of the person's pace
};

/// Depth or roughness of the scratches of a sheet.
struct ScratchSeen {
  std::string coating;
  std::string backing;
  std::string sheet;
  std::string zone;
  double predicted_um = 0;
  double seen_um = 0;  ///< depth worked out from the width, or Ra
  Place place;
};

/// Film that coats were to leave in a zone, and a gauge's readings before the first step.
struct FilmSeen {
  std::string coating;
  std::string zone;
  double expected_um = 0;           ///< mean of all rounds [um]
  double sd_um = 0;                 ///< from spot to spot, as the job has it [um]
  std::vector<double> readings_um;  ///< that count, of all entries before the first step
  Place place;
};

/// Why an entry teaches nothing.
enum class UnmatchedKind {
  other_job,           ///< it is of another job; its name
  no_such_zone,        ///< the job has no zone of that name
  no_such_sheet,       ///< the stack has no sheet of that id
  no_minutes,          ///< of a step that ended
  not_ended,           ///< a step with that sheet was begun only
  goes_back,           ///< from one sheet to another: what had to be removed is not known
  step_known_in_part,  ///< a part of the step was learned before
  unnamed_coating,     ///< the coating has no name of its own to learn under
  unnamed_backing,     ///< the backing has none
  unnamed_machine,     ///< the machine has none
  hand_and_machine,    ///< minutes of hand and machine in one
  nothing_to_remove,   ///< as computed
  took_no_minutes,
  names_no_zone,
  no_scratch,        ///< it reads no width and no roughness
  solid,             ///< the work has no film
  film_of_readings,  ///< the job's film is not from coats
  edge,              ///< it holds a share of the film only
  sanded_before,     ///< the zone was, before it was read
  no_readings,
  not_a_number,         ///< a reading is not
  film_known,           ///< the film of the zone was learned before
  reading_contradicts,  ///< it contradicts the film that it was to meet, or another reading
  no_such_tool,         ///< neither the job nor a profile has a block of that name
  patch_too_thin,       ///< what came off is not above twice its error
};

constexpr std::string_view to_string(UnmatchedKind kind) noexcept {
  switch (kind) {
    case UnmatchedKind::other_job: return "other_job";
    case UnmatchedKind::no_such_zone: return "no_such_zone";
    case UnmatchedKind::no_such_sheet: return "no_such_sheet";
    case UnmatchedKind::no_minutes: return "no_minutes";
    case UnmatchedKind::not_ended: return "not_ended";
    case UnmatchedKind::goes_back: return "goes_back";
    case UnmatchedKind::step_known_in_part: return "step_known_in_part";
    case UnmatchedKind::unnamed_coating: return "unnamed_coating";
    case UnmatchedKind::unnamed_backing: return "unnamed_backing";
    case UnmatchedKind::unnamed_machine: return "unnamed_machine";
    case UnmatchedKind::hand_and_machine: return "hand_and_machine";
    case UnmatchedKind::nothing_to_remove: return "nothing_to_remove";
    case UnmatchedKind::took_no_minutes: return "took_no_minutes";
    case UnmatchedKind::names_no_zone: return "names_no_zone";
    case UnmatchedKind::no_scratch: return "no_scratch";
    case UnmatchedKind::solid: return "solid";
    case UnmatchedKind::film_of_readings: return "film_of_readings";
    case UnmatchedKind::edge: return "edge";
    case UnmatchedKind::sanded_before: return "sanded_before";
    case UnmatchedKind::no_readings: return "no_readings";
    case UnmatchedKind::not_a_number: return "not_a_number";
    case UnmatchedKind::film_known: return "film_known";
    case UnmatchedKind::reading_contradicts: return "reading_contradicts";
    case UnmatchedKind::no_such_tool: return "no_such_tool";
    case UnmatchedKind::patch_too_thin: return "patch_too_thin";
  }
  return "";
}

template <>
inline constexpr auto choices<UnmatchedKind> =
    std::to_array({UnmatchedKind::other_job,           UnmatchedKind::no_such_zone,
                   UnmatchedKind::no_such_sheet,       UnmatchedKind::no_minutes,
                   UnmatchedKind::not_ended,           UnmatchedKind::goes_back,
                   UnmatchedKind::step_known_in_part,  UnmatchedKind::unnamed_coating,
                   UnmatchedKind::unnamed_backing,     UnmatchedKind::unnamed_machine,
                   UnmatchedKind::hand_and_machine,    UnmatchedKind::nothing_to_remove,
                   UnmatchedKind::took_no_minutes,     UnmatchedKind::names_no_zone,
                   UnmatchedKind::no_scratch,          UnmatchedKind::solid,
                   UnmatchedKind::film_of_readings,    UnmatchedKind::edge,
                   UnmatchedKind::sanded_before,       UnmatchedKind::no_readings,
                   UnmatchedKind::not_a_number,        UnmatchedKind::film_known,
                   UnmatchedKind::reading_contradicts, UnmatchedKind::no_such_tool,
                   UnmatchedKind::patch_too_thin});

/// An entry that was meant to teach something and does not: sentence() of text/sentences.hpp says why.
struct Unmatched {
  Place place;
  UnmatchedKind kind = UnmatchedKind::other_job;
  std::vector<std::string> names{};  ///< of the job, zone or sheet; of the sheets it goes between
  std::string sheet{};               ///< of the entry; empty where it names none

  friend bool operator==(const Unmatched&, const Unmatched&) = default;
};

/// All that entries show of a job.
struct Observed {
  std::vector<PaceSeen> paces;
  std::vector<ScratchSeen> scratches;
  std::vector<FilmSeen> films;
  std::vector<Unmatched> unmatched;
};

}  // namespace levigate
