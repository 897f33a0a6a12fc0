// The check of a stack: labels to settle, order, gaps, near duplicates and stray grains.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "levigate/stack/check.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/fact.hpp"
#include "levigate/faults.hpp"
#include "levigate/grade/bridge.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/label.hpp"
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
  for (const System system : coated_systems) {
    const auto grades = bridge(coarse_um, fine_um, system, rule.min_ratio, rule.max_ratio);
    if (!grades || grades->empty()) continue;
    Bridge& one = result.emplace_back(Bridge{system, {}});
    for (const Grade& grade : *grades) one.labels.push_back(grade.label);
  }
  return result;
}

namespace detail {

/// A sheet whose label was read.
struct ReadSheet {
  const Sheet* sheet;
  Grade grade;
};

inline Named named(const ReadSheet& s) {
  return {"sheet", s.sheet->id, s.grade.label, s.grade.median_um};
}

/// A finding about the sheets that it names.
inline Finding about(FindingKind kind, Severity severity, const std::vector<ReadSheet>& sheets,
                     std::vector<Quantity> numbers = {}) {
  Finding finding{.kind = kind, .severity = severity, .sheets = {}};
  for (const ReadSheet& s : sheets) {
    finding.sheets.push_back(s.sheet->id);
    finding.about.push_back(named(s));
  }
  finding.numbers = std::move(numbers);
  return finding;
}

/// A finding on a label that gives no size.
inline Finding unread(FindingKind kind, const Sheet& sheet, const Error& error) {
  return {.kind = kind,
          .severity = Severity::error,
          .sheets = {sheet.id},
          .about = {{"sheet", sheet.id, sheet.label}},
          .error = error.what()};
}

/// Whether the rule for bare numbers settles a label, which names no system.
inline bool is_read_by_rule(const Sheet& sheet) {
  if (sheet.system || sheet.size_um || polish_of(sheet)) return false;
  return read_label(sheet.label).ambiguous;
}

/// What a bare number was read as, and by which rule.
inline Finding by_rule(const Stack& stack, const ReadSheet& read) {
  Finding finding = about(FindingKind::label_by_rule, Severity::note, {read});
  finding.about.push_back({"label", read.sheet->label});
  finding.about.push_back({"system", std::string(to_string(read.grade.system))});
  finding.about.push_back({"maker", read.sheet->maker});
  finding.about.push_back({"rule", rule_of_maker(stack, read.sheet->maker) ? "maker" : "all"});
  return finding;
}

/// The sheets with a size, coarse to fine; a finding for every label that gives none.
inline std::vector<ReadSheet> read_sheets(const Stack& stack, std::vector<Finding>& findings) {
  std::vector<ReadSheet> read;
  for (const Sheet& sheet : stack.sheets) {
    try {
      read.push_back({&sheet, grade_of(sheet, bare_number_of(stack, sheet))});
      if (is_read_by_rule(sheet)) findings.push_back(by_rule(stack, read.back()));
    } catch (const AmbiguousLabel& error) {
      findings.push_back(unread(FindingKind::ambiguous_label, sheet, error));
    } catch (const Error& error) {
      findings.push_back(unread(FindingKind::unknown_label, sheet, error));
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
      findings.push_back(
          about(FindingKind::misleading_numbers, Severity::warning, {coarse, fine},
                {{"coarse_number", *coarse.grade.number}, {"fine_number", *fine.grade.number}}));
    }
  }
}

inline void check_neighbours(const std::vector<ReadSheet>& sheets, const StepRule& rule,
                             std::vector<Finding>& findings) {
  for (std::size_t i = 0; i + 1 < sheets.size(); ++i) {
    const ReadSheet& coarse = sheets[i];
    const ReadSheet& fine = sheets[i + 1];
    const double ratio = coarse.grade.median_um / fine.grade.median_um;
    const StepFit fit = fit_of(coarse.grade.median_um, fine.grade.median_um, rule);
    if (fit == StepFit::too_short) {
      findings.push_back(about(FindingKind::near_duplicate, Severity::note, {coarse, fine},
                               {{"ratio", ratio}, {"min_ratio", rule.min_ratio}}));
    }
    if (fit == StepFit::too_long && !polish_of(*fine.sheet)) {
      findings.push_back(about(FindingKind::gap, Severity::warning, {coarse, fine},
                               {{"ratio", ratio}, {"max_ratio", rule.max_ratio}}));
      findings.back().bridges = bridges(coarse.grade.median_um, fine.grade.median_um, rule);
    }
    const double coarse_tail = coarse_tail_um(coarse.grade);
    const double fine_tail = coarse_tail_um(fine.grade);
    if (coarse.grade.median_um > fine.grade.median_um && fine_tail > coarse_tail) {
      findings.push_back(about(FindingKind::coarse_tail, Severity::warning, {coarse, fine},
                               {{"coarse_tail_um", coarse_tail}, {"fine_tail_um", fine_tail}}));
    }
  }
}

inline void check_sheets(const std::vector<ReadSheet>& sheets, std::vector<Finding>& findings) {
  for (const ReadSheet& s : sheets) {
    if (s.grade.basis() == Basis::extrapolated) {
      findings.push_back(about(FindingKind::extrapolated_size, Severity::note, {s}));
    }
    if (s.sheet->on_hand && *s.sheet->on_hand == 0.0) {
      findings.push_back(about(FindingKind::paper_short, Severity::note, {s}, {{"on_hand", 0.0}}));
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
