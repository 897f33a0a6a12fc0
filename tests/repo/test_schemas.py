"""The schemas hold for the demo, and for the plan that comes out of it."""

import copy
import json
from pathlib import Path

import jsonschema
import levigate
import pytest

DATA = Path(__file__).resolve().parents[2] / "data"


def load(*parts):
    return json.loads(DATA.joinpath(*parts).read_text(encoding="utf-8"))


def validator(name):
    schema = load("schema", f"{name}.schema.json")
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def parts_of(schema):
    """All parts of a schema that describe a value."""
    yield schema
    for group in ("properties", "$defs"):
        for part in schema.get(group, {}).values():
            yield from parts_of(part)
    for part in schema.get("oneOf", []):
        yield from parts_of(part)


@pytest.mark.parametrize(
    ("name", "file"),
    [("stack", "stack"), ("job", "job"), ("stack", "day_stack"), ("job", "day")],
)
def test_demo_is_valid(name, file):
    validator(name).validate(load("demo", f"{file}.json"))


@pytest.mark.parametrize(
    ("job_file", "stack_file"), [("job", "stack"), ("day", "day_stack")]
)
def test_plan_is_valid(job_file, stack_file):
    job = levigate.Job.load(str(DATA / "demo" / f"{job_file}.json"))
    stack = levigate.Stack.load(str(DATA / "demo" / f"{stack_file}.json"))
    plan = levigate.plan(job, stack)
    assert plan.found
    validator("plan").validate(plan.to_dict())
    validator("simulation").validate(levigate.simulate(job, plan, 20).to_dict())
    validator("calibration").validate(levigate.calibrate(job, plan, 20).to_dict())
    for draws in (0, 20):
        validator("together").validate(levigate.plan_together([job] * 3, stack, draws=draws).to_dict())
    validator("when_done").validate(levigate.Bench(job, stack).when_done(20).to_dict())


@pytest.mark.parametrize("kind", ["scratch", "cluster", "haze", "swirl", "wave", "witness line"])
def test_way_back_is_valid(kind):
    job = levigate.Job.load(str(DATA / "demo" / "job.json"))
    stack = levigate.Stack.load(str(DATA / "demo" / "stack.json"))
    done = [levigate.DoneStep(sheet) for sheet in ("a-p400", "a-p800", "a-p1500", "b-pad")]
    way = levigate.go_back(job, stack, done, levigate.Mark(kind=kind, zone="top"))
    validator("way_back").validate(way.to_dict())


def test_plan_that_does_not_exist_is_valid():
    job = load("demo", "job.json")
    job["target"] = {"size_um": 1}
    stack = levigate.Stack.load(str(DATA / "demo" / "stack.json"))
    plan = levigate.plan(levigate.Job.from_dict(job), stack)
    assert not plan.found
    validator("plan").validate(plan.to_dict())


@pytest.mark.parametrize(
    "name", ["stack", "job", "plan", "journal", "shop", "simulation", "calibration", "together", "way_back", "when_done", "spray"]
)
def test_objects_are_closed_and_described(name):
    for part in parts_of(load("schema", f"{name}.schema.json")):
        if part.get("type") == "object":
            assert part["additionalProperties"] is False
            assert "description" in part
            for key, value in part["properties"].items():
                told = {"description", "$ref", "const"} & value.keys() or "oneOf" in value
                assert told, f"{key} is not described"


def test_shop_is_valid():
    validator("shop").validate(levigate.Shop().to_dict())


OWN = {"kind": "coat", "hardness_mpa": 130, "wear_coefficient": 0.02, "refractive_index": 1.5}
EDGE = {"name": "rim", "area_cm2": 20, "block": "foam pad"}

SPOILT = {
    "unknown key": lambda job: job.update(colour="clear"),
    "coat without film": lambda job: job["zones"][0].pop("film"),
    "film in two forms": lambda job: job["zones"][0]["film"].update(mean_um=90, sd_um=5),
    "how a peel was told, without it": lambda job: (
        job["zones"][0].pop("peel_um"),
        job["zones"][0].update(peel_how="profile"),
    ),
    "no zones": lambda job: job["zones"].clear(),
    "two targets": lambda job: job["target"].update(gloss_gu=50),
    "solid with film": lambda job: job.update(coating="acrylic sheet"),
    "unknown block": lambda job: job["zones"][0].update(block="soft block"),
    "levelled edge": lambda job: job["zones"][2].update(levelled=False),
    "edge that tells the film below": lambda job: job["zones"].append(
        {**EDGE, "edge_of": "top", "radius_mm": 0, "below_um": 30}
    ),
    "radius without edge": lambda job: job["zones"][1].update(radius_mm=1),
    "edge without radius": lambda job: job.update(
        zones=[job["zones"][0], {**EDGE, "edge_of": "top"}]
    ),
    "defect without height": lambda job: job["zones"][0].update(
        defects=[{"kind": "nib", "width_mm": 1}]
    ),
    "coat wet and dry": lambda job: job["zones"][0].update(
        film={
            "coats": [{"dry_um": 90, "wet_um": 200}],
            "recoat_window_h": 24,
            "sd_um": 5,
        }
    ),
    "area in an unknown unit": lambda job: in_unit(job["zones"][0], "area_cm2", area_acres=1),
    "mil as text": lambda job: in_unit(job["zones"][0], "peel_um", peel_mil="1.4"),
    "film in two forms, one in mil": lambda job: job["zones"][0]["film"].update(mean_mil=4, sd_um=5),
    "readings and spread": lambda job: job["zones"][0].update(
        film={
            "coats": [{"dry_um": 90}],
            "recoat_window_h": 24,
            "sd_um": 5,
            "readings_um": [90, 92],
        }
    ),
    "unknown sheen": lambda job: job.update(
        target={"sheen": {"scheme": "institute", "name": "silky"}}
    ),
    "point of three": lambda job: job.update(
        cure={"hard_cure_h": 200, "points": [[24, 60, 1]]}
    ),
    "half of the limits": lambda job: job.update(coating={**OWN, "limits": {"rise_k": 30}}),
    "cure without an age": lambda job: job.update(coating={**OWN, "cure": {"shrink": 0.1}}),
    "redissolves by half": lambda job: job.update(coating={**OWN, "redissolves": 0.5}),
    "negative age": lambda job: job.update(age_h=-1),
    "zone as sprayed": lambda job: job["zones"][0].update(start={"as": "sprayed"}),
    "zone without a grade": lambda job: job["zones"][0].update(start={"scratch_um": 1}),
    "zone with a negative scratch": lambda job: job["zones"][0].update(
        start={"scratched_by": "P800", "scratch_um": -1}
    ),
}


@pytest.mark.parametrize("spoil", SPOILT.values(), ids=SPOILT.keys())
def test_schema_and_reader_refuse_the_same_job(spoil):
    job = copy.deepcopy(load("demo", "job.json"))
    spoil(job)
    assert not validator("job").is_valid(job)
    with pytest.raises(levigate.Error):
        levigate.Job.from_dict(job)


ALLOWED = {
    "what nobody told": lambda job: (
        [zone.pop("peel_um", None) for zone in job["zones"]],
        job["zones"][1].pop("peel_wavelength_mm"),
        job["zones"][1]["film"].pop("sd_um"),
        job["zones"][2]["film"].pop("sd_um"),
        job["zones"][0].update(film={"readings_um": [90]}),
    ),
    "names that people use": lambda job: (
        job.update(coating="2K urethane"),
        job["zones"][0].update(block="wood block"),
    ),
    "scratched, without peel": lambda job: (
        job.update(start={"scratched_by": "P320"}),
        [zone.pop("peel_um", None) for zone in job["zones"]],
    ),
    "no start": lambda job: job.pop("start"),
    "zones as they stand": lambda job: (
        job["zones"][0].update(
            start={"scratched_by": "P800", "scratch_um": 1.5, "rq_um": 0.2}
        ),
        job["zones"][1].update(
            start={"scratched_by": "bar", "size_um": 3, "worn_um": 1}
        ),
    ),
    "solid": lambda job: (
        job.update(coating="acrylic sheet"),
        [zone.pop("film") for zone in job["zones"]],
    ),
    "edge": lambda job: job["zones"].append({**EDGE, "edge_of": "top", "radius_mm": 0}),
    "edge with a film of its own": lambda job: job["zones"][2].update(radius_mm=1),
    "defects": lambda job: job["zones"][0].update(
        defects=[
            {"kind": "nib", "height_um": 12, "width_mm": 1},
            {
                "kind": "run",
                "readings": {"over_um": 230, "beside_um": 90, "gauge": "ultrasonic"},
                "width_mm": 6,
            },
        ]
    ),
    "coats and readings": lambda job: job["zones"][0].update(
        film={
            "coats": [
                {"dry_um": 40},
                {"wet_um": 100, "volume_solids": 0.5, "applied_h": 3},
            ],
            "recoat_window_h": 24,
            "readings_um": [88, 93],
            "gauge": {"fixed_um": 2, "share": 0.03},
        }
    ),
    "age and cure": lambda job: job.update(
        age_h=90, cure={"hard_cure_h": 200, "points": [[24, 60], [200, 150]]}
    ),
    "a coating of one's own": lambda job: job.update(
        coating={
            **OWN,
            "redissolves": True,
            "cure": {"hard_cure_h": 200},
            "limits": {"speed_low_m_s": 9, "speed_high_m_s": 18, "effusivity": 500, "rise_k": 30},
        }
    ),
    "a coating little is known of": lambda job: job.update(
        coating={**OWN, "name": "shellac", "redissolves": None, "cure": None, "limits": None}
    ),
    "sheen": lambda job: job.update(
        target={"sheen": {"scheme": "institute", "name": "satin"}}
    ),
    "other units": lambda job: (
        job.update(age_days=14, weight_lb=7),
        in_unit(job["zones"][0], "area_cm2", area_in2=84),
        in_unit(job["zones"][0], "peel_um", peel_mil=1.4),
        in_unit(job["zones"][0], "peel_wavelength_mm", peel_wavelength_in=0.12),
        in_unit(job["zones"][0]["film"], "readings_um", readings_mil=[3.5, 3.6]),
        in_unit(job["zones"][1]["film"], "dry_um_per_coat", dry_mil_per_coat=1.1),
    ),
    "a small area that is meant": lambda job: in_unit(
        job["zones"][0], "area_cm2", area_square_centimetres=0.5
    ),
}


def in_unit(holder, name, **other):
    """Gives a number in another unit."""
    del holder[name]
    holder.update(other)


@pytest.mark.parametrize("change", ALLOWED.values(), ids=ALLOWED.keys())
def test_schema_and_reader_take_the_same_job(change):
    job = copy.deepcopy(load("demo", "job.json"))
    change(job)
    validator("job").validate(job)
    levigate.Job.from_dict(job)


POLISH = {"id": "bar", "label": "fine", "compound": "fine", "wheel": "loose muslin"}
SPOILT_POLISH = {
    "own size": {"size_um": 2},
    "block and wheel": {"block": "foam pad"},
    "unknown compound": {"compound": "finest"},
    "two reaches": {
        "compound": {
            "size_um": 2,
            "worn_um": 1,
            "wear_share": 0.1,
            "coarsest_paper_um": 8,
            "coarsest_scratch_um": 1,
        }
    },
    "no reach": {"compound": {"size_um": 2, "worn_um": 1, "wear_share": 0.1}},
    "wheel of one number": {"wheel": {"rpm": 700}},
}


@pytest.mark.parametrize("keys", SPOILT_POLISH.values(), ids=SPOILT_POLISH.keys())
def test_schema_and_reader_refuse_the_same_compound(keys):
    stack = {"format": "levigate.stack/1", "sheets": [POLISH | keys]}
    assert not validator("stack").is_valid(stack)
    with pytest.raises(levigate.Error):
        levigate.Stack.from_dict(stack)


RULES = {
    "all": ("CAMI", True),
    "ask": ("ask", True),
    "by maker": ({"Maker A": "CAMI", "Maker B": "JIS"}, True),
    "no system": ({"Maker A": "CAMMI"}, False),
    "asked by maker": ({"Maker A": "ask"}, False),
    "no maker": ({" ": "CAMI"}, False),
    "a list": (["CAMI"], False),
}


@pytest.mark.parametrize("rule, right", RULES.values(), ids=RULES.keys())
def test_schema_and_reader_take_the_same_rules_for_bare_numbers(rule, right):
    stack = load("demo", "stack.json")
    stack["bare_number"] = rule
    assert validator("stack").is_valid(stack) is right
    if right:
        assert levigate.Stack.from_dict(stack).to_dict()["bare_number"] == rule
    else:
        with pytest.raises(levigate.Error):
            levigate.Stack.from_dict(stack)


def test_schema_and_reader_take_sheets_in_inches():
    stack = load("demo", "stack.json")
    in_unit(stack["sheets"][0], "width_mm", width_in=9)
    validator("stack").validate(stack)
    assert levigate.Stack.from_dict(stack).sheets[0].width_mm == pytest.approx(228.6)
    del stack["sheets"][0]["width_in"]
    assert not validator("stack").is_valid(stack)


def test_schema_and_reader_take_a_compound():
    stack = {"format": "levigate.stack/1", "sheets": [POLISH]}
    validator("stack").validate(stack)
    validator("stack").validate(levigate.Stack.from_dict(stack).to_dict())


LINE = {"format": "levigate.journal/1", "at": "2026-03-01T09:30:00+01:00", "job": "case"}
MARK = {"kind": "scratch", "zone": "top", "seen": "loupe", "width_um": 3}
GOOD_LINES = {
    "step begun": {"kind": "step begun", "sheet": "a"},
    "step begun in a zone": {"kind": "step begun", "sheet": "a", "zone": "top", "direction_deg": 45},
    "step ended": {"kind": "step ended", "sheet": "a", "minutes": 12, "text": "wet"},
    "step ended in a zone": {
        "kind": "step ended",
        "sheet": "a",
        "minutes": 0,
        "zone": "top",
        "sheets_used": 0.5,
    },
    "cleaned": {"kind": "cleaned", "sheet": "a"},
    "film": {"kind": "film read", "zone": "top", "readings_um": [98]},
    "scratch by loupe": {"kind": "scratch read", "zone": "top", "sheet": "a", "width_um": 3},
    "scratch by tester": {"kind": "scratch read", "zone": "top", "sheet": "a", "ra_um": 0.2},
    "mark": {"kind": "mark found", "mark": MARK},
    "haze in sunlight": {"kind": "mark found", "mark": {"kind": "haze", "zone": "top", "seen": "sunlight"}},
    "cluster": {"kind": "mark found", "mark": {**MARK, "kind": "cluster", "count": 3}},
    "wave": {
        "kind": "mark found",
        "mark": {"kind": "wave", "zone": "top", "seen": "lamp", "height_um": 2, "direction_deg": 9},
    },
    "note": {"kind": "note", "text": "dusty"},
}
BAD_LINES = {
    "unknown kind": {"kind": "step", "sheet": "a"},
    "unknown key": {"kind": "note", "text": "a", "tekst": "b"},
    "no job": {"kind": "note", "text": "a", "job": ""},
    "no moment": {"kind": "note", "text": "a", "at": "2026-03-01 09:30"},
    "no offset": {"kind": "note", "text": "a", "at": "2026-03-01T09:30:00"},
    "empty sheet": {"kind": "cleaned", "sheet": ""},
    "step without minutes": {"kind": "step ended", "sheet": "a"},
    "step begun with sheets used": {"kind": "step begun", "sheet": "a", "sheets_used": 3},
    "step ended in no time": {"kind": "step ended", "sheet": "a", "hour": 2},
    "struck without a line": {"kind": "struck", "text": "wrong"},
    "struck without a reason": {"kind": "struck", "line": 1},
    "cleaned in a zone": {"kind": "cleaned", "sheet": "a", "zone": "top"},
    "no reading": {"kind": "film read", "zone": "top", "readings_um": []},
    "scratch by nothing": {"kind": "scratch read", "zone": "top", "sheet": "a"},
    "scratch by both": {**GOOD_LINES["scratch by loupe"], "ra_um": 0.2},
    "zone twice": {"kind": "mark found", "zone": "top", "mark": MARK},
    "mark without zone": {"kind": "mark found", "mark": {**MARK, "zone": ""}},
    "loupe without width": {"kind": "mark found", "mark": {"kind": "haze", "zone": "top", "seen": "loupe"}},
    "width in sunlight": {"kind": "mark found", "mark": {**MARK, "seen": "sunlight"}},
    "width of a wave": {"kind": "mark found", "mark": {**MARK, "kind": "wave"}},
    "count of a scratch": {"kind": "mark found", "mark": {**MARK, "count": 3}},
    "height of a scratch": {"kind": "mark found", "mark": {**MARK, "height_um": 3}},
    "note without text": {"kind": "note"},
}


@pytest.mark.parametrize("line", GOOD_LINES.values(), ids=GOOD_LINES.keys())
def test_schema_and_reader_take_the_same_entry(line):
    entry = levigate.Entry.from_dict(LINE | line)
    validator("journal").validate(LINE | line)
    assert entry.to_dict() == LINE | line


@pytest.mark.parametrize("line", BAD_LINES.values(), ids=BAD_LINES.keys())
def test_schema_and_reader_refuse_the_same_entry(line):
    assert not validator("journal").is_valid(LINE | line)
    with pytest.raises(levigate.Error):
        levigate.Entry.from_dict(LINE | line)
