// The work behind stack/stack.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/stack/stack.hpp"

#include "levigate/detail/names.hpp"
#include "levigate/detail/profile.hpp"
#include "levigate/detail/text.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/faults.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/grade/work/label_parts.hpp"
#include "levigate/grade/work/label_text.hpp"
#include "levigate/stack/sheet.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK void require_unlike_ids(const Stack& stack, std::string_view) {
  std::set<std::string_view> ids;
  for (std::size_t i = 0; i < stack.sheets.size(); ++i) {
    const std::string place = "/sheets/" + std::to_string(i);
    if (!ids.insert(stack.sheets[i].id).second) {
      throw BadInput("id '" + stack.sheets[i].id + "' is repeated, the second time in " + place,
                     place + "/id");
    }
  }
  const std::vector<MakerSystem>& rules = stack.bare_number_by_maker;
  for (std::size_t i = 0; i < rules.size(); ++i) {
    if (rule_of_maker(stack, rules[i].maker) == &rules[i]) continue;
    throw BadInput("bare_number has two rules for maker '" + rules[i].maker + "'", "/bare_number");
  }
}

LEVIGATE_WORK const MakerSystem* rule_of_maker(const Stack& stack, std::string_view maker) {
  for (const MakerSystem& rule : stack.bare_number_by_maker) {
    if (detail::same_name(rule.maker, maker)) return &rule;
  }
  return nullptr;
}

LEVIGATE_WORK std::optional<System> bare_number_of(const Stack& stack, const Sheet& sheet) {
  const MakerSystem* rule = rule_of_maker(stack, sheet.maker);
  return rule ? std::optional(rule->system) : stack.bare_number;
}

namespace detail {

/// How a file settles all bare numbers of a sheet's maker; empty for a sheet without a maker, or whose label names its system.
inline std::string maker_rule_text(const Sheet& sheet) {
  if (sheet.maker.empty() || sheet.system || take_apart(sheet.label).system) return {};
  const std::string maker = detail::quoted(sheet.maker);  // and not that of <iomanip>
  const std::string system(to_string(read_label(sheet.label).candidates.front().system));
  return ". If all bare numbers of " + maker + " are " + system + ", write \"bare_number\": {" +
         maker + ": \"" + system + "\"}";
}

}  // namespace detail

LEVIGATE_WORK std::vector<Grade> grades_of(const Stack& stack) {
  std::vector<Grade> grades;
  std::vector<Fault> faults;
  for (std::size_t i = 0; i < stack.sheets.size(); ++i) {
    const Sheet& sheet = stack.sheets[i];
    try {
      grades.push_back(grade_of(sheet, bare_number_of(stack, sheet)));
    } catch (const Error& error) {
      Fault& fault = faults.emplace_back(error.fault());
      fault.pointer = "/sheets/" + std::to_string(i) + "/label";
      fault.message += ", in " + fault.pointer + " ('" + sheet.id + "')";
      if (dynamic_cast<const AmbiguousLabel*>(&error))
        fault.message += detail::maker_rule_text(sheet);
    }
  }
  throw_faults(std::move(faults));
  return grades;
}

LEVIGATE_WORK std::size_t sheet_index(const Stack& stack, std::string_view id) {
  std::vector<std::string_view> known;
  for (std::size_t i = 0; i < stack.sheets.size(); ++i) {
    if (stack.sheets[i].id == id) return i;
    known.push_back(stack.sheets[i].id);
  }
  throw BadInput(detail::unknown_name_text("sheet", id, known));
}

LEVIGATE_WORK std::size_t sheet_called(const Stack& stack, const std::vector<Grade>& grades,
                                       std::string_view name) {
  const auto at = std::find_if(stack.sheets.begin(), stack.sheets.end(),
                               [&](const Sheet& sheet) { return sheet.id == name; });
  if (at != stack.sheets.end()) return static_cast<std::size_t>(at - stack.sheets.begin());
  std::vector<Grade> meant;
  try {
    meant = read_label(name).candidates;
  } catch (const Error&) {  // no label of a grade; a compound may still be printed so
  }
  std::vector<std::size_t> found;
  std::vector<std::string> ids;
  for (std::size_t i = 0; i < stack.sheets.size(); ++i) {
    const bool means = std::any_of(meant.begin(), meant.end(), [&](const Grade& grade) {
      return grade.label == grades[i].label;
    });
    if (!means && stack.sheets[i].label != name) continue;
    found.push_back(i);
    ids.push_back(stack.sheets[i].id);
  }
  if (found.empty()) return sheet_index(stack, name);
  if (found.size() == 1) return found.front();
  throw AmbiguousLabel("label '" + std::string(name) +
                       "' is that of several sheets: " + detail::list_text(ids) + "; give an id");
}

}  // namespace levigate
