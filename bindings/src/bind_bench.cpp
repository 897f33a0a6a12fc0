// The bench: job, stack, shop and journal laid out once, and what is asked of it.
#include "levigate/bench/bench.hpp"

#include <variant>

#include "bind.hpp"
#include "levigate/io/read_journal.hpp"
#include "plan_of_job.hpp"

namespace levigate_python {

using levigate::Bench;
using py::arg;

void bind_bench(py::module_& m) {
  using levigate::Entry;
  using Journal = std::variant<levigate::JournalReading, std::vector<Entry>>;
  using Parts = std::tuple<levigate::Job, levigate::Stack, std::optional<levigate::Shop>,
                           std::vector<Entry>, std::vector<int>>;
  ValueClass<Bench> bench(m, "Bench", "A job, the paper on hand, what is known and what was done.");
  bench.has("job", &Bench::job, "as it was before the first step")
      .has("stack", &Bench::stack, "the paper on hand")
      .has("shop", &Bench::shop, "what journals taught, or None")
      .has("journal", &Bench::journal,
           "entries of this job, in order; notes in place of struck ones")
      .has("findings", &Bench::findings, "what to know of the journal")
      .finish();
  bench.def_property_readonly("done", &Bench::done, "the steps that the journal ends, in order");
  bench.def_property_readonly("open_mark", &Bench::open_mark,
                              "found last; None where none was, or its zone was worked since");
  bench.def_property_readonly("grades", &Bench::grades, "of each sheet of the stack");
  bench.def_property_readonly(
      "present", [](const Bench& self) { return levigate::present(self); },
      "the job after its steps, with films by gauge readings and shop");
  bench.def_property_readonly(
      "paper_left", [](const Bench& self) { return levigate::paper_left(self); },
      "the stack with the sheets counted off that the journal used");
  bench.def(py::init([](const levigate::Job& job, const levigate::Stack& stack,
                        const std::optional<levigate::Shop>& shop,
                        const std::optional<Journal>& journal) {
              const auto* reading = journal ? std::get_if<0>(&*journal) : nullptr;
              const auto* entries = journal ? std::get_if<1>(&*journal) : nullptr;
              if (reading) entries = &reading->entries;
              return Bench(job, stack, shop, entries ? *entries : std::vector<Entry>(),
                           reading ? reading->lines : std::vector<int>());
            }),
            arg("job"), arg("stack"), arg("shop") = py::none(), arg("journal") = py::none(),
            "Reads labels, looks up profiles and solves budgets, once.\n\n"
            "job: as it was before the first step; shop: of load() or learn(); journal: entries in "
            "order,\nor what Journal.read() gave; it ignores those of other jobs.\n"
            "Raises BadInput, OutOfRange, UnknownGrade, AmbiguousLabel. Only what needs "
            "the job\nafter its steps raises for a journal that cannot be followed.");
  bench.def(py::pickle(
      [](const Bench& self) {
        return Parts(self.job(), self.stack(), self.shop(), self.journal(), self.lines());
      },
      [](const Parts& parts) { return std::make_from_tuple<Bench>(parts); }));
}

void bind_bench_questions(py::module_& m) {
  using levigate::Mark;
  const py::call_guard<py::gil_scoped_release> others_may_run;
  m.def("plan", &plan_of, arg("bench"), others_may_run,
        "The best plan for what is left to do on a bench, or why there is none.\n\n"
        "Raises BadInput where the journal cannot be followed.");
  m.def("evaluate", &evaluated, arg("bench"), arg("sequence"), others_may_run,
        "A sequence of sheet ids or labels taken as given, after the steps done on a bench.\n\n"
        "Raises as evaluate() of a job.");
  m.def("diagnose", py::overload_cast<const Bench&, const Mark&>(&levigate::diagnose), arg("bench"),
        arg("mark"), others_may_run,
        "Which of the steps done on a bench made a mark.\n\nRaises BadInput, OutOfRange.");
  m.def(
      "go_back",
      [](const Bench& bench, const std::optional<Mark>& mark) {
        return mark ? levigate::go_back(bench, *mark) : levigate::go_back(bench);
      },
      arg("bench"), arg("mark") = py::none(), others_may_run,
      "Where to go back to for a mark.\n\n"
      "mark: None for the one that is open in the journal. Raises BadInput where none is.");
  m.def("observe", py::overload_cast<const Bench&>(&levigate::observe), arg("bench"),
        others_may_run,
        "What the entries of a bench's journal show, each beside the computed value.\n\n"
        "Raises BadInput, OutOfRange.");
  m.def("learn", py::overload_cast<const Bench&>(&levigate::learn), arg("bench"), others_may_run,
        "The shop of a bench after its journal.\n\nRaises BadInput, OutOfRange.");
}

}  // namespace levigate_python
