// A polishing compound as it lies in the drawer: its grain, and what it may follow.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "levigate/error.hpp"
#include "levigate/faults.hpp"
#include "levigate/source.hpp"
#include "levigate/stack/tool.hpp"

namespace levigate::inline v0 {

/// A compound takes out scratches down to a depth.
struct ScratchReach {
  double coarsest_scratch_um = 0;

  friend bool operator==(const ScratchReach&, const ScratchReach&) = default;
};

/// A compound may follow paper up to a grain size, whatever depth that scratches the coat to.
struct PaperReach {
  double coarsest_paper_um = 0;

  friend bool operator==(const PaperReach&, const PaperReach&) = default;
};

template <std::same_as<ScratchReach> Value>
inline constexpr auto described<Value> = describe<Value>(
    "ScratchReach", "The deepest scratch that a compound takes out.",
    member<&Value::coarsest_scratch_um>("coarsest_scratch_um", Within{1e-3, 100},
                                        "depth of the deepest scratch that it takes out"));

template <std::same_as<PaperReach> Value>
inline constexpr auto described<Value> = describe<Value>(
    "PaperReach", "The coarsest paper that a compound may follow.",
    member<&Value::coarsest_paper_um>("coarsest_paper_um", Within{0.01, 1e4},
                                      "grain of the coarsest paper that it may follow"));

/// A compound of the drawer, bar or liquid.
struct Polish {
  std::string name = "own";
  double size_um = 0;
  double worn_um = 0;
  double wear_share = 1;
  std::variant<ScratchReach, PaperReach> reach;
  std::optional<Tool> tool{};
  Basis basis = Basis::user;

  friend bool operator==(const Polish&, const Polish&) = default;
};

/// Throws: BadInput where its worn grain is larger than its fresh one.
inline void require_worn(const Polish& polish, std::string_view where) {
  if (polish.worn_um <= polish.size_um) return;
  throw BadInput::of("worn_um",
                     "worn_um = " + detail::number_text(polish.worn_um) +
                         " um is above the fresh size_um = " + detail::number_text(polish.size_um) +
                         " um, in " + std::string(where),
                     {"size_um"});
}

template <std::same_as<Polish> Value>
inline constexpr auto described<Value> =
    describe<Value>(
        "Polish", "A polishing compound, as it lies in the drawer.",
        member<&Value::name>("name", "name of the profile, or the user's own").optional(),
        member<&Value::size_um>("size_um", Within{0.01, 100}, "median grain size as charged")
            .is(Input::believed),
        member<&Value::worn_um>("worn_um", Within{0.01, 100}, "the same, once broken down in use")
            .is(Input::believed),
        member<&Value::reach>("reach", "what it takes out").flat(),
        member<&Value::wear_share>("wear_share", Within{1e-3, 1},
                                   "of the rate of held grain that its loose grain reaches")
            .is(Input::pace),
        member<&Value::tool>("tool", "that carries it; none: the block of the zone").unwritten(),
        member<&Value::basis>("basis", "what its size rests on").unwritten())
        .rule(rule_by<&require_worn>);

}  // namespace levigate
