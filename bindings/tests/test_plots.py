"""Pictures: they draw without a screen, on every kind of plan, and say what they show."""

import subprocess
import sys

import levigate
import pytest
from drawn import cut_off, labels_apart, words
from levigate import plots

NAMES = [*plots.PICTURES, None]  # without a name: section and ladder
DRAW = pytest.mark.parametrize("name", NAMES)


@pytest.fixture(scope="module")
def demo_plan(demo):
    return levigate.plan(*demo)


@DRAW
def test_the_demo_draws(name, demo_plan, tmp_path):
    path = tmp_path / "picture.png"
    figure = demo_plan.plot(name, save=path)
    assert path.read_bytes().startswith(b"\x89PNG") and path.stat().st_size > 20_000
    assert demo_plan.job.name in words(figure)


def test_a_plan_draws_itself(demo_plan, tmp_path):
    figure = demo_plan.plot(save=tmp_path / "picture.svg")
    assert "µm" in words(figure) and (tmp_path / "picture.svg").stat().st_size > 20_000


def test_section_names_zones_steps_and_limits(demo_plan):
    text = words(plots.section(demo_plan))
    for wanted in (
        "top",
        "front and sides",
        "edges",
        "as sprayed",
        "reserve",
        "may go down to 29.8",
    ):
        assert wanted in text
    assert all(step.sheet in text for step in demo_plan.steps)


def test_ladder_names_every_sheet_and_the_target(demo_plan):
    text = words(plots.ladder(demo_plan))
    assert all(sheet.id in text for sheet in demo_plan.stack.sheets)
    assert "400  23.6  b-400" in text and "#800  14  c-800" in text  # as printed, not as read
    assert "target\n8 µm" in text and "FEPA P" in text and "CAMI" in text


def test_section_is_to_scale(demo_plan):
    """The drawn surface reaches the depth of every step, and the plane of it."""
    figure = plots.section(demo_plan)
    for panel, zone in zip(figure.axes, demo_plan.job.zones):
        depths = panel.lines[0].get_ydata()
        assert max(depths) == pytest.approx(demo_plan.steps[-1].zones[zone.name].depth_um)
        proud_um = max([zone.peel_um / 2, *(d.height_um for d in zone.defects)])
        assert min(depths) == pytest.approx(-proud_um, rel=1e-2)


def test_runs_stand_proud_and_peel_that_stays_is_drawn(job, stack):
    run = dict(kind="run", height_um=150, width_mm=4, length_mm=40, count=3)
    nib = dict(kind="nib", height_um=8, width_mm=1, length_mm=1)
    top = job(zone={"defects": [nib, run]}).to_dict()["zones"][0]
    moulding = {**top, "name": "moulding", "levelled": False, "defects": []}
    plan = levigate.plan(job(zones=[top, moulding]), stack("P600", "P1000", "P1500"))
    figure = plots.section(plan)
    level, rest, *_ = (panel.lines[0].get_ydata() for panel in figure.axes)
    assert min(level) == pytest.approx(-150, rel=1e-2)
    last = plan.steps[-1].zones["moulding"]
    assert min(rest[-100:]) == pytest.approx(last.depth_um - last.scratch_um - 35 / 2, rel=1e-2)
    text = words(figure)
    assert "3 × run, 150 high" in text and "1 × nib, 8 high" in text and "peel that stays" in text
    assert labels_apart(figure)


@DRAW
def test_wheels_and_compounds_draw(name, job, sheet):
    stack = levigate.Stack(
        [
            *map(sheet, ["P600", "P1200", "P2000"]),
            dict(id="cutting", label="8 µm", compound="cutting", wheel="sewn"),
            dict(id="fine", label="2 µm", compound="fine", wheel="loose flannel"),
        ]
    )
    plan = levigate.plan(job(target={"size_um": 3}, rules={"max_ratio": 5}), stack)
    assert plan.steps[-1].sheet == "fine"
    text = words(plan.plot(name))
    assert "fine" in text and ("micron" in text) == (name in ("ladder", None))


def test_labels_do_not_overlap(demo_plan):
    for draw in (plots.section, plots.ladder):
        figure = draw(demo_plan)
        assert labels_apart(figure)


@pytest.mark.parametrize("name", plots.PICTURES)
def test_other_plans_draw(name, job, stack, sheet):
    solid = dict(kind="solid", hardness_mpa=150, wear_coefficient=0.02, refractive_index=1.5)
    zone = dict(name="a $1$ _x", area_cm2=9, block="hard block", peel_um=5, peel_wavelength_mm=3)
    one = stack("P1500")
    twelve = stack(*"P240 P280 P320 P360 P400 P500 P600 P800 P1000 P1200 P1500".split())
    for plan in (
        levigate.plan(job(), one),
        levigate.plan(job(target={"size_um": 1}), one),
        levigate.plan(job(), levigate.Stack([])),
        levigate.plan(job(target={"gloss_gu": 1}), one),
        levigate.plan(job(coating=solid, zones=[zone]), one),
        levigate.plan(job(start={"scratched_by": "P1000"}), one),
        levigate.plan(job(zone={"start": {"scratched_by": "P1000"}}), one),
        levigate.plan(job(zone={"peel_um": 0}), one),
        levigate.evaluate(job(zone={"film": {"mean_um": 20, "sd_um": 6}}), one, ["P1500"]),
        levigate.evaluate(job(), twelve, [sheet.id for sheet in twelve.sheets]),
        levigate.plan(
            job(), levigate.Stack([sheet("P1500", id=f"drawer-{i}-of-many") for i in range(8)])
        ),
    ):
        assert cut_off(plan.plot(name)) == []


def test_without_matplotlib_the_rest_works_and_pictures_say_what_is_missing(demo_dir):
    code = f"""
import sys
sys.modules["matplotlib"] = None
import levigate
job = levigate.Job.load({str(demo_dir / "job.json")!r})
plan = levigate.plan(job, levigate.Stack.load({str(demo_dir / "stack.json")!r}))
try:
    plan.plot()
except ImportError as missing:
    print(missing)
"""
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert "levigate[plot]" in done.stdout
