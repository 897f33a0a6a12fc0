"""Pictures of how a job went: they draw without a screen and say what they show."""

import levigate
import pytest
from levigate import outcomes
from matplotlib.text import Text


def words(figure):
    return " | ".join(t.get_text() for t in figure.findobj(Text) if t.get_visible())


@pytest.fixture(scope="module")
def done():
    ways = {"a-p400": 0, "a-p800": 90, "a-p1500": 0, "b-pad": 90}
    return [levigate.DoneStep(sheet, direction_deg=way) for sheet, way in ways.items()]


@pytest.fixture(scope="module")
def simulated(demo):
    plan = levigate.plan(*demo)
    return plan, levigate.simulate(demo[0], plan, draws=50)


@pytest.mark.parametrize("kind", ["scratch", "cluster", "haze", "swirl", "wave", "witness line"])
def test_every_mark_draws(demo, done, kind, tmp_path):
    way = levigate.go_back(*demo, done, levigate.Mark(kind=kind, zone="top"))
    figure = outcomes.causes(way, save=tmp_path / "causes.png")
    assert (tmp_path / "causes.png").read_bytes().startswith(b"\x89PNG")
    assert f"{kind} in top" in words(figure)
    steps, depths, *looks = figure.axes
    assert len(steps.patches) == sum(c.probability >= 0.005 for c in way.diagnosis.causes)
    if way.found:
        chance = depths.lines[0].get_ydata()
        assert chance[0] == 0 and chance[-1] == pytest.approx(1)
    assert len(looks) == way.found


@pytest.mark.parametrize("area_cm2", [60, 2000])
def test_legs_show_by_when_a_mark_is_gone(demo, done, area_cm2):
    job = demo[0].to_dict()
    job["zones"][0]["area_cm2"] = area_cm2
    mark = levigate.Mark(kind="scratch", zone="top", seen="lamp")
    way = levigate.go_back(levigate.Job.from_dict(job), demo[1], done, mark)
    figure = outcomes.causes(way)
    dots = figure.axes[2].lines[-1]
    assert list(dots.get_ydata()) == [look.gone_chance for leg in way.legs for look in leg.looks]
    minutes, began = [], 0.0
    for number, leg in enumerate(way.legs, start=1):
        assert f"{number}: {leg.sheet}" in words(figure)
        minutes += [began + look.minutes for look in leg.looks]
        began += leg.looks[-1].minutes
    assert list(dots.get_xdata()) == pytest.approx(minutes)
    on_patch = way.legs[0].looks[0].patch_mm is not None
    assert on_patch == (area_cm2 == 2000)
    assert ("minutes on the patch" in words(figure)) == on_patch


def test_a_film_that_is_nearly_gone_shows(demo, done):
    job = demo[0].to_dict()
    job["zones"][0]["film"] = {"mean_um": 45, "sd_um": 3}
    mark = levigate.Mark(kind="scratch", zone="top", seen="loupe", width_um=30)
    way = levigate.go_back(levigate.Job.from_dict(job), demo[1], done, mark)
    assert "film" in words(outcomes.causes(way))


def test_minutes_are_those_of_plan_and_simulation(simulated):
    plan, simulation = simulated
    figure = outcomes.minutes(plan, simulation, {plan.steps[1].sheet: 77.0})
    (axes,) = figure.axes
    assert all(step.sheet in words(figure) for step in plan.steps)
    drawn = [line.get_xdata() for line in axes.lines]
    assert any(list(x) == [77.0] for x in drawn)
    for step, one in zip(plan.steps, simulation.steps):
        assert any(list(x) == [step.minutes] for x in drawn)
        assert any(list(x) == [one.minutes.p10, one.minutes.p90] for x in drawn)


def test_film_left_is_that_of_the_simulation(simulated, demo):
    plan, simulation = simulated
    (axes,) = outcomes.film_left(plan, simulation).axes
    drawn = [list(line.get_xdata()) for line in axes.lines]
    for name, zone in simulation.zones.items():
        assert [zone.thinnest_um.p10, zone.thinnest_um.p90] in drawn, name
    assert [patch.get_width() for patch in axes.patches] == [z.film.mean_um for z in demo[0].zones]
