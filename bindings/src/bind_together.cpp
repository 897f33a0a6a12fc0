// Several pieces planned together from one drawer.
#include "as_json.hpp"
#include "levigate/io/json.hpp"
#include "levigate/risk/together.hpp"
#include "levigate/text/card.hpp"
#include "plan_of_job.hpp"

namespace levigate_python {

namespace {

using levigate::Job;
using levigate::Together;
using py::arg;

/// Pieces planned together, with what they were planned from.
struct TogetherOfJobs {
  std::vector<levigate::Bench> benches;
  Together together;
};

TogetherOfJobs plan_together(const std::vector<Job>& jobs, const levigate::Stack& stack,
                             const std::optional<levigate::Shop>& shop, std::int64_t draws,
                             std::uint64_t seed, unsigned threads) {
  TogetherOfJobs result{{},
                        levigate::plan_together(
                            jobs, stack, shop, {.draws = draws, .seed = seed, .threads = threads})};
  for (const Job& job : jobs) result.benches.emplace_back(job, stack, shop);
  return result;
}

std::vector<PlanOfJob> plans(const TogetherOfJobs& self) {
  std::vector<PlanOfJob> result;
  for (std::size_t i = 0; i < self.benches.size(); ++i)
    result.push_back({self.benches[i], self.together.plans[i]});
  return result;
}

}  // namespace

void bind_together(py::module_& m) {
  describe_class<levigate::Piece>(m).finish();
  describe_class<levigate::PaperOfAll>(m).finish();
  py::class_<TogetherOfJobs> bound(m, "Together",
                                   "Several pieces planned together from one drawer.");
  add_members(
      bound, levigate::description_of<Together>(),
      [](py::handle self) -> const void* { return &self.cast<const TogetherOfJobs&>().together; },
      {"plans"});
  bound.def_property_readonly(
      "plans", &plans, "the Plan of each piece; that of each alone where the paper does not do");
  bound.def(
      "card", [](const TogetherOfJobs& self) { return levigate::together_card(self.together); },
      "As plain text; each of the plans has a card of its own.");
  bound.def(
      "to_json", [](const TogetherOfJobs& self) { return levigate::to_json(self.together); },
      "As JSON text of format levigate.together/1.");
  bound.def(
      "to_dict",
      [](const TogetherOfJobs& self) -> py::dict {
        return from_json_text(levigate::to_json(self.together));
      },
      "As plain data.");
  bound.def("__repr__", [](const TogetherOfJobs& self) {
    return "Together(found=" + std::string(self.together.found ? "True" : "False") +
           ", pieces=" + std::to_string(self.together.pieces.size()) + ")";
  });
  bound.def(
      "__eq__",
      [](const TogetherOfJobs& self, const TogetherOfJobs& other) {
        return self.together == other.together;
      },
      py::is_operator());
  bound.def("__copy__", [](const py::object& self) { return self; });
  bound.def("__deepcopy__", [](const py::object& self, const py::dict&) { return self; });

  m.def(
      "plan_together", &plan_together, arg("jobs"), arg("stack"), arg("shop") = py::none(),
      arg("draws") = levigate::SimulateOptions{}.draws,
      arg("seed") = levigate::SimulateOptions{}.seed, arg("threads") = 0,
      py::call_guard<py::gil_scoped_release>(),
      "The best plans for several pieces that share the paper on hand, and what to buy.\n\n"
      "The choice is exact; worn sheets go on to the next piece. jobs: in the order of the work,\n"
      "1 to 12, all of which prefer the same. draws: simulated runs that show how much paper is\n"
      "enough (0: none). One piece gets the answer of plan().\n"
      "Raises BadInput, OutOfRange, and as plan().");
}

}  // namespace levigate_python
