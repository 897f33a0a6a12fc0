// Which one kind of sheet more shortens the day most.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "levigate/bench/bench.hpp"
#include "levigate/bench/work/laid.hpp"
#include "levigate/bench/work/learned_change.hpp"
#include "levigate/grade/grades.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/risk/buying.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Tries one kind more in a drawer whose labels are settled, for the quickest plan.
class Offers {
 public:
  /// `labels`: that are tried; empty: the grades of the drawer's systems.
  Offers(const Bench& bench, const std::vector<std::string>& labels)
      : bench_(bench), job_(bench.job()) {
    job_.prefer = Objective::minutes;
    for (const Grade& grade : bench.grades()) {
      coarsest_um_ = std::max(coarsest_um_, grade.median_um);
      finest_um_ = std::min(finest_um_, grade.median_um);
    }
    for (std::size_t i = 0; i < bench.stack().sheets.size(); ++i) kind_of(i);
    for (const std::string& label : labels)
      named_.push_back(grade(label, bench.stack().bare_number));
  }

  void tell(Buying& buying) {
    constexpr std::size_t most = 10;
    const std::optional<Sequence> base = chosen(laid_with_sheets(bench_.stack()));
    const std::int64_t least = base ? base->expected_milliseconds() : 0;
    if (base) buying.minutes = minutes(least);
    const std::int64_t noise = least / 100 * equal_minutes_percent;
    std::vector<std::pair<std::int64_t, Offer>> found;
    for (const Sheet& sheet : tried()) {
      ++buying.tried;
      Stack stack = bench_.stack();
      const std::size_t at = added(stack, sheet);
      const Laid more = laid_with_sheets(stack);
      const std::optional<Sequence> better = chosen(more);
      if (!better) continue;
      const std::int64_t takes = better->expected_milliseconds();
      const bool uses =
          std::find(better->sheets.begin(), better->sheets.end(), at) != better->sheets.end();
      if (!uses || (base && takes >= least - noise)) continue;
      found.emplace_back(takes, told(more, *better, at, base ? minutes(least - takes) : 0.0));
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    for (std::size_t i = 0; i < std::min(most, found.size()); ++i)
      buying.offers.push_back(std::move(found[i].second));
  }

 private:
  static double minutes(std::int64_t milliseconds) {
    return static_cast<double>(milliseconds) / ms_per_minute;
  }

  Laid laid_with_sheets(const Stack& stack) const {
    return laid_out(job_, stack, bench_.shop(), bench_.journal(), bench_.lines());
  }

  /// Adds the kind of a sheet of the drawer, once: its maker, system, backing and tool.
  void kind_of(std::size_t at) {
    const Sheet& sheet = bench_.stack().sheets[at];
    if (polish_of(sheet)) return;
    const System system = bench_.grades()[at].system;
    const bool known = std::any_of(kinds_.begin(), kinds_.end(), [&](const Sheet& one) {
      return one.maker == sheet.maker && one.system == system && one.backing == sheet.backing &&
             one.kind == sheet.kind;
    });
    if (known) return;
    Sheet& kind = kinds_.emplace_back(sheet);
    kind.system = system;
    kind.size_um.reset();
    kind.on_hand.reset();
  }

  std::vector<Sheet> tried() const {
    std::vector<Sheet> result;
    const auto add = [&](const Sheet& kind, const Grade& grade) {
      Sheet& sheet = result.emplace_back(kind);
      sheet.label = grade.label;
      sheet.system = grade.system;
    };
    for (const Grade& grade : named_) {
      bool sold = false;
      for (const Sheet& kind : kinds_) {
        if (kind.system != grade.system) continue;
        add(kind, grade);
        sold = true;
      }
      if (sold || kinds_.empty()) continue;
      Sheet other = kinds_.front();  // nobody in the drawer makes it
      other.maker.clear();
      other.price.reset();
      add(other, grade);
    }
    if (!named_.empty()) return result;
    for (const Sheet& kind : kinds_) {
      for (const Grade& grade : grades(*kind.system)) {
        if (grade.median_um <= coarsest_um_ && grade.median_um >= 0.5 * finest_um_)
          add(kind, grade);
      }
    }
    return result;
  }

  /// Puts a sheet in the drawer; where it is there already, with no limit of sheets. Returns its place.
  std::size_t added(Stack& stack, const Sheet& sheet) const {
    for (std::size_t i = 0; i < stack.sheets.size(); ++i) {
      Sheet& known = stack.sheets[i];
      if (known.maker != sheet.maker || bench_.grades()[i].label != sheet.label ||
          known.backing != sheet.backing || known.kind != sheet.kind)
        continue;
      known.on_hand.reset();
      return i;
    }
    const auto taken = [&](const std::string& id) {
      return std::any_of(stack.sheets.begin(), stack.sheets.end(),
                         [&](const Sheet& known) { return known.id == id; });
    };
    Sheet& more = stack.sheets.emplace_back(sheet);
    std::string id = sheet.label;
    stack.sheets.back().id.clear();
    while (taken(id)) id += " more";
    more.id = id;
    return stack.sheets.size() - 1;
  }

  Offer told(const Laid& laid, const Sequence& sequence, std::size_t at, double less) const {
    const Workings& workings = workings_now(laid);
    const Sheet& sheet = laid.stack.sheets[at];
    Offer offer{workings.grades[at].label,
                sheet.maker,
                sheet.backing.name,
                workings.grades[at].median_um,
                0,
                less,
                {}};
    for_each_step(
        workings, sequence, [&](std::optional<Before> before, std::size_t step, double overcut) {
          offer.sequence.push_back(workings.grades[step].label);
          if (step == at) {
            offer.sheets =
                std::max(1.0, std::ceil(sheets_used(efforts(workings, before, step, overcut))));
          }
        });
    return offer;
  }

  const Bench& bench_;
  Job job_;
  double coarsest_um_ = 0;
  double finest_um_ = 1e9;
  std::vector<Sheet> kinds_;
  std::vector<Grade> named_;
};

}  // namespace detail

}  // namespace levigate
