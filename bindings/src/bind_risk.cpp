// Chance: plans simulated, what to measure before them, and the random numbers behind them.
#include "levigate/risk/simulate.hpp"

#include "levigate/io/json.hpp"
#include "levigate/risk/calibrate.hpp"
#include "levigate/risk/compare.hpp"
#include "levigate/risk/philox.hpp"
#include "levigate/risk/when_done.hpp"
#include "levigate/text/card.hpp"
#include "made.hpp"
#include "plan_of_job.hpp"
#include "progress.hpp"
#include "shown.hpp"

namespace levigate_python {

namespace {

using levigate::Calibration;
using levigate::Interval;
using levigate::Job;
using levigate::Share;
using levigate::SimulatedReading;
using levigate::SimulatedStep;
using levigate::SimulatedZone;
using levigate::Simulation;
using py::arg;

Simulation simulate_on(const levigate::Bench& bench, const PlanOfJob& plan, std::int64_t draws,
                       std::uint64_t seed, unsigned threads, const std::optional<Tell>& progress,
                       bool bands) {
  const levigate::SimulateOptions options{.draws = draws,
                                          .seed = seed,
                                          .threads = threads,
                                          .bands = bands,
                                          .progress = progress_of(progress)};
  const py::gil_scoped_release unlocked;
  return levigate::simulate(bench, plan.plan, options);
}

/// A bench of the job, the plan's stack and the shop.
levigate::Bench bench_of(const Job& job, const PlanOfJob& plan,
                         const std::optional<levigate::Shop>& shop, const std::string& where) {
  if (shop && plan.bench.shop() && job == plan.job() && job != plan.bench.job())
    throw levigate::BadInput(
        "job has the films of the plan's shop in already; give the job as read, or plan.bench, "
        "in " +
        where);
  return {job, plan.stack(), shop};
}

Simulation simulate(const Job& job, const PlanOfJob& plan, std::int64_t draws, std::uint64_t seed,
                    unsigned threads, const std::optional<Tell>& progress, bool bands,
                    const std::optional<levigate::Shop>& shop) {
  return simulate_on(bench_of(job, plan, shop, "simulate"), plan, draws, seed, threads, progress,
                     bands);
}

Calibration calibrate_on(const levigate::Bench& bench, const PlanOfJob& plan, std::int64_t draws,
                         std::uint64_t seed, unsigned threads) {
  const std::optional<Tell> nobody;
  const levigate::SimulateOptions options{
      .draws = draws, .seed = seed, .threads = threads, .progress = progress_of(nobody)};
  const py::gil_scoped_release unlocked;
  return levigate::calibrate(bench, plan.plan, options);
}

Calibration calibrate(const Job& job, const PlanOfJob& plan, std::int64_t draws, std::uint64_t seed,
                      unsigned threads, const std::optional<levigate::Shop>& shop) {
  return calibrate_on(bench_of(job, plan, shop, "calibrate"), plan, draws, seed, threads);
}

/// A comparison in Python: its plans remember their bench.
struct ComparisonOnBench {
  levigate::Bench bench;
  levigate::Comparison comparison;
};

ComparisonOnBench compare_on(const levigate::Bench& bench, const std::vector<std::string>& sequence,
                             std::int64_t draws, std::uint64_t seed, unsigned threads) {
  const std::optional<Tell> nobody;
  const levigate::SimulateOptions options{
      .draws = draws, .seed = seed, .threads = threads, .progress = progress_of(nobody)};
  const py::gil_scoped_release unlocked;
  return {bench, levigate::compare(bench, sequence, options)};
}

ComparisonOnBench compare(const Job& job, const levigate::Stack& stack,
                          const std::vector<std::string>& sequence, std::int64_t draws,
                          std::uint64_t seed, unsigned threads) {
  return compare_on({job, stack}, sequence, draws, seed, threads);
}

levigate::WhenDone when_done_on(const levigate::Bench& bench, std::int64_t draws,
                                std::uint64_t seed, unsigned threads) {
  const std::optional<Tell> nobody;
  const levigate::SimulateOptions options{
      .draws = draws, .seed = seed, .threads = threads, .progress = progress_of(nobody)};
  const py::gil_scoped_release unlocked;
  return levigate::when_done(bench, options);
}

py::typing::Dict<py::str, SimulatedZone> simulated_zones(const Simulation& simulation) {
  py::typing::Dict<py::str, SimulatedZone> result;
  for (const SimulatedZone& zone : simulation.zones) result[py::str(zone.zone)] = zone;
  return result;
}

py::typing::Dict<py::str, SimulatedReading> simulated_readings(const SimulatedStep& step) {
  py::typing::Dict<py::str, SimulatedReading> result;
  for (const SimulatedReading& zone : step.zones) result[py::str(zone.zone)] = zone;
  return result;
}

}  // namespace

void bind_simulation(py::module_& m) {
  describe_class<Interval>(m).finish();
  describe_class<Share>(m).finish();
  describe_class<levigate::PairedMinutes>(m).finish();
  describe_class<SimulatedReading>(m).finish();
  ValueClass<SimulatedStep> step = describe_class<SimulatedStep>(m);
  step.has("zones", &simulated_readings, "SimulatedReading of each zone, by name").finish();
  describe_class<SimulatedZone>(m).finish();
  ValueClass<Simulation> simulation = describe_class<Simulation>(m);
  simulation.has("zones", &simulated_zones, "SimulatedZone of each zone on a coat, by name")
      .finish();
  add_html(simulation);
  add_records(simulation,
              "The draws as rows for a table, one for each step and zone: pandas.DataFrame takes "
              "them.\n\n"
              "p10, p50, p90 and mean stand before the name. What begins with step_ is of all "
              "zones,\nwith end_ of the zone after the last step. None where a value does not "
              "apply.");
  simulation.def(
      "to_json", [](const Simulation& self) { return levigate::to_json(self); },
      "The simulation as JSON text of format levigate.simulation/1.");
  simulation.def(
      "to_dict",
      [](const Simulation& self) -> py::dict { return from_json_text(levigate::to_json(self)); },
      "The simulation as a dictionary, as to_json() writes it.");
  describe_class<levigate::Measurement>(m).finish();
  ValueClass<Calibration> calibration = describe_class<Calibration>(m);
  calibration.finish();
  calibration.def("card", &levigate::calibration_card, "As plain text.")
      .def(
          "to_json", [](const Calibration& self) { return levigate::to_json(self); },
          "As JSON text of format levigate.calibration/1.")
      .def(
          "to_dict",
          [](const Calibration& self) -> py::dict {
            return from_json_text(levigate::to_json(self));
          },
          "As plain data.");
  describe_class<levigate::StepUnderWay>(m).finish();
  describe_class<levigate::PaperLeft>(m).finish();
  ValueClass<levigate::WhenDone> when = describe_class<levigate::WhenDone>(m);
  when.finish();
  when.def("card", &levigate::when_done_card, "As plain text.")
      .def(
          "to_json", [](const levigate::WhenDone& self) { return levigate::to_json(self); },
          "As JSON text of format levigate.when_done/1.")
      .def(
          "to_dict",
          [](const levigate::WhenDone& self) -> py::dict {
            return from_json_text(levigate::to_json(self));
          },
          "As plain data.");
}

void bind_comparison(py::module_& m) {
  using levigate::Comparison;
  const levigate::Description& description = levigate::description_of<Comparison>();
  ValueClass<ComparisonOnBench> bound(m, "Comparison", std::string(description.about).c_str());
  bound.describe(description,
                 [](py::handle self) -> const void* {
                   return &self.cast<const ComparisonOnBench&>().comparison;
                 },
                 {"taken", "best"});
  bound
      .has(
          "taken",
          [](const ComparisonOnBench& self) {
            return PlanOfJob{self.bench, self.comparison.taken};
          },
          "the sequence, with the rules that it breaks as findings")
      .has(
          "best",
          [](const ComparisonOnBench& self) {
            return PlanOfJob{self.bench, self.comparison.best};
          },
          "the best plan, or why there is none")
      .finish();
  pickle_on_bench(m, bound, &ComparisonOnBench::comparison);
  bound
      .def(
          "card",
          [](const ComparisonOnBench& self) { return levigate::comparison_card(self.comparison); },
          "Both side by side, as plain text.")
      .def(
          "to_json",
          [](const ComparisonOnBench& self) { return levigate::to_json(self.comparison); },
          "As JSON text of format levigate.comparison/1.")
      .def(
          "to_dict",
          [](const ComparisonOnBench& self) -> py::dict {
            return from_json_text(levigate::to_json(self.comparison));
          },
          "As plain data.");
  const char* about =
      "A sequence of sheet ids or labels beside the best plan, over the same draws.\n\n"
      "Each draw has the same numbers for both: .minutes says how often the sequence is slower,\n"
      "and by how much, with going back for marks.\n"
      "Raises as evaluate() and simulate().";
  m.def("compare", &compare, arg("job"), arg("stack"), arg("sequence"),
        arg("draws") = levigate::SimulateOptions{}.draws,
        arg("seed") = levigate::SimulateOptions{}.seed, arg("threads") = 0, about);
  m.def("compare", &compare_on, arg("bench"), arg("sequence"),
        arg("draws") = levigate::SimulateOptions{}.draws,
        arg("seed") = levigate::SimulateOptions{}.seed, arg("threads") = 0,
        "The same after the steps done on a bench, with what its shop knows.\n\n"
        "Raises as evaluate() and simulate().");
}

void bind_simulate(py::module_& m) {
  bind_comparison(m);
  const py::object bench = m.attr("Bench");
  bench.attr("when_done") = py::cpp_function(
      &when_done_on, py::name("when_done"), py::is_method(bench),
      arg("draws") = levigate::SimulateOptions{}.draws,
      arg("seed") = levigate::SimulateOptions{}.seed, arg("threads") = 0,
      "What is left of the job, at the pace of its journal: minutes, the step under way, paper.\n\n"
      "Raises as plan() and simulate().");
  m.attr("DRAWS") = levigate::SimulateOptions{}.draws;
  m.attr("SEED") = levigate::SimulateOptions{}.seed;
  m.def("simulate", &simulate, arg("job"), arg("plan"),
        arg("draws") = levigate::SimulateOptions{}.draws,
        arg("seed") = levigate::SimulateOptions{}.seed, arg("threads") = 0,
        arg("progress") = py::none(), arg("bands") = true, arg("shop") = py::none(),
        "A plan simulated many times, with new values for every uncertain number.\n\n"
        "The same to the bit for the same seed, whatever the number of threads (0: as many as the\n"
        "machine has). progress(done, of) is called now and then; where it returns False, the\n"
        "result is that of the draws done. With bands=False every input stays as it is given and\n"
        "only film and hand vary from spot to spot.\n\n"
        "The plan's sheets are worked on a bench of the job, the plan's stack and the shop. Films\n"
        "and minutes come from what the shop knows.\n"
        "Raises BadInput where no plan was found, and with a shop for a plan.job that has its\n"
        "films in already; OutOfRange.");
  m.def("simulate", &simulate_on, arg("bench"), arg("plan"),
        arg("draws") = levigate::SimulateOptions{}.draws,
        arg("seed") = levigate::SimulateOptions{}.seed, arg("threads") = 0,
        arg("progress") = py::none(), arg("bands") = true,
        "The same after the steps done on a bench, with what its shop knows.\n\n"
        "Raises BadInput for a sheet that is not in its stack, and as plan(); OutOfRange.");
  m.def(
      "calibrate", &calibrate, arg("job"), arg("plan"),
      arg("draws") = levigate::SimulateOptions{}.draws,
      arg("seed") = levigate::SimulateOptions{}.seed, arg("threads") = 0, arg("shop") = py::none(),
      "What to measure before a day of work, ranked by how far it narrows the minutes.\n\n"
      "Each measurement is of the plan simulated after such a reading, with the same draws. The\n"
      "best for the minutes it takes comes first, each kind once.\n"
      "Raises as simulate(). Source: the belief of learn(); minutes of measuring are assumptions.");
  m.def("calibrate", &calibrate_on, arg("bench"), arg("plan"),
        arg("draws") = levigate::SimulateOptions{}.draws,
        arg("seed") = levigate::SimulateOptions{}.seed, arg("threads") = 0,
        "The same after the steps done on a bench, with what its shop knows.\n\n"
        "Raises as simulate().");
  m.def("philox4x32", &levigate::philox4x32, arg("counter"), arg("key"),
        "Philox 4x32-10: four random words of a counter and a key.\n\n"
        "counter: four words of 32 bits; key: two. The same counter gives the same words.");
}

}  // namespace levigate_python
