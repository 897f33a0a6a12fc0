// What to know of the tools of a job before any sequence: speed and heat, too heavy a piece, zones that a machine leaves to the hand.
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "levigate/fact.hpp"
#include "levigate/plan/caution.hpp"
#include "levigate/plan/handling_table.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/by_hand.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/stack/machine.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/stack/stack.hpp"
#include "levigate/wheel/caution.hpp"
#include "levigate/wheel/finding.hpp"
#include "levigate/wheel/standing_still.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Adds what standing still at a wheel costs, where there is one.
inline void add_still(const std::optional<StandingStill>& still, std::vector<Quantity>& numbers) {
  if (!still) return;
  numbers.push_back({"still_film_um", still->film_um});
  if (still->rise_k) numbers.push_back({"still_rise_k", *still->rise_k});
}

}  // namespace detail

/// What speaks against the wheels and polishers of a stack on the coating.
inline std::vector<Finding> wheel_findings_in(const Workings& workings) {
  std::vector<Finding> result;
  for (std::size_t i = 0; i < workings.stack.sheets.size(); ++i) {
    for (const WheelFinding& f : wheel_findings_of(workings, workings.stack.sheets[i])) {
      const bool heat = f.kind == WheelFindingKind::dwell_too_long;
      const Sheet& sheet = workings.stack.sheets[i];
      Finding& finding = result.emplace_back();
      finding.kind = heat ? FindingKind::wheel_heat : FindingKind::wheel_speed;
      finding.severity = f.severity;
      finding.sheets = {sheet.id};
      finding.about = f.about;
      finding.about.insert(finding.about.begin(), {"sheet", sheet.id, workings.grades[i].label,
                                                   workings.grades[i].median_um});
      finding.numbers = f.numbers;
      detail::add_still(still_of(workings, i), finding.numbers);
    }
  }
  return result;
}

/// A piece that is too heavy for the wheels of a stack, or may be: one finding for all of them. What is refused is an error.
inline std::vector<Finding> weight_findings(const Workings& workings) {
  const Job& job = workings.job;
  Finding heavy{.kind = FindingKind::piece_too_heavy, .severity = Severity::error, .sheets = {}};
  Finding unweighed{
      .kind = FindingKind::piece_unweighed, .severity = Severity::warning, .sheets = {}};
  const Zone* large = unweighed_zone(job);
  for (const Sheet& sheet : workings.stack.sheets) {
    if (!wheel_of(sheet)) continue;
    if (too_heavy(job, sheet)) heavy.sheets.push_back(sheet.id);
    if (large) unweighed.sheets.push_back(sheet.id);
  }
  std::vector<Finding> result;
  const Quantity most{"most_kg", handling_table[0].most_kg.value};
  if (!heavy.sheets.empty()) {
    heavy.numbers = {{"weight_kg", *job.weight_kg}, most};
    result.push_back(heavy);
  }
  if (!unweighed.sheets.empty()) {
    unweighed.zone = large->name;
    unweighed.numbers = {{"area_cm2", large->area_cm2}, most};
    result.push_back(unweighed);
  }
  return result;
}

/// What the hand keeps of the work of each machine: whole zones, and the strip along the edges of the others.
inline std::vector<Finding> machine_limits(const Workings& workings) {
  std::vector<Finding> result;
  std::vector<Machine> told;
  for (const Sheet& first : workings.stack.sheets) {
    const Machine* machine = machine_of(first);
    if (!machine || std::find(told.begin(), told.end(), *machine) != told.end()) continue;
    told.push_back(*machine);
    Finding said{.kind = FindingKind::machine_strip,
                 .severity = Severity::warning,
                 .sheets = {},
                 .about = {{"machine", machine->name}},
                 .numbers = {{"keep_off_mm", machine->keep_off_mm}}};
    for (const Sheet& sheet : workings.stack.sheets) {
      if (machine_of(sheet) && *machine_of(sheet) == *machine) said.sheets.push_back(sheet.id);
    }
    bool works = false;
    for (const Zone& zone : workings.job.zones) {
      const std::optional<ByHand> why = by_hand(*machine, zone);
      works = works || !why;
      if (!why && !may_be_narrow(zone)) continue;
      Finding& left = result.emplace_back(said);
      left.kind = why ? FindingKind::machine_by_hand : FindingKind::machine_narrow;
      left.zone = zone.name;
      if (!why) continue;
      left.about.push_back({"block", zone.block.name});
      if (*why == ByHand::edge) continue;
      left.numbers.push_back({"area_cm2", zone.area_cm2});
      left.numbers.push_back({"room_cm2", machine->room_cm2(machine->keep_off_mm)});
    }
    if (works && machine->keep_off_mm > 0.0) result.push_back(said);
  }
  return result;
}

/// Adds the cautions of work at a wheel, or with a hand-held machine.
inline void add_cautions(std::span<const WheelCaution> more, std::vector<Caution>& cautions) {
  for (const WheelCaution& c : more)
    cautions.push_back({std::string(c.topic), std::string(c.text)});
}

/// Findings with these sheets alone: those about other sheets only are left out.
inline std::vector<Finding> findings_on(std::vector<Finding> findings,
                                        const std::vector<std::string>& sheets) {
  std::erase_if(findings, [&](Finding& finding) {
    const auto others = std::erase_if(finding.sheets, [&](const std::string& id) {
      return std::find(sheets.begin(), sheets.end(), id) == sheets.end();
    });
    return others > 0 && finding.sheets.empty();
  });
  return findings;
}

/// What the hand keeps of the work of machines in one zone with these sheets.
inline std::vector<Finding> machine_limits_in(const Workings& workings, const Zone& zone,
                                              const std::vector<std::string>& sheets) {
  std::vector<Finding> result = findings_on(machine_limits(workings), sheets);
  std::erase_if(result, [&](const Finding& finding) {
    if (finding.kind != FindingKind::machine_strip) return finding.zone != zone.name;
    const std::size_t sheet = sheet_index(workings.stack, finding.sheets.front());
    return !machine_in(workings.stack.sheets[sheet], zone);
  });
  return result;
}

}  // namespace levigate
