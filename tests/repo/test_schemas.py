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


@pytest.mark.parametrize("name", ["stack", "job"])
def test_demo_is_valid(name):
    validator(name).validate(load("demo", f"{name}.json"))


def test_plan_is_valid():
    job = levigate.Job.load(str(DATA / "demo" / "job.json"))
    stack = levigate.Stack.load(str(DATA / "demo" / "stack.json"))
    plan = levigate.plan(job, stack)
    assert plan.found
    validator("plan").validate(plan.to_dict())


def test_plan_that_does_not_exist_is_valid():
    job = load("demo", "job.json")
    job["target"] = {"size_um": 1}
    stack = levigate.Stack.load(str(DATA / "demo" / "stack.json"))
    plan = levigate.plan(levigate.Job.from_dict(job), stack)
    assert not plan.found
    validator("plan").validate(plan.to_dict())


@pytest.mark.parametrize("name", ["stack", "job", "plan"])
def test_objects_are_closed_and_described(name):
    for part in parts_of(load("schema", f"{name}.schema.json")):
        if part.get("type") == "object":
            assert part["additionalProperties"] is False
            assert "description" in part
            for key, value in part["properties"].items():
                told = {"description", "$ref", "const"} & value.keys() or "oneOf" in value
                assert told, f"{key} is not described"


SPOILT = {
    "unknown key": lambda job: job.update(colour="clear"),
    "coat without film": lambda job: job["zones"][0].pop("film"),
    "film in two forms": lambda job: job["zones"][0]["film"].update(mean_um=90, sd_um=5),
    "no peel as sprayed": lambda job: job["zones"][0].pop("peel_um"),
    "no wavelength": lambda job: job["zones"][0].pop("peel_wavelength_mm"),
    "no zones": lambda job: job["zones"].clear(),
    "two targets": lambda job: job["target"].update(gloss_gu=50),
    "solid with film": lambda job: job.update(coating="acrylic sheet"),
    "unknown block": lambda job: job["zones"][0].update(block="soft block"),
}


@pytest.mark.parametrize("spoil", SPOILT.values(), ids=SPOILT.keys())
def test_schema_and_reader_refuse_the_same_job(spoil):
    job = copy.deepcopy(load("demo", "job.json"))
    spoil(job)
    assert not validator("job").is_valid(job)
    with pytest.raises(levigate.Error):
        levigate.Job.from_dict(job)


ALLOWED = {
    "scratched, without peel": lambda job: (
        job.update(start={"scratched_by": "P320"}),
        [zone.pop("peel_um") for zone in job["zones"]],
    ),
    "no start": lambda job: job.pop("start"),
    "solid": lambda job: (
        job.update(coating="acrylic sheet"),
        [zone.pop("film") for zone in job["zones"]],
    ),
}


@pytest.mark.parametrize("change", ALLOWED.values(), ids=ALLOWED.keys())
def test_schema_and_reader_take_the_same_job(change):
    job = copy.deepcopy(load("demo", "job.json"))
    change(job)
    validator("job").validate(job)
    levigate.Job.from_dict(job)
