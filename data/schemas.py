"""Writes the schemas of all formats from what the library says of its values.

    .build/gcc/tests/descriptions | python3 data/schemas.py [--check]

Keys, ranges, units and sentences are those of the descriptions in the headers, names those of the
profiles. What stands here is what no member says alone.
"""

import json
import re
import sys
from pathlib import Path

DATA = Path(__file__).parent
SCHEMAS = DATA / "schema"

WHOLE = "Reads back equal. Every key is there. A value that does not apply is null or empty."
UNITS = "The end of a key tells the unit of a number: area_in2 is area_cm2 in square inches."
MEANT = "A number that is most likely of another unit is asked about. A unit in full, as microns, is taken as it stands."
ABOUT = {
    "levigate.plan/1": f"{WHOLE} Minutes and sheets are uncertain by a factor of 2 to 3 until calibrated.",
    "levigate.simulation/1": WHOLE,
    "levigate.calibration/1": f"{WHOLE} Minutes of measuring are assumptions. What a reading narrows is expected, not known.",
    "levigate.together/1": f"{WHOLE} Minutes and sheets are uncertain by a factor of 2 to 3 until calibrated.",
    "levigate.buy/1": f"{WHOLE} Minutes are at usual numbers. Less than 3 % of the day counts as equal.",
    "levigate.comparison/1": f"{WHOLE} Both sequences have the same draws.",
    "levigate.spray/1": f"{WHOLE} Films and millilitres are for a gun in a usual hand.",
    "levigate.way_back/1": WHOLE,
    "levigate.when_done/1": f"{WHOLE} Minutes are as uncertain as their ends say.",
    "levigate.shop/1": "Factors on computed values. Each is as likely below its median as above. In 9 of 10 cases it is between low and high. Edit a factor to move its median. Edit low and high to change its spread. An absent value is as before any journal.",
    "levigate.journal/1": "A journal is a text file with one such object per line. Programs only add lines. The order of the lines is that of events.",
    "levigate.job/1": f"The work to be sanded, where it starts and where it must end. An absent value is the default, or not known. {UNITS} {MEANT}",
    "levigate.stack/1": f"Sheets of one kind are one entry. The order of the sheets decides between equal plans. {UNITS} {MEANT}",
}

# Names of parts, where they are not that of the type.
PARTS = {
    "PlanPoint": "way",
    "Totals": "total",
    "SimulatedReading": "reading",
    "SimulatedStep": "step",
    "SimulatedZone": "zone",
    "LearnedPair": "rate",
    "LearnedScratch": "scratch",
    "LearnedFilm": "film",
    "LearnedJob": "job",
    "LearnedNoise": "noise",
    "LaidFilm": "film",
    "Film": "film_told",
    "Polish": "compound",
    "WheelLimits": "limits",
    "StartTold": "start",
    "Carried": "zone_start",
    "SheenName": "sheen",
    "HeightReadings": "defect_readings",
}

# A result of an older version has a mark without these.
SPARSE_IN_RESULTS = {"Mark"}

ALWAYS = ["$schema", "format", "at", "kind", "job", "text"]


EDITOR = {"description": "where an editor finds this schema; it says nothing else", "type": "string"}


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


def needed(*keys):
    return {"required": list(keys)}


def without(*keys):
    return {"not": {"anyOf": [needed(key) for key in keys]}}


def zones(rule):
    return {"properties": {"zones": {"items": rule}}}


def load(path):
    return json.loads(path.read_text(encoding="utf-8"))


COATINGS = [load(path) for path in sorted((DATA / "profiles/coatings").glob("*.json"))]
SOLIDS = [coating["name"] for coating in COATINGS if coating["kind"] == "solid"]
SHEENS = load(DATA / "standards/sheen_bands.json")["sections"]

# Rules across members, of files that one writes.
RULES = {
    "Entry": [
        entry_of("step begun", ["sheet"], ["zone", "direction_deg", "minutes"]),
        entry_of("step ended", ["sheet", "minutes"], ["zone", "sheets_used", "removal_um", "overcut"]),
        entry_of("cleaned", ["sheet"]),
        entry_of("film read", ["zone", "readings_um"]),
        entry_of(
            "scratch read",
            ["zone", "sheet"],
            ["width_um", "ra_um"],
            oneOf=[{"required": ["width_um"]}, {"required": ["ra_um"]}],
        ),
        entry_of(
            "patch worked",
            ["sheet", "tool", "area_cm2", "minutes"],
            ["zone", "before_um", "after_um", "before_g", "after_g"],
            oneOf=[
                {"required": ["before_um", "after_um"]},
                {"required": ["before_g", "after_g"]},
                {"required": ["zone"]},
            ],
            dependentRequired={
                "before_um": ["after_um"],
                "after_um": ["before_um"],
                "before_g": ["after_g"],
                "after_g": ["before_g"],
            },
        ),
        entry_of("mark found", ["mark"]),
        entry_of("note", ["text"]),
        entry_of("struck", ["line", "text"]),
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
    "Job": [
        {
            "$comment": "as sprayed, orange peel counts: how it was told needs its height",
            "if": {"properties": {"start": needed("as")}},
            "then": zones(
                {
                    "if": {"properties": {"levelled": {"const": True}}, **without("edge_of", "start", "peel_um")},
                    "then": {"properties": {"peel_how": {"const": "usual"}}},
                }
            ),
        },
        {
            "$comment": "a coat has a film, a solid has none",
            "if": {
                "properties": {
                    "coating": {
                        "anyOf": [
                            {"enum": SOLIDS},
                            {"type": "object", "properties": {"kind": {"const": "solid"}}},
                        ]
                    }
                }
            },
            "then": zones(without("film")),
            "else": zones(
                {"anyOf": [needed("film"), {**needed("edge_of", "radius_mm"), **without("below_um")}]}
            ),
        },
    ],
    "Zone": [
        {"if": needed("radius_mm"), "then": needed("edge_of")},
        {"if": needed("edge_of"), "then": without("levelled")},
    ],
    "Defect": [{"oneOf": [needed("height_um"), needed("readings")]}],
    "Coat": [
        {
            "if": needed("dry_um"),
            "then": without("wet_um", "volume_solids", "thinner"),
            "else": needed("wet_um", "volume_solids"),
        }
    ],
    "Sheet": [
        {
            "if": needed("compound"),
            "then": without("size_um"),
            "else": needed("backing", "width_mm", "height_mm"),
        },
        {"not": needed("block", "wheel")},
        {"not": needed("block", "machine")},
        {"not": needed("wheel", "machine")},
    ],
}

# What a member takes beside its kind.
TEXTS = {
    ("Entry", "at"): {
        "pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}[Tt][0-9]{2}:[0-9]{2}:[0-9]{2}(\\.[0-9]+)?([Zz]|[+-][0-9]{2}:[0-9]{2})$",
        "format": "date-time",
    },
    ("Sheet", "label"): {"pattern": "[^ \\t\\r\\n]"},
    ("SheenName", "scheme"): {"enum": [scheme["scheme"] for scheme in SHEENS]},
    ("SheenName", "name"): {"enum": list(dict.fromkeys(row["name"] for scheme in SHEENS for row in scheme["rows"]))},
    ("FilmOfReadings", "readings_um"): {"minItems": 1},
    ("FilmOfCoatsRead", "readings_um"): {"minItems": 2},
}


# A value that a member takes in place of that of its kind.
OTHER_VALUES = {
    ("Stack", "bare_number"): lambda value: {
        "oneOf": [
            {"enum": value["enum"]},
            {
                "description": "one for each maker",
                "type": "object",
                "properties": {},
                "patternProperties": {"[^ \\t]": {"enum": value["enum"][1:]}},
                "additionalProperties": False,
            },
        ],
        "default": value["default"],
    },
}


class OtherUnits:
    """Lets files give a number in another unit than that of its member, by the end of the key."""

    def __init__(self, types):
        self.endings = {}
        for about in types.values():
            for member in about["members"]:
                if "other_endings" in member:
                    self.endings[member["name"]] = (member["ending"], member["other_endings"])

    def pattern(self, name, own):
        ending, others = self.endings[name]
        stem = name.removesuffix(ending)
        return f"^{stem}({'|'.join([ending, *others] if own else others)})$"

    def given(self, name):
        """That an object has this member, in whatever unit."""
        if name not in self.endings:
            return {"required": [name]}
        return {"not": {"patternProperties": {self.pattern(name, True): False}}}

    def in_other_unit(self, name, rule):
        if "type" not in rule and "oneOf" not in rule:
            return rule  # of a condition
        kind = rule.get("type", "number")
        value = {"description": f"{name} in another unit", "type": kind}
        if kind == "array":
            value |= {key: rule[key] for key in ("minItems",) if key in rule}
            value["items"] = {"type": "number"}
        return value

    def free(self, rule):
        """The same schema for keys with any unit."""
        if isinstance(rule, list):
            return [self.free(one) for one in rule]
        if not isinstance(rule, dict):
            return rule
        result, more = {}, []
        for key, value in rule.items():
            if key in ("enum", "const", "default", "examples"):
                result[key] = value
            elif key in ("properties", "patternProperties", "$defs"):
                result[key] = {name: self.free(one) for name, one in value.items()}
                free = {
                    self.pattern(name, False): self.in_other_unit(name, one)
                    for name, one in value.items()
                    if key == "properties" and name in self.endings
                }
                if free:
                    result["patternProperties"] = free
            elif key == "required":
                more += [self.given(name) for name in value if name in self.endings]
                kept = [name for name in value if name not in self.endings]
                if kept or not more:
                    result[key] = kept
            elif key == "dependentRequired":
                more += [
                    {"if": self.given(one), "then": self.given(other)} for one, others in value.items() for other in others
                ]
            elif key == "propertyNames" and any(name in self.endings for name in value["enum"]):
                patterns = [{"pattern": self.pattern(name, False)} for name in value["enum"] if name in self.endings]
                result[key] = {"anyOf": [value, *patterns]}
            else:
                result[key] = self.free(value)
        if len(more) == 1 and not result:
            return more[0]
        if more:
            result["allOf"] = more + result.pop("allOf", [])
        return result


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
            "properties": {"$schema": EDITOR, "format": {"const": format_name}, **part.pop("properties")},
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
            self.parts[part] = self.part_of(name)
        return {"$ref": f"#/$defs/{part}"}

    def form_of(self, name, key):
        """What is special about a type in files of what one gives."""
        return None if self.whole else self.types[name].get(key)

    def part_of(self, name):
        about = {"description": self.types[name]["about"]}
        if self.form_of(name, "pair"):
            items = [{**self.told(member), **self.value(member, member["kind"])} for _, member in self.members_of(name)]
            ends = {"minItems": len(items), "maxItems": len(items)}
            return {**about, "type": "array", "prefixItems": items, **ends}
        if shapes := self.form_of(name, "shapes"):
            return {**about, "oneOf": [self.object_of(shape) for shape in shapes]}
        return self.object_of(name)

    def members_of(self, name):
        for member in self.types[name]["members"]:
            if member.get("given") is self.whole:
                continue
            if member.get("spread"):
                of = member["kind"]["of"]
                for one in [of] if isinstance(of, str) else of:
                    yield from self.members_of(one)
            else:
                yield name, member

    def alternatives_of(self, name):
        """Keys of which an object has just one."""
        if self.form_of(name, "one_key"):
            beside = self.form_of(name, "beside_it") or []
            yield [member["name"] for _, member in self.members_of(name) if member["name"] not in beside]
        for member in self.types[name]["members"]:
            either = member.get("spread") and member["kind"]["form"] == "either"
            if either and member.get("given") is not self.whole:
                yield [one["name"] for of in member["kind"]["of"] for _, one in self.members_of(of)]

    def object_of(self, name):
        alternatives = list(self.alternatives_of(name))
        properties, required = {}, []
        for owner, member in self.members_of(name):
            value = self.value(member, member["kind"])
            properties[member["name"]] = {
                **self.told(member),
                **OTHER_VALUES.get((owner, member["name"]), dict)(value),
                **TEXTS.get((owner, member["name"]), {}),
            }
            either = any(member["name"] in keys for keys in alternatives)
            if self.is_required(name, member) and not either:
                required.append(member["name"])
        part = {
            "description": self.types[name]["about"],
            "type": "object",
            "properties": properties,
            "required": required,
            "additionalProperties": False,
        }
        rules = [{"oneOf": [needed(key) for key in keys]} for keys in alternatives]
        if not self.whole:
            rules += RULES.get(name, [])
        if rules:
            part["allOf"] = rules
        return part

    def is_required(self, name, member):
        form = member["kind"]["form"]
        if self.whole and member.get("rare"):
            return False
        if self.whole and name not in SPARSE_IN_RESULTS:
            return not member.get("may") or form in ("maybe", "text")
        if member.get("may_by_form"):
            return False
        return not member.get("may") or (bool(member.get("filled")) and not member.get("lean"))

    def told(self, member):
        unit = f" [{member['unit']}]" if "unit" in member else ""
        example = {"examples": [member["example"]]} if "example" in member and not self.whole else {}
        return {"description": member["about"] + unit, **example}

    def value(self, member, kind):
        form = kind["form"]
        if form == "maybe":
            inner = self.value(member, kind["of"])
            none = member.get("none")
            if none not in (None, "null"):
                return {"enum": [none, *inner["enum"]], "default": none}
            if not self.whole and none is None:
                return inner
            if "type" not in inner:  # a part, or one of several names
                return {"oneOf": [{"type": "null"}, inner]}
            return {**inner, "type": [inner["type"], "null"]}
        if form == "list":
            listed = {"type": "array", "items": self.value({**member, "filled": False}, kind["of"])}
            return {**listed, "minItems": 1} if member.get("filled") else listed
        if form == "value":
            part = self.reference(kind["of"])
            names = self.form_of(kind["of"], "names")
            return {"oneOf": [{"enum": names}, part]} if names else part
        if form == "choice":
            return {"enum": kind["choices"], **self.default(member)}
        if form == "truth":
            return {"type": "boolean", **self.default(member)}
        if form == "text":
            none = self.whole and member.get("may")
            text = {"type": ["string", "null"] if none else "string"}
            return {**text, "minLength": 1} if member.get("filled") else text
        return self.numeric(member, kind)

    def default(self, member):
        return {} if self.whole or "made" not in member else {"default": member["made"]}

    def numeric(self, member, kind):
        whole = kind["form"] == "whole"
        low = member.get("low", 0 if kind.get("natural") else None)
        value = {"type": "integer" if whole else "number"}
        if low is not None:
            value["minimum"] = number(low)
        if "high" in member:
            value["maximum"] = number(member["high"])
        if "made" in member and not self.whole and (low is None or member["made"] >= low):
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
        if not about["whole"]:
            schema = OtherUnits(said["types"]).free(schema)
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
