"""Values made by keywords, as in a file: parts as values, dictionaries or names; units; None; changes."""

import copy
import sys
from pathlib import Path

import levigate
import numpy as np
import pytest

DEMO = Path(__file__).resolve().parents[2] / "data" / "demo"
MADE = [
    levigate.Job, levigate.Zone, levigate.Film, levigate.Sheet, levigate.Backing, levigate.Block, levigate.Coating,
    levigate.Target, levigate.Edge, levigate.Carried, levigate.WheelLimits, levigate.ShrinkBack,
]  # fmt: skip


@pytest.fixture
def demo():
    return levigate.Job.load(DEMO / "job.json"), levigate.Stack.load(DEMO / "stack.json")


def zone(**changed):
    return levigate.Zone(**{"name": "top", "area_cm2": 540, "block": "hard block", **changed})


def test_a_job_of_values_is_that_of_its_file():
    film = levigate.Film(mean_um=90, sd_um=5)
    made = levigate.Job(
        name="Box", coating="two-part urethane", zones=[zone(film=film, peel_um=30)], target=levigate.Target(size_um=8)
    )
    file = {
        "name": "Box",
        "coating": "two-part urethane",
        "zones": [
            {"name": "top", "area_cm2": 540, "block": "hard block", "film": {"mean_um": 90, "sd_um": 5}, "peel_um": 30}
        ],
        "target": {"size_um": 8},
    }
    assert made == levigate.Job.from_dict(file)


def test_the_demo_is_made_again_of_its_parts(demo):
    job, stack = demo
    given = job.to_dict()
    del given["format"]
    assert levigate.Job(**given | {"zones": job.zones, "coating": job.coating, "target": job.target}) == job
    assert [levigate.Sheet(**sheet.to_dict()) for sheet in stack] == stack.sheets


def test_dictionaries_read_back_equal(demo):
    job, stack = demo
    parts = [job.coating, job.target, *job.zones, *(z.block for z in job.zones), *stack, *(s.backing for s in stack)]
    parts += [z.film for z in job.zones if z.film] + [z.edge for z in job.zones if z.edge]
    assert {type(part) for part in parts} >= {levigate.Film, levigate.Sheet, levigate.Block}
    for part in parts:
        assert type(part).from_dict(part.to_dict()) == part


def test_a_film_in_each_of_its_ways():
    assert levigate.Film(readings_um=[88, 97, 92]).readings == 3
    assert levigate.Film(coats=3, dry_um_per_coat=30, sd_um=5).mean_um == 90
    assert levigate.Film(mean_um=90).usual_spread
    coats = [{"dry_um": 30}, {"dry_um": 30, "applied_h": 100}]
    with pytest.raises(levigate.BadInput, match="several rounds"):
        levigate.Film(coats=coats, recoat_window_h=24)


def test_a_zone_without_its_peel_has_the_usual():
    assert (zone().peel_how, zone(peel_um=12).peel_how) == ("usual", "by eye")


def test_all_faults_at_once_and_the_nearest_keyword():
    with pytest.raises(levigate.BadInput) as raised:
        levigate.Zone(nam="top", area_cm2=-1, block="hart block")
    text = str(raised.value)
    assert len(raised.value.faults) == 3
    assert all(part in text for part in ['nearest is "name"', "nearest is 'hard block'", "outside 0.1 to"])
    assert "line" not in text  # there is no file


def test_none_is_not_given():
    assert zone(film=None) == zone()
    with pytest.raises(levigate.BadInput, match="name is missing"):
        zone(name=None)


@pytest.mark.parametrize("made", MADE)
def test_the_docstring_names_the_keywords(made):
    first = made.__init__.__doc__.splitlines()[0]
    assert first.startswith("__init__(self") and "*, " in first and "kwargs" not in first


def test_changes():
    changed = zone().__replace__(area_cm2=10, film={"mean_um": 80})
    assert (changed.name, changed.area_cm2, changed.film.mean_um) == ("top", 10, 80)
    assert changed.__replace__(film=None).film is None
    with pytest.raises(levigate.BadInput, match="nearest is .area_cm2"):
        zone().__replace__(area_cm=10)


@pytest.mark.skipif(sys.version_info < (3, 13), reason="copy.replace is of Python 3.13")
def test_copy_replace():
    assert copy.replace(zone(), area_cm2=10).area_cm2 == 10


def test_a_quantity_is_converted_or_refused():
    unit = pytest.importorskip("pint").UnitRegistry()
    made = zone(area_cm2=1 * unit.foot**2, peel_um=1 * unit.thou, film={"mean_um": 0.09 * unit.mm})
    assert (made.area_cm2, made.peel_um, made.film.mean_um) == pytest.approx((929.0304, 25.4, 90))
    assert levigate.wet_film_um(dry_um=[1, 2] * unit.thou, volume_solids=0.5) == pytest.approx([50.8, 101.6])
    rate = dict(wear_coefficient=0.02, size_um=18.3, hardness_mpa=150.0)
    by_psi = levigate.removal_rate_um_per_m(pressure_kpa=1 * unit.psi, **rate)
    assert by_psi == pytest.approx(levigate.removal_rate_um_per_m(pressure_kpa=6.894757293168361, **rate), rel=1e-12)
    with pytest.raises(TypeError, match="area_cm2 = 1 kilogram is not to be had in cm"):
        zone(area_cm2=1 * unit.kg)
    with pytest.raises(TypeError, match="volume_solids is a plain number"):
        levigate.wet_film_um(dry_um=1.0, volume_solids=0.5 * unit.meter)
    with pytest.raises(TypeError, match="name = .* carries a unit"):
        zone(name=1 * unit.meter)


def test_a_masked_array_is_refused():
    masked = np.ma.array([1.0, 2.0], mask=[False, True])
    with pytest.raises(TypeError, match="dry_um is a masked array"):
        levigate.wet_film_um(dry_um=masked, volume_solids=0.5)
    with pytest.raises(TypeError, match="readings_um is a masked array"):
        levigate.Film(readings_um=masked)


def test_a_stack_is_a_sequence_by_id(demo):
    stack = demo[1]
    ids = [sheet.id for sheet in stack]
    assert len(stack) == len(ids) == len(stack.sheets) and ids[0] in stack and "none" not in stack
    assert stack[ids[1]] == stack[1] == stack.sheets[1] and stack[-1] == stack.sheets[-1]
    with pytest.raises(KeyError, match="nearest is"):
        stack[ids[0] + "x"]
    with pytest.raises(IndexError):
        stack[len(ids)]
