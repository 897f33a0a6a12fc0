// What a choice costs: names of sheen, cleaning of the sheet, pieces of it.
#include "levigate/surface/clogging.hpp"
#include "levigate/surface/sheen_bands.hpp"
#include "named.hpp"

namespace levigate_python {

using levigate::Backing;
using levigate::Cleaning;
using levigate::Pieces;
using levigate::SheenBand;
using py::arg;

void bind_care(py::module_& m) {
  ValueClass<SheenBand>(m, "SheenBand", "A name of sheen in a scheme, and its range of gloss.")
      .has("scheme", &SheenBand::scheme, "\"institute\", \"trade\" or \"EN 13300\"")
      .has("name", &SheenBand::name, "as the scheme has it")
      .has("low_gu", &SheenBand::low_gu, "lower limit at 60 degrees [GU], or None")
      .has("high_gu", &SheenBand::high_gu, "upper limit at 60 degrees [GU], or None")
      .has("low_85_gu", &SheenBand::low_85_gu, "lower limit at 85 degrees [GU], or None")
      .has("high_85_gu", &SheenBand::high_85_gu, "upper limit at 85 degrees [GU], or None")
      .has(
          "basis", [](const SheenBand& b) { return levigate::to_string(b.source.basis); },
          "what the limits rest on")
      .has(
          "citation", [](const SheenBand& b) { return b.source.citation; }, "where they come from")
      .finish();
  m.def("band_named", &levigate::band_named, arg("scheme"), arg("name"),
        "The sheen of that name in a scheme.\n\nRaises BadInput with the nearest name.");
  m.def("bands_of", &levigate::bands_of, py::kw_only(), arg("gloss_gu"),
        arg("gloss_85_gu") = py::none(),
        "The names of sheen that a gloss has, of all schemes.\n\n"
        "gloss_gu: at 60 degrees, gloss_85_gu: at 85 degrees or None, 0 to 200 GU.\n"
        "Raises OutOfRange.");

  ValueClass<Cleaning>(m, "Cleaning", "A cleaning interval and what follows: see cleaning().")
      .has("rate_share", &Cleaning::rate_share, "mean rate over that of a clean sheet")
      .has("minutes_factor", &Cleaning::minutes_factor, "time over that with a clean sheet")
      .has("clogged_share", &Cleaning::clogged_share, "of the travel that is made clogged")
      .has("clogged_after_m", &Cleaning::clogged_after_m, "travel until half the fade is in [m]")
      .finish();
  ValueClass<Pieces>(m, "Pieces", "Pieces of abrasive that a travel takes: see pieces().")
      .has("needed", &Pieces::needed, "whole pieces")
      .has("minutes_each", &Pieces::minutes_each, "of work, after which to change [min]")
      .finish();
  m.def(
      "cleaning",
      [](const ValueOrName<Backing>& backing, double clean_every_m) {
        return levigate::cleaning(backing_of(backing), clean_every_m);
      },
      arg("backing"), py::kw_only(), arg("clean_every_m"),
      "What an interval between two cleanings means for a backing.\n\n"
      "backing: name of a profile, or a Backing; clean_every_m: travel between two, 0 to 1e9 m.\n"
      "Raises BadInput, OutOfRange. Source: clogging_share(); half as the mark: assumption.");
  m.def(
      "pieces",
      [](const ValueOrName<Backing>& backing, const ValueOrName<Face>& block, double travel_m) {
        return levigate::pieces(backing_of(backing), block_of(block), travel_m);
      },
      arg("backing"), arg("block"), py::kw_only(), arg("travel_m"),
      "When to change the piece of abrasive.\n\n"
      "backing, block: name of a profile, or the value; travel_m: of the block, 0 to 1e12 m.\n"
      "Raises BadInput, OutOfRange. Source: arithmetic; the life is common practice.");
}

}  // namespace levigate_python
