// How a sheet touches a film, for one state and for arrays of states.
#include <functional>
#include <numeric>

#include "elementwise.hpp"
#include "levigate/surface/contact.hpp"
#include "levigate/surface/scratch.hpp"

namespace levigate_python {

namespace {

using levigate::Contact;
using py::arg;

/// Contacts of arrays: the attributes of Contact as arrays.
struct Contacts {
  std::vector<Contact> all;
  std::vector<py::ssize_t> shape;

  template <typename Get>
  py::array_t<double> each(Get get) const {
    py::array_t<double> result(shape);
    std::transform(all.begin(), all.end(), result.mutable_data(), get);
    return result;
  }

  /// f(contact, x) with the contacts and x broadcast against each other.
  template <typename F>
  Numbers with(const char* name, const Numbers& x, F f) const {
    py::array_t<double> index(shape);
    std::iota(index.mutable_data(), index.mutable_data() + index.size(), 0.0);
    return elementwise<2>({"contact", name}, {index, x}, [&](double at, double value) {
      return f(all[static_cast<std::size_t>(at)], value);
    });
  }
};

double depth_um(const Contact& contact, double q) { return contact.depth_um(q); }
double exceedance(const Contact& contact, double depth) { return contact.exceedance(depth); }

constexpr auto depth_doc =
    "Depth that a share q (0 to 1) of the active tips do not exceed [um].\n\nRaises OutOfRange. "
    "NaN in, NaN out.";
constexpr auto exceedance_doc =
    "Share of the active tips that are deeper than depth_um [um].\n\nNaN in, NaN out.";

/// Calls add(name, function, doc) for every attribute of a contact.
template <typename Add>
void each_attribute(Add add) {
  add("active_per_mm2", &Contact::active_per_mm2, "tips that touch the film [1/mm2]");
  add("active_share", &Contact::active_share, "share of all tips that touch the film, 0 to 1");
  add("mean_depth_um", &Contact::mean_depth_um, "mean depth of the active tips [um]");
  add("plane_height_um", &Contact::plane_height_um,
      "height that tips must exceed to touch, above the mean tip [um]");
  add("load_residual", &Contact::load_residual, "load carried over load applied, minus 1");
  add("ra_um", &levigate::ra_um, "arithmetic mean roughness of the surface it leaves [um]");
  add("rq_um", &levigate::rq_um, "root mean square roughness of the surface it leaves [um]");
}

py::object contact_of(const std::array<Numbers, 8>& given) {
  const Broadcast<8> columns({"size_um", "log_spread", "tip_spread", "modulus_mpa", "pressure_kpa",
                              "hardness_mpa", "flank_deg", "packing"},
                             given);
  Contacts result{{}, columns.shape()};
  result.all.reserve(columns.size());
  columns.for_each([&](std::size_t, const std::array<double, 8>& x) {
    result.all.push_back(levigate::contact({x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7]}));
  });
  return columns.scalar() ? py::cast(result.all[0]) : py::cast(std::move(result));
}

}  // namespace

void bind_contact(py::module_& m) {
  ValueClass<Contact> one(m, "Contact", "How a sheet touches a film: see contact().");
  each_attribute([&](const char* name, auto get, const char* doc) { one.has(name, get, doc); });
  one.finish();
  one.def(
      "depth_um",
      [](const Contact& self, const Numbers& q) {
        return elementwise<1>({"q"}, {q}, [&](double x) { return depth_um(self, x); });
      },
      arg("q"), depth_doc);
  one.def(
      "exceedance",
      [](const Contact& self, const Numbers& depth) {
        return elementwise<1>({"depth_um"}, {depth}, [&](double x) { return exceedance(self, x); });
      },
      arg("depth_um"), exceedance_doc);

  py::class_<Contacts> many(m, "Contacts",
                            "Contacts of arrays: the attributes of Contact as arrays.");
  each_attribute([&](const char* name, auto get, const char* doc) {
    many.def_property_readonly(
        name,
        [get](const Contacts& self) {
          return self.each([&](const Contact& c) { return std::invoke(get, c); });
        },
        doc);
  });
  many.def(
      "depth_um",
      [](const Contacts& self, const Numbers& q) { return self.with("q", q, depth_um); }, arg("q"),
      depth_doc);
  many.def(
      "exceedance",
      [](const Contacts& self, const Numbers& depth) {
        return self.with("depth_um", depth, exceedance);
      },
      arg("depth_um"), exceedance_doc);
  many.def_property_readonly(
      "shape", [](const Contacts& self) { return py::tuple(py::cast(self.shape)); },
      "shape that the arguments broadcast to");
  many.def("__repr__", [](const py::object& self) {
    return "Contacts(shape=" + std::string(py::repr(self.attr("shape"))) + ")";
  });

  m.def(
      "contact",
      [](const Numbers& size, const Numbers& log_spread, const Numbers& tip_spread,
         const Numbers& modulus, const Numbers& pressure, const Numbers& hardness,
         const Numbers& flank, const Numbers& packing) -> py::typing::Union<Contact, Contacts> {
        return contact_of(
            {size, log_spread, tip_spread, modulus, pressure, hardness, flank, packing});
      },
      py::kw_only(), arg("size_um"), arg("log_spread"), arg("tip_spread"), arg("modulus_mpa"),
      arg("pressure_kpa"), arg("hardness_mpa"), arg("flank_deg") = 20.0, arg("packing") = 0.5,
      "How many grain tips of a sheet press into a film, and how deep.\n\n"
      "size_um: median grain size, 0.01 to 10 000 um; log_spread: sd of ln(size), 0 to 1;\n"
      "tip_spread: sd of tip heights due to the backing, over the size, 0 to 1; modulus_mpa: of\n"
      "the backing under one grain, 0.01 MPa to infinity; pressure_kpa: 0.01 to 1000 kPa;\n"
      "hardness_mpa: of the film, 1 to 100 000 MPa; flank_deg: of a tip, 1 to 80 degrees;\n"
      "packing: tips per size^2, 0.01 to 1. Of numbers a Contact, of arrays Contacts.\n"
      "Raises OutOfRange. NaN in, NaN out. Load balanced to 1e-12 relative.\n"
      "Source: Xi & Zhou, Int. J. Mach. Tools Manuf. 45:365-372 (2005); from memory, Rabinowicz,\n"
      "Friction and Wear of Materials; a spring per grain: assumption.");
}

}  // namespace levigate_python
