// Learning from a journal: what its entries show, and a shop after them.
#include "bind.hpp"
#include "levigate/journal/learn.hpp"
#include "levigate/journal/report.hpp"
#include "levigate/text/sentences.hpp"

namespace levigate_python {

namespace {

using levigate::Entry;
using levigate::FilmSeen;
using levigate::Job;
using levigate::Learned;
using levigate::Observed;
using levigate::Outlier;
using levigate::PaceSeen;
using levigate::ScratchSeen;
using levigate::Shop;
using levigate::Stack;
using levigate::Unmatched;
using py::arg;

/// Its place in the journal, as two members.
template <typename Value>
ValueClass<Value>& placed(ValueClass<Value>& value) {
  return value
      .has(
          "entry", [](const Value& v) { return v.place.entry; },
          "position among the entries given, from 0")
      .has(
          "at", [](const Value& v) { return v.place.at; }, "when, as the entry has it");
}

void bind_observed(py::module_& m) {
  ValueClass<PaceSeen> pace(m, "PaceSeen", "Minutes of a step beside those computed.");
  pace.has("coating", &PaceSeen::coating, "of the job")
      .has("backing", &PaceSeen::backing, "of the sheet")
      .has("sheet", &PaceSeen::sheet, "id")
      .has("zone", &PaceSeen::zone, "empty: all")
      .has("predicted_minutes", &PaceSeen::predicted_minutes, "sanding, without the change")
      .has("actual_minutes", &PaceSeen::actual_minutes, "of all entries of the step together")
      .has("log_sd", &PaceSeen::log_sd, "standard error of the logarithm of what came off a patch");
  placed(pace).finish();
  ValueClass<ScratchSeen> scratch(m, "ScratchSeen", "Scratches beside those computed.");
  scratch.has("coating", &ScratchSeen::coating, "of the job")
      .has("backing", &ScratchSeen::backing, "of the sheet")
      .has("sheet", &ScratchSeen::sheet, "id of the sheet that left them")
      .has("zone", &ScratchSeen::zone, "where")
      .has("predicted_um", &ScratchSeen::predicted_um, "depth or Ra [um]")
      .has("seen_um", &ScratchSeen::seen_um, "depth worked out from the width, or Ra [um]");
  placed(scratch).finish();
  ValueClass<FilmSeen> film(m, "FilmSeen", "Readings of a film beside what its coats make.");
  film.has("coating", &FilmSeen::coating, "of the job")
      .has("zone", &FilmSeen::zone, "where")
      .has("expected_um", &FilmSeen::expected_um, "mean of all rounds [um]")
      .has("sd_um", &FilmSeen::sd_um, "from spot to spot, as the job has it [um]")
      .has("readings_um", &FilmSeen::readings_um, "before the first step [um]");
  placed(film).finish();
  ValueClass<Unmatched> unmatched(m, "Unmatched", "An entry that teaches nothing, and why.");
  unmatched.has(
      "reason", [](const Unmatched& u) { return levigate::sentence(u); }, "a sentence");
  placed(unmatched).finish();
  ValueClass<Observed>(m, "Observed", "What the entries of a journal show of a job.")
      .has("paces", &Observed::paces, "minutes of steps")
      .has("scratches", &Observed::scratches, "depth or roughness")
      .has("films", &Observed::films, "readings before the first step")
      .has("unmatched", &Observed::unmatched, "entries that were meant to teach and do not")
      .finish();
}

}  // namespace

void bind_learn(py::module_& m) {
  bind_observed(m);
  ValueClass<Outlier> outlier(m, "Outlier", "An observation that was set aside.");
  outlier.has("predicted", &Outlier::predicted, "as computed: minutes, or um")
      .has("actual", &Outlier::actual, "as the journal has it")
      .has("t", &Outlier::t, "distance from what all others suggest, in standard deviations")
      .has(
          "message", [](const Outlier& o) { return levigate::sentence(o); }, "a sentence");
  placed(outlier).finish();
  ValueClass<Learned> learned(m, "Learned", "A shop after the entries of a job.");
  learned.has("shop", &Learned::shop, "what is known now")
      .has("outliers", &Learned::outliers, "observations set aside; they stay in the journal")
      .has("unmatched", &Learned::unmatched, "entries that were meant to teach and do not")
      .has("lines_before", &Learned::lines_before, "of the job, that were learned before")
      .finish();
  learned.def_property_readonly(
      "report", py::overload_cast<const Learned&>(&levigate::report),
      "what the shop's numbers say, and lines learned before, a LearnedLine each");
  m.def("observe",
        py::overload_cast<const Job&, const Stack&, const std::vector<Entry>&>(&levigate::observe),
        arg("job"), arg("stack"), arg("entries"),
        "What the entries of a journal show of a job, each beside the computed value.\n\n"
        "Raises BadInput, OutOfRange where job or stack cannot be used.");
  m.def(
      "learn",
      [](const std::optional<Shop>& shop, const Job& job, const Stack& stack,
         const std::vector<Entry>& entries) {
        return levigate::learn(shop.value_or(Shop{}), job, stack, entries);
      },
      arg("shop"), arg("job"), arg("stack"), arg("entries"),
      "A shop after the entries of a job.\n\n"
      "shop: what was known before, or None. Entries are those of one journal, in order, from\n"
      "its first line on: those of the job that the shop has learned are not learned again.\n"
      "Raises BadInput, OutOfRange where job or stack cannot be used.");
}

}  // namespace levigate_python
