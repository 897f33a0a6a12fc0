"""The picture of a way back: it draws without a screen and says what it shows."""

import levigate
import pytest
from drawn import words
from levigate import plots


@pytest.fixture(scope="module")
def done():
    ways = {"a-p400": 0, "a-p800": 90, "a-p1500": 0, "b-pad": 90}
    return [levigate.DoneStep(sheet, direction_deg=way) for sheet, way in ways.items()]


@pytest.mark.parametrize("kind", ["scratch", "cluster", "haze", "swirl", "wave", "witness line"])
def test_every_mark_draws(demo, done, kind, tmp_path):
    way = levigate.go_back(*demo, done, levigate.Mark(kind=kind, zone="top"))
    figure = plots.causes(way, save=tmp_path / "causes.png")
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
    figure = plots.causes(way)
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
    assert "film" in words(plots.causes(way))
