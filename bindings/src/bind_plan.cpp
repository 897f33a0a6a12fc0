// Plans: the search, its steps and sums, and why there is none.
#include "errors.hpp"
#include "levigate/bench/plan_many.hpp"
#include "levigate/io/json.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/text/card.hpp"
#include "made.hpp"
#include "plan_of_job.hpp"
#include "progress.hpp"
#include "rules.hpp"
#include "shown.hpp"

namespace levigate_python {

namespace {

using levigate::Job;
using levigate::MachineStep;
using levigate::Plan;
using levigate::PlannedZone;
using levigate::Reading;
using levigate::Stack;
using levigate::Step;
using levigate::Totals;
using levigate::WheelStep;
using levigate::ZoneStep;
using py::arg;

PlanOfJob plan(const Job& job, const Stack& stack) { return plan_of({job, stack}); }

PlanOfJob evaluate(const Job& job, const Stack& stack, const std::vector<std::string>& sequence) {
  return evaluated({job, stack}, sequence);
}

py::list plan_many(const std::vector<Job>& jobs, const Stack& stack,
                   const std::optional<RulesOrDict>& rules, unsigned threads,
                   const std::optional<Tell>& progress) {
  levigate::PlanManyOptions options{.threads = threads, .progress = progress_of(progress)};
  if (rules) options.rules = rules_of(*rules);
  std::vector<levigate::PlanOrError> planned;
  {
    const py::gil_scoped_release unlocked;
    planned = levigate::plan_many(jobs, stack, options);
  }
  py::list result;
  for (levigate::PlanOrError& one : planned) {
    if (const auto* error = std::get_if<levigate::Error>(&one)) {
      result.append(exception_of(*error));
    } else {
      auto& found = std::get<levigate::PlanOnBench>(one);
      result.append(PlanOfJob{std::move(found.bench), std::move(found.plan)});
    }
  }
  return result;
}

std::vector<PlanOfJob> tradeoff(const PlanOfJob& self) {
  std::vector<PlanOfJob> result;
  for (const Plan& point : self.plan.tradeoff) result.push_back({self.bench, point});
  return result;
}

levigate::BenchSheet sheet_of(const PlanOfJob& self,
                              const std::optional<levigate::Simulation>& simulation,
                              const std::string& units_name) {
  const levigate::ShownUnits units =
      levigate::detail::kind_named(levigate::choices<levigate::ShownUnits>, units_name, "units");
  return simulation ? levigate::bench_sheet(self.plan, *simulation, units)
                    : levigate::bench_sheet(self.plan, units);
}

template <typename Zone>
py::typing::Dict<py::str, Zone> by_name(const std::vector<Zone>& zones) {
  py::typing::Dict<py::str, Zone> result;
  for (const Zone& zone : zones) result[py::str(zone.zone)] = zone;
  return result;
}

void bind_step(py::module_& m) {
  describe_class<levigate::CureWait>(m).finish();
  describe_class<Reading>(m).finish();
  describe_class<ZoneStep>(m).finish();
  describe_class<levigate::StandingStill>(m).finish();
  describe_class<WheelStep>(m).finish();
  describe_class<MachineStep>(m).finish();
  describe_class<Step>(m)
      .has(
          "zones", [](const Step& s) { return by_name(s.zones); },
          "ZoneStep of each zone, by name, in the order of the job")
      .finish();
  describe_class<PlannedZone>(m).finish();
  describe_class<Totals>(m).finish();
}

}  // namespace

void bind_plan(py::module_& m) {
  bind_step(m);
  py::class_<PlanOfJob> bound(m, "Plan", "A plan, or the reason why there is none.");
  add_members(bound, levigate::description_of<Plan>(),
              [](py::handle self) -> const void* { return &self.cast<const PlanOfJob&>().plan; },
              {"exact", "tradeoff", "job", "zones"});
  bound.def_property_readonly(
      "zones", [](const PlanOfJob& self) { return by_name(self.plan.zones); },
      "PlannedZone of each zone, by name, in the order of the job");
  bound.def_property_readonly("tradeoff", &tradeoff,
                              "plans of the trade-off between minutes, film and cost, by minutes");
  bound.def_property_readonly(
      "bench", [](const PlanOfJob& self) { return self.bench; }, "what it was made on");
  bound.def_property_readonly(
      "job", [](const PlanOfJob& self) { return self.job(); }, "the job it was made for");
  bound.def_property_readonly(
      "stack", [](const PlanOfJob& self) { return self.stack(); }, "the stack it was made from");
  bound.def(
      "to_json", [](const PlanOfJob& self) { return levigate::to_json(self.plan); },
      "The plan as JSON text of format levigate.plan/1.");
  bound.def(
      "to_dict",
      [](const PlanOfJob& self) -> py::dict {
        return from_json_text(levigate::to_json(self.plan));
      },
      "The plan as a dictionary, as to_json() writes it.");
  bound.def(
      "card",
      [](const PlanOfJob& self, const std::optional<levigate::Simulation>& simulation) {
        return simulation ? levigate::card(self.plan, *simulation) : levigate::card(self.plan);
      },
      arg("simulation") = py::none(),
      "The plan explained, as text.\n\n"
      "simulation: from simulate(); adds how the plan may turn out. Raises BadInput.");
  bound.def(
      "bench_sheet",
      [](const PlanOfJob& self, const std::optional<levigate::Simulation>& simulation,
         const std::string& units) {
        return levigate::sheet_text(sheet_of(self, simulation, units));
      },
      arg("simulation") = py::none(), arg("units") = "metric",
      "The plan on one page as text: what a finisher needs of it at the bench.\n\n"
      "simulation: from simulate(); adds how long it may take. units: \"metric\" or \"us\", "
      "for the reader alone. Raises BadInput.");
  bound.def(
      "bench_sheet_html",
      [](const PlanOfJob& self, const std::optional<levigate::Simulation>& simulation,
         const std::string& units) {
        return levigate::sheet_html(sheet_of(self, simulation, units));
      },
      arg("simulation") = py::none(), arg("units") = "metric",
      "The same as one HTML file, with a picture of the zones, to print on A4 or Letter or to read "
      "on a phone.\n\n"
      "simulation, units: as for bench_sheet(). Raises BadInput.");
  bound.def(
      "plot",
      [](const py::object& self, const py::object& picture, const py::object& simulation,
         const py::object& save) {
        const py::module_ plots = py::module_::import("levigate.plots");
        return plots.attr("plot")(self, picture, simulation, arg("save") = save);
      },
      arg("picture") = py::none(), arg("simulation") = py::none(), py::kw_only(),
      arg("save") = py::none(),
      "A picture of the plan, as a matplotlib figure: section and ladder where none is named.\n\n"
      "picture: a name of levigate.plots.PICTURES; simulation: from simulate(), for the bands;\n"
      "save: path of a picture to write. Raises BadInput.");
  add_html(bound);
  add_records(bound,
              "The plan as rows for a table, one for each step and zone: pandas.DataFrame takes "
              "them.\n\n"
              "step counts from 1; step_minutes is of all zones with the change, the rest as in "
              "Step and\nZoneStep. None where a value does not apply; film_used is inf without a "
              "film budget.");
  bound.def("__repr__", [](const PlanOfJob& self) {
    if (!self.plan.found)
      return "Plan(found=False, why=" +
             std::string(py::repr(py::str(levigate::sentence(*self.plan.why)))) + ")";
    py::list sheets;
    for (const Step& step : self.plan.steps) sheets.append(step.sheet);
    const std::string wait =
        self.plan.wait ? "wait=" + std::string(py::repr(py::cast(*self.plan.wait))) + ", " : "";
    return "Plan(found=True, " + wait + "sheets=" + std::string(py::repr(sheets)) +
           ", total=" + std::string(py::repr(py::cast(self.plan.total))) + ")";
  });
  bound.def(
      "__eq__",
      [](const PlanOfJob& self, const PlanOfJob& other) {
        return levigate::to_json(self.plan) == levigate::to_json(other.plan) &&
               levigate::to_json(self.job()) == levigate::to_json(other.job()) &&
               levigate::to_json(self.stack()) == levigate::to_json(other.stack());
      },
      py::is_operator());

  pickle_on_bench(m, bound, &PlanOfJob::plan);
  bound.def("__copy__", [](const py::object& self) { return self; });
  bound.def("__deepcopy__", [](const py::object& self, const py::dict&) { return self; });

  m.def("plan", &plan, arg("job"), arg("stack"), py::call_guard<py::gil_scoped_release>(),
        "The best plan for a job from a stack, or why there is none.\n\n"
        "The choice is exact: no sequence that keeps the rules is better in what the job prefers.\n"
        "Raises BadInput, OutOfRange, UnknownGrade, AmbiguousLabel.\n\n"
        ">>> job = levigate.Job.load(\"data/demo/job.json\")\n"
        ">>> stack = levigate.Stack.load(\"data/demo/stack.json\")\n"
        ">>> [step.label for step in levigate.plan(job, stack).steps]\n"
        "['CAMI 400', 'P1200', 'P2000', 'P3000']");
  m.def(
      "plan_many", &plan_many, arg("jobs"), arg("stack"), py::kw_only(), arg("rules") = py::none(),
      arg("threads") = 0, arg("progress") = py::none(),
      "The best plan for each of many jobs, each alone with the whole stack.\n\n"
      "One entry for each job, in their order: what plan() returns, or the exception that it\n"
      "raises. So a job that cannot be used costs the others nothing. rules stand for those of\n"
      "each job. Threads (0: as many as the machine has) change no result.\n"
      "progress(done, of) is called after jobs; where it returns False, the list holds the first\n"
      "jobs alone.\n"
      "Raises as plan() for a stack, and OutOfRange, BadInput for rules, that fit no job.");
  m.def(
      "evaluate", &evaluate, arg("job"), arg("stack"), arg("sequence"),
      py::call_guard<py::gil_scoped_release>(),
      "A sequence of sheet ids taken as given, with the rules it breaks as findings.\n\n"
      "A label stands for a sheet where no other of the stack can have it.\n"
      "Raises as plan(); BadInput for an id that is not in the stack; AmbiguousLabel for a label\n"
      "that several sheets have.");
}

}  // namespace levigate_python
