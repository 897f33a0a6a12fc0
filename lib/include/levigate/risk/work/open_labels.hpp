// Whether labels that do not settle their size matter: the plan under each meaning.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "levigate/bench/bench.hpp"
#include "levigate/bench/work/laid.hpp"
#include "levigate/bench/work/learned_change.hpp"
#include "levigate/error.hpp"
#include "levigate/grade/grades.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/risk/buying.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/stack/stack.hpp"
#include "levigate/surface/scratch_width.hpp"

namespace levigate::inline v0 {

namespace detail {

/// What an open label can mean. Empty: no system has it.
struct LabelLeftOpen {
  std::vector<Grade> meanings;
};

/// None where the label of a sheet settles its size.
/// Throws: BadInput as grade_of()
inline std::optional<LabelLeftOpen> open_label(const Sheet& sheet,
                                               std::optional<System> bare_number) {
  try {
    grade_of(sheet, bare_number);
    return std::nullopt;
  } catch (const AmbiguousLabel&) {
    return LabelLeftOpen{read_label(sheet.label).candidates};
  } catch (const UnknownGrade&) {
    return LabelLeftOpen{};
  }
}

/// Plans under each meaning of each open label.
class OpenLabels {
 public:
  /// `bench` has the sheets of the stack whose labels are settled.
  OpenLabels(const Bench& bench, const Stack& stack) : bench_(bench), stack_(stack) {
    constexpr std::size_t most = 256;
    for (std::size_t i = 0; i < stack.sheets.size(); ++i) {
      std::optional<LabelLeftOpen> open =
          open_label(stack.sheets[i], bare_number_of(stack, stack.sheets[i]));
      if (!open) continue;
      const bool known = !open->meanings.empty();
      One& one = open_.emplace_back(One{i, known, known ? open->meanings : sizes()});
      std::stable_sort(one.meanings.begin(), one.meanings.end(),
                       [](const Grade& a, const Grade& b) { return a.median_um > b.median_um; });
      count_ *= one.meanings.size();
      if (count_ > most) {
        throw BadInput("open labels have more than " + std::to_string(most) +
                       " meanings together; settle some of them, in buy");
      }
    }
  }

  std::vector<OpenLabel> told() {
    if (open_.empty()) return {};
    for (std::size_t at = 0; at < count_; ++at) outcomes_.push_back(outcome(at));
    std::vector<OpenLabel> result;
    std::size_t stride = 1;
    for (std::size_t label = 0; label < open_.size(); ++label) {
      result.push_back(told(label, stride));
      stride *= open_[label].meanings.size();
    }
    return result;
  }

 private:
  struct One {
    std::size_t sheet;
    bool known;
    std::vector<Grade> meanings;
  };

  /// Grades that a label may stand for which no system has: those of FEPA P between the drawer's ends, with one step beyond.
  std::vector<Grade> sizes() const {
    double coarsest_um = 0, finest_um = 1e9;
    for (const Grade& grade : bench_.grades()) {
      coarsest_um = std::max(coarsest_um, grade.median_um);
      finest_um = std::min(finest_um, grade.median_um);
    }
    std::vector<Grade> result;
    for (const Grade& grade : grades(System::fepa_p)) {
      if (grade.median_um <= 1.5 * coarsest_um && grade.median_um >= finest_um / 1.5)
        result.push_back(grade);
    }
    if (result.empty()) throw BadInput("no label of the stack settles its size, in buy");
    return result;
  }

  struct Outcome {
    std::optional<Sequence> best;
    std::vector<std::optional<double>> width_um;  ///< of the scratches of each open label
  };

  /// The plan where each open label has a meaning: `at` counts through them, the first label fastest.
  Outcome outcome(std::size_t at) const {
    Stack stack = stack_;
    for (const One& one : open_) {
      const Grade& grade = one.meanings[at % one.meanings.size()];
      at /= one.meanings.size();
      stack.sheets[one.sheet].label = grade.label;
      stack.sheets[one.sheet].system = grade.system;
    }
    const Laid laid =
        laid_out(bench_.job(), stack, bench_.shop(), bench_.journal(), bench_.lines());
    Outcome result{chosen(laid), {}};
    for (const One& one : open_) {
      const Workings& workings = laid.left ? *laid.left : laid.begun;
      result.width_um.push_back(
          width_of_depth_um(workings.work[one.sheet].front().scratch_um, workings.model.flank_deg));
    }
    return result;
  }

  static bool differ(const std::optional<Sequence>& a, const std::optional<Sequence>& b) {
    if (!a || !b) return a.has_value() != b.has_value();
    const std::int64_t one = a->expected_milliseconds(), other = b->expected_milliseconds();
    const std::int64_t least = std::min(one, other), most = std::max(one, other);
    return first_difference(*a, *b).has_value() ||
           most - least > least / 100 * equal_minutes_percent;
  }

  OpenLabel told(std::size_t label, std::size_t stride) const {
    const One& one = open_[label];
    const Sheet& sheet = stack_.sheets[one.sheet];
    OpenLabel result{sheet.id, sheet.label, sheet.maker, one.known, false, {}};
    const std::size_t meanings = one.meanings.size();
    for (std::size_t at = 0; at < count_; ++at) {  // against its first meaning, all else as it is
      const std::size_t first = at - at / stride % meanings * stride;
      result.matters = result.matters || differ(outcomes_[first].best, outcomes_[at].best);
    }
    for (std::size_t i = 0; i < meanings; ++i) {
      const Outcome& outcome = outcomes_[i * stride];
      Meaning& meaning = result.meanings.emplace_back();
      meaning.label = one.meanings[i].label;
      meaning.size_um = one.meanings[i].median_um;
      meaning.width_um = outcome.width_um[label];
      meaning.found = outcome.best.has_value();
      if (!outcome.best) continue;
      meaning.minutes = static_cast<double>(outcome.best->expected_milliseconds()) / ms_per_minute;
      for (const std::size_t used : outcome.best->sheets)
        meaning.sequence.push_back(stack_.sheets[used].id);
    }
    return result;
  }

  const Bench& bench_;
  const Stack& stack_;
  std::vector<One> open_;
  std::size_t count_ = 1;
  std::vector<Outcome> outcomes_;
};

}  // namespace detail

}  // namespace levigate
