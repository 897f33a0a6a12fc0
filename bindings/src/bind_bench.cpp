// The bench: job, paper, shop and journal as one, and all that one asks of them.
#include "levigate/bench/bench.hpp"

#include "bind.hpp"
#include "plan_of_job.hpp"

namespace levigate_python {

using levigate::Bench;
using levigate::Entry;
using levigate::Mark;
using py::arg;

void bind_bench(py::module_& m) {
  using Unlocked = py::call_guard<py::gil_scoped_release>;
  ValueClass<Bench> bench(
      m, "Bench", "What lies on the bench: a job, the paper on hand, a shop and a journal.");
  bench
      .has(
          "job", [](const Bench& b) { return b.job(); }, "as it was before the first step")
      .has(
          "stack", [](const Bench& b) { return b.stack(); }, "the paper on hand")
      .has(
          "shop", [](const Bench& b) { return b.shop(); }, "what journals taught, or None")
      .has(
          "journal", [](const Bench& b) { return b.journal(); }, "entries of this job")
      .finish();
  bench.def(
      py::init<levigate::Job, levigate::Stack, std::optional<levigate::Shop>, std::vector<Entry>>(),
      arg("job"), arg("stack"), arg("shop") = py::none(), arg("journal") = py::list(), Unlocked(),
      "A bench with these on it.\n\n"
      "journal: entries of one journal, in order; those of other jobs are left aside.\n"
      "Raises BadInput, OutOfRange, UnknownGrade, AmbiguousLabel.");
  bench.def_property_readonly(
      "grades", [](const Bench& b) { return b.grades(); }, "of the sheets, in their order");
  bench.def_property_readonly(
      "done", [](const Bench& b) { return b.done(); }, "the steps that the journal ends");
  bench.def_property_readonly(
      "open_mark", [](const Bench& b) { return b.open_mark(); },
      "the mark found last, unless its zone was worked since; else None");
  bench.def(
      "present", [](const Bench& b) { return levigate::present(b); }, Unlocked(),
      "The job as it stands after the journal, with the film that a shop has learned of.\n\n"
      "Raises as present().");
  bench.def("plan", &plan_of, Unlocked(), "The best plan of what is left.\n\nRaises as plan().");
  bench.def("evaluate", &evaluated, arg("sequence"), Unlocked(),
            "A sequence taken as given, from where the job stands.\n\nRaises as evaluate().");
  bench.def(
      "diagnose", [](const Bench& b, const Mark& mark) { return levigate::diagnose(b, mark); },
      arg("mark"), Unlocked(), "Which of the steps done made a mark.\n\nRaises as diagnose().");
  bench.def(
      "go_back",
      [](const Bench& b, const std::optional<Mark>& mark) {
        return mark ? levigate::go_back(b, *mark) : levigate::go_back(b);
      },
      arg("mark") = py::none(), Unlocked(),
      "Where to go back to for a mark.\n\n"
      "mark: None, the one that is open in the journal. Raises as go_back(); BadInput where none "
      "is.");
  bench.def(
      "observe", [](const Bench& b) { return levigate::observe(b); }, Unlocked(),
      "What the journal shows of the job.\n\nRaises as observe().");
  bench.def(
      "learn", [](const Bench& b) { return levigate::learn(b); }, Unlocked(),
      "The shop after the journal.\n\nRaises as learn().");
}

}  // namespace levigate_python
