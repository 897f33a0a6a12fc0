"""Jobs and stacks for the tests."""

from pathlib import Path

import levigate
import pytest

ROOT = Path(__file__).resolve().parents[2]

# These take longest. They come first, so that the last of them does not keep one of two processes waiting.
LONGEST = ["test_recover.py", "test_journal.py", "test_learn.py", "test_sun.py", "test_coverage.py", "test_high_precision.py", "test_package.py"]


def pytest_collection_modifyitems(items):
    places = {name: place for place, name in enumerate(LONGEST)}
    items.sort(key=lambda item: places.get(item.path.name, len(LONGEST)))


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


@pytest.fixture(scope="session")
def wide(job, sheet):
    """A job with a levelled zone and an edge, films known and from readings, two backings, two blocks."""
    edge = dict(
        name="rim",
        area_cm2=30,
        block="foam pad",
        film={"mean_um": 25, "sd_um": 5},
        peel_um=20,
        peel_wavelength_mm=3,
        levelled=False,
    )
    top = dict(
        name="top",
        area_cm2=120,
        block="cork block",
        film={"readings_um": [62, 71, 66, 59, 68]},
        peel_um=35,
        peel_wavelength_mm=3,
    )
    wide = job(zones=[top, edge])
    pad = sheet("P2000", backing="foam-backed", block="foam pad", width_mm=100, height_mm=100)
    stack = levigate.Stack([sheet("P400"), sheet("P800", on_hand=0.3), sheet("P1200"), pad])
    return wide, levigate.evaluate(wide, stack, ["P400", "P800", "P1200", "P2000"])
