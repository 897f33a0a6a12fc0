// Why there is no plan: what stands in the way, and what would help.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/stack/check.hpp"

namespace levigate::inline v0 {

/// A step that the rules do not allow, but the way past them needs.
struct Gap {
  std::string coarse;  ///< id of the sheet, or the label of the grade the work carries
  std::string fine;    ///< id of the sheet
  double coarse_um = 0;
  double fine_um = 0;
  double ratio = 0;
  std::vector<Bridge> bridges;  ///< one per system that has any
};

/// A sheet that runs out.
struct PaperShort {
  std::string sheet;
  double needed = 0;
  double on_hand = 0;
};

/// The limit that stands in the way. Where lifting one of several would do, the first in this order.
enum class Blocker {
  done,     ///< nothing: every zone meets the target as it stands
  target,   ///< no sheet meets the target
  ratio,    ///< max_ratio, or min_ratio
  scratch,  ///< a compound's reach
  film,     ///< a zone's film
  paper,    ///< the sheets on hand
  several,  ///< more than one at once
};

constexpr std::string_view to_string(Blocker blocker) noexcept {
  switch (blocker) {
    case Blocker::done: return "done";
    case Blocker::target: return "target";
    case Blocker::ratio: return "ratio";
    case Blocker::scratch: return "scratch";
    case Blocker::film: return "film";
    case Blocker::paper: return "paper";
    case Blocker::several: return "several";
  }
  return "";
}

/// The reason for no plan. What does not apply is empty.
struct Why {
  Blocker blocked_by = Blocker::target;
  std::string message;                       ///< all of it in words
  std::optional<double> smallest_max_ratio;  ///< that would do, all else as it is
  std::optional<double> largest_min_ratio;   ///< that would do, all else as it is
  std::vector<Gap> gaps;                     ///< at smallest_max_ratio, the steps above max_ratio
  std::string compound;                      ///< that meets scratches beyond its reach
  std::optional<double> too_deep_um;         ///< by at least so much
  std::string zone;                          ///< that runs out of film
  std::optional<double> film_short_um;       ///< by at least so much
  std::vector<PaperShort> paper;  ///< the sheets that run out, in the plan with least missing
};

}  // namespace levigate
