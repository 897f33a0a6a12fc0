// Sentences on how far one grade stands for another.
#pragma once

#include <cmath>
#include <string>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/grade/convert.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/meanings.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/source.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::string sentence_of(const Equivalent& found) {
  const double percent = 100.0 * std::abs(found.size_ratio - 1.0);
  std::string text = found.grade.label + " is the nearest to " + found.given.label + ": ";
  text += percent < 0.5 ? "the same median"
                        : fixed(percent, 0) + " % " + (found.size_ratio > 1 ? "coarser" : "finer");
  if (found.within_tolerance) {
    text += *found.within_tolerance ? ", within" : ", beyond";
    text += " the tolerance of the medians";
  } else {
    text += ", tolerance of the medians not known";
  }
  text += "; " + fixed(100.0 * found.overlap, 0) + " % of the grain in common";
  if (found.grade.basis() == Basis::extrapolated) text += "; its size is extrapolated";
  if (found.given.basis() == Basis::extrapolated) text += "; the given size is extrapolated";
  return text;
}

/// How a label is read, where that is not plain to see: what it may be, or as what it is taken, and why. `cut`: its grade was not
/// shown in full.
inline std::vector<std::string> sentences_of(const LabelMeanings& label, bool cut) {
  std::vector<std::string> names, said;
  for (const LabelMeaning& meaning : label.meanings) names.push_back(meaning.grade.label);
  const std::string is = label.label + " is read as " + names.front();
  if (label.bare_number) {
    said.push_back(is + ": a bare number is taken for " +
                   std::string(to_string(*label.bare_number)) + ".");
  } else if (label.ambiguous) {
    said.push_back(label.label + " may be " + list_text(names, " or ") +
                   ": look at the back of the sheet.");
  } else if (cut || !label.note.empty()) {
    said.push_back(is + ".");
  }
  if (!label.note.empty()) said.push_back(label.label + ": " + label.note + ".");
  return said;
}

}  // namespace detail

}  // namespace levigate
