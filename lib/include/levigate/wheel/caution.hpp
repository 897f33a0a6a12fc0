// The cautions of work at a wheel. They are reminders: the machine's manual, the data sheet and local rules come
// first.
#pragma once

#include <string_view>

#include "levigate/source.hpp"

namespace levigate::inline v0 {

/// One caution of wheel work.
struct WheelCaution {
  std::string_view topic;
  std::string_view text;
};

/// All of them, most serious first.
inline constexpr WheelCaution wheel_cautions[] = {
    {"rating",
     "Never run a wheel faster than the rpm printed on it or allowed by its maker. Stand aside "
     "while it "
     "comes up to speed."},
    {"hold",
     "The top of the wheel turns towards you: work on the lower front quadrant, below the centre "
     "line, "
     "where the rim runs down and away. A firm grip with both hands; the work may be torn out of "
     "them."},
    {"edges",
     "Edges trail: the rim runs off an edge, never onto it. An opening or a corner that faces the "
     "rotation is caught and thrown."},
    {"spindle",
     "No gloves near the spindle, no loose sleeves, cords, jewellery or hair. Cover a spindle end "
     "that "
     "projects."},
    {"protection",
     "Eye and face protection, an apron, and a dust mask of the class that local rules ask "
     "for. Nobody stands in the plane of the wheel."},
    {"heat",
     "Keep the work moving and press lightly; stop and let it cool when it feels warm. A coat that "
     "softens smears and burns through at once."},
    {"fire",
     "Too much pressure and a dry rim set buffs alight. No heap of lint or lacquer dust at the "
     "wheel, no "
     "solvent near it, an extinguisher within reach."},
    {"wheels",
     "One compound for each wheel, labelled. Never a wheel that has seen metal; rake wheels clean "
     "and "
     "keep them bagged."},
    {"authority", "The machine's manual, the data sheet and local rules stand above this card."},
};

inline constexpr Source wheel_caution_source{Basis::common_practice,
                                             "workshop practice at buffing wheels; no source"};

}  // namespace levigate
