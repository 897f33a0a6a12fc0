// How much to spray.
#include "levigate/bench/spray.hpp"

#include "as_json.hpp"
#include "bind.hpp"
#include "levigate/film/gun_table.hpp"
#include "levigate/io/json.hpp"
#include "levigate/text/card.hpp"

namespace levigate_python {

namespace {

using levigate::Spraying;
using levigate::SprayOptions;
using py::arg;

Spraying spray_on(const levigate::Bench& bench, const std::string& gun,
                  std::optional<double> volume_solids, double thinner,
                  std::optional<double> dry_um_per_coat, std::optional<double> film_cv,
                  std::optional<double> transfer_efficiency, std::optional<double> loss_share,
                  bool way_back) {
  const SprayOptions options{gun,     volume_solids,       thinner,    dry_um_per_coat,
                             film_cv, transfer_efficiency, loss_share, way_back};
  const py::gil_scoped_release unlocked;
  return levigate::how_much_to_spray(bench, options);
}

}  // namespace

void bind_spray(py::module_& m) {
  m.attr("GUNS") = names_of(levigate::gun_table);
  describe_class<SprayOptions>(m).finish();
  describe_class<levigate::SprayedZone>(m).finish();
  ValueClass<Spraying> spraying = describe_class<Spraying>(m);
  spraying.finish();
  spraying.def("card", &levigate::spray_card, "As plain text.")
      .def(
          "to_json", [](const Spraying& self) { return levigate::to_json(self); },
          "As JSON text of format levigate.spray/1.")
      .def(
          "to_dict",
          [](const Spraying& self) -> py::dict { return from_json_text(levigate::to_json(self)); },
          "As plain data.");
  const SprayOptions usual;
  m.def("how_much_to_spray", &spray_on, arg("bench"), py::kw_only(), arg("gun") = usual.gun,
        arg("volume_solids") = py::none(), arg("thinner") = usual.thinner,
        arg("dry_um_per_coat") = py::none(), arg("film_cv") = py::none(),
        arg("transfer_efficiency") = py::none(), arg("loss_share") = py::none(),
        arg("way_back") = usual.way_back,
        "Coats, film and paint of the last round that suffice for a plan, before it is sprayed.\n\n"
        "The films of the job are left aside. volume_solids: share that stays, 0.01 to 1, by the\n"
        "data sheet; thinner: volume for one of paint, 0 to 10; dry_um_per_coat: 1 to 2000 um;\n"
        "film_cv: spread from spot to spot over the mean, 0 to 0.5;\n"
        "transfer_efficiency: 0.05 to 1; loss_share: 0 to 0.9; way_back: keep film for one.\n"
        "Raises BadInput, OutOfRange. Source: conservation of volume; usual numbers of the\n"
        "coating and the gun.");
}

}  // namespace levigate_python
