// The cautions of a plan in one short line each, for the bench sheet. Each defers as its long form does: the last one says so.
#pragma once

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/plan/caution.hpp"
#include "levigate/plan/plan_values.hpp"

namespace levigate::inline v0 {

namespace detail {

/// A caution in few words. `topic` is that of its long form.
struct ShortCaution {
  std::string_view topic;
  std::string_view text;
};

/// The topic of what stands above every caution. It is said once, at the end.
inline constexpr std::string_view authority_topic = "authority";

inline constexpr std::string_view first_of_all =
    "The data sheet, local codes and licensed practice come before this sheet.";
inline constexpr std::string_view first_of_all_with_machine =
    "Data sheet, machine's manual, local codes and licensed practice come first.";

inline constexpr auto short_cautions_of_job = std::to_array<ShortCaution>({
    {"cure", "Sand a two-part coat only when fully cured. No dust mask stops isocyanate vapour."},
    {"dust", "Sand wet where you can. Dry dust: extraction, eye protection, fitted respirator."},
    {"edges", "Edges hold less film. Keep the block off while levelling. Sand them last, lightly."},
    {"rags", "Oily or solvent rags can ignite. Dry them flat outdoors, or under water in a can."},
});

inline constexpr auto short_cautions_of_wheel = std::to_array<ShortCaution>({
    {"rating", "Wheel: stay below the rpm printed on it. Stand aside while it comes up to speed."},
    {"hold", "Wheel: work on the lower front quadrant, below centre. Grip with both hands."},
    {"edges", "Wheel: keep edges trailing. The rim runs off an edge, never onto it."},
    {"spindle",
     "Wheel: no gloves near the spindle, no loose sleeves, cords or jewellery. Hair back."},
    {"protection", "Wheel: face protection, apron and dust mask. Nobody stands in line with it."},
    {"heat", "Wheel: keep moving and press lightly. Let the work cool when it feels warm."},
    {"fire", "Wheel: a dry rim burns. Keep lint, dust and solvent away, an extinguisher near."},
    {"wheels", "Wheel: one labelled wheel for each compound, never one that has touched metal."},
});

inline constexpr auto short_cautions_of_machine = std::to_array<ShortCaution>({
    {"shock",
     "Machine: mains power and water can kill. Work dry, or by its manual and local codes."},
    {"edges", "Machine: set the pad down flat, then start. Lift it off running. Never tip it."},
});

/// The short form of a caution; its whole text where it has none.
template <typename Table>
std::string short_caution(const Table& table, const Caution& caution) {
  const auto at = std::find_if(table.begin(), table.end(),
                               [&](const ShortCaution& one) { return one.topic == caution.topic; });
  return at == table.end() ? caution.text : std::string(at->text);
}

/// The cautions of a plan and of its steps, each once, and last what stands above them.
inline std::vector<std::string> short_cautions(const Plan& plan) {
  std::vector<std::string> lines;
  bool machine = false;
  const auto add = [&](const auto& table, const std::vector<Caution>& cautions) {
    for (const Caution& caution : cautions) {
      const std::string line = short_caution(table, caution);
      if (caution.topic == authority_topic) continue;
      if (std::find(lines.begin(), lines.end(), line) == lines.end()) lines.push_back(line);
    }
  };
  add(short_cautions_of_job, plan.cautions);
  for (const Step& step : plan.steps) {
    machine = machine || step.wheel || step.machine;
    if (step.wheel) {
      add(short_cautions_of_wheel, step.cautions);
    } else {
      add(short_cautions_of_machine, step.cautions);
    }
  }
  lines.emplace_back(machine ? first_of_all_with_machine : first_of_all);
  return lines;
}

}  // namespace detail

}  // namespace levigate
