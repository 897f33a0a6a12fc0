// What a sheet does to a film: removal rate, levelling, sheen.
#include "elementwise.hpp"
#include "levigate/surface/levelling.hpp"
#include "levigate/surface/meter.hpp"
#include "levigate/surface/removal.hpp"
#include "levigate/surface/sheen.hpp"

namespace levigate_python {

void bind_surface(py::module_& m) {
  using py::arg;
  def_elementwise(m, "size_effect", &levigate::size_effect,
                  "Share of the coarse-grain removal rate that a grain size keeps, 0 to 1.\n\n"
                  "size_um: 0.01 to 10 000 um. Raises OutOfRange. NaN in, NaN out.\n"
                  "Source: exponent near those of Sydor et al., Appl. Sci. 11(6):2860 (2021).",
                  arg("size_um"));
  def_elementwise(
      m, "wear_coefficient", &levigate::wear_coefficient,
      "Wear coefficient of grain as cones that plough and cut.\n\n"
      "cutting_efficiency: share of a groove that leaves as chips, 0.001 to 1; flank_deg: 1\n"
      "to 80 degrees. Raises OutOfRange. NaN in, NaN out.\n"
      "Source: cones that cut, from memory (Rabinowicz, Friction and Wear of Materials).",
      arg("cutting_efficiency"), arg("flank_deg"));
  def_elementwise(
      m, "removal_rate_um_per_m", &levigate::removal_rate_um_per_m,
      "Film removed per metre that fresh abrasive slides over a point [um/m].\n\n"
      "wear_coefficient: 1e-6 to 1; size_um: 0.01 to 10 000 um; pressure_kpa: 0.01 to 1000 kPa;\n"
      "hardness_mpa: 1 to 100 000 MPa. Uncertain by a factor of 2 to 3 until calibrated.\n"
      "Raises OutOfRange. NaN in, NaN out. Source: Archard's and Preston's law.",
      arg("wear_coefficient"), arg("size_um"), arg("pressure_kpa"), arg("hardness_mpa"));
  def_elementwise(m, "clogging_share", &levigate::clogging_share,
                  "Mean share of the fresh rate between two cleanings, floor to 1.\n\n"
                  "clean_every_m: 0 to 1e9 m; fade_m: 1e-6 to 1e9 m; floor: 0 to 1.\n"
                  "Raises OutOfRange. NaN in, NaN out.\n"
                  "Source: form of Ockajova et al., BioResources 11(2):5242-5254 (2016), belts.",
                  arg("clean_every_m"), arg("fade_m"), arg("floor"));
  def_elementwise(
      m, "critical_amplitude_um", &levigate::critical_amplitude_um,
      "Largest amplitude of waves that a pad still touches all over [um].\n\n"
      "wavelength_mm: 0.01 to 1000 mm; modulus_mpa: 0.001 MPa to infinity; pressure_kpa: 0.01 to\n"
      "1000 kPa. Raises OutOfRange. NaN in, NaN out.\n"
      "Source: Westergaard, from memory (Johnson, Contact Mechanics, 1985).",
      arg("wavelength_mm"), arg("modulus_mpa"), arg("pressure_kpa"));
  def_elementwise(
      m, "levelling_removal_um",
      [](double peel_um, double wavelength_mm, double modulus_mpa, double pressure_kpa,
         double residual_um) {
        return levigate::levelling_removal_um(
            {peel_um, wavelength_mm, modulus_mpa, pressure_kpa, residual_um});
      },
      "Mean film removed until orange peel is down to residual_um [um].\n\n"
      "peel_um, residual_um: peak to valley, 0 and 0.001 to 10 000 um; others as for\n"
      "critical_amplitude_um(). Raises OutOfRange. NaN in, NaN out.\n"
      "Source: geometry; Archard's law with Westergaard's pressure, from memory.",
      arg("peel_um"), arg("wavelength_mm"), arg("modulus_mpa"), arg("pressure_kpa"),
      arg("residual_um"));
  def_elementwise(m, "fresnel_reflectance", &levigate::fresnel_reflectance,
                  "Share of unpolarised light that a smooth surface reflects, 0 to 1.\n\n"
                  "refractive_index: 1 to 4; angle_deg: from the normal, 0 to 89.999 degrees.\n"
                  "Raises OutOfRange. NaN in, NaN out. Source: Fresnel's equations.",
                  arg("refractive_index"), arg("angle_deg"));
  def_elementwise(
      m, "mean_reading_gu", &levigate::mean_reading_gu,
      "What a glossmeter reads off a sanded film, mean of both lays of the grooves [GU].\n\n"
      "refractive_index: 1 to 4; angle_deg: 20, 60 or 85 degrees; rq_um: 0 to 1000 um; flank_deg:\n"
      "of the grooves, 1 to 80 degrees. Raises OutOfRange, BadInput. NaN in, NaN out.\n"
      "Source: scalar Kirchhoff theory, from memory (Beckmann and Spizzichino, 1963).",
      arg("refractive_index"), arg("angle_deg"), arg("rq_um"), arg("flank_deg"));
  def_elementwise(
      m, "gloss_gu", &levigate::gloss_gu,
      "Gloss of a film [GU], a lower bound of what a glossmeter reads.\n\n"
      "refractive_index: 1 to 4; angle_deg: of incidence, 0 to 89.999 degrees (meters: 20, 60,\n"
      "85); rq_um: roughness, 0 to 1000 um. Raises OutOfRange. NaN in, NaN out.\n"
      "Source: ISO 2813:1997; from memory, Bennett & Porteus, J. Opt. Soc. Am. 51:123 (1961).",
      arg("refractive_index"), arg("angle_deg"), arg("rq_um"));
}

}  // namespace levigate_python
