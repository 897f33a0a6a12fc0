// The rules of a plan.
#include "rules.hpp"

namespace levigate_python {

namespace {

using levigate::Rules;

struct Rule {
  const char* name;
  double Rules::*member;
  const char* doc;
};

constexpr Rule all_rules[] = {
    {"max_ratio", &Rules::max_ratio, "largest size ratio of a step"},
    {"min_ratio", &Rules::min_ratio, "smallest size ratio of a step"},
    {"overcut", &Rules::overcut, "removed by a step, over the scratch depth before it"},
    {"scratch_quantile", &Rules::scratch_quantile,
     "share of the scratches that their depth covers"},
    {"residual_peel_um", &Rules::residual_peel_um,
     "orange peel that may stay, peak to valley [um]"},
    {"change_minutes", &Rules::change_minutes, "washing and changing, once a step [min]"},
    {"reserve_um", &Rules::reserve_um, "film that must stay everywhere [um]"},
    {"removed_cv", &Rules::removed_cv, "unevenness of removal, sd over mean"},
    {"cut_through_limit", &Rules::cut_through_limit, "accepted chance of cutting through a zone"},
};

Rules rules_from(const py::dict& given) {
  Rules rules;
  for (const auto& [key, value] : given) {
    const auto name = key.cast<std::string>();
    const auto rule = std::find_if(std::begin(all_rules), std::end(all_rules),
                                   [&](const Rule& r) { return r.name == name; });
    if (rule == std::end(all_rules)) {
      std::vector<std::string_view> known;
      for (const Rule& r : all_rules) known.push_back(r.name);
      throw levigate::BadInput(levigate::detail::unknown_name_text("rule", name, known));
    }
    rules.*rule->member = value.cast<double>();
  }
  levigate::validate(rules, "Rules");
  return rules;
}

}  // namespace

Rules rules_of(const RulesOrDict& given) {
  const auto* rules = std::get_if<Rules>(&given);
  return rules ? *rules : rules_from(std::get<1>(given));
}

void bind_rules(py::module_& m) {
  ValueClass<Rules> rules(m, "Rules",
                          "The rules that a plan keeps. What is not given is the default.");
  for (const Rule& rule : all_rules) rules.has(rule.name, rule.member, rule.doc);
  rules.finish();
  std::vector<std::string_view> names;
  for (const Rule& rule : all_rules) names.push_back(rule.name);
  py::options options;
  options.disable_function_signatures();
  rules.def(py::init([](const py::kwargs& given) { return rules_from(given); }),
            doc_of_init(rules, "", names,
                        "Rules by name; the others keep their defaults.\n\n"
                        "Raises BadInput, OutOfRange.")
                .c_str());
}

}  // namespace levigate_python
