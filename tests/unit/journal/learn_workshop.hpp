// Journals for the tests: a job of three zones, a stack of two backings, and entries with little to say.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "levigate/journal/learn.hpp"
#include "levigate/plan/work/plan_body.hpp"
#include "unit/workshop.hpp"

namespace learn_workshop {

using namespace workshop;

inline Job clock_case() {
  Job job = top(30);
  job.name = "clock case";
  job.zones.push_back({.name = "door",
                       .area_cm2 = 500,
                       .block = block_named("cork block"),
                       .film = Film{110, 8},
                       .peel_um = 20});
  job.zones.push_back({.name = "rim",
                       .area_cm2 = 60,
                       .block = block_named("foam pad"),
                       .film = Film{60, 8},
                       .edge = Edge{"top"}});
  return job;
}

/// Paper, with film from P1000 on.
inline Stack drawer() {
  Stack stack = papers({"P400", "P600", "P800", "P1000", "P1200", "P1500"});
  for (std::size_t i = 3; i < stack.sheets.size(); ++i) {
    stack.sheets[i].backing = backing_named("film");
  }
  return stack;
}

inline Entry entry(EntryKind kind, const std::string& zone, const std::string& sheet) {
  Entry result;
  result.kind = kind;
  result.at = "2026-03-01T09:30:00Z";
  result.job = "clock case";
  result.zone = zone;
  result.sheet = sheet;
  return result;
}

inline Entry ended(const std::string& sheet, double minutes, const std::string& zone = "") {
  Entry result = entry(EntryKind::step_ended, zone, sheet);
  result.minutes = minutes;
  return result;
}

inline Entry width_read(const std::string& sheet, double width_um,
                        const std::string& zone = "top") {
  Entry result = entry(EntryKind::scratch_read, zone, sheet);
  result.width_um = width_um;
  return result;
}

inline Entry ra_read(const std::string& sheet, double ra_um, const std::string& zone = "top") {
  Entry result = entry(EntryKind::scratch_read, zone, sheet);
  result.ra_um = ra_um;
  return result;
}

inline Entry film_read(const std::string& zone, const std::vector<double>& readings_um) {
  Entry result = entry(EntryKind::film_read, zone, "");
  result.readings_um = readings_um;
  return result;
}

/// Minutes of each step of a sequence in each zone, by evaluate(): [sheet][zone].
inline std::map<std::string, std::map<std::string, double>> planned(
    const std::vector<std::string>& sheets, const Factors& factors = {}) {
  std::map<std::string, std::map<std::string, double>> minutes;
  for (const Step& step : evaluate(workings(clock_case(), drawer(), factors), sheets).steps) {
    for (const ZoneStep& zone : step.zones) minutes[step.sheet][zone.zone] = zone.minutes;
  }
  return minutes;
}

inline double all_zones(const std::map<std::string, double>& zones) {
  double sum = 0;
  for (const auto& [zone, minutes] : zones) sum += minutes;
  return sum;
}

}  // namespace learn_workshop
