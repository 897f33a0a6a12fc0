// Coats: the rounds they fuse into, how they cure, and what stays of them on an edge.
#include "elementwise.hpp"
#include "levigate/film/edge.hpp"
#include "levigate/film/rounds.hpp"
#include "levigate/surface/cure.hpp"
#include "levigate/text/sentences.hpp"

namespace levigate_python {

namespace {

using levigate::AgedHardness;
using levigate::Coat;
using levigate::Cure;
using levigate::HardnessPoint;
using levigate::Round;
using levigate::RoundLeft;
using py::arg;

Cure cure_from(double hard_cure_h, double shrink,
               const std::vector<std::pair<double, double>>& points) {
  Cure cure{hard_cure_h, shrink, {}};
  for (const auto& [hours, hardness_mpa] : points) cure.points.push_back({hours, hardness_mpa});
  levigate::validate(cure, "Cure");
  return cure;
}

void bind_cure(py::module_& m) {
  describe_class<HardnessPoint>(m).finish();
  ValueClass<Cure> cure = describe_class<Cure>(m);
  cure.finish();
  cure.def(py::init(&cure_from), py::kw_only(), arg("hard_cure_h"), arg("shrink") = 0.0,
           arg("points") = std::vector<std::pair<double, double>>{},
           "A cure of one's own; points: pairs of age [h] and hardness [MPa].\n\n"
           "Raises OutOfRange; BadInput unless ages rise and hardness does not fall.");
  ValueClass<AgedHardness>(m, "AgedHardness", "Hardness at an age: see hardness_at().")
      .has("hardness_mpa", &AgedHardness::hardness_mpa, "hardness [MPa]")
      .has(
          "note", [](const AgedHardness& h) { return levigate::sentence(h); },
          "where the age is outside the points; else empty")
      .finish();
  m.def("cure_named", &levigate::cure_named, arg("name"),
        "Cure of the coating of that name in the profiles, without points.\n\n"
        "Raises BadInput with the nearest name.");
  m.def("hardness_at", &levigate::hardness_at, arg("cure"), py::kw_only(), arg("age_h"),
        "Hardness of a coat at an age, between its points linear in the logarithm of age.\n\n"
        "age_h: since the last coat, 0 to 1e6 h. Raises OutOfRange; BadInput without points.\n"
        "Source: the logarithm is an assumption.");
}

void bind_edge(py::module_& m) {
  def_elementwise(m, "edge_share", &levigate::edge_share,
                  "Share of the flat film that stays on an edge, 0.5 to 1.\n\n"
                  "radius_mm: of the edge, 0 (sharp) to infinity (flat); uncertain by 0.2 when\n"
                  "sharp. Raises OutOfRange. NaN in, NaN out. Source: common practice.",
                  arg("radius_mm"));
  m.def("edge_film", &levigate::edge_film, arg("flat"), py::kw_only(), arg("radius_mm"),
        "Film on an edge, from that on the flat beside it: see edge_share().\n\n"
        "Mean and standard error scale, the spread stays. Raises OutOfRange.\n"
        "Source: common practice; the spread is an assumption.");
  def_elementwise(m, "strokes_within", &levigate::strokes_within,
                  "Whole strokes of a pad along an edge that a depth affords.\n\n"
                  "depth_um: 0 to infinity; rate_um_per_m: on the edge, 1e-9 to 1e6 um/m;\n"
                  "stroke_mm, pad_mm: travel and length of the pad, 0.1 to 10 000 mm.\n"
                  "Raises OutOfRange. NaN in, NaN out. Source: Preston's law.",
                  arg("depth_um"), arg("rate_um_per_m"), arg("stroke_mm"), arg("pad_mm"));
}

}  // namespace

void bind_coat(py::module_& m) {
  bind_cure(m);
  bind_edge(m);
  ValueClass<Coat> coat(m, "Coat", "One coat, by its wet film or by its dry film.");
  coat.has("wet_um", &Coat::wet_um, "as applied [um]; 0 where dry_um is given")
      .has("volume_solids", &Coat::volume_solids, "of the paint, 0 to 1")
      .has("thinner", &Coat::thinner, "volume for one of paint")
      .has("dry_um", &Coat::dry_um, "given instead of the three above [um], or None")
      .has("shrink", &Coat::shrink, "share of the dry film lost on full cure")
      .has("applied_h", &Coat::applied_h, "since the first coat [h]")
      .finish();
  add_pickle(
      coat, levigate::description_of<Coat>(),
      [](py::handle self) -> const void* { return &self.cast<const Coat&>(); },
      [] { return py::cast(Coat{}); });
  coat.def(py::init([](double wet_um, double volume_solids, double thinner,
                       std::optional<double> dry_um, double shrink, double applied_h) {
             return Coat{wet_um, volume_solids, thinner, dry_um, shrink, applied_h};
           }),
           py::kw_only(), arg("wet_um") = 0.0, arg("volume_solids") = 0.0, arg("thinner") = 0.0,
           arg("dry_um") = py::none(), arg("shrink") = 0.0, arg("applied_h") = 0.0,
           "A coat; give wet_um with volume_solids, or dry_um.\n\nChecked by rounds().");
  ValueClass<Round>(m, "Round", "Coats that fused into one film.")
      .has("coats", &Round::coats, "how many")
      .has("dry_um", &Round::dry_um, "fully cured [um]")
      .has("first_h", &Round::first_h, "when its first coat was applied [h]")
      .has("last_h", &Round::last_h, "when its last was [h]")
      .finish();
  ValueClass<RoundLeft>(m, "RoundLeft", "What a depth leaves of the last round.")
      .has("left_um", &RoundLeft::left_um, "of the last round [um]")
      .has("left_share", &RoundLeft::left_share, "the same over the round, 0 to 1")
      .has("enters_below", &RoundLeft::enters_below, "a witness line shows, or bare work")
      .has("in_round", &RoundLeft::in_round, "where the depth ends, 0 the lowest")
      .finish();
  m.def(
      "rounds",
      [](const std::vector<Coat>& coats, double recoat_window_h) {
        return levigate::rounds(coats, recoat_window_h);
      },
      arg("coats"), py::kw_only(), arg("recoat_window_h"),
      "Coats grouped into rounds: one laid within the recoat window fuses with the last.\n\n"
      "coats: by rising applied_h; recoat_window_h: 0 to 1e6 h. The lowest round comes first.\n"
      "Raises BadInput, OutOfRange. Source: common practice; conservation of volume.");
  m.def(
      "film_of_last_round",
      [](const std::vector<Round>& all, double sd_um, double mean_se_um) {
        return levigate::film_of_last_round(all, sd_um, mean_se_um);
      },
      arg("rounds"), py::kw_only(), arg("sd_um"), arg("mean_se_um") = 0.0,
      "Film that may be sanded: the last round. Below it a witness line shows.\n\n"
      "sd_um: from spot to spot; mean_se_um: standard error of the mean; 0 to 20 000 um.\n"
      "Raises BadInput, OutOfRange. Source: common practice.");
  m.def(
      "witness_depth",
      [](const std::vector<Round>& all, double depth_um) {
        return levigate::witness_depth(all, depth_um);
      },
      arg("rounds"), py::kw_only(), arg("depth_um"),
      "What sanding to a depth leaves of the last round, and in which round it ends.\n\n"
      "depth_um: below the surface as cured, 0 to infinity. Raises BadInput, OutOfRange.");
}

}  // namespace levigate_python
