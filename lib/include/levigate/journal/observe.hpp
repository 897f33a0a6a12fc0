// What the entries of a journal show of a job: minutes, scratches and film as they were, each beside what was computed.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "levigate/journal/entry.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// Where an observation or a reason stands in the journal.
struct Place {
  std::size_t entry =
      0;  ///< position among the entries given, from 0; the last where there are several
  std::string at;

  friend bool operator==(const Place&, const Place&) = default;
};

/// Minutes of a step in one zone, or in all.
struct PaceSeen {
  std::string coating;
  std::string backing;
  std::string sheet;
  std::string zone;              ///< empty: all
  double predicted_minutes = 0;  ///< sanding, without the change
  double actual_minutes = 0;     ///< of all entries of the step together
  Place place;
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
  std::vector<double> readings_um;  ///< of all entries before the first step together
  Place place;
};

/// An entry that was meant to teach something and does not.
struct Unmatched {
  Place place;
  std::string reason;  ///< a sentence

  friend bool operator==(const Unmatched&, const Unmatched&) = default;
};

/// All that entries show of a job.
struct Observed {
  std::vector<PaceSeen> paces;
  std::vector<ScratchSeen> scratches;
  std::vector<FilmSeen> films;
  std::vector<Unmatched> unmatched;
};

/// What the entries of a journal show of a job, each beside what is computed for this job and stack as they are.
///
/// Each zone has its own sequence: the sheets that entries name for it or for all zones. Minutes of a step in several entries add
/// up; where one of them is of all zones, so do the zones. What an entry says was taken off stands above what is computed. A width
/// tells a depth by depth_of_width_um(). What is of a coating or a backing without a name of its own teaches nothing.
///
/// @param job      that the entries belong to
/// @param stack    that the sheets are of
/// @param entries  of one journal, in order; those of other jobs are told as unmatched
/// @return         observations, and entries that were meant to teach and do not, with the reason
/// Throws:    as workings()
/// NaN:       rejected in job and stack; an entry that holds one is told as unmatched, or removal_um refused
/// Accuracy:  that of plan(), contact()
/// Source:    that of effort(), scratch_depth_um(), ra_um()
Observed observe(const Job& job, const Stack& stack, const std::vector<Entry>& entries);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/journal/work/observe.hpp"
#endif
