"""Jobs and stacks for the tests."""

from pathlib import Path

import levigate
import pytest

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="session")
def demo_dir():
    return ROOT / "data" / "demo"


@pytest.fixture(scope="session")
def demo(demo_dir):
    """The job and the stack of the walnut clock case."""
    return levigate.Job.load(demo_dir / "job.json"), levigate.Stack.load(demo_dir / "stack.json")


@pytest.fixture(scope="session")
def sheet():
    """Makes a sheet from its label, with anything changed."""

    def make(grade, **changed):
        plain = dict(id=grade, label=grade, backing="latex paper", width_mm=230, height_mm=280)
        return {**plain, **changed}

    return make


@pytest.fixture(scope="session")
def stack(sheet):
    """Makes a stack from labels."""
    return lambda *labels: levigate.Stack(sheet(label) for label in labels)


@pytest.fixture(scope="session")
def job():
    """Makes a job of one zone, with anything changed."""

    def make(zone=None, **changed):
        top = dict(
            name="top",
            area_cm2=900,
            block="hard block",
            film={"mean_um": 120, "sd_um": 9},
            peel_um=35,
            peel_wavelength_mm=3,
        )
        plain = dict(
            name="panel",
            coating="two-part urethane",
            zones=[{**top, **(zone or {})}],
            target={"grade": "P1500"},
        )
        return levigate.Job.from_dict({**plain, **changed})

    return make
