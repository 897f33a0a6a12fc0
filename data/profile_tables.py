"""The constexpr tables of data/profiles, as text: what generate.py writes for coatings, backings, blocks and rules."""

import json
from pathlib import Path

INCLUDE = "lib/include/levigate"

# kind -> header, row type, array, what the header says first, fields that are not sourced numbers
TABLES = {
    "backings": ("stack/backing_table.hpp", "BackingProfile", "backing_table", "Backings by name.", ()),
    "blocks": ("stack/block_table.hpp", "BlockProfile", "block_table", "Blocks and pads by name.", ()),
    "coatings": ("surface/coating_table.hpp", "CoatingProfile", "coating_table", "Coatings and solids by name.",
                 ("kind", "two_part")),
    "compounds": ("wheel/compound_table.hpp", "CompoundProfile", "compound_table", "Compounds by name.", ()),
    "cure": ("surface/cure_table.hpp", "CureProfile", "cure_table", "When coats are fully cured, by name.", ()),
    "defects": ("surface/defect_table.hpp", "DefectProfile", "defect_table", "How local defects are taken down.", ()),
    "edges": ("film/edge_table.hpp", "EdgeProfile", "edge_table", "Film on edges.", ()),
    "gauges": ("film/gauge_table.hpp", "GaugeProfile", "gauge_table", "Film gauges by name.", ()),
    "heat": ("wheel/limit_table.hpp", "LimitProfile", "limit_table", "Speed and heat that a surface stands, by name.",
             ()),
    "inspection": ("recover/inspection_table.hpp", "InspectionProfile", "inspection_table",
                   "What an inspection sees, and how marks come about.", ()),
    "model": ("surface/model_table.hpp", "ModelProfile", "model_table", "Constants of the model.", ()),
    "rules": ("stack/rule_table.hpp", "RuleProfile", "rule_table", "Default rules.", ()),
    "wheels": ("wheel/wheel_table.hpp", "WheelProfile", "wheel_table", "Buffing wheels by name.", ()),
}

BASES = {
    "standard", "published table", "computed", "common practice", "from memory", "extrapolated", "assumption",
}

COATING_KIND = """/// Whether there is a film that can be cut through.
enum class CoatingKind {
  coat,   ///< a film on something else: it has a budget
  solid,  ///< bare wood, metal, stone, acrylic: no film
};

"""


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


def header(kind, data):
    path, row_type, array, purpose, plain = TABLES[kind]
    profiles = data["profiles"]
    fields = [key for key in profiles[0] if key not in ("name", "note", *plain)]
    lines = [
        f"// {purpose} Generated from data/profiles/{kind}.json by data/generate.py: do not edit.",
        "#pragma once",
        "",
        "#include <string_view>",
        "",
        '#include "levigate/sourced.hpp"',
        "",
        "namespace levigate::inline v0 {",
        "",
    ]
    text = "\n".join(lines) + "\n"
    if kind == "coatings":
        text += COATING_KIND
    text += f"struct {row_type} {{\n  std::string_view name;\n  std::string_view note;\n"
    for key in plain:
        text += {"kind": "  CoatingKind kind;\n", "two_part": "  bool two_part;\n"}[key]
    text += "".join(f"  Sourced {field};\n" for field in fields)
    text += f"}};\n\n// clang-format off\ninline constexpr {row_type} {array}[] = {{\n"
    for profile in profiles:
        if set(profile) != {"name", "note", *plain, *fields}:
            raise SystemExit(f"{kind}: {profile['name']}: fields differ from the first profile's")
        text += f"    {{{cpp_string(profile['name'])}, {cpp_string(profile['note'])},\n"
        for key in plain:
            value = profile[key]
            text += f"     {'CoatingKind::' + value if key == 'kind' else str(value).lower()},\n"
        for field in fields:
            check_number(f"{kind}: {profile['name']}: {field}", profile[field])
            text += f"     {sourced(profile[field])},  // {field}\n"
        text += "    },\n"
    text += "};\n// clang-format on\n\n}  // namespace levigate\n"
    return path, text


def outputs(root):
    """Path below the root -> text, for every profile file."""
    result = {}
    for file in sorted((Path(root) / "data/profiles").glob("*.json")):
        data = json.loads(file.read_text(encoding="utf-8"))
        if data.get("format") != "levigate.profiles/1" or data.get("kind") != file.stem:
            raise SystemExit(f"{file.name}: wrong format or kind")
        path, text = header(data["kind"], data)
        result[f"{INCLUDE}/{path}"] = text
    return result
