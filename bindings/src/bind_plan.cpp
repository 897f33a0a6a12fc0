// Plans: the search, its steps and sums, and why there is none.
#include "as_json.hpp"
#include "levigate/io/json.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/text/card.hpp"
#include "plan_of_job.hpp"

namespace levigate_python {

namespace {

using levigate::Job;
using levigate::Plan;
using levigate::Stack;
using levigate::Step;
using levigate::Totals;
using levigate::ZoneStep;
using py::arg;

PlanOfJob plan(const Job& job, const Stack& stack) { return plan_of({job, stack}); }

PlanOfJob evaluate(const Job& job, const Stack& stack, const std::vector<std::string>& sequence) {
  return evaluated({job, stack}, sequence);
}

std::vector<PlanOfJob> tradeoff(const PlanOfJob& self) {
  std::vector<PlanOfJob> result;
  for (const Plan& point : self.plan.tradeoff) result.push_back({self.bench, point});
  return result;
}

py::typing::Dict<py::str, ZoneStep> zones_by_name(const Step& step) {
  py::typing::Dict<py::str, ZoneStep> result;
  for (const ZoneStep& zone : step.zones) result[py::str(zone.zone)] = zone;
  return result;
}

void bind_step(py::module_& m) {
  ValueClass<ZoneStep>(m, "ZoneStep", "What a step does in one zone.")
      .has("zone", &ZoneStep::zone, "name of the zone")
      .has("worked", &ZoneStep::worked, "False: the step passes it by, and it stands as before")
      .has("removal_um", &ZoneStep::removal_um, "lowered by this step [um]")
      .has("scratch_um", &ZoneStep::scratch_um, "depth of the scratches it leaves [um]")
      .has("depth_um", &ZoneStep::depth_um, "all removal so far and these scratches [um]")
      .has("minutes", &ZoneStep::minutes, "sanding, without the change [min]")
      .has("travel_m", &ZoneStep::travel_m, "of the block [m]")
      .has("sheets_used", &ZoneStep::sheets_used, "sheets")
      .has("gloss_gu", &ZoneStep::gloss_gu, "at 60 degrees, a lower bound [GU]")
      .has("gloss_20_gu", &ZoneStep::gloss_20_gu, "the same at 20 degrees [GU]")
      .has("gloss_85_gu", &ZoneStep::gloss_85_gu, "the same at 85 degrees [GU]")
      .has("film_left_um", &ZoneStep::film_left_um,
           "above the deepest scratch, on the mean [um]; None on a solid")
      .has("cut_through", &ZoneStep::cut_through,
           "chance of cutting through somewhere in the zone; None on a solid")
      .has("strokes_left", &ZoneStep::strokes_left,
           "strokes along an edge that the film still affords; None where the zone is levelled")
      .finish();
  ValueClass<Step>(m, "Step", "One step of a plan.")
      .has("sheet", &Step::sheet, "id of the sheet")
      .has("label", &Step::label, "of its grade, as read")
      .has("size_um", &Step::size_um, "median grain size [um]")
      .has("size_ratio", &Step::size_ratio,
           "to the coarsest grain whose scratches it finds; None where it finds none")
      .has("minutes", &Step::minutes, "all zones, with the change [min]")
      .has("sheets_used", &Step::sheets_used, "sheets, all zones")
      .has("cost", &Step::cost, "of the sheets used")
      .has("gloss_gu", &Step::gloss_gu, "of the zone with least [GU]")
      .has("zones", &zones_by_name, "ZoneStep of each zone, by name, in the order of the job")
      .has("cautions", &Step::cautions, "that this step needs beside those of the plan")
      .finish();
  ValueClass<Totals>(m, "Totals", "What a plan adds up to.")
      .has("minutes", &Totals::minutes, "all steps [min]")
      .has("film", &Totals::film, "share of its budget that the worst zone uses; None on a solid")
      .has("steps", &Totals::steps, "number of steps")
      .has("cost", &Totals::cost, "of the sheets used")
      .has("depth_um", &Totals::depth_um, "of the deepest zone [um]")
      .finish();
}

}  // namespace

void bind_plan(py::module_& m) {
  bind_step(m);
  py::class_<PlanOfJob> bound(m, "Plan", "A plan, or the reason why there is none.");
  const auto member = [&](const char* name, auto get, const char* doc) {
    bound.def_property_readonly(
        name, [get](const PlanOfJob& self) { return self.plan.*get; }, doc);
  };
  member("found", &Plan::found, "whether there is a sequence");
  member("before", &Plan::before, "work on defects, before the first step");
  member("steps", &Plan::steps, "the steps, in order");
  member("total", &Plan::total, "what they add up to");
  member("findings", &Plan::findings, "what to say of stack and sequence");
  member("cautions", &Plan::cautions, "reminders that belong to the work");
  member("relies_on", &Plan::relies_on, "inputs that the figures hang on, most influential first");
  member("why", &Plan::why, "why there is none; None where there is one");
  bound.def_property_readonly("tradeoff", &tradeoff,
                              "plans that none beats in minutes, film and cost, by minutes");
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
        return simulation ? levigate::card(self.job(), self.stack(), self.plan, *simulation)
                          : levigate::card(self.job(), self.stack(), self.plan);
      },
      arg("simulation") = py::none(),
      "The plan as text for the bench.\n\n"
      "simulation: from simulate(); adds how the plan may turn out. Raises BadInput.");
  bound.def(
      "plot",
      [](const py::object& self, const py::object& save) {
        return py::module_::import("levigate.plots").attr("plot")(self, arg("save") = save);
      },
      py::kw_only(), arg("save") = py::none(),
      "The film in section to scale, and the ladder of sizes, as a matplotlib figure.\n\n"
      "save: path of a picture to write. levigate.plots has each of the two alone.");
  bound.def("__repr__", [](const PlanOfJob& self) {
    if (!self.plan.found)
      return "Plan(found=False, why=" +
             std::string(py::repr(py::str(levigate::sentence(*self.plan.why)))) + ")";
    py::list sheets;
    for (const Step& step : self.plan.steps) sheets.append(step.sheet);
    return "Plan(found=True, sheets=" + std::string(py::repr(sheets)) +
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

  bound.def("__copy__", [](const py::object& self) { return self; });
  bound.def("__deepcopy__", [](const py::object& self, const py::dict&) { return self; });

  m.def("plan", &plan, arg("job"), arg("stack"), py::call_guard<py::gil_scoped_release>(),
        "The best plan for a job from a stack, or why there is none.\n\n"
        "The choice is exact: no sequence that keeps the rules is better in what the job prefers.\n"
        "Raises BadInput, OutOfRange, UnknownGrade, AmbiguousLabel.");
  m.def("evaluate", &evaluate, arg("job"), arg("stack"), arg("sequence"),
        py::call_guard<py::gil_scoped_release>(),
        "A sequence of sheet ids taken as given, with the rules it breaks as findings.\n\n"
        "Raises as plan(); BadInput for an id that is not in the stack.");
}

}  // namespace levigate_python
