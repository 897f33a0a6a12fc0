"""Writes the schemas of results, shops and journals from what the library says of its values.

    .build/gcc/tests/descriptions | python3 data/schemas.py [--check]

Keys, ranges, units and sentences are those of the descriptions in the headers. What stands here is
what no member says alone. Those of jobs and stacks are written by hand: their parts have forms of
their own.
"""

import json
import re
import sys
from pathlib import Path

SCHEMAS = Path(__file__).parent / "schema"

WHOLE = "Reads back equal. Every key is there. A value that does not apply is null or empty."
ABOUT = {
    "levigate.plan/1": f"{WHOLE} Minutes and sheets are uncertain by a factor of 2 to 3 until calibrated.",
    "levigate.simulation/1": WHOLE,
    "levigate.way_back/1": WHOLE,
    "levigate.shop/1": "Factors on computed values. Each is as likely below its median as above. In 9 of 10 cases it is between low and high. Edit a factor to move its median. Edit low and high to change its spread. An absent value is as before any journal.",
    "levigate.journal/1": "A journal is a text file with one such object per line. Programs only add lines. The order of the lines is that of events.",
}

# Names of parts, where they are not that of the type.
PARTS = {
    "PlanPoint": "way",
    "Totals": "total",
    "SimulatedStep": "step",
    "SimulatedZone": "zone",
    "LearnedPair": "rate",
    "LearnedScratch": "scratch",
    "LearnedFilm": "film",
    "LearnedJob": "job",
    "LearnedNoise": "noise",
}

# A result of an older version has a mark without these.
SPARSE_IN_RESULTS = {"Mark"}

ALWAYS = ["format", "at", "kind", "job", "text"]


def entry_of(kind, needs, may=(), **more):
    return {
        "if": {"properties": {"kind": {"const": kind}}},
        "then": {
            "required": needs,
            "propertyNames": {"enum": [*ALWAYS, *needs, *may]},
            **more,
        },
    }


def only_with(key, **members):
    """A key that goes with these members alone."""
    return {"if": {"properties": members}, "else": {"not": {"required": [key]}}}


# Rules across members, of files that one writes.
RULES = {
    "Entry": [
        entry_of("step begun", ["sheet"], ["zone", "direction_deg"]),
        entry_of("step ended", ["sheet", "minutes"], ["zone", "sheets_used", "removal_um"]),
        entry_of("cleaned", ["sheet"]),
        entry_of("film read", ["zone", "readings_um"]),
        entry_of(
            "scratch read",
            ["zone", "sheet"],
            ["width_um", "ra_um"],
            oneOf=[{"required": ["width_um"]}, {"required": ["ra_um"]}],
        ),
        entry_of("mark found", ["mark"]),
        entry_of("note", ["text"]),
    ],
    "Mark": [
        {
            "if": {
                "properties": {
                    "seen": {"enum": ["loupe", "comparison"]},
                    "kind": {"enum": ["scratch", "cluster", "haze", "swirl"]},
                }
            },
            "then": {"required": ["width_um"]},
            "else": {"not": {"required": ["width_um"]}},
        },
        only_with("count", kind={"const": "cluster"}),
        only_with("height_um", kind={"const": "wave"}),
    ],
}

# What a member takes beside its kind.
TEXTS = {
    ("Entry", "at"): {
        "pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}[Tt][0-9]{2}:[0-9]{2}:[0-9]{2}(\\.[0-9]+)?([Zz]|[+-][0-9]{2}:[0-9]{2})$",
        "format": "date-time",
    }
}


def number(value):
    return int(value) if value == int(value) else value


class Writer:
    """The schema of one format."""

    def __init__(self, types, whole):
        self.types = types
        self.whole = whole
        self.parts = {}

    def schema(self, format_name, root):
        part = self.object_of(root)
        about = part.pop("description")
        schema = {
            "$schema": "https://json-schema.org/draft/2020-12/schema",
            "$id": format_name,
            "title": about.rstrip("."),
            "description": ABOUT[format_name],
            "type": "object",
            "properties": {"format": {"const": format_name}, **part.pop("properties")},
            "required": ["format", *part.pop("required")],
            **{key: value for key, value in part.items() if key != "type"},
        }
        if self.parts:
            schema["$defs"] = self.parts
        return schema

    def reference(self, name):
        part = PARTS.get(name) or re.sub(r"(?<!^)(?=[A-Z])", "_", name).lower()
        if part not in self.parts:
            self.parts[part] = None  # keeps its place, and ends a circle
            self.parts[part] = self.object_of(name)
        return {"$ref": f"#/$defs/{part}"}

    def members_of(self, name):
        for member in self.types[name]["members"]:
            if member.get("spread"):
                yield from self.members_of(member["kind"]["of"])
            else:
                yield name, member

    def object_of(self, name):
        properties, required = {}, []
        for owner, member in self.members_of(name):
            properties[member["name"]] = {
                **self.told(member),
                **self.value(member, member["kind"]),
                **TEXTS.get((owner, member["name"]), {}),
            }
            if self.is_required(name, member):
                required.append(member["name"])
        part = {
            "description": self.types[name]["about"],
            "type": "object",
            "properties": properties,
            "required": required,
            "additionalProperties": False,
        }
        if name in RULES and not self.whole:
            part["allOf"] = RULES[name]
        return part

    def is_required(self, name, member):
        form = member["kind"]["form"]
        if self.whole and name not in SPARSE_IN_RESULTS:
            return not member.get("may") or form in ("maybe", "text")
        return not member.get("may") or (bool(member.get("filled")) and not member.get("lean"))

    def told(self, member):
        unit = f" [{member['unit']}]" if "unit" in member else ""
        return {"description": member["about"] + unit}

    def value(self, member, kind):
        form = kind["form"]
        if form == "maybe":
            inner = self.value(member, kind["of"])
            if not self.whole:
                return inner
            if "type" not in inner:  # a part, or one of several names
                return {"oneOf": [{"type": "null"}, inner]}
            return {**inner, "type": [inner["type"], "null"]}
        if form == "list":
            listed = {"type": "array", "items": self.value({**member, "filled": False}, kind["of"])}
            return {**listed, "minItems": 1} if member.get("filled") else listed
        if form == "value":
            return self.reference(kind["of"])
        if form == "choice":
            return {"enum": kind["choices"]}
        if form == "truth":
            return {"type": "boolean"}
        if form == "text":
            none = self.whole and member.get("may")
            text = {"type": ["string", "null"] if none else "string"}
            return {**text, "minLength": 1} if member.get("filled") else text
        return self.numeric(member, kind)

    def numeric(self, member, kind):
        whole = kind["form"] == "whole"
        low = member.get("low", 0 if kind.get("natural") else None)
        value = {"type": "integer" if whole else "number"}
        if low is not None:
            value["minimum"] = number(low)
        if "high" in member:
            value["maximum"] = number(member["high"])
        if "made" in member and not self.whole:
            value["default"] = number(member["made"])
        infinite = member.get("infinite")
        if infinite == "null":
            value["type"] = [value["type"], "null"]
        elif infinite:
            return {"oneOf": [value, {"const": infinite}]}
        return value


def main():
    said = json.load(sys.stdin)
    stale = []
    for format_name, about in said["formats"].items():
        schema = Writer(said["types"], about["whole"]).schema(format_name, about["of"])
        text = json.dumps(schema, indent=2, ensure_ascii=False) + "\n"
        name = format_name.removeprefix("levigate.").removesuffix("/1")
        path = SCHEMAS / f"{name}.schema.json"
        if "--check" not in sys.argv[1:]:
            path.write_text(text, encoding="utf-8")
        elif not path.exists() or path.read_text(encoding="utf-8") != text:
            stale.append(path.name)
    if stale:
        sys.exit(f"not as described: {', '.join(stale)}; run data/schemas.py")


if __name__ == "__main__":
    main()
