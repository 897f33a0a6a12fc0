// What an inspection shows, and what was done before it.
#include "bind.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/recover/mark.hpp"

namespace levigate_python {

namespace {

using levigate::DoneStep;
using levigate::Mark;
using py::arg;

Mark mark_from(const std::string& kind, const std::string& zone, const std::string& seen,
               std::optional<double> width_um, std::optional<double> direction_deg,
               std::optional<int> count, std::optional<double> height_um) {
  const Mark mark{levigate::detail::kind_named(levigate::all_mark_kinds, kind, "kind of mark"),
                  zone,
                  levigate::detail::kind_named(levigate::all_ways_seen, seen, "way of seeing"),
                  width_um,
                  direction_deg,
                  count,
                  height_um};
  levigate::validate(mark, "Mark");
  return mark;
}

}  // namespace

void bind_mark(py::module_& m) {
  m.attr("MARK_KINDS") = names_of<levigate::MarkKind>();
  m.attr("WAYS_SEEN") = names_of<levigate::Seen>();
  ValueClass<Mark> mark = describe_class<Mark>(m);
  mark.finish();
  mark.def(py::init(&mark_from), py::kw_only(), arg("kind"), arg("zone"), arg("seen") = "sunlight",
           arg("width_um") = py::none(), arg("direction_deg") = py::none(),
           arg("count") = py::none(), arg("height_um") = py::none(),
           "A mark as it was seen.\n\nRaises OutOfRange; BadInput where it contradicts itself.");
  ValueClass<DoneStep> done(m, "DoneStep", "One step that is done.");
  done.has("sheet", &DoneStep::sheet, "id of the sheet")
      .has("zones", &DoneStep::zones, "that it worked; empty: all")
      .has("direction_deg", &DoneStep::direction_deg,
           "of the strokes against the length of the zone, 0 to 180 deg")
      .has("removal_um", &DoneStep::removal_um,
           "film it took off [um]; None: what the scratches before it ask for, as in a plan")
      .has("overcut", &DoneStep::overcut,
           "film it took off over the scratch depth before it; None: what the rules say")
      .finish();
  done.def(py::init<std::string, std::vector<std::string>, std::optional<double>,
                    std::optional<double>, std::optional<double>>(),
           arg("sheet"), py::kw_only(), arg("zones") = std::vector<std::string>{},
           arg("direction_deg") = py::none(), arg("removal_um") = py::none(),
           arg("overcut") = py::none(), "A step that was done with a sheet.");
  done.def(py::pickle(
      [](const DoneStep& d) {
        return py::make_tuple(d.sheet, d.zones, d.direction_deg, d.removal_um, d.overcut);
      },
      [](const py::tuple& parts) {
        return DoneStep{parts[0].cast<std::string>(), parts[1].cast<std::vector<std::string>>(),
                        parts[2].cast<std::optional<double>>(),
                        parts[3].cast<std::optional<double>>(),
                        parts[4].cast<std::optional<double>>()};
      }));
}

}  // namespace levigate_python
