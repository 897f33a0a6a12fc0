// What a plan holds beside its steps: why there is none, cautions, and its reliances.
#include "bind.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/text/sentences.hpp"

namespace levigate_python {

using levigate::Bridge;
using levigate::Caution;
using levigate::Gap;
using levigate::PaperShort;
using levigate::Reliance;
using levigate::Why;

void bind_why(py::module_& m) {
  describe_class<Bridge>(m).finish();
  describe_class<Gap>(m).finish();
  describe_class<PaperShort>(m).finish();
  describe_class<levigate::FilmNeeded>(m).finish();
  describe_class<levigate::Nearest>(m).finish();
  describe_class<Why>(m)
      .has(
          "message", [](const Why& w) { return levigate::sentence(w); }, "all of it in words")
      .finish();
  describe_class<levigate::ChosenStep>(m).finish();
  describe_class<levigate::LearnedCause>(m).finish();
  describe_class<levigate::MoreSheets>(m).finish();
  describe_class<levigate::LearnedChange>(m)
      .has(
          "message", [](const levigate::LearnedChange& c) { return levigate::sentence(c); },
          "all of it in words")
      .finish();
  describe_class<Caution>(m).finish();
  describe_class<Reliance>(m).finish();
}

}  // namespace levigate_python
