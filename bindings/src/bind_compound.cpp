// Polishing compounds.
#include "levigate/wheel/compound.hpp"
#include "named.hpp"

namespace levigate_python {

using levigate::Coating;
using levigate::Compound;
using py::arg;

void bind_compound(py::module_& m) {
  ValueClass<Compound>(m, "Compound", "A polishing compound, bar or liquid.")
      .has("name", &Compound::name, "of the profile")
      .has("size_um", &Compound::size_um, "median grain size as charged [um]")
      .has("worn_um", &Compound::worn_um, "once broken down in use [um]")
      .has("coarsest_scratch_um", &Compound::coarsest_scratch_um,
           "depth of the deepest scratch it removes [um]")
      .has("wear_share", &Compound::wear_share, "of the rate of held grain that its grain reaches")
      .finish();

  m.def(
      "compound_named",
      [](const std::string& name, const ValueOrName<Coating>& coating) {
        return levigate::compound_named(name, coating_of(coating));
      },
      arg("name"), arg("coating"),
      "The compound of that name in the profiles, for a coating.\n\n"
      "name: \"cutting\", \"medium\", \"fine\" or \"ultra-fine\"; coating: name of a profile, or "
      "a\n"
      "Coating. Raises BadInput with the nearest name.");
  m.def(
      "compound_rate_um_per_m",
      [](const Compound& compound, const ValueOrName<Coating>& coating, double pressure_kpa) {
        return levigate::compound_rate_um_per_m(compound, coating_of(coating), pressure_kpa);
      },
      arg("compound"), arg("coating"), py::kw_only(), arg("pressure_kpa"),
      "Film that a compound removes per metre of rim travel, between two charges [um/m].\n\n"
      "coating: name of a profile, or a Coating; pressure_kpa: of the face, 0.01 to 1000 kPa.\n"
      "Raises BadInput, OutOfRange. Uncertain by a factor of 3.");
}

}  // namespace levigate_python
