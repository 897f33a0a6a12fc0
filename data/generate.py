#!/usr/bin/env python3
"""Write the constexpr tables of the headers from the JSON files of data/, which are the truth.

    python3 data/generate.py            write the headers
    python3 data/generate.py --check    write nothing; exit 1 and show the difference where a header is stale

A number is printed text from the page to the compiler: it is checked for its shape and never passes through a
float here, so the digits of the header are the digits of the page. An unknown key, a source that is named and
not there, or there and not named, is an error.

Grade tables and sheen bands are made here, the tables of data/profiles in profile_tables.py. To add a table, add
the text of its header to outputs().
"""

import difflib
import json
import re
import sys
from pathlib import Path

import profile_tables

DATA = Path(__file__).resolve().parent
ROOT = DATA.parent

BASES = profile_tables.BASES

class DataError(Exception):
    """A file of data/ that does not have the shape it must have."""


def load(path, tag):
    """The object in a JSON file with that format tag; a key given twice is an error."""

    def unique(pairs):
        keys = [key for key, _ in pairs]
        if len(set(keys)) != len(keys):
            raise DataError(f"{path.name}: a key is given twice among {keys}")
        return dict(pairs)

    content = json.loads(path.read_text(encoding="utf-8"), object_pairs_hook=unique)
    if content.get("format") != tag:
        raise DataError(f"{path.name}: format is {content.get('format')!r}, not {tag!r}")
    return content


def expect_keys(value, required, optional, where):
    missing, unknown = required - value.keys(), value.keys() - required - optional
    if missing or unknown:
        raise DataError(f"{where}: missing keys {sorted(missing)}, unknown keys {sorted(unknown)}")


def printed(text, where):
    """The digits of a number as printed: a valid C++ literal of type int or double."""
    if not isinstance(text, str) or not re.fullmatch(r"(0|[1-9][0-9]*)(\.[0-9]+)?", text):
        raise DataError(f"{where}: {text!r} is not a printed decimal number in quotes")
    return text


def literal(text):
    """A C++ string literal of ASCII text."""
    if not text.isascii() or not text.isprintable():
        raise DataError(f"text must be printable ASCII: {text!r}")
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def source(entry, where):
    """The C++ Source of an entry with a basis and a citation."""
    expect_keys(entry, {"basis", "citation"}, set(), where)
    if entry["basis"] not in BASES or not entry["citation"]:
        raise DataError(f"{where}: unknown basis or empty citation in {entry}")
    return f"{{Basis::{entry['basis'].replace(' ', '_')}, {literal(entry['citation'])}}}"


# ---- grade tables: data/standards/*.json -> grade/work/tables.hpp

SYSTEMS = ["fepa_p", "cami", "jis", "fepa_f", "micron", "jis_sedimentation", "fepa_f_tube"]
SIZES = ["median_um", "tolerance_um", "coarse_limit_um", "fine_limit_um"]
FILE_ONLY = {"largest_um"}  # printed, so kept; no formula of the library asks for it yet
LABEL = {
    "FEPA P": r"P([1-9][0-9]*)", "CAMI": r"([1-9][0-9]*)", "JIS": r"#([1-9][0-9]*)",
    "FEPA F": r"F([1-9][0-9]*)", "JIS sedimentation": r"#([1-9][0-9]*)", "FEPA F tube": r"F([1-9][0-9]*)",
}


def grade_row(row, section, system, sources, used, where):
    """One row of a table as a C++ initializer: printed digits, sources, and what a reader must know."""
    expect_keys(row, {"label"}, {*SIZES, *FILE_ONLY, "fine_percent", "also_printed", "note"}, where)

    def use(key):
        if key not in sources:
            raise DataError(f"{where}: no source {key!r} in this file")
        used.add(key)
        return key

    def sourced(pair):
        return printed(pair[0], where), use(pair[1])

    values = {size: sourced(row[size]) for size in SIZES if size in row}
    for size in FILE_ONLY & row.keys():
        sourced(row[size])
    limit_sources = {values[size][1] for size in ("coarse_limit_um", "fine_limit_um") if size in values}
    if len(limit_sources) > 1:
        raise DataError(f"{where}: the two limits name two sources, and a grade holds one for both")

    number = "{}"
    if system in LABEL:
        match = re.fullmatch(LABEL[system], row["label"])
        if not match:
            raise DataError(f"{where}: {row['label']!r} does not look like a label of {system}")
        number = match[1]
    elif values["median_um"][0] != printed(row["label"], where):
        raise DataError(f"{where}: label and size of a micron row differ")

    fine_percent = "{}"
    if "fine_limit_um" in values:
        fine_percent = printed(row.get("fine_percent", section.get("fine_percent")), where)
    notes = [note for note in (section.get("note"), row.get("note")) if note]
    for value, key in map(sourced, row.get("also_printed", [])):
        notes.append(f"also printed: {value} um ({sources[key]['citation']})")

    name = system.lower().replace(" ", "_")
    cells = [
        literal(row["label"]), number,
        *(values[size][0] if size in values else "{}" for size in SIZES), fine_percent,
        *(f"{name}_{key}" if key else "{}" for key in (
            values.get("median_um", (None, None))[1],
            values.get("tolerance_um", (None, None))[1],
            min(limit_sources, default=None),
        )),
        literal(section["edition"]), literal(section["method"]), literal("; ".join(notes)),
    ]
    return "    {" + ", ".join(cells) + "},"


def grade_table(path):
    table = load(path, "levigate.standard/1")
    expect_keys(table, {"format", "system", "title", "unit", "notes", "sources", "sections"}, set(), path.name)
    system, name = table["system"], path.stem
    if system.lower().replace(" ", "_") != name or table["unit"] != "um":
        raise DataError(f"{path.name}: system {system!r} or unit {table['unit']!r} does not fit the file")
    used, rows, labels = set(), [], []
    for section in table["sections"]:
        expect_keys(section, {"edition", "method", "rows"}, {"fine_percent", "note"}, path.name)
        for row in section["rows"]:
            labels.append(row.get("label"))
            where = f"{path.name}, row {row.get('label')!r}"
            rows.append(grade_row(row, section, system, table["sources"], used, where))
    if len(set(labels)) != len(labels):
        raise DataError(f"{path.name}: a label stands in two rows")
    if used != table["sources"].keys():
        raise DataError(f"{path.name}: sources that no number names: {sorted(table['sources'].keys() - used)}")
    lines = [f"// {table['title']}."]
    for key, entry in table["sources"].items():
        lines.append(f"inline constexpr Source {name}_{key}{source(entry, path.name)};")
    lines += [f"inline constexpr GradeRow {name}_rows[] = {{", *rows, "};"]
    return lines


def grade_tables():
    files = sorted(path.stem for path in (DATA / "standards").glob("*.json"))
    if files != sorted([*SYSTEMS, "sheen_bands"]):
        raise DataError(f"data/standards holds {files}, not sheen_bands and the systems {sorted(SYSTEMS)}")
    lines = [
        "// The grade tables as printed, one row a grade. Generated from data/standards by data/generate.py: do not edit.",
        "#pragma once",
        "",
        "#include <span>",
        "",
        '#include "levigate/grade/row.hpp"',
        "",
        "// clang-format off",
        "namespace levigate::inline v0 {",
        "",
        "namespace detail {",
    ]
    for system in SYSTEMS:
        lines += ["", *grade_table(DATA / "standards" / f"{system}.json")]
    lines += [
        "",
        "}  // namespace detail",
        "",
        "/// The rows of a system as printed, coarse to fine.",
        "constexpr std::span<const GradeRow> grade_rows(System system) noexcept {",
        "  switch (system) {",
        *(f"    case System::{system}: return detail::{system}_rows;" for system in SYSTEMS),
        "  }",
        "  return {};",
        "}",
        "",
        "}  // namespace levigate",
    ]
    return "\n".join(lines) + "\n"


# ---- names of sheen: data/standards/sheen_bands.json -> surface/sheen_band_table.hpp

SHEEN_LIMITS = ["low_gu", "high_gu", "low_85_gu", "high_85_gu"]
SHEEN_HEAD = """\
// Names of sheen by gloss as printed. Generated from data/standards/sheen_bands.json by data/generate.py: do not edit.
#pragma once

#include <optional>
#include <string_view>

#include "levigate/source.hpp"

namespace levigate::inline v0 {

/// A name of sheen and the gloss it stands for, limits included; a limit that is not printed is absent.
struct SheenBand {
  std::string_view scheme;
  std::string_view name;
  std::optional<double> low_gu;      ///< at 60 degrees [GU]
  std::optional<double> high_gu;     ///< at 60 degrees [GU]
  std::optional<double> low_85_gu;   ///< at 85 degrees [GU]
  std::optional<double> high_85_gu;  ///< at 85 degrees [GU]
  Source source;
};

// clang-format off
inline constexpr SheenBand sheen_band_table[] = {
"""


def sheen_bands():
    path = DATA / "standards/sheen_bands.json"
    table = load(path, "levigate.sheen/1")
    expect_keys(table, {"format", "title", "unit", "notes", "sources", "sections"}, set(), path.name)
    lines, used = [], set()
    for section in table["sections"]:
        expect_keys(section, {"scheme", "edition", "method", "note", "rows"}, set(), path.name)
        for row in section["rows"]:
            where = f"{path.name}, {section['scheme']} {row.get('name')!r}"
            expect_keys(row, {"name"}, set(SHEEN_LIMITS), where)
            named = {row[key][1] for key in SHEEN_LIMITS if key in row}
            if len(named) != 1 or not named <= table["sources"].keys():
                raise DataError(f"{where}: needs one source of this file, names {sorted(named)}")
            used |= named
            limits = [printed(row[key][0], where) if key in row else "{}" for key in SHEEN_LIMITS]
            cells = [literal(section["scheme"]), literal(row["name"]), *limits,
                     source(table["sources"][named.pop()], where)]
            lines.append("    {" + ", ".join(cells) + "},")
    if used != table["sources"].keys():
        raise DataError(f"{path.name}: sources that no number names: {sorted(table['sources'].keys() - used)}")
    return SHEEN_HEAD + "\n".join(lines) + "\n};\n// clang-format on\n\n}  // namespace levigate\n"


def outputs():
    """Path below the root -> text, for every generated header."""
    return {
        "lib/include/levigate/grade/work/tables.hpp": grade_tables(),
        "lib/include/levigate/surface/sheen_band_table.hpp": sheen_bands(),
        **profile_tables.outputs(ROOT),
    }


def main(arguments):
    if arguments not in ([], ["--check"]):
        print(__doc__, file=sys.stderr)
        return 2
    try:
        headers = outputs()
    except (DataError, ValueError) as error:
        print(error, file=sys.stderr)
        return 1
    stale = False
    for name, text in headers.items():
        path = ROOT / name
        old = path.read_text(encoding="utf-8") if path.exists() else ""
        if old == text:
            continue
        if arguments:
            stale = True
            sys.stdout.writelines(
                difflib.unified_diff(old.splitlines(True), text.splitlines(True), f"{name} (as it is)",
                                     f"{name} (from data/)"))
        else:
            path.write_text(text, encoding="utf-8")
            print(f"wrote {name}")
    return int(stale)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
