// The work behind text/meanings.hpp: defines what it declares.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/text/meanings.hpp"

#include "levigate/detail/text.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/grade/convert.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/meanings.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/source.hpp"
#include "levigate/text/work/page.hpp"
#include "levigate/text/work/sentences_of_grade.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The table of labels.
class MeaningsPage {
 public:
  explicit MeaningsPage(const std::vector<LabelMeanings>& labels) : labels_(labels) {
    for (const LabelMeanings& label : labels_) {
      for (const LabelMeaning& meaning : label.meanings) {
        for (const Equivalent& found : meaning.nearest) add_once(systems_, found.grade.system);
      }
    }
    std::sort(systems_.begin(), systems_.end());
  }

  std::string text() && {
    page_.say("", "What each label may mean, and the nearest grade elsewhere, with sizes in um:");
    std::vector<Page::Column> titles{{"label"}, {"read as"}, {"size", true}};
    for (const System system : systems_) titles.push_back({to_string(system)});
    std::vector<std::vector<std::string>> rows;
    for (const LabelMeanings& label : labels_) {
      for (const LabelMeaning& meaning : label.meanings) {
        const bool first = &meaning == &label.meanings.front();
        rows.push_back(row(first ? shortened(label.label, 10) : "", meaning));
      }
    }
    page_.table(titles, rows);
    for (const LabelMeanings& label : labels_) {
      const bool cut = columns(label.meanings.front().grade.label) > read_as_columns;
      for (const std::string& said : sentences_of(label, cut)) page_.say("  Note: ", clean(said));
    }
    for (const std::string& said : extrapolated_) page_.say("  Note: ", said);
    if (none_) page_.say("  ", "none: the system has no grade so coarse or so fine.");
    page_.say("  ", "The nearest grade is a neighbour, not an equal.");
    return std::move(page_).text();
  }

 private:
  static constexpr std::size_t read_as_columns = 14;

  template <typename Value>
  static void add_once(std::vector<Value>& all, const Value& one) {
    if (std::find(all.begin(), all.end(), one) == all.end()) all.push_back(one);
  }

  /// Its size to one decimal. One without a printed size is told of below the table.
  std::string size_of(const Grade& grade) {
    if (grade.basis() == Basis::extrapolated) {
      add_once(extrapolated_, grade.label + " has no printed size: " + size_text(grade.median_um) +
                                  " is extrapolated.");
    }
    std::string text = size_text(grade.median_um);
    return text.substr(0, text.find(' '));
  }

  /// "P1000 (18.3)", "400 (23.6)", "9 um": the title has the name of the system.
  std::string cell(const LabelMeaning& meaning, System system) {
    for (const Equivalent& found : meaning.nearest) {
      const Grade& grade = found.grade;
      if (grade.system != system) continue;
      if (grade.label == meaning.grade.label) break;
      if (beyond_system(found)) {
        none_ = true;
        return "none";
      }
      if (system == System::micron) return grade.label;
      std::string_view label = grade.label;
      const std::string name = std::string(to_string(system)) + " ";
      if (label.starts_with(name)) label.remove_prefix(name.size());
      return fmt::format("{} ({})", label, size_of(grade));
    }
    return "-";
  }

  std::vector<std::string> row(std::string label, const LabelMeaning& meaning) {
    std::vector<std::string> cells{
        std::move(label), shortened(meaning.grade.label, read_as_columns), size_of(meaning.grade)};
    for (const System system : systems_) cells.push_back(cell(meaning, system));
    return cells;
  }

  const std::vector<LabelMeanings>& labels_;
  std::vector<System> systems_;
  std::vector<std::string> extrapolated_;
  bool none_ = false;
  Page page_;
};

}  // namespace detail

LEVIGATE_WORK std::string meanings_text(const std::vector<LabelMeanings>& labels) {
  return detail::MeaningsPage(labels).text();
}

}  // namespace levigate
