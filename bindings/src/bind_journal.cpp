// The journal: what happened at the bench, kept in a file that crashes do not spoil.
#include <pybind11/stl/filesystem.h>

#include "as_json.hpp"
#include "levigate/io/entry.hpp"
#include "levigate/io/journal.hpp"
#include "levigate/io/read_journal.hpp"
#include "levigate/journal/done.hpp"
#include "levigate/journal/slip.hpp"
#include "levigate/journal/struck.hpp"

namespace levigate_python {

namespace {

using levigate::Entry;
using levigate::JournalReading;
using levigate::Mark;
using levigate::Torn;
using py::arg;

/// A journal by its path.
struct Journal {
  std::filesystem::path path;
};

/// The present moment with the offset of the place, as RFC 3339 writes it.
std::string now() {
  const py::object datetime = py::module_::import("datetime");
  return py::str(datetime.attr("datetime")
                     .attr("now")(datetime.attr("timezone").attr("utc"))
                     .attr("astimezone")()
                     .attr("isoformat")(arg("timespec") = "seconds"));
}

Entry entry_from(const std::string& kind, const std::string& job,
                 const std::optional<std::string>& at, const std::string& zone,
                 const std::string& sheet, std::optional<double> minutes,
                 std::optional<double> sheets_used, std::optional<double> removal_um,
                 std::optional<double> overcut, std::optional<double> direction_deg,
                 const std::vector<double>& readings_um, std::optional<double> width_um,
                 std::optional<double> ra_um, const std::optional<Mark>& mark,
                 const std::string& text, const std::string& tool, std::optional<double> area_cm2,
                 const std::vector<double>& before_um, const std::vector<double>& after_um,
                 std::optional<double> before_g, std::optional<double> after_g,
                 std::optional<std::size_t> line) {
  const Entry entry{levigate::entry_kind_named(kind),
                    at ? *at : now(),
                    job,
                    zone,
                    sheet,
                    minutes,
                    sheets_used,
                    removal_um,
                    overcut,
                    direction_deg,
                    readings_um,
                    width_um,
                    ra_um,
                    mark,
                    text,
                    tool,
                    area_cm2,
                    before_um,
                    after_um,
                    before_g,
                    after_g,
                    line};
  levigate::validate(entry, "Entry");
  return entry;
}

Entry append(const Journal& journal, const Entry& entry) {
  const py::gil_scoped_release others_may_run;
  levigate::append(journal.path, entry);
  return entry;
}

void bind_entry(py::module_& m) {
  ValueClass<Entry> entry = describe_class<Entry>(m);
  entry.finish();
  entry.def(py::init(&entry_from), py::kw_only(), arg("kind"), arg("job"), arg("at") = py::none(),
            arg("zone") = "", arg("sheet") = "", arg("minutes") = py::none(),
            arg("sheets_used") = py::none(), arg("removal_um") = py::none(),
            arg("overcut") = py::none(), arg("direction_deg") = py::none(),
            arg("readings_um") = std::vector<double>{}, arg("width_um") = py::none(),
            arg("ra_um") = py::none(), arg("mark") = py::none(), arg("text") = "", arg("tool") = "",
            arg("area_cm2") = py::none(), arg("before_um") = std::vector<double>{},
            arg("after_um") = std::vector<double>{}, arg("before_g") = py::none(),
            arg("after_g") = py::none(), arg("line") = py::none(),
            "An entry; at: absent, now.\n\n"
            "Raises BadInput where the kind needs more or does not have all of this; OutOfRange.");
  entry.def_static(
      "from_json", [](const std::string& text) { return levigate::entry_from_json(text); },
      arg("text"),
      "From a line of format levigate.journal/1.\n\nRaises BadInput with pointer, OutOfRange.");
  entry.def_static(
      "from_dict",
      [](const py::dict& data) {
        return levigate::entry_from_json(json_text(data, levigate::journal_format));
      },
      arg("data"), "From a dictionary as in a journal.\n\nRaises as from_json().");
  entry.def(
      "require_likely_readings",
      [](const Entry& self, const levigate::Job& job) {
        levigate::require_likely_readings(self, job);
      },
      arg("job"),
      "Refuses readings of a film that are most likely a slip of the unit.\n\n"
      "Raises BadInput where one is above 1.5 times or below a tenth of the film of the job.");
  entry.def("to_json", py::overload_cast<const Entry&>(&levigate::to_json),
            "The entry as a line of a journal, newline included.");
  entry.def(
      "to_dict", [](const Entry& e) -> py::dict { return from_json_text(levigate::to_json(e)); },
      "The entry as a dictionary, as in a journal.");
}

}  // namespace

void bind_journal(py::module_& m) {
  m.attr("ENTRY_KINDS") = names_of<levigate::EntryKind>();
  bind_entry(m);
  ValueClass<Torn>(m, "Torn", "A line of a journal of which a crash left a piece.")
      .has("line", &Torn::line, "in the file, from 1")
      .has("bytes", &Torn::bytes, "length of the piece")
      .has("message", &Torn::message, "a sentence")
      .finish();
  ValueClass<JournalReading> reading(m, "JournalReading", "What a journal holds.");
  reading.has("entries", &JournalReading::entries, "in the order of the lines")
      .has("lines", &JournalReading::lines, "line of each entry, from 1")
      .has(
          "struck",
          [](const JournalReading& self) {
            const std::vector<bool> struck = levigate::struck(self.entries);
            std::vector<int> lines;
            for (std::size_t i = 0; i < struck.size(); ++i)
              if (struck[i]) lines.push_back(self.lines[i]);
            return lines;
          },
          "lines that a later one strikes which is not struck itself")
      .has("torn", &JournalReading::torn, "lines that a crash cut; they are skipped")
      .finish();
  reading.def_static(
      "from_json",
      [](const std::string& text, const std::string& file) {
        return levigate::journal_from_json(text, file);
      },
      arg("text"), arg("file") = "",
      "From the lines of a journal as text.\n\n"
      "file: its name for messages. Raises as Journal.read().");
  ValueClass<Journal> journal(
      m, "Journal", "A file of format levigate.journal/1: one entry a line, lines only added.");
  journal.has("path", &Journal::path, "where it is").finish();
  journal.def(py::init([](const std::filesystem::path& path) { return Journal{path}; }),
              arg("path"), "The journal at a path; it need not be there yet.");
  journal.def(
      "append", &append, arg("entry"),
      "Adds an entry; returns it when the line is on disk.\n\n"
      "Writers wait for each other. Raises BadInput where the file cannot be written, or a line\n"
      "that is to be struck is not there.");
  journal.def(
      "append",
      [](const Journal& self, const py::kwargs& members) {
        return append(self, py::type::of<Entry>()(**members).cast<Entry>());
      },
      "Adds the entry of these members: see Entry().\n\nRaises as Entry() and append(entry).");
  journal.def(
      "read", [](const Journal& self) { return levigate::read_journal(self.path); },
      py::call_guard<py::gil_scoped_release>(),
      "All entries, and the lines that a crash cut. Changes nothing.\n\n"
      "Raises BadInput with pointer and line for a line that is wrong and not cut; OutOfRange.");
  m.def(
      "jobs", [](const std::vector<Entry>& entries) { return levigate::jobs(entries); },
      arg("entries"),
      "Names of the jobs in a journal, in the order of their first lines that count.");
  m.def(
      "jobs_nearly_named",
      [](const std::vector<Entry>& entries, const std::string& job) {
        return levigate::jobs_nearly_named(entries, job);
      },
      arg("entries"), arg("job"),
      "Names of other jobs in a journal that are at most two letters off this one.\n\n"
      "A slip of the finger is likely.");
  m.def(
      "done_steps",
      [](const std::vector<Entry>& entries, const std::string& job) {
        return levigate::done_steps(entries, job);
      },
      arg("entries"), arg("job"),
      "The steps of a job that were ended, in the order of the lines.\n\n"
      "The direction is that of the step begun with the same sheet and zone before.");
}

}  // namespace levigate_python
