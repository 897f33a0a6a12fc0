// Local defects: what stands proud of the film, and how to take it down.
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
  ValueClass<Defect> defect = describe_class<Defect>(m);
  defect.finish();
  defect.def(py::init(&defect_from), py::kw_only(), arg("kind"), arg("height_um"), arg("width_mm"),
             arg("length_mm"), arg("count") = 1,
             "A defect from its size.\n\nRaises OutOfRange; BadInput where it is wider than long.");
  describe_class<LocalCost>(m).finish();
  describe_class<LocalWork>(m)
      .has(
          "verdict", [](const LocalWork& w) { return levigate::sentence(w); },
          "both, in a sentence")
      .finish();
  describe_class<LocalStep>(m, {"work"})
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
