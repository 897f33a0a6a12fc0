// The work: coating, zones, start and target.
#include <pybind11/stl/filesystem.h>

#include "as_json.hpp"
#include "levigate/io/json.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/workings.hpp"
#include "named.hpp"

namespace levigate_python {

namespace {

using levigate::Carried;
using levigate::Coating;
using levigate::Job;
using levigate::Target;
using levigate::WheelLimits;
using levigate::Zone;
using py::arg;

/// Depth that each zone can afford, by its name; None on a solid.
std::map<std::string, std::optional<double>> budget_um(const Job& job) {
  std::map<std::string, std::optional<double>> result;
  for (const Zone& zone : job.zones) {
    if (zone.film) {
      result[zone.name] = levigate::budget_of(job, zone);
    } else {
      result[zone.name] = std::nullopt;
    }
  }
  return result;
}

}  // namespace

void bind_job(py::module_& m) {
  ValueClass<WheelLimits>(m, "WheelLimits", "What a surface stands from a wheel.")
      .has("speed_low_m_s", &WheelLimits::speed_low_m_s, "least rim speed that works [m/s]")
      .has("speed_high_m_s", &WheelLimits::speed_high_m_s, "highest rim speed [m/s]")
      .has("effusivity", &WheelLimits::effusivity, "thermal effusivity [J/(m2 K s^0.5)]")
      .has("rise_k", &WheelLimits::rise_k, "rise above room temperature that it stands [K]")
      .finish();
  ValueClass<Coating>(m, "Coating", "What is being sanded.")
      .has("name", &Coating::name, "name of the profile, or the user's own")
      .has(
          "kind",
          [](const Coating& c) { return c.kind == levigate::CoatingKind::coat ? "coat" : "solid"; },
          "\"coat\", or \"solid\" where there is no film")
      .has("hardness_mpa", &Coating::hardness_mpa, "indentation hardness [MPa]")
      .has("wear_coefficient", &Coating::wear_coefficient, "of two-body abrasion, dimensionless")
      .has("refractive_index", &Coating::refractive_index, "of the surface, dimensionless")
      .has("two_part", &Coating::two_part, "cures with an isocyanate hardener; None: not said")
      .has("redissolves", &Coating::redissolves,
           "a fresh coat melts the one below; None: not known")
      .has("cure", &Coating::cure, "how it cures; None: not known")
      .has("limits", &Coating::limits, "what it stands from a wheel; None: not known")
      .finish();
  ValueClass<Carried>(m, "Carried", "What a zone carries now.")
      .has("grade", &Carried::grade, "whose scratches these are")
      .has("scratch_um", &Carried::scratch_um, "their depth [um]; None: as of paper of this grade")
      .has("rq_um", &Carried::rq_um, "roughness [um]; None: as goes with their depth")
      .has("worn_um", &Carried::worn_um, "of a compound: its grain once broken down [um]")
      .finish();
  ValueClass<Zone>(m, "Zone", "A part of the surface with one block and one film.")
      .has("name", &Zone::name, "unique in a job")
      .has("area_cm2", &Zone::area_cm2, "area [cm2]")
      .has(
          "block", [](const Zone& zone) { return Face(zone.block); }, "what presses the paper")
      .has("film", &Zone::film, "film of the last round; None on a solid")
      .has("peel_um", &Zone::peel_um, "orange peel, peak to valley [um]")
      .has("peel_wavelength_mm", &Zone::peel_wavelength_mm, "its wavelength [mm]")
      .has("levelled", &Zone::levelled, "False: the levelling step passes it by, as it does edges")
      .has("below_um", &Zone::below_um, "film of the rounds below the last one [um]")
      .has("defects", &Zone::defects, "runs, sags, drips, nibs and ridges, taken down first")
      .has("carries", &Zone::carries, "what it carries now; None: what the job starts with")
      .finish();
  ValueClass<Target>(m, "Target", "What ends the sequence: a size or a gloss.")
      .has("size_um", &Target::size_um, "met by grain of at most this size [um], or None")
      .has("gloss_gu", &Target::gloss_gu, "least gloss at 60 degrees in every zone [GU], or None")
      .has("gloss_high_gu", &Target::gloss_high_gu, "most, where a band of sheen is met [GU]")
      .has("label", &Target::label, "of the grade or the sheen, where the target was given as one")
      .finish();
  ValueClass<Job> job(m, "Job", "One job: coating, zones, start, target and rules.");
  job.has("name", &Job::name, "what the work is")
      .has("coating", &Job::coating, "what is being sanded")
      .has("zones", &Job::zones, "the zones")
      .has("scratched_by", &Job::scratched_by,
           "grade whose scratches the work carries; None: as sprayed")
      .has("target", &Job::target, "what ends the sequence")
      .has("age_h", &Job::age_h, "of the last coat [h]; None: fully cured")
      .has("cure", &Job::cure, "of this coat; None: that of the coating's name")
      .has("rules", &Job::rules, "the rules of its plan")
      .has(
          "prefer", [](const Job& j) { return levigate::to_string(j.prefer); },
          "\"minutes\", \"film\", \"steps\" or \"cost\"")
      .finish();
  job.def_property_readonly("budget_um", &budget_um,
                            "depth that each zone can afford [um], by name; None on a solid");
  job.def_static("load", &levigate::load_job, arg("path"),
                 "Reads a file of format levigate.job/1.\n\n"
                 "Raises BadInput with pointer and line, OutOfRange, UnknownGrade,\n"
                 "AmbiguousLabel.");
  job.def_static(
      "from_json", [](const std::string& text) { return levigate::job_from_json(text); },
      arg("text"), "From JSON text of format levigate.job/1.\n\nRaises as load().");
  job.def_static(
      "from_dict",
      [](const py::dict& data) {
        return levigate::job_from_json(json_text(data, levigate::job_format));
      },
      arg("data"), "From a dictionary as it stands in a file.\n\nRaises as load().");
  job.def("to_json", py::overload_cast<const Job&>(&levigate::to_json),
          "JSON text that from_json() reads back equal.");
  job.def(
      "to_dict", [](const Job& j) -> py::dict { return from_json_text(levigate::to_json(j)); },
      "The job as a dictionary, as it stands in a file.");
  job.def(py::pickle([](const Job& j) { return levigate::to_json(j); },
                     [](const std::string& text) { return levigate::job_from_json(text); }));
}

}  // namespace levigate_python
