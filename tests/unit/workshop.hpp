// A small workshop for the tests: zones, sheets and jobs with little to say.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "levigate/plan/plan.hpp"

namespace workshop {

using namespace levigate;

inline Sheet paper(const std::string& id, const std::string& label,
                   std::optional<System> system = {}) {
  Sheet sheet;
  sheet.id = id;
  sheet.label = label;
  sheet.system = system;
  sheet.backing = backing_named("latex paper");
  sheet.width_mm = 230;
  sheet.height_mm = 280;
  return sheet;
}

inline Sheet pad(const std::string& id, const std::string& label) {
  Sheet sheet = paper(id, label);
  sheet.backing = backing_named("foam-backed");
  sheet.kind = Pad{block_named("foam pad")};
  sheet.width_mm = 100;
  sheet.height_mm = 100;
  return sheet;
}

inline Stack papers(const std::vector<std::string>& labels) {
  Stack stack;
  for (const std::string& label : labels) stack.sheets.push_back(paper(label, label));
  return stack;
}

/// A flat top of two-part urethane under a hard block, to be brought to P1500.
inline Job top(double peel_um, double film_um = 120) {
  Job job;
  job.name = "top";
  job.coating = coating_named("two-part urethane");
  job.zones = {{.name = "top",
                .area_cm2 = 900,
                .block = block_named("hard block"),
                .film = Film{film_um, 6},
                .peel_um = peel_um,
                .peel_wavelength_mm = 3}};
  job.target.size_um = 12.6;
  job.target.label = "P1500";
  return job;
}

inline std::vector<std::string> ids(const Plan& plan) {
  std::vector<std::string> result;
  for (const Step& step : plan.steps) result.push_back(step.sheet);
  return result;
}

inline const Finding* find(const std::vector<Finding>& findings, FindingKind kind) {
  const auto at = std::find_if(findings.begin(), findings.end(),
                               [&](const Finding& finding) { return finding.kind == kind; });
  return at == findings.end() ? nullptr : &*at;
}

inline std::ptrdiff_t count(const std::vector<Finding>& findings, FindingKind kind) {
  return std::count_if(findings.begin(), findings.end(),
                       [&](const Finding& finding) { return finding.kind == kind; });
}

/// The text as one line, so that a sentence is found wherever it was broken.
inline std::string flowing(const std::string& text) {
  std::string result;
  for (const char c : text) {
    if (c != ' ' && c != '\n') {
      result += c;
    } else if (!result.empty() && result.back() != ' ') {
      result += ' ';
    }
  }
  return result;
}

}  // namespace workshop
