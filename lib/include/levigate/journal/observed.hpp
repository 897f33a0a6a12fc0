// What journals can show of a job: minutes, scratches and film as they were, each beside what was computed.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "levigate/version.hpp"

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

}  // namespace levigate
