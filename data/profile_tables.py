"""The constexpr tables of data/profiles, as text: what generate.py writes for coatings, backings and the others below.

Each file is a table of its own, but for the coatings: data/profiles/coatings holds one file a coating. Beside its rows a
table has its columns: the name of each quantity, and where its number stands in a row.
"""

import json
from pathlib import Path

INCLUDE = "lib/include/levigate"

# kind -> header, row type, array, what the header says first
TABLES = {
    "backings": ("stack/backing_table.hpp", "BackingProfile", "backing_table", "Backings by name."),
    "blocks": ("stack/block_table.hpp", "BlockProfile", "block_table", "Blocks and pads by name."),
    "compounds": ("wheel/compound_table.hpp", "CompoundProfile", "compound_table", "Compounds by name."),
    "defects": ("surface/defect_table.hpp", "DefectProfile", "defect_table", "How local defects are taken down."),
    "edges": ("film/edge_table.hpp", "EdgeProfile", "edge_table", "Film on edges."),
    "films": ("film/usual_film_table.hpp", "UsualFilmProfile", "usual_film_table", "A film that nobody measured."),
    "gauges": ("film/gauge_table.hpp", "GaugeProfile", "gauge_table", "Film gauges by name."),
    "guns": ("film/gun_table.hpp", "GunProfile", "gun_table", "Spray guns by name."),
    "handling": ("plan/handling_table.hpp", "HandlingProfile", "handling_table", "What two hands hold to a wheel."),
    "heat": ("wheel/limit_table.hpp", "LimitProfile", "limit_table",
             "Speed and heat that a surface stands that is no coating, by name."),
    "inspection": ("surface/inspection_table.hpp", "InspectionProfile", "inspection_table",
                   "What an inspection sees, and how marks come about."),
    "machines": ("stack/machine_table.hpp", "MachineProfile", "machine_table", "Hand-held machines by name."),
    "prior": ("journal/prior_table.hpp", "PriorProfile", "prior_table", "What is believed before any journal."),
    "model": ("surface/model_table.hpp", "ModelProfile", "model_table", "Constants of the model."),
    "patch": ("risk/patch_table.hpp", "PatchProfile", "patch_table", "A patch as calibrate proposes it."),
    "peel": ("surface/peel_table.hpp", "PeelProfile", "peel_table", "How well orange peel is told."),
    "peel_heights": ("surface/peel_height_table.hpp", "PeelHeightProfile", "peel_height_table", "Orange peel by its look."),
    "rules": ("stack/rule_table.hpp", "RuleProfile", "rule_table", "Default rules."),
    "search": ("plan/search_table.hpp", "SearchProfile", "search_table", "What the search may choose, and what it calls equal."),
    "sheets": ("stack/sheet_size_table.hpp", "SheetSizeProfile", "sheet_size_table", "Usual sizes of a sheet by its backing."),
    "wheels": ("wheel/wheel_table.hpp", "WheelProfile", "wheel_table", "Buffing wheels by name."),
}

# Numbers that a row may lack, as what they are of does not have it: a rotary has no orbit, a sander no compound.
OPTIONAL = {"machines": ["orbit_mm", "free_rpm", "friction", "heat_share"]}

BASES = {
    "standard", "published table", "computed", "common practice", "from memory", "extrapolated", "assumption",
}

ALSO_MEMBER = "  std::span<const std::string_view> also;  ///< other names that people call it by\n"

COATING_HEAD = """\
// Coatings and solids by name. Generated from data/profiles/coatings by data/generate.py: do not edit.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string_view>

#include "levigate/choices.hpp"
#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

/// Whether there is a film that can be cut through.
enum class CoatingKind {
  coat,   ///< a film on something else: it has a budget
  solid,  ///< bare wood, metal, stone, acrylic: no film
};

constexpr std::string_view to_string(CoatingKind kind) noexcept {
  switch (kind) {
    case CoatingKind::coat: return "coat";
    case CoatingKind::solid: return "solid";
  }
  return "";
}

template <>
inline constexpr auto choices<CoatingKind> = std::to_array({CoatingKind::coat, CoatingKind::solid});

/// A coating as its file has it. What is not known of it is absent.
struct CoatingProfile {
  std::string_view name;
  std::string_view note;
""" + ALSO_MEMBER + """\
  CoatingKind kind;
  bool two_part;
  std::optional<SourcedFact> redissolves;  ///< a fresh coat melts the one below
"""
COATING_KINDS = {"coat", "solid"}
COATING_NUMBERS = ["hardness_mpa", "cutting_efficiency", "refractive_index"]
# Parts that a coating may lack as a whole: how it cures, what comes back of a levelled peel, what it stands from a wheel, and how it is sprayed.
COATING_PARTS = {
    "cure": ["hard_cure_h", "shrink"],
    "shrink_back": ["comes_back", "rest_h"],
    "limits": ["speed_m_s", "effusivity", "rise_k"],
    "spray": ["volume_solids", "dry_um_per_coat"],
}
COATING_KEYS = {"format", "name", "note", "order", "kind", "two_part", *COATING_NUMBERS}


def cpp_string(text):
    return json.dumps(text, ensure_ascii=False)


def cpp_number(value):
    return repr(float(value))


def check_number(where, number):
    keys = {"value", "low", "high", "basis", "citation"}
    if set(number) != keys:
        raise SystemExit(f"{where}: keys are {sorted(number)}, wanted {sorted(keys)}")
    if not number["low"] <= number["value"] <= number["high"]:
        raise SystemExit(f"{where}: value {number['value']} is outside its band")
    if number["basis"] not in BASES:
        raise SystemExit(f"{where}: basis {number['basis']!r} is not one of {sorted(BASES)}")
    if not number["citation"].strip():
        raise SystemExit(f"{where}: no citation")


def sourced(number):
    basis = "Basis::" + number["basis"].replace(" ", "_")
    values = ", ".join(cpp_number(number[key]) for key in ("value", "low", "high"))
    return f"{{{values}, {{{basis}, {cpp_string(number['citation'])}}}}}"


def columns(row_type, array, fields, optional=()):
    """The names of a table's quantities, and where the number of each stands in a row."""
    cells = [f'    {{"{field}", &{row_type}::{field}}},\n' for field in fields]
    cells += [f'    {{"{field}", nullptr, &{row_type}::{field}}},\n' for field in optional]
    name = array.replace("_table", "_columns")
    return f"\ninline constexpr TableField<{row_type}> {name}[] = {{\n{''.join(cells)}}};\n"


def folded(name):
    """A name as the reader of names compares it: see same_name() in detail/names.hpp."""
    return "".join(c for c in name.lower() if c not in " -_/.")


def also_of(where, profile):
    """The other names of a profile. They need a basis, as its numbers do."""
    if "also" not in profile:
        return []
    also = profile["also"]
    if set(also) != {"names", "basis", "citation"} or not also["names"]:
        raise SystemExit(f"{where}: also holds {sorted(also)}, wanted names, basis and citation")
    check_number(where, {"value": 0, "low": 0, "high": 0, "basis": also["basis"], "citation": also["citation"]})
    return also["names"]


def also_arrays(array, profiles):
    """C++ arrays of the other names, and for each profile what its row says of them."""
    owners = {}
    lines, cells = [], []
    for at, profile in enumerate(profiles):
        names = also_of(f"{array}: {profile['name']}", profile)
        for name in [profile["name"], *names]:
            if owners.setdefault(folded(name), profile["name"]) != profile["name"]:
                raise SystemExit(f"{array}: {name!r} is a name of {owners[folded(name)]} and of {profile['name']}")
        if len({folded(name) for name in [profile["name"], *names]}) <= len(names):
            raise SystemExit(f"{array}: {profile['name']}: a name stands twice, but for case and spaces")
        cells.append("{}")
        if names:
            cells[-1] = f"{array.replace('_table', '_also')}_{at}"
            lines.append(f"inline constexpr std::string_view {cells[-1]}[] = {{{', '.join(map(cpp_string, names))}}};\n")
    return "".join(lines) + ("\n" if lines else ""), cells


TAIL = "// clang-format on\n\n}  // namespace levigate\n"


def header(kind, data):
    path, row_type, array, purpose = TABLES[kind]
    profiles = data["profiles"]
    optional = OPTIONAL.get(kind, [])
    fields = [key for key in profiles[0] if key not in ("name", "note", "also", *optional)]
    arrays, also = also_arrays(array, profiles)
    lines = [
        f"// {purpose} Generated from data/profiles/{kind}.json by data/generate.py: do not edit.",
        "#pragma once",
        "",
        *(["#include <optional>"] if optional else []),
        *(["#include <span>"] if arrays else []),
        "#include <string_view>",
        "",
        '#include "levigate/sourced.hpp"',
        "",
        "namespace levigate::inline v0 {",
        "",
    ]
    text = "\n".join(lines) + "\n"
    text += f"struct {row_type} {{\n  std::string_view name;\n  std::string_view note;\n"
    text += ALSO_MEMBER if arrays else ""
    text += "".join(f"  Sourced {field};\n" for field in fields)
    text += "".join(f"  std::optional<Sourced> {field};\n" for field in optional)
    text += f"}};\n\n// clang-format off\n{arrays}inline constexpr {row_type} {array}[] = {{\n"
    for profile, names in zip(profiles, also):
        if set(profile) - {"also", *optional} != {"name", "note", *fields}:
            raise SystemExit(f"{kind}: {profile['name']}: fields differ from the first profile's")
        text += f"    {{{cpp_string(profile['name'])}, {cpp_string(profile['note'])},\n"
        text += f"     {names},  // also\n" if arrays else ""
        for field in fields:
            check_number(f"{kind}: {profile['name']}: {field}", profile[field])
            text += f"     {sourced(profile[field])},  // {field}\n"
        for field in optional:
            if field in profile:
                check_number(f"{kind}: {profile['name']}: {field}", profile[field])
            cell = f"Sourced{sourced(profile[field])}" if field in profile else "{}"
            text += f"     {cell},  // {field}\n"
        text += "    },\n"
    return path, text + "};\n" + columns(row_type, array, fields, optional) + TAIL


def fact(where, entry):
    """The C++ SourcedFact of what is so or not so."""
    keys = {"value", "basis", "citation"}
    if set(entry) != keys or not isinstance(entry["value"], bool):
        raise SystemExit(f"{where}: wanted true or false with {sorted(keys)}")
    check_number(where, {**entry, "value": 0, "low": 0, "high": 0})
    basis = "Basis::" + entry["basis"].replace(" ", "_")
    return f"SourcedFact{{{cpp_bool(entry['value'])}, {{{basis}, {cpp_string(entry['citation'])}}}}}"


def cpp_bool(value):
    return "true" if value else "false"


def check_coating(file, coating):
    """Stops at a coating that lacks a key, has another one, or does not have the name of its file."""
    missing = COATING_KEYS - coating.keys()
    unknown = coating.keys() - COATING_KEYS - COATING_PARTS.keys() - {"also", "redissolves"}
    if missing or unknown:
        raise SystemExit(f"{file.name}: missing keys {sorted(missing)}, unknown keys {sorted(unknown)}")
    if coating["format"] != "levigate.coating/1" or coating["kind"] not in COATING_KINDS:
        raise SystemExit(f"{file.name}: wrong format or kind")
    if coating["name"].replace(" ", "-") != file.stem:
        raise SystemExit(f"{file.name}: holds {coating['name']!r}, which is no name for this file")
    if not isinstance(coating["two_part"], bool) or type(coating["order"]) is not int:
        raise SystemExit(f"{file.name}: two_part is true or false, order a whole number")
    for part, fields in COATING_PARTS.items():
        if part in coating and set(coating[part]) - {"note"} != set(fields):
            raise SystemExit(f"{file.name}: {part} holds {sorted(coating[part])}, wanted {fields}")


def coating_row(file, coating, also):
    numbers = {field: coating[field] for field in COATING_NUMBERS}
    for part, fields in COATING_PARTS.items():
        numbers.update({field: coating.get(part, {}).get(field) for field in fields})
    for field, number in numbers.items():
        if number is not None:
            check_number(f"{file.name}: {field}", number)
    cells = [
        f"{also},  // also",
        f"CoatingKind::{coating['kind']},",
        f"{cpp_bool(coating['two_part'])},",
        (fact(f"{file.name}: redissolves", coating["redissolves"]) if "redissolves" in coating else "{}")
        + ",  // redissolves",
    ]
    for field, number in numbers.items():
        value = "{}" if number is None else sourced(number)
        if number is not None and field not in COATING_NUMBERS:
            value = "Sourced" + value
        cells.append(f"{value},  // {field}")
    head = f"    {{{cpp_string(coating['name'])}, {cpp_string(coating['note'])},\n"
    return head + "".join(f"     {cell}\n" for cell in cells) + "    },\n"


def coating_header(folder):
    """The table of the coatings: one file each, by their order, then by the names of the files."""
    coatings = {file: json.loads(file.read_text(encoding="utf-8")) for file in sorted(folder.glob("*.json"))}
    for file, coating in coatings.items():
        check_coating(file, coating)
    optional = [field for fields in COATING_PARTS.values() for field in fields]
    order = sorted(coatings, key=lambda file: coatings[file]["order"])
    arrays, also = also_arrays("coating_table", [coatings[file] for file in order])
    text = COATING_HEAD
    text += "".join(f"  Sourced {field};\n" for field in COATING_NUMBERS)
    text += "".join(f"  std::optional<Sourced> {field};\n" for field in optional)
    text += f"}};\n\n// clang-format off\n{arrays}inline constexpr CoatingProfile coating_table[] = {{\n"
    text += "".join(coating_row(file, coatings[file], names) for file, names in zip(order, also))
    return text + "};\n" + columns("CoatingProfile", "coating_table", COATING_NUMBERS, optional) + TAIL


def outputs(root):
    """Path below the root -> text, for every profile file and the folder of coatings."""
    profiles = Path(root) / "data/profiles"
    result = {f"{INCLUDE}/surface/coating_table.hpp": coating_header(profiles / "coatings")}
    for file in sorted(profiles.glob("*.json")):
        data = json.loads(file.read_text(encoding="utf-8"))
        if data.get("format") != "levigate.profiles/1" or data.get("kind") != file.stem:
            raise SystemExit(f"{file.name}: wrong format or kind")
        path, text = header(data["kind"], data)
        result[f"{INCLUDE}/{path}"] = text
    return result
