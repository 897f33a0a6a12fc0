// The work behind stack/check.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

#include "levigate/stack/check.hpp"

#include "levigate/detail/text.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/faults.hpp"
#include "levigate/grade/bridge.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/spread.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/source.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/stack/stack.hpp"
#include "levigate/stack/step_rule.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK std::vector<Bridge> bridges(double coarse_um, double fine_um, const StepRule& rule) {
  std::vector<Bridge> result;
  for (const System system : {System::fepa_p, System::cami, System::jis, System::micron}) {
    const auto grades = bridge(coarse_um, fine_um, system, rule.min_ratio, rule.max_ratio);
    if (!grades || grades->empty()) continue;
    Bridge& one = result.emplace_back(Bridge{system, {}});
    for (const Grade& grade : *grades) one.labels.push_back(grade.label);
  }
  return result;
}

LEVIGATE_WORK std::string bridges_text(const std::vector<Bridge>& ways) {
  std::vector<std::string> texts;
  for (const Bridge& way : ways) texts.push_back(detail::list_text(way.labels));
  return detail::list_text(texts, " or ");
}

namespace detail {

/// A sheet whose label was read.
struct ReadSheet {
  const Sheet* sheet;
  Grade grade;
};

inline std::string named(const ReadSheet& s) {
  return s.sheet->id + " (" + s.grade.label + ", " + size_text(s.grade.median_um) + ")";
}

/// The sheets with a size, coarse to fine; a finding for every label that gives none.
inline std::vector<ReadSheet> read_sheets(const Stack& stack, std::vector<Finding>& findings) {
  std::vector<ReadSheet> read;
  for (const Sheet& sheet : stack.sheets) {
    try {
      read.push_back({&sheet, grade_of(sheet, stack.bare_number)});
    } catch (const AmbiguousLabel& error) {
      findings.push_back({FindingKind::ambiguous_label,
                          Severity::error,
                          {sheet.id},
                          sheet.id + ": " + error.what()});
    } catch (const Error& error) {
      findings.push_back({FindingKind::unknown_label,
                          Severity::error,
                          {sheet.id},
                          sheet.id + ": " + error.what()});
    }
  }
  std::stable_sort(read.begin(), read.end(), [](const ReadSheet& a, const ReadSheet& b) {
    return a.grade.median_um > b.grade.median_um;
  });
  return read;
}

/// A higher or equal number on grain that is coarser by at least min_ratio misleads whoever goes by numbers.
inline void check_numbers(const std::vector<ReadSheet>& sheets, const StepRule& rule,
                          std::vector<Finding>& findings) {
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    for (std::size_t j = i + 1; j < sheets.size(); ++j) {
      const ReadSheet& coarse = sheets[i];
      const ReadSheet& fine = sheets[j];
      if (!coarse.grade.number || !fine.grade.number || *coarse.grade.number < *fine.grade.number)
        continue;
      if (coarse.grade.median_um < fine.grade.median_um * rule.min_ratio) continue;
      const bool same = *coarse.grade.number == *fine.grade.number;
      findings.push_back(
          {FindingKind::misleading_numbers,
           Severity::warning,
           {coarse.sheet->id, fine.sheet->id},
           named(fine) + " is finer than " + named(coarse) +
               (same ? " though both bear the same number" : " though its number is lower")});
    }
  }
}

inline void check_neighbours(const std::vector<ReadSheet>& sheets, const StepRule& rule,
                             std::vector<Finding>& findings) {
  for (std::size_t i = 0; i + 1 < sheets.size(); ++i) {
    const ReadSheet& coarse = sheets[i];
    const ReadSheet& fine = sheets[i + 1];
    const std::vector<std::string> ids{coarse.sheet->id, fine.sheet->id};
    const double ratio = coarse.grade.median_um / fine.grade.median_um;
    const StepFit fit = fit_of(coarse.grade.median_um, fine.grade.median_um, rule);
    if (fit == StepFit::too_short) {
      findings.push_back({FindingKind::near_duplicate, Severity::note, ids,
                          named(coarse) + " and " + named(fine) + " are a ratio of " +
                              fixed(ratio, 2) + " apart, below min_ratio " +
                              fixed(rule.min_ratio, 2) + ": one of them is enough"});
    }
    if (fit == StepFit::too_long && !polish_of(*fine.sheet)) {
      const std::vector<Bridge> ways = bridges(coarse.grade.median_um, fine.grade.median_um, rule);
      findings.push_back({FindingKind::gap, Severity::warning, ids,
                          "from " + named(coarse) + " to " + named(fine) + " is a ratio of " +
                              fixed(ratio, 2) + ", above max_ratio " + fixed(rule.max_ratio, 2) +
                              (ways.empty() ? "; no standard grade bridges it"
                                            : "; " + bridges_text(ways) + " would bridge it")});
    }
    const double coarse_tail = coarse_tail_um(coarse.grade);
    const double fine_tail = coarse_tail_um(fine.grade);
    if (coarse.grade.median_um > fine.grade.median_um && fine_tail > coarse_tail) {
      findings.push_back({FindingKind::coarse_tail, Severity::warning, ids,
                          named(fine) + " may hold stray grain up to " + size_text(fine_tail) +
                              ", coarser than the " + size_text(coarse_tail) + " of " +
                              named(coarse) + ": it can scratch deeper than the step before it"});
    }
  }
}

inline void check_sheets(const std::vector<ReadSheet>& sheets, std::vector<Finding>& findings) {
  for (const ReadSheet& s : sheets) {
    if (s.grade.basis() == Basis::extrapolated) {
      findings.push_back({FindingKind::extrapolated_size,
                          Severity::note,
                          {s.sheet->id},
                          named(s) + " has no published size; this one is extrapolated. Give "
                                     "size_um if the maker states it"});
    }
    if (s.sheet->on_hand && *s.sheet->on_hand == 0.0) {
      findings.push_back({FindingKind::paper_short,
                          Severity::note,
                          {s.sheet->id},
                          named(s) + " is used up: none on hand"});
    }
  }
}

}  // namespace detail

LEVIGATE_WORK std::vector<Finding> check(const Stack& stack, const StepRule& rule) {
  validate(stack);
  validate(rule, "check");
  std::vector<Finding> findings;
  const std::vector<detail::ReadSheet> sheets = detail::read_sheets(stack, findings);
  detail::check_sheets(sheets, findings);
  detail::check_numbers(sheets, rule, findings);
  detail::check_neighbours(sheets, rule, findings);
  return findings;
}

}  // namespace levigate
