// Table of contents of levigate._core. Order: a class before the functions that name it, so that
// signatures show Python names.
#include "bind.hpp"
#include "levigate/version.hpp"
#include "made.hpp"

PYBIND11_MODULE(_core, m) {
  m.doc() = "What levigate computes; the package levigate re-exports all of it.";
  m.attr("__version__") = levigate::version_string;
  m.def("_unpickled", &levigate_python::unpickled,
        "What pickle makes again.\n\nIts arguments are those of __reduce__().");
  levigate_python::bind_errors(m);
  levigate_python::bind_grade(m);
  levigate_python::bind_contact(m);
  levigate_python::bind_surface(m);
  levigate_python::bind_film(m);
  levigate_python::bind_coat(m);
  levigate_python::bind_heat(m);
  levigate_python::bind_source(m);
  levigate_python::bind_wheel(m);
  levigate_python::bind_stack(m);
  levigate_python::bind_local(m);
  levigate_python::bind_job(m);
  levigate_python::bind_mark(m);
  levigate_python::bind_journal(m);
  levigate_python::bind_shop(m);
  levigate_python::bind_bench(m);
  levigate_python::bind_care(m);
  levigate_python::bind_compound(m);
  levigate_python::bind_why(m);
  levigate_python::bind_simulation(m);
  levigate_python::bind_plan(m);
  levigate_python::bind_recover(m);
  levigate_python::bind_simulate(m);
  levigate_python::bind_learn(m);
  levigate_python::bind_bench_questions(m);
  levigate_python::bind_together(m);
  levigate_python::bind_buy(m);
  levigate_python::bind_spray(m);
  levigate_python::bind_text(m);
}
