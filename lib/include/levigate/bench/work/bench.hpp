// The work behind bench/bench.hpp: defines what it declares.
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "levigate/bench/bench.hpp"

#include "levigate/bench/work/laid.hpp"
#include "levigate/bench/work/learned_change.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/journal/learn.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/journal/observe.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/work/plan_body.hpp"
#include "levigate/recover/diagnosis.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/recover/work/diagnose_body.hpp"
#include "levigate/recover/work/go_back_body.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {

/// With what there is to say of the journal first.
template <typename Answer>
Answer with_findings(const Bench& bench, Answer answer) {
  const std::vector<Finding>& findings = bench.findings();
  answer.findings.insert(answer.findings.begin(), findings.begin(), findings.end());
  return answer;
}

/// Where the entries are in the file of the journal.
inline void tell_lines(const Bench& bench, std::vector<Unmatched>& unmatched) {
  for (Unmatched& one : unmatched)
    one.place.line = static_cast<std::size_t>(bench.lines()[one.place.entry]);
}

}  // namespace detail

LEVIGATE_WORK Bench::Bench(Job job, Stack stack, std::optional<Shop> shop,
                           std::vector<Entry> journal, std::vector<int> lines)
    : laid_(std::make_shared<const detail::Laid>(
          detail::laid_out(std::move(job), std::move(stack), std::move(shop), std::move(journal),
                           std::move(lines)))) {}

LEVIGATE_WORK const Job& Bench::job() const noexcept { return laid_->job; }
LEVIGATE_WORK const Stack& Bench::stack() const noexcept { return laid_->stack; }
LEVIGATE_WORK const std::optional<Shop>& Bench::shop() const noexcept { return laid_->shop; }
LEVIGATE_WORK const std::vector<Entry>& Bench::journal() const noexcept { return laid_->journal; }
LEVIGATE_WORK const std::vector<int>& Bench::lines() const noexcept { return laid_->lines; }
LEVIGATE_WORK const std::vector<Finding>& Bench::findings() const noexcept {
  return laid_->findings;
}
LEVIGATE_WORK const std::vector<Grade>& Bench::grades() const noexcept {
  return laid_->begun.grades;
}
LEVIGATE_WORK const std::vector<DoneStep>& Bench::done() const noexcept { return laid_->done; }
LEVIGATE_WORK std::optional<Mark> Bench::open_mark() const {
  if (laid_->marks.empty()) return std::nullopt;
  return laid_->marks.back();
}

LEVIGATE_WORK const Job& present(const Bench& bench) { return detail::job_now(bench.laid()); }

LEVIGATE_WORK const Stack& paper_left(const Bench& bench) {
  detail::job_now(bench.laid());
  return bench.laid().paper;
}

LEVIGATE_WORK Plan plan(const Bench& bench) {
  Plan result = detail::with_findings(bench, plan(detail::workings_now(bench.laid())));
  result.change = detail::LearnedChanges(bench.laid(), result).told();
  return result;
}

LEVIGATE_WORK Plan evaluate(const Bench& bench, const std::vector<std::string>& sequence) {
  return detail::with_findings(bench, evaluate(detail::workings_now(bench.laid()), sequence));
}

LEVIGATE_WORK Diagnosis diagnose(const Bench& bench, const Mark& mark) {
  return diagnose(bench.laid().begun, bench.done(), mark);
}

LEVIGATE_WORK WayBack go_back(const Bench& bench, const Mark& mark) {
  const detail::Laid& laid = bench.laid();
  WayBack way =
      detail::with_findings(bench, go_back(laid.begun, laid.done, mark, detail::standing_of(laid)));
  const Finding treated = detail::mark_open(mark);
  std::erase_if(way.findings, [&](const Finding& finding) {  // a way back counts no paper
    return finding == treated || finding.kind == FindingKind::paper_counted_off ||
           finding.kind == FindingKind::paper_overused;
  });
  return way;
}

LEVIGATE_WORK WayBack go_back(const Bench& bench) {
  if (!bench.open_mark()) {
    throw BadInput(
        "no mark is open: none follows the last step of its zone, in the "
        "journal of '" +
        bench.job().name + "'");
  }
  return go_back(bench, *bench.open_mark());
}

LEVIGATE_WORK Observed observe(const Bench& bench) {
  Observed observed = observe(bench.job(), bench.stack(), bench.journal());
  detail::tell_lines(bench, observed.unmatched);
  return observed;
}

LEVIGATE_WORK Learned learn(const Bench& bench) {
  Learned learned =
      learn(bench.shop().value_or(Shop{}), bench.job(), bench.stack(), bench.journal());
  detail::tell_lines(bench, learned.unmatched);
  return learned;
}

}  // namespace levigate
