// What an inspection shows: one mark on the finished surface, how wide it is and how that is known, where, and which way it runs.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "levigate/describe.hpp"
#include "levigate/faults.hpp"

namespace levigate::inline v0 {

/// What a mark looks like.
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

inline constexpr auto all_mark_kinds =
    std::to_array({MarkKind::scratch, MarkKind::cluster, MarkKind::haze, MarkKind::swirl,
                   MarkKind::wave, MarkKind::witness_line});

template <>
inline constexpr auto choices<MarkKind> = all_mark_kinds;

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

inline constexpr auto all_ways_seen =
    std::to_array({Seen::loupe, Seen::comparison, Seen::lamp, Seen::sunlight});

template <>
inline constexpr auto choices<Seen> = all_ways_seen;

/// One mark.
struct Mark {
  MarkKind kind = MarkKind::scratch;
  std::string zone;
  Seen seen = Seen::sunlight;
  std::optional<double> width_um;
  std::optional<double> direction_deg;
  std::optional<int> count;
  std::optional<double> height_um;

  friend bool operator==(const Mark&, const Mark&) = default;
};

namespace detail {

/// Throws: BadInput for a width that is missing by loupe or comparison or given with lamp or sunlight, for a count without
/// a cluster and a height without a wave.
void seen_as_it_can_be(const levigate::Mark& mark, std::string_view where);

}  // namespace detail

template <std::same_as<Mark> Value>
inline constexpr auto described<Value> =
    describe<Value>(
        "Mark", "One mark on the finished surface, as it was seen.",
        member<&Value::kind>("kind", "what it looks like"),
        member<&Value::zone>("zone", "name of the zone it is in").not_empty(),
        member<&Value::seen>("seen",
                             "how its width is known; by lamp and in sunlight none is measured"),
        member<&Value::width_um>("width_um", Within{0.1, 1e3},
                                 "by loupe or comparison; of a wave or witness line there is none"),
        member<&Value::direction_deg>("direction_deg", Within{0, 180},
                                      "against the length of the zone"),
        member<&Value::count>("count", Within{2, 1000}, "of a cluster, how many"),
        member<&Value::height_um>("height_um", Within{0.01, 1e3}, "of a wave, peak to valley"))
        .rule(rule_by<&detail::seen_as_it_can_be>);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/recover/work/mark.hpp"
#endif
