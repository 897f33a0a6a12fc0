// Findings and conversions as plain text.
#pragma once

#include <fmt/format.h>

#include <string>
#include <vector>

#include "levigate/grade/convert.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/text/layout.hpp"

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
  for (const Severity severity : {Severity::error, Severity::warning, Severity::note}) {
    for (const Finding& finding : findings) {
      if (finding.severity == severity) page.say(severity_word(severity), finding.message + ".");
    }
  }
}

inline std::string grade_line(const Grade& grade) {
  return fmt::format("{} ({}, {})", grade.label, size_text(grade.median_um),
                     to_string(grade.basis()));
}

}  // namespace detail

/// All findings, one paragraph each, errors first.
inline std::string findings_text(const std::vector<Finding>& findings) {
  detail::Page page;
  if (findings.empty()) page.say("", "Nothing to report.");
  detail::say_findings(page, findings);
  return std::move(page).text();
}

/// What a conversion found: the nearest grade, how near, and its neighbours.
inline std::string equivalent_text(const Grade& given, const Equivalent& found) {
  detail::Page page;
  page.say("",
           fmt::format("{} is {}.", detail::grade_line(given), detail::grade_line(found.grade)));
  page.say("  ", found.verdict + ".");
  if (found.number) {
    page.say("  ", fmt::format("On the scale of {} it would be number {:.0f}.",
                               to_string(found.grade.system), *found.number));
  }
  if (found.coarser) page.say("  Next coarser: ", detail::grade_line(*found.coarser));
  if (found.finer) page.say("  Next finer:   ", detail::grade_line(*found.finer));
  if (!found.grade.note.empty()) page.say("  Note: ", found.grade.note + ".");
  return std::move(page).text();
}

}  // namespace levigate
