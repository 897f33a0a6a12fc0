// Which step made a mark, and where to go back to.
#include "as_json.hpp"
#include "elementwise.hpp"
#include "levigate/io/json.hpp"
#include "levigate/recover/diagnose.hpp"
#include "levigate/recover/go_back.hpp"
#include "levigate/recover/present.hpp"
#include "levigate/recover/work/visible.hpp"
#include "levigate/surface/scratch_width.hpp"
#include "levigate/text/card.hpp"
#include "levigate/text/sentences.hpp"
#include "shown.hpp"

namespace levigate_python {

namespace {

using levigate::Cause;
using levigate::Diagnosis;
using levigate::Need;
using levigate::Reentry;
using levigate::Try;
using levigate::TryStep;
using levigate::WayBack;
using py::arg;

void bind_diagnosis(py::module_& m) {
  describe_class<Cause>(m).finish();
  describe_class<Need>(m).finish();
  describe_class<levigate::Evidence>(m)
      .has(
          "sentence", [](const levigate::Evidence& one) { return levigate::sentence(one); },
          "in words")
      .finish();
  ValueClass<Diagnosis> diagnosis = describe_class<Diagnosis>(m);
  diagnosis
      .has(
          "evidence",
          [](const Diagnosis& d) {
            std::vector<std::string> sentences;
            for (const auto& one : d.signs) sentences.push_back(levigate::sentence(one));
            return sentences;
          },
          "in words")
      .finish();
  diagnosis.def(
      "need_um", [](const Diagnosis& self, double q) { return need_quantile_um(self.needs, q); },
      arg("q"), "The least need that a share q of the chances does not exceed [um].");
}

}  // namespace

void bind_recover(py::module_& m) {
  bind_diagnosis(m);
  describe_class<levigate::AtWheel>(m).finish();
  describe_class<TryStep>(m).finish();
  describe_class<Try>(m).finish();
  describe_class<levigate::Look>(m).finish();
  describe_class<levigate::Leg>(m).finish();
  describe_class<Reentry>(m).finish();
  ValueClass<WayBack> way = describe_class<WayBack>(m);
  way.has(
         "why", [](const WayBack& w) { return levigate::sentence(w); },
         "where there is no way back")
      .has(
          "remains",
          [](const WayBack& w) {
            std::vector<std::string> sentences;
            for (const auto one : w.remedies) sentences.push_back(levigate::sentence(one));
            return sentences;
          },
          "what can still be done then")
      .finish();
  add_html(way);
  add_records(
      way,
      "The legs as rows for a table, one for each look: pandas.DataFrame takes them.\n\n"
      "leg and look count from 1; the rest as in Leg and Look. No rows without a way back.");
  way.def("card", &levigate::way_back_card, "As plain text.")
      .def(
          "to_json", [](const WayBack& self) { return levigate::to_json(self); },
          "As JSON text of format levigate.way_back/1.")
      .def(
          "to_dict",
          [](const WayBack& self) -> py::dict { return from_json_text(levigate::to_json(self)); },
          "As plain data.");

  m.def("diagnose",
        py::overload_cast<const levigate::Job&, const levigate::Stack&,
                          const std::vector<levigate::DoneStep>&, const levigate::Mark&>(
            &levigate::diagnose),
        arg("job"), arg("stack"), arg("done"), arg("mark"),
        py::call_guard<py::gil_scoped_release>(),
        "Which step made a mark, by Bayes' rule over the steps done, strays and missed spots.\n\n"
        "done: the steps in order. Raises BadInput, OutOfRange; NaN is rejected.\n"
        "Source: contact() and removal; assumptions of data/profiles/inspection.json.");
  m.def("go_back",
        py::overload_cast<const levigate::Job&, const levigate::Stack&,
                          const std::vector<levigate::DoneStep>&, const levigate::Mark&>(
            &levigate::go_back),
        arg("job"), arg("stack"), arg("done"), arg("mark"),
        py::call_guard<py::gil_scoped_release>(),
        "Where to go back to for a mark: the tries of least expected minutes within the film.\n\n"
        "As diagnose(). Source: dynamic programming over the removal of failed tries.\n\n"
        ">>> job = levigate.Job.load(\"data/demo/job.json\")\n"
        ">>> stack = levigate.Stack.load(\"data/demo/stack.json\")\n"
        ">>> done = [levigate.DoneStep(step.sheet) for step in levigate.plan(job, stack).steps]\n"
        ">>> mark = levigate.Mark(kind=\"cluster\", zone=\"top\", seen=\"loupe\", width_um=5)\n"
        ">>> levigate.go_back(job, stack, done, mark).legs[0].sheet\n"
        "'b-pad'");
  m.def(
      "present",
      [](const levigate::Job& job, const levigate::Stack& stack,
         const std::vector<levigate::DoneStep>& done,
         const std::optional<std::map<std::string, levigate::Film>>& films) {
        return levigate::present(job, stack, done,
                                 films.value_or(std::map<std::string, levigate::Film>{}));
      },
      arg("job"), arg("stack"), arg("done"), arg("films") = py::none(),
      py::call_guard<py::gil_scoped_release>(),
      "The job after the steps done. plan() of it plans what remains.\n\n"
      "done: the steps in order; films: read since, by the name of the zone, of all rounds as a "
      "gauge\nreads them: the rounds below the last one are taken from it.\n"
      "Raises BadInput for what is not there, for a step that is not finer than what a zone "
      "carried\n"
      "where nothing tells what it took off, and where no film is left; OutOfRange.");
  def_elementwise(m, "depth_of_width_um", &levigate::depth_of_width_um,
                  "Depth of a scratch of that width [um].\n\n"
                  "width_um: 0 to 10 000 um; flank_deg: 1 to 80 deg. Raises OutOfRange.\n"
                  "NaN in, NaN out. Source: geometry of a V.",
                  arg("width_um"), arg("flank_deg") = levigate::model_table[0].flank_deg.value);
  def_elementwise(m, "width_of_depth_um", &levigate::width_of_depth_um,
                  "Width of a scratch of that depth [um]: the inverse of depth_of_width_um().\n\n"
                  "depth_um: 0 to 10 000 um; flank_deg: 1 to 80 deg. Raises OutOfRange.\n"
                  "NaN in, NaN out. Source: geometry of a V.",
                  arg("depth_um"), arg("flank_deg") = levigate::model_table[0].flank_deg.value);
}

}  // namespace levigate_python
