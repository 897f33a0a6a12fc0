// Local defects: what stands proud of the film, and how it is taken down.
#include "levigate/plan/local.hpp"
#include "levigate/surface/take_down.hpp"
#include "levigate/text/sentences.hpp"
#include "named.hpp"

namespace levigate_python {

namespace {

using levigate::Defect;
using levigate::LocalCost;
using levigate::LocalStep;
using levigate::LocalTools;
using levigate::LocalWork;
using py::arg;

Defect defect_from(const std::string& kind, double height_um, double width_mm, double length_mm,
                   int count) {
  const Defect defect{
      levigate::detail::kind_named(levigate::all_defect_kinds, kind, "kind of defect"), height_um,
      width_mm, length_mm, count};
  levigate::validate(defect, "Defect");
  return defect;
}

LocalWork take_down(const Defect& defect, double small_rate_um_per_m, double zone_rate_um_per_m,
                    const ValueOrName<Face>& small_block, const ValueOrName<Face>& zone_block,
                    const std::optional<double>& tape_um) {
  LocalTools tools;
  tools.small_block = {block_of(small_block), small_rate_um_per_m};
  tools.zone_block = {block_of(zone_block), zone_rate_um_per_m};
  tools.tape_um = tape_um.value_or(tools.tape_um);
  return levigate::take_down(defect, tools);
}

}  // namespace

void bind_local(py::module_& m) {
  ValueClass<Defect> defect(m, "Defect", "Something that stands proud of the film in one place.");
  defect
      .has(
          "kind", [](const Defect& d) { return levigate::to_string(d.kind); },
          "\"run\", \"sag\", \"drip\", \"nib\" or \"ridge\"")
      .has("height_um", &Defect::height_um, "above the film beside it [um]")
      .has("width_mm", &Defect::width_mm, "across, the shorter side [mm]")
      .has("length_mm", &Defect::length_mm, "along [mm]")
      .has("count", &Defect::count, "equal ones")
      .finish();
  defect.def(py::init(&defect_from), py::kw_only(), arg("kind"), arg("height_um"), arg("width_mm"),
             arg("length_mm"), arg("count") = 1,
             "A defect from its size.\n\nRaises OutOfRange; BadInput where it is wider than long.");
  ValueClass<LocalCost>(m, "LocalCost", "What one way to get rid of defects takes.")
      .has("minutes", &LocalCost::minutes, "for all of them [min]")
      .has("film_um", &LocalCost::film_um, "lost beside one, where most is lost [um]")
      .finish();
  ValueClass<LocalWork>(m, "LocalWork", "How a defect is taken down: see take_down().")
      .has("shaved", &LocalWork::shaved, "shaved or scraped to the thickness of the tape first")
      .has("masked", &LocalWork::masked, "its surroundings masked")
      .has("shaved_mm3", &LocalWork::shaved_mm3, "shaved off one [mm3]")
      .has("blocked_mm3", &LocalWork::blocked_mm3, "blocked off one with the small block [mm3]")
      .has("block_minutes", &LocalWork::block_minutes, "share of local.minutes: blocking [min]")
      .has("local", &LocalWork::local, "what this way takes")
      .has("flat", &LocalWork::flat, "what sanding it out flat would take instead")
      .has("flat_is_worse", &LocalWork::flat_is_worse, "flat is slower and leaves a hollow")
      .has(
          "verdict", [](const LocalWork& w) { return levigate::sentence(w); },
          "both, in a sentence")
      .finish();
  ValueClass<LocalStep>(m, "LocalStep", "Work on a defect of a zone, before the first step.")
      .has("zone", &LocalStep::zone, "name of the zone")
      .has("defect", &LocalStep::defect, "what is taken down")
      .has("block", &LocalStep::block, "name of the block that does it")
      .has("work", &LocalStep::work, "how, and how long")
      .finish();

  m.def(
      "take_down", &take_down, arg("defect"), py::kw_only(), arg("small_rate_um_per_m"),
      arg("zone_rate_um_per_m"), arg("small_block") = "small hard block",
      arg("zone_block") = "hard block", arg("tape_um") = py::none(),
      "How a shop takes a defect down, and what sanding it out flat would take.\n\n"
      "small_rate_um_per_m, zone_rate_um_per_m: removal rate under the small block and under that\n"
      "of the zone, 1e-9 to 1e6 um/m, see removal_rate_um_per_m(); small_block, zone_block: name\n"
      "of a profile, or a Block; tape_um: thickness of the mask, 1 to 10 000 um, or that of the\n"
      "profile. Raises OutOfRange, BadInput. Rates are uncertain by a factor of 2 to 3.\n"
      "Source: common practice; Archard's law on the volume; moments on a rigid block.");
}

}  // namespace levigate_python
