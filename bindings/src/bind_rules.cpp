// The rules of a plan.
#include "rules.hpp"

namespace levigate_python {

namespace {

using levigate::Rules;

Rules rules_from(const py::dict& given) {
  Rules rules;
  set_numbers(levigate::description_of<Rules>(), &rules, given, "rule");
  levigate::validate(rules, "Rules");
  return rules;
}

}  // namespace

Rules rules_of(const RulesOrDict& given) {
  const auto* rules = std::get_if<Rules>(&given);
  return rules ? *rules : rules_from(std::get<1>(given));
}

void bind_rules(py::module_& m) {
  ValueClass<Rules> rules = describe_class<Rules>(m);
  rules.finish();
  py::options options;
  options.disable_function_signatures();
  rules.def(py::init([](const py::kwargs& given) { return rules_from(given); }),
            doc_of_init(rules, "", numbers_of(levigate::description_of<Rules>()),
                        "Rules by name; the others keep their defaults.\n\n"
                        "Raises BadInput, OutOfRange.")
                .c_str());
}

}  // namespace levigate_python
