// Which step made a mark, and where to go back to.
#include "as_json.hpp"
#include "elementwise.hpp"
#include "levigate/io/json.hpp"
#include "levigate/recover/diagnose.hpp"
#include "levigate/recover/go_back.hpp"
#include "levigate/recover/present.hpp"
#include "levigate/recover/work/visible.hpp"
#include "levigate/text/card.hpp"

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
  ValueClass<Cause>(m, "Cause", "One explanation of a mark.")
      .has("step", &Cause::step, "in the order of what was done, from 0")
      .has("sheet", &Cause::sheet, "id of the sheet")
      .has("stray", &Cause::stray, "a stray grain under that sheet, not its own grain")
      .has("probability", &Cause::probability, "of all causes, 0 to 1")
      .has("expected", &Cause::expected, "such marks that it leaves in the zone on average")
      .has("missed", &Cause::missed,
           "for each done step: chance that it missed the spot, given this cause")
      .finish();
  ValueClass<Need>(m, "Need", "How much has to come off until a mark is gone, and the chance.")
      .has("need_um", &Need::need_um, "[um]")
      .has("probability", &Need::probability, "of that, 0 to 1")
      .finish();
  ValueClass<Diagnosis> diagnosis(m, "Diagnosis", "What a mark tells.");
  diagnosis.has("mark", &Diagnosis::mark, "the mark")
      .has("causes", &Diagnosis::causes, "most likely first; none where no step explains it")
      .has("needs", &Diagnosis::needs, "how much has to come off, from least to most")
      .has("shows_um", &Diagnosis::shows_um,
           "width from which a scratch stands out from the finish [um]")
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
  ValueClass<TryStep>(m, "TryStep", "A step of a try.")
      .has("sheet", &TryStep::sheet, "id of the sheet")
      .has("removal_um", &TryStep::removal_um, "to take off with it [um]")
      .has("minutes", &TryStep::minutes, "sanding, without the change [min]")
      .finish();
  ValueClass<Try>(m, "Try", "One try: back to a sheet and up again.")
      .has("steps", &Try::steps, "the sheet gone back to, then those after it as in the plan")
      .has("removal_um", &Try::removal_um, "that they take off in all [um]")
      .has("minutes", &Try::minutes, "of all, with changing, washing and looking [min]")
      .has("gone_chance", &Try::gone_chance,
           "that the mark is gone after it, given that it was not before")
      .finish();
  ValueClass<Reentry>(m, "Reentry", "What going back to one sheet takes.")
      .has("sheet", &Reentry::sheet, "id of the sheet")
      .has("removal_um", &Reentry::removal_um, "that it takes off where it is climbed through [um]")
      .has(
          "fixed_minutes", [](const Reentry& self) { return self.climb.fixed_minutes; },
          "of the steps after it, changing, looking [min]")
      .has(
          "minutes_per_um", [](const Reentry& self) { return self.climb.minutes_per_um; },
          "of the step itself [min/um]")
      .has(
          "above_um", [](const Reentry& self) { return self.climb.above_um; },
          "that the steps after it take off anyway [um]")
      .has(
          "reach_um", [](const Reentry& self) { return self.climb.reach_um; },
          "deepest that it takes out [um]")
      .finish();
  ValueClass<WayBack> way(m, "WayBack", "The way back, or why there is none.");
  way.has("found", &WayBack::found, "whether there is one")
      .has("diagnosis", &WayBack::diagnosis, "which step made the mark")
      .has("tries", &WayBack::tries, "the second is for when the mark is seen again, and so on")
      .has("reentries", &WayBack::reentries, "each sheet one can go back to, coarse to fine")
      .has("expected_minutes", &WayBack::expected_minutes,
           "another round, where it comes to that, included [min]")
      .has("round_minutes", &WayBack::round_minutes, "of another round with all steps again [min]")
      .has("gone_chance", &WayBack::gone_chance, "that one of the tries removes it")
      .has("film_um", &WayBack::film_um, "that may still come off here [um]; None on a solid")
      .has(
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
      .has("cautions", &WayBack::cautions, "what can hurt")
      .finish();
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
        "As diagnose(). Source: dynamic programming over what was taken off in vain.");
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
      "The job as it stands after what was done; plan() of it is the plan of what remains.\n\n"
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
