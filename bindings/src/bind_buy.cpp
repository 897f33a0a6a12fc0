// What to buy before a day of work.
#include "levigate/risk/buy.hpp"

#include <variant>

#include "as_json.hpp"
#include "levigate/io/json.hpp"
#include "levigate/text/card.hpp"

namespace levigate_python {

namespace {

using levigate::Buying;
using levigate::Entry;
using py::arg;
using Journal = std::variant<levigate::JournalReading, std::vector<Entry>>;

Buying buy(const levigate::Job& job, const levigate::Stack& stack,
           const std::optional<levigate::Shop>& shop, const std::optional<Journal>& journal,
           const std::vector<std::string>& labels, std::int64_t draws, std::uint64_t seed,
           unsigned threads) {
  std::vector<Entry> entries;
  if (journal) {
    const auto* reading = std::get_if<0>(&*journal);
    entries = reading ? reading->entries : std::get<1>(*journal);
  }
  const levigate::SimulateOptions options{.draws = draws, .seed = seed, .threads = threads};
  const py::gil_scoped_release unlocked;
  return levigate::buy(job, stack, shop, entries, labels, options);
}

}  // namespace

void bind_buy(py::module_& m) {
  describe_class<levigate::SheetsNeeded>(m).finish();
  describe_class<levigate::Offer>(m).finish();
  describe_class<levigate::Meaning>(m).finish();
  describe_class<levigate::OpenLabel>(m).finish();
  ValueClass<Buying> buying = describe_class<Buying>(m);
  buying.finish();
  buying.def("card", &levigate::buying_card, "As plain text.")
      .def(
          "to_json", [](const Buying& self) { return levigate::to_json(self); },
          "As JSON text of format levigate.buy/1.")
      .def(
          "to_dict",
          [](const Buying& self) -> py::dict { return from_json_text(levigate::to_json(self)); },
          "As plain data.");
  m.def(
      "buy", &buy, arg("job"), arg("stack"), arg("shop") = py::none(), arg("journal") = py::none(),
      arg("labels") = std::vector<std::string>(), arg("draws") = levigate::SimulateOptions{}.draws,
      arg("seed") = levigate::SimulateOptions{}.seed, arg("threads") = 0,
      "What to buy: sheets, the one kind that shortens the day most, and labels that matter.\n\n"
      "stack: its labels may be open, here alone; labels: that a shop sells (default: each grade\n"
      "of the drawer's systems, by each of its makers).\n"
      "Raises as plan() and simulate(); BadInput where open labels have over 256 meanings "
      "together.");
}

}  // namespace levigate_python
