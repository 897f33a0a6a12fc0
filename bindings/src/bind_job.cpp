// The work: coating, zones, start and target.
#include <pybind11/stl/filesystem.h>

#include "levigate/io/json.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/workings.hpp"
#include "made.hpp"
#include "named.hpp"

namespace levigate_python {

template <>
struct FromData<levigate::Job> {
  static levigate::Job read(const py::dict& data) {
    return levigate::job_from_json(json_text(data, levigate::job_format));
  }
};

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
  made_by_keywords<levigate::ShrinkBack>(m);
  made_by_keywords<WheelLimits>(m);
  made_by_keywords<Coating>(m);
  made_by_keywords<Carried>(m);
  made_by_keywords<levigate::Edge>(m);
  ValueClass<Zone> zone = describe_class<Zone>(m);
  zone.has("levelled", &levigate::is_levelled,
           "False: the levelling step passes it by, as it does edges")
      .finish();
  make_by_keywords(zone);
  made_by_keywords<Target>(m);
  ValueClass<Job> job = describe_class<Job>(m);
  job.finish();
  job.def_property_readonly("budget_um", &budget_um,
                            "depth that each zone can afford [um], by name; None on a solid");
  job.def_static("load", &levigate::load_job, arg("path"),
                 "Reads a file of format levigate.job/1.\n\n"
                 "Raises BadInput with pointer and line, OutOfRange, UnknownGrade,\n"
                 "AmbiguousLabel.");
  job.def_static(
      "from_json",
      [](const std::string& text, const std::string& file) {
        return levigate::job_from_json(text, file);
      },
      arg("text"), arg("file") = "",
      "From JSON text of format levigate.job/1.\n\n"
      "file: its name for messages. Raises as load().");
  job.def_static(
      "from_dict",
      [](const py::dict& data) {
        return levigate::job_from_json(json_text(data, levigate::job_format));
      },
      arg("data"), "From a dictionary as in a file.\n\nRaises as load().");
  job.def("to_json", py::overload_cast<const Job&>(&levigate::to_json),
          "JSON text that from_json() reads back equal.");
  job.def(
      "to_dict", [](const Job& j) -> py::dict { return from_json_text(levigate::to_json(j)); },
      "The job as a dictionary, as in a file.");
  make_by_keywords(job);
}

}  // namespace levigate_python
