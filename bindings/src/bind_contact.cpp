// How a sheet touches a film, for one state and for arrays of states.
#include <functional>
#include <numeric>

#include "elementwise.hpp"
#include "levigate/surface/contact.hpp"
#include "levigate/surface/model_table.hpp"
#include "levigate/surface/roughness.hpp"
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
  py::array_t<double> with(const char* name, const Numbers& x,
                           double (*f)(const Contact&, double)) const {
    py::array_t<double> index(shape);
    std::iota(index.mutable_data(), index.mutable_data() + index.size(), 0.0);
    const char* const names[] = {"contact", name};
    const py::object given[] = {index, x};
    return elementwise(Broadcast(names, given), [&](const double* at_and_x) {
      return f(all[static_cast<std::size_t>(at_and_x[0])], at_and_x[1]);
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

/// f(contact, x) of every x.
Numbers with(const Contact& contact, const char* name, const Numbers& x,
             double (*f)(const Contact&, double)) {
  const py::object given[] = {x};
  return elementwise(Broadcast({&name, 1}, given),
                     [&](const double* value) { return f(contact, *value); });
}

py::object contact_of(const Broadcast& columns) {
  Contacts result{{}, columns.shape()};
  result.all.reserve(columns.size());
  columns.for_each([&](std::size_t, const double* x) {
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
      [](const Contact& self, const Numbers& q) { return with(self, "q", q, depth_um); }, arg("q"),
      depth_doc);
  one.def(
      "exceedance",
      [](const Contact& self, const Numbers& depth) {
        return with(self, "depth_um", depth, exceedance);
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
      "shape",
      [](const Contacts& self) -> py::typing::Tuple<int, py::ellipsis> {
        return py::tuple(py::cast(self.shape));
      },
      "shape that the arguments broadcast to");
  many.def("__repr__", [](const py::object& self) {
    return "Contacts(shape=" + std::string(py::repr(self.attr("shape"))) + ")";
  });

  def_numbers(
      m, "contact",
      {arg("size_um"), arg("log_spread"), arg("tip_spread"), arg("modulus_mpa"),
       arg("pressure_kpa"), arg("hardness_mpa"),
       arg("flank_deg") = levigate::model_table[0].flank_deg.value, arg("packing") = 0.5},
      "levigate._core.Contact | levigate._core.Contacts", &contact_of,
      "How many grain tips of a sheet press into a film, and how deep.\n\n"
      "size_um: median grain size, 0.01 to 10 000 um; log_spread: sd of ln(size), 0 to 1;\n"
      "tip_spread: sd of tip heights due to the backing, over the size, 0 to 1; modulus_mpa: of\n"
      "the backing under one grain, 0.01 MPa to infinity; pressure_kpa: 0.01 to 1000 kPa;\n"
      "hardness_mpa: of the film, 1 to 100 000 MPa; flank_deg: of a tip, 1 to 80 degrees;\n"
      "packing: tips per size^2, 0.01 to 1. Of numbers a Contact, of arrays Contacts.\n"
      "Raises OutOfRange. NaN in, NaN out. Load balanced to 1e-12 relative.\n"
      "Source: Xi & Zhou, Int. J. Mach. Tools Manuf. 45:365-372 (2005); from memory, Rabinowicz,\n"
      "Friction and Wear of Materials; a spring per grain: assumption.\n\n"
      ">>> touch = levigate.contact(size_um=25.8, log_spread=0.2, tip_spread=0.15, "
      "modulus_mpa=20,\n"
      "...                          pressure_kpa=2, hardness_mpa=200)\n"
      ">>> round(touch.mean_depth_um, 2)\n0.24");
}

}  // namespace levigate_python
