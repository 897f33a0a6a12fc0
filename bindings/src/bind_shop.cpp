// What journals taught: a shop and its numbers.
#include <pybind11/stl/filesystem.h>

#include "as_json.hpp"
#include "levigate/io/shop.hpp"
#include "levigate/journal/report.hpp"
#include "levigate/text/sentences.hpp"

namespace levigate_python {

namespace {

using levigate::LearnedFactor;
using levigate::LearnedFilm;
using levigate::LearnedJob;
using levigate::LearnedLine;
using levigate::LearnedNoise;
using levigate::LearnedPair;
using levigate::Shop;
using py::arg;

void bind_numbers(py::module_& m) {
  describe_class<LearnedFactor>(m).finish();
  describe_class<LearnedPair>(m).finish();
  describe_class<LearnedFilm>(m).finish();
  describe_class<LearnedJob>(m).finish();
  describe_class<LearnedNoise>(m).finish();
  ValueClass<LearnedLine>(m, "LearnedLine", "One learned number and its sentence.")
      .has("subject", &LearnedLine::subject, "as \"latex paper on two-part urethane\"")
      .has("quantity", &LearnedLine::quantity,
           "\"minutes\", \"scratches\" or \"film_um\"; \"lines\" of a journal")
      .has("value", &LearnedLine::value,
           "median: a multiple of what is computed; of a film, added [um]")
      .has("low", &LearnedLine::low, "5 % are below it")
      .has("high", &LearnedLine::high, "5 % are above it")
      .has("observations", &LearnedLine::observations, "behind it")
      .has(
          "sentence", [](const LearnedLine& l) { return levigate::sentence(l); },
          "all of it in words")
      .finish();
}

}  // namespace

void bind_shop(py::module_& m) {
  bind_numbers(m);
  ValueClass<Shop> shop = describe_class<Shop>(m);
  shop.has("scratches", &Shop::scratches, "scratch_factor of backings on coatings")
      .has("person", &Shop::person, "the person's pace: work in a minute over what is computed")
      .finish();
  shop.def(py::init(), "As it is before any journal: the bands of the profiles.");
  shop.def_static("load", &levigate::load_shop, arg("path"),
                  "Reads a file of format levigate.shop/1.\n\n"
                  "Raises BadInput with pointer and line, OutOfRange.");
  shop.def(
      "save",
      [](const Shop& self, const std::filesystem::path& path) { levigate::save_shop(path, self); },
      arg("path"), "Writes a file of format levigate.shop/1, as a whole.\n\nRaises BadInput.");
  shop.def_static(
      "from_json",
      [](const std::string& text, const std::string& file) {
        return levigate::shop_from_json(text, file);
      },
      arg("text"), arg("file") = "",
      "From JSON text of format levigate.shop/1.\n\n"
      "file: its name for messages. Raises as load().");
  shop.def_static(
      "from_dict",
      [](const py::dict& data) {
        return levigate::shop_from_json(json_text(data, levigate::shop_format));
      },
      arg("data"), "From a dictionary as in a file.\n\nRaises as load().");
  shop.def("to_json", py::overload_cast<const Shop&>(&levigate::to_json),
           "JSON text that from_json() reads back equal.");
  shop.def(
      "to_dict", [](const Shop& s) -> py::dict { return from_json_text(levigate::to_json(s)); },
      "The shop as a dictionary, as in a file.");
  shop.def_property_readonly("report", py::overload_cast<const Shop&>(&levigate::report),
                             "what its numbers say, a LearnedLine each");
}

}  // namespace levigate_python
