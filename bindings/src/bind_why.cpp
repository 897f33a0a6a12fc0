// What a plan says beside its steps: why there is none, cautions, and what its figures hang on.
#include "bind.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/text/sentences.hpp"

namespace levigate_python {

using levigate::Bridge;
using levigate::Caution;
using levigate::Gap;
using levigate::PaperShort;
using levigate::Reliance;
using levigate::Why;

void bind_why(py::module_& m) {
  ValueClass<Bridge>(m, "Bridge", "Standard grades that would bridge a gap.")
      .has("system", &Bridge::system, "name of the system")
      .has("labels", &Bridge::labels, "of the grades, coarse to fine")
      .finish();
  ValueClass<Gap>(m, "Gap", "A step that the way past the rules needs.")
      .has("coarse", &Gap::coarse, "id of the sheet, or label of the grade the work carries")
      .has("fine", &Gap::fine, "id of the sheet")
      .has("coarse_um", &Gap::coarse_um, "its size [um]")
      .has("fine_um", &Gap::fine_um, "its size [um]")
      .has("ratio", &Gap::ratio, "of the sizes")
      .has("bridges", &Gap::bridges, "one per system that has any")
      .finish();
  ValueClass<PaperShort>(m, "PaperShort", "A sheet that runs out.")
      .has("sheet", &PaperShort::sheet, "its id")
      .has("needed", &PaperShort::needed, "sheets needed")
      .has("on_hand", &PaperShort::on_hand, "sheets on hand")
      .finish();
  ValueClass<Why>(m, "Why", "Why there is no plan.")
      .has(
          "blocked_by", [](const Why& w) { return levigate::to_string(w.blocked_by); },
          "\"done\", \"target\", \"ratio\", \"scratch\", \"film\", \"paper\" or \"several\"")
      .has(
          "message", [](const Why& w) { return levigate::sentence(w); }, "all of it in words")
      .has("smallest_max_ratio", &Why::smallest_max_ratio, "that would do, or None")
      .has("largest_min_ratio", &Why::largest_min_ratio, "that would do, or None")
      .has("gaps", &Why::gaps, "steps above max_ratio that are then needed")
      .has("compound", &Why::compound, "id of one that meets scratches beyond its reach, or empty")
      .has("too_deep_um", &Why::too_deep_um, "by at least so much [um], or None")
      .has("zone", &Why::zone, "that runs out of film; empty where none does")
      .has("film_short_um", &Why::film_short_um, "by at least so much [um], or None")
      .has("paper", &Why::paper, "sheets that run out")
      .finish();
  ValueClass<Caution>(m, "Caution", "A reminder that belongs to the work.")
      .has("topic", &Caution::topic, "one word")
      .has("text", &Caution::text, "what to mind")
      .finish();
  ValueClass<Reliance>(m, "Reliance", "An input that the figures of a plan hang on.")
      .has("subject", &Reliance::subject, "whose number it is, as \"backing latex paper\"")
      .has("quantity", &Reliance::quantity, "its name, with the unit as suffix")
      .has(
          "value", [](const Reliance& r) { return r.value; }, "the value used")
      .has(
          "low", [](const Reliance& r) { return r.low; }, "low end of the band")
      .has(
          "high", [](const Reliance& r) { return r.high; }, "high end of the band")
      .has(
          "basis", [](const Reliance& r) { return levigate::to_string(r.basis); },
          "what the value rests on")
      .has(
          "citation", [](const Reliance& r) { return r.citation; }, "where it comes from")
      .has("minutes_low", &Reliance::minutes_low, "change of the minutes at the low end [min]")
      .has("minutes_high", &Reliance::minutes_high, "change of the minutes at the high end [min]")
      .has("film_low", &Reliance::film_low, "change of the share of film used at the low end")
      .has("film_high", &Reliance::film_high, "change of the share of film used at the high end")
      .has("influence", &Reliance::influence, "largest change, as a share of minutes or film")
      .finish();
}

}  // namespace levigate_python
