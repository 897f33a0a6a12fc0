// What an inspection shows: one mark on the finished surface, how wide it is and how that is known, where, and which way
// it runs.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "levigate/error.hpp"

namespace levigate::inline v0 {

enum class MarkKind {
  scratch,       ///< one
  cluster,       ///< several beside each other, running the same way
  haze,          ///< too fine and too many to be told apart
  swirl,         ///< arcs, seen round the reflection of a lamp
  wave,          ///< a reflection that bends: peel that was not levelled
  witness_line,  ///< the ring where the last round is sanded through
};

constexpr std::string_view to_string(MarkKind kind) noexcept {
  switch (kind) {
    case MarkKind::scratch: return "scratch";
    case MarkKind::cluster: return "cluster";
    case MarkKind::haze: return "haze";
    case MarkKind::swirl: return "swirl";
    case MarkKind::wave: return "wave";
    case MarkKind::witness_line: return "witness line";
  }
  return "";
}

inline constexpr MarkKind all_mark_kinds[] = {MarkKind::scratch, MarkKind::cluster,
                                              MarkKind::haze,    MarkKind::swirl,
                                              MarkKind::wave,    MarkKind::witness_line};

/// How the width of a mark is known.
enum class Seen {
  loupe,       ///< read off a scale
  comparison,  ///< held against something of known width
  lamp,        ///< not measured; shows in the diffuse light of the room
  sunlight,    ///< not measured; shows in the sun or a point of light only
};

constexpr std::string_view to_string(Seen seen) noexcept {
  switch (seen) {
    case Seen::loupe: return "loupe";
    case Seen::comparison: return "comparison";
    case Seen::lamp: return "lamp";
    case Seen::sunlight: return "sunlight";
  }
  return "";
}

inline constexpr Seen all_ways_seen[] = {Seen::loupe, Seen::comparison, Seen::lamp, Seen::sunlight};

/// One mark.
struct Mark {
  MarkKind kind = MarkKind::scratch;
  std::string zone;
  Seen seen = Seen::sunlight;
  std::optional<double> width_um;       ///< by loupe or comparison [um], 0.1 to 1000
  std::optional<double> direction_deg;  ///< against the length of the zone [deg], 0 to 180
  std::optional<int> count;             ///< of a cluster, 2 to 1000
  std::optional<double> height_um;      ///< of a wave, peak to valley [um], 0.01 to 1000

  friend bool operator==(const Mark&, const Mark&) = default;
};

/// Throws: OutOfRange where a member is outside its range; BadInput for an empty zone, for a width that is missing by
/// loupe or comparison or given with lamp or sunlight, for a count without a cluster and a height without a wave.
inline void validate(const Mark& mark, std::string_view where) {
  const auto refuse = [&](const std::string& text) {
    throw BadInput(text + ", in " + std::string(where));
  };
  if (mark.zone.empty()) refuse("zone is empty");
  const bool measured = mark.seen == Seen::loupe || mark.seen == Seen::comparison;
  const std::string seen(to_string(mark.seen));
  const bool lines = mark.kind != MarkKind::wave && mark.kind != MarkKind::witness_line;
  if (mark.width_um && !measured)
    refuse("width_um is given, but seen by " + seen + " measures none");
  if (mark.width_um && !lines) refuse("width_um is given, but the mark is no scratch");
  if (!mark.width_um && measured && lines) refuse("width_um is missing: seen by " + seen);
  if (mark.count && mark.kind != MarkKind::cluster)
    refuse("count is given, but the mark is no cluster");
  if (mark.height_um && mark.kind != MarkKind::wave)
    refuse("height_um is given, but the mark is no wave");
  if (mark.width_um) detail::require_range(*mark.width_um, 0.1, 1e3, "width_um", "um", where);
  if (mark.direction_deg)
    detail::require_range(*mark.direction_deg, 0.0, 180.0, "direction_deg", "deg", where);
  if (mark.count) detail::require_range(*mark.count, 2, 1000, "count", "", where);
  if (mark.height_um) detail::require_range(*mark.height_um, 0.01, 1e3, "height_um", "um", where);
}

}  // namespace levigate
