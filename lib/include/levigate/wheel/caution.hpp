// The cautions of work at a wheel and with hand-held machines.
// They are reminders: the machine's manual, the data sheet and local rules come first.
#pragma once

#include <string_view>

#include "levigate/source.hpp"

namespace levigate::inline v0 {

/// One caution of work at a wheel or with a machine.
struct WheelCaution {
  std::string_view topic;
  std::string_view text;
};

/// All of them, most serious first.
inline constexpr WheelCaution wheel_cautions[] = {
    {"rating",
     "Never run a wheel faster than the rpm printed on it or allowed by its maker. Stand aside "
     "while it comes up to speed."},
    {"hold",
     "The top of the wheel turns towards you. Work on the lower front quadrant, below the centre "
     "line. There the rim runs down and away. Grip the work firmly with both hands. The wheel may "
     "tear it out of them."},
    {"edges",
     "Keep edges trailing: the rim runs off an edge, never onto it. The wheel catches and throws "
     "an "
     "opening or a corner that faces the rotation."},
    {"spindle",
     "Wear no gloves near the spindle, no loose sleeves, cords or jewellery. Tie hair back. Cover "
     "a "
     "spindle end that projects."},
    {"protection",
     "Wear eye and face protection, an apron, and a dust mask of the class that local rules ask "
     "for. Let nobody stand in line with the wheel."},
    {"heat",
     "Keep the work moving and press lightly. Stop and let it cool when it feels warm. A soft coat "
     "smears and burns through at once."},
    {"fire",
     "Too much pressure and a dry rim set buffs on fire. Keep lint, lacquer dust and solvent away "
     "from the wheel. Keep an extinguisher within reach."},
    {"wheels",
     "Use one labelled wheel for each compound. Never use a wheel that has touched metal. Rake "
     "wheels clean and keep them in bags."},
    {"authority", "The machine's manual, the data sheet and local rules come before this card."},
};

inline constexpr Source wheel_caution_source{Basis::common_practice,
                                             "workshop practice at buffing wheels; no source"};

/// The same of hand-held machines.
inline constexpr WheelCaution machine_cautions[] = {
    {"shock",
     "Water and a machine on mains power can kill. Work dry with it, or follow its manual and "
     "local codes."},
    {"edges",
     "Set the pad down flat before it starts. Lift it off running. Never tip it over an edge."},
};

inline constexpr Source machine_caution_source{Basis::common_practice,
                                               "workshop practice with machines; no source"};

}  // namespace levigate
