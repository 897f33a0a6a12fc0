// Facts of a result as words, for sentences.
#pragma once

#include <algorithm>
#include <cstddef>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/fact.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The number of that name; NaN where it is missing, which a sentence then says.
inline double value_of(std::span<const Quantity> numbers, std::string_view name) {
  return figure(numbers, name).value_or(std::numeric_limits<double>::quiet_NaN());
}

/// The number of that name with so many decimals.
inline std::string fixed(std::span<const Quantity> numbers, std::string_view name, int decimals) {
  return fixed(value_of(numbers, name), decimals);
}

/// A chance, as "12 of 100".
inline std::string of_hundred(double probability) {
  if (probability > 0.995) return "over 99 of 100";
  if (probability < 0.005) return "under 1 of 100";
  return fixed(100.0 * probability, 0) + " of 100";
}

/// The thing at that place; one without a name where there is none.
inline Named named_at(std::span<const Named> about, std::size_t at) {
  return at < about.size() ? about[at] : Named{};
}

/// The name of what is of that kind; empty where there is none.
inline std::string name_of(std::span<const Named> about, std::string_view what) {
  const auto at =
      std::find_if(about.begin(), about.end(), [&](const Named& one) { return one.what == what; });
  return at == about.end() ? "" : at->name;
}

/// "a-p800 (21.8 um)".
inline std::string sized(const Named& one) {
  return one.name + " (" + size_text(one.size_um) + ")";
}

/// "a-p800 (P800, 21.8 um)".
inline std::string labelled(const Named& one) {
  return one.name + " (" + one.label + ", " + size_text(one.size_um) + ")";
}

/// The sheet that a job is to end with, as a sentence after another; empty where any may.
inline std::string rub_out_text(const std::string& sheet) {
  return sheet.empty() ? "" : ". The last step is to be rubbed with " + sheet;
}

/// What a target asks for: "a gloss of at least 80.0 GU at 60 degrees in every zone".
inline std::string target_text(std::optional<double> size_um, std::optional<double> gloss_gu,
                               std::optional<double> gloss_high_gu, double angle_deg,
                               const std::string& name) {
  const std::string label = name.empty() ? "" : " (" + name + ")";
  if (size_um) return "a size of at most " + size_text(*size_um) + label;
  const double low_gu = gloss_gu.value_or(0.0);
  return "a gloss of " +
         (gloss_high_gu ? fixed(low_gu, 1) + " to " + fixed(*gloss_high_gu, 1)
                        : "at least " + fixed(low_gu, 1)) +
         " GU at " + fixed(angle_deg, 0) + " degrees in every zone" + label;
}

}  // namespace detail

}  // namespace levigate
