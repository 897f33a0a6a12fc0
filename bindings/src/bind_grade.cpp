// Labels and grades.
#include <variant>

#include "as_json.hpp"
#include "elementwise.hpp"
#include "levigate/grade/bridge.hpp"
#include "levigate/grade/convert.hpp"
#include "levigate/grade/grades.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/grade/meanings.hpp"
#include "levigate/grade/sized.hpp"
#include "levigate/grade/spread.hpp"
#include "levigate/io/json.hpp"
#include "levigate/text/sentences.hpp"
#include "shown.hpp"

namespace levigate_python {

namespace {

using levigate::Equivalent;
using levigate::Grade;
using levigate::LabelMeaning;
using levigate::LabelMeanings;
using levigate::LabelReading;
using levigate::System;
using py::arg;

/// Basis and citation of every number that the grade has.
py::dict sources(const Grade& grade) {
  py::dict result;
  const auto add = [&](const char* name, bool held, const levigate::Source& source) {
    if (!held) return;
    result[name] = py::dict(arg("basis") = levigate::to_string(source.basis),
                            arg("citation") = source.citation);
  };
  add("median_um", true, grade.median_source);
  add("tolerance_um", grade.tolerance_um.has_value(), grade.tolerance_source);
  add("coarse_limit_um", grade.coarse_limit_um.has_value(), grade.limits_source);
  add("fine_limit_um", grade.fine_limit_um.has_value(), grade.limits_source);
  add("log_spread", true, levigate::spread(grade).source);
  return result;
}

py::array_t<std::int64_t> nearest(const Numbers& sizes_um, System system) {
  const char* const names[] = {"sizes_um"};
  const py::object given[] = {sizes_um};
  const Broadcast sizes(names, given);
  py::array_t<std::int64_t> result(sizes.shape());
  auto* indices = reinterpret_cast<std::size_t*>(result.mutable_data());  // of the same width
  const std::span all = sizes.column(0);
  const py::gil_scoped_release others_may_run;
  levigate::nearest_into(all, system, {indices, all.size()});
  return result;
}

}  // namespace

void bind_grade(py::module_& m) {
  ValueClass<Grade> grade =
      describe_class<Grade>(m, {"median_source", "tolerance_source", "limits_source"});
  grade
      .has(
          "basis", [](const Grade& g) { return levigate::to_string(g.basis()); },
          "what the median rests on, as \"published table\"")
      .has("log_spread", &levigate::log_spread, "standard deviation of ln(size), dimensionless")
      .finish();
  grade.def_property_readonly("coarse_tail_um", &levigate::coarse_tail_um,
                              "size that at most 3 % exceeds: the limit, or by log_spread [um]");
  add_html(grade);
  grade.def_property_readonly("sources", &sources,
                              "basis and citation of each number, by attribute");
  ValueClass<LabelReading>(m, "LabelReading", "All that a label can mean.")
      .has("candidates", &LabelReading::candidates, "the grades it can mean")
      .has("ambiguous", &LabelReading::ambiguous, "whether it does not settle one grade")
      .has("note", &LabelReading::note, "what a reader must know of this label")
      .finish();
  ValueClass<Equivalent> equivalent(m, "Equivalent", "The nearest grade of another system.");
  equivalent.has("grade", &Equivalent::grade, "the nearest by log size")
      .has("size_ratio", &Equivalent::size_ratio, "its median over the given median")
      .has("within_tolerance", &Equivalent::within_tolerance,
           "whether the medians agree within their tolerances; None where neither is known")
      .has("overlap", &Equivalent::overlap, "share of grain in common, 0 to 1")
      .has("number", &Equivalent::number, "continuous grit number of the given median, or None")
      .has("coarser", &Equivalent::coarser, "next coarser grade, or None")
      .has("finer", &Equivalent::finer, "next finer grade, or None")
      .has(
          "verdict", [](const Equivalent& e) { return levigate::sentence(e); }, "the same in words")
      .finish();
  equivalent.def(
      "to_dict",
      [](const Equivalent& e) -> py::dict { return from_json_text(levigate::to_json(e)); },
      "The conversion as a dictionary, as the command line writes it.");
  ValueClass<LabelMeaning>(m, "LabelMeaning", "One grade that a label may mean.")
      .has("grade", &LabelMeaning::grade, "which it then is")
      .has("nearest", &LabelMeaning::nearest, "Equivalent of each system that was asked for")
      .finish();
  ValueClass<LabelMeanings> meanings(m, "LabelMeanings", "All that a label may mean.");
  meanings.has("label", &LabelMeanings::label, "as given")
      .has("ambiguous", &LabelMeanings::ambiguous, "whether it does not settle one grade")
      .has("note", &LabelMeanings::note, "how it is read; may be empty")
      .has("bare_number", &LabelMeanings::bare_number,
           "system that settled a label without one, or None")
      .has("meanings", &LabelMeanings::meanings, "a LabelMeaning each, at least one")
      .finish();
  meanings.def(
      "to_dict",
      [](const LabelMeanings& l) -> py::dict { return from_json_text(levigate::to_json(l)); },
      "As plain data, as the command line writes it.");

  m.attr("SYSTEMS") = py::tuple(py::cast(levigate::all_systems));
  m.attr("COATED_SYSTEMS") = py::tuple(py::cast(levigate::coated_systems));
  m.def(
      "read_label", &levigate::read_label, arg("text"),
      "All that a label can mean.\n\nRaises UnknownGrade, OutOfRange, BadInput. Source: notations "
      "of the standards.");
  m.def(
      "meanings",
      [](const std::string& label, const std::string& bare, const std::vector<System>& systems) {
        return levigate::meanings(label, bare_rule(bare), systems);
      },
      arg("label"), arg("bare") = ask,
      arg("systems") =
          std::vector<System>(levigate::coated_systems.begin(), levigate::coated_systems.end()),
      "All that a label may mean, each beside the nearest grades of other systems.\n\n"
      "bare: the system of labels that name none, \"ask\": each that they may be of.\n"
      "Raises UnknownGrade, OutOfRange, BadInput.");
  m.def(
      "grade",
      [](const std::string& text, const std::string& bare) {
        return levigate::grade(text, bare_rule(bare));
      },
      arg("text"), arg("bare") = ask,
      "The one grade that a label means.\n\n"
      "bare: the system of labels that name none; \"ask\" raises AmbiguousLabel for them.\n"
      "Raises UnknownGrade, AmbiguousLabel, OutOfRange, BadInput.\n\n"
      ">>> levigate.grade(\"P600\").median_um\n25.8\n"
      ">>> levigate.grade(\"CAMI 600\").median_um\n16.0\n"
      ">>> levigate.grade(\"600\", bare=\"JIS\").median_um\n20.0");
  m.def(
      "sized_grade",
      [](const std::string& label, double size_um, const std::string& bare) {
        return levigate::sized_grade(label, size_um, bare_rule(bare));
      },
      arg("label"), py::kw_only(), arg("size_um"), arg("bare") = ask,
      "A grade with the user's own median size.\n\n"
      "size_um: 0.01 to 10 000 um; bare: the system of labels that name none, \"ask\": micron.\n"
      "Raises OutOfRange, BadInput.");
  m.def("grades", &levigate::grades, arg("system"),
        "All grades of a system, coarse to fine.\n\nSource: data/standards, each number with its "
        "own.");
  m.def(
      "convert",
      [](const std::variant<Grade, std::string>& given, System system) {
        const auto* label = std::get_if<std::string>(&given);
        return levigate::convert(label ? levigate::grade(*label) : std::get<Grade>(given), system);
      },
      arg("grade"), arg("system"),
      "The nearest grade of a system, and how well it matches the given one.\n\n"
      "grade: a Grade, or a label that names its system. Raises OutOfRange, and as grade().\n"
      "Source: nearness by log size: common practice.\n\n"
      ">>> nearest = levigate.convert(\"CAMI 400\", \"FEPA P\")\n"
      ">>> nearest.grade.label, round(nearest.size_ratio, 3)\n"
      "('P800', 0.924)");
  m.def(
      "sizes_um",
      [](const std::vector<std::string>& labels, const std::string& bare) {
        return py::array_t<double>(py::cast(levigate::sizes_um(labels, bare_rule(bare))));
      },
      arg("labels"), arg("bare") = ask, "Median sizes of many labels [um].\n\nRaises as grade().");
  m.def("nearest", &nearest, arg("sizes_um"), arg("system"),
        "Indices into grades(system) of the grades nearest to sizes [um], 0.01 to 10 000.\n\n"
        "Raises OutOfRange. NaN is refused. Source: as convert().");
  m.def(
      "bridge",
      [](double coarse_um, double fine_um, System system, double min_ratio, double max_ratio) {
        return levigate::bridge(coarse_um, fine_um, system, min_ratio, max_ratio);
      },
      py::kw_only(), arg("coarse_um"), arg("fine_um"), arg("system"), arg("min_ratio"),
      arg("max_ratio"),
      "The fewest grades between two sizes [um] that keep every step within the ratios.\n\n"
      "Empty where one step will do, None where no grades will. Raises OutOfRange, BadInput.");
  def_elementwise(
      m, "size_overlap", &levigate::size_overlap,
      "Share of grain that two log-normal size distributions have in common, 0 to 1.\n\n"
      "median_1_um, median_2_um: 1e-3 to 1e6 um; log_spread_1, log_spread_2: 1e-6 to 10.\n"
      "Raises OutOfRange. NaN in, NaN out. Source: Inman & Bradley, Commun. Stat. Theory\n"
      "Methods 18 (1989) 3851, from memory; checked by integration.",
      arg("median_1_um"), arg("log_spread_1"), arg("median_2_um"), arg("log_spread_2"));
}

}  // namespace levigate_python
