// The bench: a job, the paper on hand, what the shop has learned and what was done so far, laid out once.
// All that one asks of a piece of work takes it.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/journal/learn.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/journal/observe.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/recover/diagnosis.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/recover/go_back.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/recover/way_back.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {
struct Laid;
}

/// What lies on the bench. It does not change: labels are read, profiles looked up and budgets solved once, when it is made. A
/// copy costs nothing.
class Bench {
 public:
  /// @param job      as it was before the first step
  /// @param stack    the paper on hand
  /// @param shop     what journals taught; none: nothing is learned, and simulations draw over the bands of the profiles
  /// @param journal  entries of one journal, in order; those of other jobs are left aside, struck ones do not count: see counted()
  /// @param lines    line of each entry in its file, for messages; empty: their order
  /// Throws: BadInput, OutOfRange where job, stack or shop cannot be used; UnknownGrade, AmbiguousLabel for a sheet whose label does
  ///         not settle its size. What is wrong with the steps of the journal is thrown by what asks for the job as it stands.
  /// Source: -
  Bench(Job job, Stack stack, std::optional<Shop> shop = std::nullopt,
        std::vector<Entry> journal = {}, std::vector<int> lines = {});

  const Job& job() const noexcept;  ///< as it was before the first step
  const Stack& stack() const noexcept;
  const std::optional<Shop>& shop() const noexcept;
  const std::vector<Entry>& journal() const noexcept;  ///< of this job alone
  const std::vector<int>& lines() const noexcept;      ///< of each entry, in its file
  /// What there is to say of the journal: readings that contradict, names of jobs nearly like this, a rest after levelling, marks
  /// that are open, paper used.
  const std::vector<Finding>& findings() const noexcept;
  const std::vector<Grade>& grades() const noexcept;  ///< of each sheet of the stack

  /// The steps that the journal ends: see done_steps().
  const std::vector<DoneStep>& done() const noexcept;
  /// Of the marks whose zone was not worked since: the one found last; none where none is open.
  std::optional<Mark> open_mark() const;

  /// What all of it is worked out from; for the library's own use.
  const detail::Laid& laid() const noexcept { return *laid_; }

 private:
  std::shared_ptr<const detail::Laid> laid_;
};

/// The job as it stands after the journal, with the film that a shop has learned of. The last reading of a zone anchors its film,
/// before the first step or after any; later steps subtract from it. Readings are as sure as an ultrasonic gauge is; one alone is
/// taken for the mean, with the spread that was known.
///
/// A reading thinner than computed takes its mean down at once. It makes no error smaller until a second reading agrees with it.
/// One that is thicker by more than contradiction_sigmas does not count until then. The finding reading_contradicts tells of both.
/// See film_from_gauge(), film_from_reading(), agrees(), and present() of recover/present.hpp.
/// Throws: what that throws
const Job& present(const Bench& bench);

/// The stack with the sheets counted off that the journal used: those that it tells, else those computed; never below 0.
/// Throws: what present() throws
const Stack& paper_left(const Bench& bench);

/// The best plan of what is left to do, from the paper that is left. See plan() of plan/plan.hpp. Where it is not the one without what the shop knows, its `change`
/// says how and why.
/// Throws: what present() throws
Plan plan(const Bench& bench);

/// A sequence taken as given, from where the job stands. See evaluate() of plan/plan.hpp.
/// Throws: what present() throws; as that
Plan evaluate(const Bench& bench, const std::vector<std::string>& sequence);

/// Which of the steps done made a mark. See diagnose() of recover/diagnose.hpp.
/// Throws: what that throws
Diagnosis diagnose(const Bench& bench, const Mark& mark);

/// Where to go back to for a mark. See go_back() of recover/go_back.hpp. A film that a gauge read counts as in a plan. A thinner
/// one that no second reading settled affords no more than without it.
/// Throws: what that throws
WayBack go_back(const Bench& bench, const Mark& mark);

/// The same for the mark that is open in the journal.
/// Throws: what that throws; BadInput where no mark is open
WayBack go_back(const Bench& bench);

/// What the entries of the journal show. See observe() of journal/observe.hpp.
/// Throws: what that throws
Observed observe(const Bench& bench);

/// The shop after the journal. See learn() of journal/learn.hpp.
/// Throws: what that throws
Learned learn(const Bench& bench);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/bench/work/bench.hpp"
#endif
