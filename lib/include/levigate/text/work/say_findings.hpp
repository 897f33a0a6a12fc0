// Findings as paragraphs of a page.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/choices.hpp"
#include "levigate/detail/text.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/text/work/page.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::string_view severity_word(Severity severity) {
  switch (severity) {
    case Severity::note: return "  Note: ";
    case Severity::warning: return "  Warning: ";
    case Severity::error: return "  Error: ";
  }
  return "  ";
}

/// One paragraph each, errors first.
inline void say_findings(Page& page, const std::vector<Finding>& findings) {
  const auto& severities = choices<Severity>;  // the most serious last
  std::for_each(severities.rbegin(), severities.rend(), [&](Severity severity) {
    for (const Finding& finding : findings) {
      if (finding.severity == severity) page.say(severity_word(severity), sentence(finding) + ".");
    }
  });
}

inline std::string grade_line(const Grade& grade) {
  return fmt::format("{} ({}, {})", grade.label, size_text(grade.median_um),
                     to_string(grade.basis()));
}

}  // namespace detail

}  // namespace levigate
