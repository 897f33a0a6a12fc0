// The work behind io/write_plan.hpp: defines what it declares.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/io/write_plan.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/grade/convert.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/meanings.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/io/work/read_described.hpp"
#include "levigate/io/work/write_described.hpp"
#include "levigate/text/sentences.hpp"

namespace levigate::inline v0 {

namespace detail {

inline OrderedJson or_null(const std::optional<double>& value) {
  return value ? OrderedJson(*value) : OrderedJson(nullptr);
}

inline OrderedJson json_of(const Grade& grade) {
  return {{"system", to_string(grade.system)},
          {"label", grade.label},
          {"median_um", grade.median_um},
          {"tolerance_um", or_null(grade.tolerance_um)},
          {"coarse_limit_um", or_null(grade.coarse_limit_um)},
          {"fine_limit_um", or_null(grade.fine_limit_um)},
          {"fine_percent", or_null(grade.fine_percent)},
          {"edition", grade.edition},
          {"method", grade.method},
          {"basis", to_string(grade.basis())},
          {"note", grade.note}};
}

inline OrderedJson json_of(const std::optional<Grade>& grade) {
  return grade ? json_of(*grade) : OrderedJson(nullptr);
}

inline OrderedJson json_of(const Equivalent& found) {
  return {{"grade", json_of(found.grade)},
          {"size_ratio", found.size_ratio},
          {"within_tolerance",
           found.within_tolerance ? OrderedJson(*found.within_tolerance) : OrderedJson(nullptr)},
          {"overlap", found.overlap},
          {"number", or_null(found.number)},
          {"coarser", json_of(found.coarser)},
          {"finer", json_of(found.finer)},
          {"verdict", sentence(found)}};
}

}  // namespace detail

LEVIGATE_WORK std::string to_json(const Plan& plan) {
  return detail::file_text(plan_format, plan, detail::Style::whole);
}

LEVIGATE_WORK Plan plan_from_json(std::string_view text, std::string_view file) {
  return detail::value_of_file<Plan>(text, file, plan_format, detail::Style::whole);
}

LEVIGATE_WORK std::string to_json(const std::vector<Finding>& findings) {
  return detail::json_text(detail::json_of(detail::kind<std::vector<Finding>>, nullptr, &findings,
                                           detail::Style::whole));
}

LEVIGATE_WORK std::string to_json(const Equivalent& equivalent) {
  return detail::json_text(detail::json_of(equivalent));
}

LEVIGATE_WORK std::string to_json(const LabelMeanings& label) {
  detail::OrderedJson meanings = detail::OrderedJson::array();
  for (const LabelMeaning& meaning : label.meanings) {
    detail::OrderedJson nearest = detail::OrderedJson::array();
    for (const Equivalent& found : meaning.nearest) nearest.push_back(detail::json_of(found));
    meanings.push_back({{"grade", detail::json_of(meaning.grade)}, {"nearest", nearest}});
  }
  return detail::json_text(
      {{"label", label.label},
       {"ambiguous", label.ambiguous},
       {"note", label.note},
       {"bare_number", label.bare_number ? detail::OrderedJson(to_string(*label.bare_number))
                                         : detail::OrderedJson(nullptr)},
       {"meanings", meanings}});
}

}  // namespace levigate
