// Plain text of findings, conversions and comparisons.
#include "bind.hpp"
#include "levigate/text/card.hpp"
#include "plan_of_job.hpp"

namespace levigate_python {

void bind_text(py::module_& m) {
  using py::arg;
  m.def("findings_text", &levigate::findings_text, arg("findings"),
        "Findings as plain text, errors first.");
  m.def("equivalent_text", &levigate::equivalent_text, arg("given"), arg("found"),
        "A conversion as plain text.\n\ngiven: the Grade; found: what convert() made of it.");
  m.def("meanings_text", &levigate::meanings_text, arg("labels"),
        "What labels may mean, as one table.\n\nlabels: what meanings() made of each.");
  m.def(
      "comparison_card",
      [](const PlanOfJob& taken, const PlanOfJob& best) {
        return levigate::comparison_card(taken.plan, best.plan);
      },
      arg("taken"), arg("best"),
      "Your own sequence beside the best plan, as plain text.\n\n"
      "taken: from evaluate(); best: from plan(), of the same job. Raises BadInput.");
}

}  // namespace levigate_python
