// Buffing wheels and hand-held machines: what one pass does, and whether it suits the work.
#include "bind.hpp"
#include "levigate/stack/machine.hpp"
#include "levigate/wheel/limits.hpp"
#include "levigate/wheel/pass.hpp"
#include "levigate/wheel/wheel.hpp"

namespace levigate_python {

namespace {

using levigate::Machine;
using levigate::SpeedFinding;
using levigate::Wheel;
using levigate::WheelPass;
using py::arg;

/// The wheel of the profile with the given numbers in place of its own; or, where all numbers are
/// given, a wheel of any name.
Wheel wheel_from(const std::string& name, const py::kwargs& given) {
  const levigate::Description& of_wheel = levigate::description_of<Wheel>();
  Wheel wheel;
  wheel.name = name;
  if (given.size() < numbers_of(of_wheel).size()) wheel = levigate::wheel_named(name);
  set_numbers(of_wheel, &wheel, given, "number of a wheel");
  levigate::validate(wheel, "Wheel");
  return wheel;
}

/// The same of a machine. `square`: none as in the profile, and round where there is none.
Machine machine_from(const std::string& name, std::optional<bool> square, const py::kwargs& given) {
  const levigate::Description& of_machine = levigate::description_of<Machine>();
  Machine machine;
  machine.name = name;
  if (given.size() < numbers_of(of_machine).size()) machine = levigate::machine_named(name);
  machine.square = square.value_or(machine.square);
  set_numbers(of_machine, &machine, given, "number of a machine");
  levigate::validate(machine, "Machine");
  return machine;
}

void bind_machine(py::module_& m) {
  ValueClass<Machine> machine = describe_class<Machine>(m);
  machine
      .has(
          "speed_m_s", [](const Machine& one) { return one.speed_m_s(); },
          "mean speed of the pad on the work [m/s]")
      .has(
          "top_speed_m_s", [](const Machine& one) { return one.top_speed_m_s(); },
          "highest speed of any point of the pad [m/s]")
      .has(
          "area_cm2", [](const Machine& one) { return one.area_cm2(); }, "of the pad [cm2]")
      .has(
          "pressure_kpa", [](const Machine& one) { return one.pressure_kpa(); },
          "force over area [kPa]")
      .finish();
  const std::string doc = doc_of_init(
      machine, "name: str, square: bool | None = None",
      numbers_of(levigate::description_of<Machine>()),
      "The machine of a profile, numbers given by name in place of its own.\n\n"
      "Where all are given the name is free. square: whether the pad is; None: as in the\n"
      "profile. The rated_rpm of a profile is no rating of a real machine: state what is\n"
      "printed on yours. Raises BadInput; OutOfRange, also where rpm is above rated_rpm.");
  py::options options;
  options.disable_function_signatures();
  machine.def(py::init(&machine_from), arg("name"), arg("square") = py::none(), doc.c_str());
}

void bind_results(py::module_& m) {
  ValueClass<WheelPass>(m, "WheelPass", "One pass of the work under a wheel: see wheel_pass().")
      .has("surface_speed_m_s", &WheelPass::surface_speed_m_s, "of the rim [m/s]")
      .has("dwell_s", &WheelPass::dwell_s, "time that a spot is under the face [s]")
      .has("dwell_limit_s", &WheelPass::dwell_limit_s, "after which it would be too warm [s]")
      .has("rise_k", &WheelPass::rise_k, "rise of temperature as a spot leaves the face [K]")
      .has("least_feed_m_s", &WheelPass::least_feed_m_s, "slowest feed that keeps the limit [m/s]")
      .has("turns", &WheelPass::turns, "of the wheel while a spot is under it")
      .has("film_per_pass_um", &WheelPass::film_per_pass_um, "film that one pass removes [um]")
      .has("passes", &WheelPass::passes, "whole passes for the removal")
      .has("too_long", &WheelPass::too_long, "the spot stays longer than the limit")
      .finish();
  ValueClass<SpeedFinding>(m, "SpeedFinding", "A rim speed beside the band of a surface.")
      .has(
          "verdict", [](const SpeedFinding& s) { return levigate::to_string(s.verdict); },
          "\"too_slow\", \"ok\" or \"too_fast\"")
      .has("surface_speed_m_s", &SpeedFinding::surface_speed_m_s, "of the rim [m/s]")
      .has("speed_low_m_s", &SpeedFinding::speed_low_m_s, "least that works [m/s]")
      .has("speed_high_m_s", &SpeedFinding::speed_high_m_s, "most for the surface [m/s]")
      .has("rpm", &SpeedFinding::rpm, "nearest in the band with this wheel")
      .has("diameter_mm", &SpeedFinding::diameter_mm, "nearest in the band at this rpm [mm]")
      .has("rpm_is_rated", &SpeedFinding::rpm_is_rated, "the wheel may run at that rpm")
      .finish();
}

}  // namespace

void bind_wheel(py::module_& m) {
  ValueClass<Wheel> wheel = describe_class<Wheel>(m);
  wheel
      .has(
          "surface_speed_m_s", [](const Wheel& w) { return w.surface_speed_m_s(); },
          "of the rim [m/s]")
      .has(
          "pressure_kpa", [](const Wheel& w) { return w.pressure_kpa(); }, "on the face [kPa]")
      .finish();
  const std::string doc = doc_of_init(
      wheel, "name: str", numbers_of(levigate::description_of<Wheel>()),
      "The wheel of a profile, numbers given by name in place of its own.\n\n"
      "Where all are given the name is free. The rated_rpm of a profile is no rating of a\n"
      "real wheel: state what is printed on yours. Raises BadInput; OutOfRange, also where\n"
      "rpm is above rated_rpm.");
  {
    py::options options;
    options.disable_function_signatures();
    wheel.def(py::init(&wheel_from), arg("name"), doc.c_str());
  }
  bind_machine(m);
  bind_results(m);

  m.def("with_diameter", &levigate::with_diameter, arg("wheel"), py::kw_only(), arg("diameter_mm"),
        "The same wheel with another diameter at the same rpm and face load.\n\n"
        "diameter_mm: 10 to 2000 mm. The rim is faster, and the arc of contact grows as the root.\n"
        "Raises OutOfRange. Source: from memory, Hertz's line contact.");
  m.def(
      "wheel_pass",
      [](const Wheel& used, const std::string& surface, double rate_um_per_m, double removal_um) {
        return levigate::wheel_pass(used, levigate::wheel_limits_named(surface), rate_um_per_m,
                                    removal_um);
      },
      arg("wheel"), arg("surface"), py::kw_only(), arg("rate_um_per_m"), arg("removal_um"),
      "What one pass does, the work starting at room temperature, and how many it takes.\n\n"
      "surface: name of a coating, \"acrylic sheet edges\" or \"metal\"; rate_um_per_m: film per\n"
      "metre of rim travel, above 0 to 1e6 um/m, see\n"
      "compound_rate_um_per_m(); removal_um: film to\n"
      "remove, 0 to 10 000 um. Raises BadInput, OutOfRange.\n"
      "Source: geometry; temperature_rise_k() and dwell_limit_s() for the heat.");
  m.def(
      "speed_finding",
      [](const Wheel& used, const std::string& surface) {
        return levigate::speed_finding(used, levigate::wheel_limits_named(surface));
      },
      arg("wheel"), arg("surface"),
      "Whether a wheel runs at a speed that suits a surface, and what would be right.\n\n"
      "surface: as for wheel_pass(). Raises BadInput, OutOfRange.\n"
      "Source: geometry; the bands are common practice.");
}

}  // namespace levigate_python
