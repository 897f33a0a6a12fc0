// Heat under a buffing wheel, and its speed: functions of numbers.
#include "elementwise.hpp"
#include "levigate/stack/speed.hpp"
#include "levigate/wheel/heat.hpp"

namespace levigate_python {

void bind_heat(py::module_& m) {
  using py::arg;
  def_elementwise(m, "surface_speed_m_s", &levigate::surface_speed_m_s,
                  "Speed of the rim of a wheel [m/s].\n\n"
                  "diameter_mm: 1 to 10 000 mm; rpm: turns per minute, 0 to 1e6.\n"
                  "Raises OutOfRange. NaN in, NaN out. Source: geometry.",
                  arg("diameter_mm"), arg("rpm"));
  def_elementwise(
      m, "pad_speed_m_s", &levigate::pad_speed_m_s,
      "Mean speed of a round pad that turns and whose centre goes round an orbit [m/s].\n\n"
      "pad_mm: diameter, 1 to 10 000 mm; pad_rpm: turns about its centre, 0 to 1e6 a\n"
      "minute; orbit_mm: diameter of the orbit, 0 to 1000 mm; rpm: orbits a minute, 0\n"
      "to 1e6.\n"
      "Raises OutOfRange. NaN in, NaN out. Source: geometry.",
      arg("pad_mm"), arg("pad_rpm"), arg("orbit_mm"), arg("rpm"));
  def_elementwise(
      m, "temperature_rise_k",
      [](double effusivity, double friction, double pressure_kpa, double speed_m_s, double share,
         double dwell_s) {
        return levigate::temperature_rise_k({effusivity, friction, pressure_kpa, speed_m_s, share},
                                            dwell_s);
      },
      "Rise of the surface temperature of a spot that stays under the wheel [K].\n\n"
      "effusivity: of the work, 1 to 1e5 J/(m2 K s^0.5); friction: coefficient, 0.001 to 10;\n"
      "pressure_kpa: 0.01 to 1000 kPa; speed_m_s: of the rim, 0.001 to 1000 m/s; share: of the\n"
      "heat that enters the work, 0.001 to 1; dwell_s: 0 to 1e6 s.\n"
      "Raises OutOfRange. NaN in, NaN out.\n"
      "Source: from memory, Carslaw & Jaeger, Conduction of Heat in Solids, 1959.",
      arg("effusivity"), arg("friction"), arg("pressure_kpa"), arg("speed_m_s"), arg("share"),
      arg("dwell_s"));
  def_elementwise(
      m, "dwell_limit_s",
      [](double effusivity, double friction, double pressure_kpa, double speed_m_s, double share,
         double temperature_rise_k) {
        return levigate::dwell_limit_s({effusivity, friction, pressure_kpa, speed_m_s, share},
                                       temperature_rise_k);
      },
      "Time until a spot under the wheel has warmed by temperature_rise_k [s].\n\n"
      "The inverse of temperature_rise_k(), with the same arguments;\n"
      "temperature_rise_k: most for the film, 0 to 10 000 K.\n"
      "Raises OutOfRange. NaN in, NaN out.\n"
      "Source: from memory, Carslaw & Jaeger, Conduction of Heat in Solids, 1959.",
      arg("effusivity"), arg("friction"), arg("pressure_kpa"), arg("speed_m_s"), arg("share"),
      arg("temperature_rise_k"));
}

}  // namespace levigate_python
