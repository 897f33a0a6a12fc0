// The work behind text/findings.hpp: defines what it declares.
#pragma once

#include <fmt/format.h>

#include <string>
#include <utility>
#include <vector>

#include "levigate/text/findings.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/grade/convert.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/text/work/page.hpp"
#include "levigate/text/work/say_findings.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK std::string findings_text(const std::vector<Finding>& findings) {
  detail::Page page;
  if (findings.empty()) page.say("", "Nothing to report.");
  detail::say_findings(page, findings);
  return std::move(page).text();
}

LEVIGATE_WORK std::string equivalent_text(const Grade& given, const Equivalent& found) {
  detail::Page page;
  page.say("",
           fmt::format("{} is {}.", detail::grade_line(given), detail::grade_line(found.grade)));
  page.say("  ", sentence(found) + ".");
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
