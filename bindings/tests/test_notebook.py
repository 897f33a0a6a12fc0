"""Values in a notebook: rows that pandas takes, and tables of HTML that cannot be broken out of."""

import math
from html.parser import HTMLParser

import levigate
import pandas as pd
import pytest
from levigate import _notebook

NASTY = "<b onclick='x()'>&\"<script>"


@pytest.fixture(scope="module")
def values(demo):
    job, stack = demo
    plan = levigate.plan(job, stack)
    ways = {"a-p400": 0, "a-p800": 90, "a-p1500": 0, "b-pad": 90}
    done = [levigate.DoneStep(sheet, direction_deg=way) for sheet, way in ways.items()]
    mark = levigate.Mark(kind="cluster", zone="top", seen="loupe", width_um=5)
    return {
        "grade": levigate.grade("P800"),
        "stack": stack,
        "plan": plan,
        "simulation": levigate.simulate(job, plan, draws=30),
        "way": levigate.go_back(job, stack, done, mark),
    }


class Page(HTMLParser):
    """The cells and headings of the tables, the tags in use, and whether each is closed in its turn."""

    def __init__(self, text):
        super().__init__()
        self.open, self.tags, self.cells, self.heads, self.text = [], set(), [], [], ""
        self.feed(text)
        assert self.open == []

    def handle_starttag(self, tag, attributes):
        assert all(name == "style" for name, _ in attributes)
        self.open.append(tag)
        self.tags.add(tag)
        if tag in ("td", "th"):
            (self.cells if tag == "td" else self.heads).append("")

    def handle_endtag(self, tag):
        assert self.open.pop() == tag

    def handle_data(self, data):
        self.text += data
        if self.open and self.open[-1] in ("td", "th"):
            (self.cells if self.open[-1] == "td" else self.heads)[-1] += data


TAGS = {"table", "caption", "thead", "tbody", "tr", "th", "td", "p", "b", "pre", "details", "summary"}


@pytest.mark.parametrize("name, most", [("grade", 3_000), ("stack", 10_000), ("plan", 8_000), ("simulation", 4_000), ("way", 4_000)])
def test_a_value_shows_as_a_small_table(values, name, most):
    text = values[name]._repr_html_()
    page = Page(text)
    assert page.tags <= TAGS and "table" in page.tags and len(text) < most


def test_tables_hold_the_numbers_of_the_value(values):
    plan, simulation, way = values["plan"], values["simulation"], values["way"]
    page = Page(plan._repr_html_())
    assert page.heads[:6] == ["sheet", "label", "size, um", "minutes", "sheets used", "reading, GU"]
    assert "front and sides: film left, um" in page.heads
    first = plan.steps[0]
    assert page.cells[:4] == ["b-400", "CAMI 400", "23.6", f"{first.minutes:.0f}"]
    assert f"{first.zones['top'].film_left_um:.3g}" in page.cells
    page = Page(values["grade"]._repr_html_())
    assert page.cells[:3] == ["median, um", "21.8", "published table"]
    page = Page(simulation._repr_html_())
    assert {"in all", f"{simulation.minutes.p90:.0f}", "front and sides"} <= set(page.cells)
    page = Page(way._repr_html_())
    assert all(sentence in page.text for sentence in way.diagnosis.evidence)
    assert f"{way.legs[0].looks[0].removal_um:.3g}" in page.cells


def test_what_is_wrong_shows_unfolded(demo, sheet):
    job, stack = demo
    unsettled = levigate.Stack([sheet("600"), sheet("P400")])
    text = " ".join(unsettled._repr_html_().split())
    assert "can mean P600 (25.8 um), CAMI 600 (16.0 um) or JIS #600 (20.0 um)" in text.partition("<details>")[0]
    assert [row["grade_median_um"] for row in unsettled.to_records()] == [None, 35.0]
    short = levigate.plan(job, levigate.Stack([sheet("P400")]))
    assert Page(short._repr_html_()).text == job.name + short.why.message
    assert short.to_records() == []
    broken = levigate.evaluate(job, stack, ["b-pad", "a-p400"])
    errors = [finding for finding in broken.findings if finding.severity == "error"]
    shown = " ".join(broken._repr_html_().partition("<details>")[0].split())
    assert errors and all(error.message.split(". ")[0][:60].replace("'", "&#x27;") in shown for error in errors)


def test_a_rule_for_one_maker_leaves_the_grades_of_others(sheet):
    sheets = [sheet("600", id="b", maker="Maker B"), sheet("P400", id="a", maker="Maker A")]
    stack = levigate.Stack(sheets, bare_number={"Maker B": "CAMI"})
    assert [row["grade_label"] for row in stack.to_records()] == ["CAMI 600", "P400"]


def test_a_zone_without_a_film_budget_says_so(job, stack):
    plan = levigate.evaluate(job(zone={"film": {"mean_um": 11, "sd_um": 6}}), stack("P1500"), ["P1500"])
    assert plan.total.film == math.inf and "no budget" in Page(plan._repr_html_()).cells
    assert [row["film_used"] for row in plan.to_records()] == [math.inf]


def test_no_way_back_says_why_and_what_remains(demo):
    job = demo[0].to_dict()
    job["zones"][0]["film"] = {"mean_um": 25, "sd_um": 1}
    mark = levigate.Mark(kind="witness line", zone="top")
    way = levigate.go_back(levigate.Job.from_dict(job), demo[1], [levigate.DoneStep("a-p400")], mark)
    assert not way.found and way.to_records() == []
    text = Page(way._repr_html_()).text
    assert way.why in text and all(one in text for one in way.remains)


def test_texts_of_the_user_stay_texts(job, stack, sheet):
    nasty = job(zone={"name": NASTY}, name=NASTY)
    plan = levigate.plan(nasty, stack("P600", "P1000", "P1500"))
    for text in (plan._repr_html_(), levigate.simulate(nasty, plan, 20)._repr_html_(), levigate.Stack([sheet("P600", maker=NASTY)])._repr_html_()):
        page = Page(text)  # which refuses an attribute but style
        assert page.tags <= TAGS and NASTY in page.text


@pytest.mark.parametrize("name", ["stack", "plan", "simulation", "way"])
def test_pandas_takes_the_rows_in_one_call(values, name):
    rows = values[name].to_records()
    frame = pd.DataFrame(rows)
    assert len(frame) == len(rows) > 0 and all(row.keys() == rows[0].keys() for row in rows)
    for row, (_, series) in zip(rows, frame.iterrows()):
        for key, value in row.items():
            assert value is None or isinstance(value, (str, int, float)) and not (isinstance(value, float) and math.isnan(value))
            assert pd.isna(series[key]) == (value is None), key


def test_rows_of_a_plan_are_its_steps_and_zones(values):
    plan = values["plan"]
    frame = pd.DataFrame(plan.to_records()).set_index(["step", "zone"])
    assert len(frame) == len(plan.steps) * len(plan.zones)
    for number, step in enumerate(plan.steps, start=1):
        for name, zone in step.zones.items():
            row = frame.loc[number, name]
            assert (row.sheet, row.step_minutes, row.minutes, row.worked) == (step.sheet, step.minutes, zone.minutes, zone.worked)
            assert row.film_left_um == zone.film_left_um and row.reading_60_low_gu == zone.reading_60.low_gu
    assert frame.film_left_um.dtype == float and frame.worked.dtype == bool


def test_rows_of_the_others_are_theirs(values):
    simulation, stack, way = values["simulation"], values["stack"], values["way"]
    rows = {(row["step"], row["zone"]): row for row in simulation.to_records()}
    for number, step in enumerate(simulation.steps, start=1):
        for name, reading in step.zones.items():
            row = rows[number, name]
            assert row["step_p90_minutes"] == step.minutes.p90 and row["p50_reading_20_gu"] == reading.reading_20_gu.p50
            assert row["end_p10_thinnest_um"] == simulation.zones[name].thinnest_um.p10
    of_stack = stack.to_records()
    assert [(r["id"], r["label"], r["grade_median_um"]) for r in of_stack] == [
        (sheet.id, sheet.label, grade.median_um) for sheet, grade in zip(stack.sheets, stack.grades)
    ]
    looks = [(leg.sheet, look.removal_um) for leg in way.legs for look in leg.looks]
    assert [(row["sheet"], row["removal_um"]) for row in way.to_records()] == looks


def test_names_of_rows_do_not_hang_on_the_data(values, job, stack):
    """A solid has no film, and paper without a limit never runs short: the names stay."""
    solid = dict(kind="solid", hardness_mpa=150, wear_coefficient=0.02, refractive_index=1.5)
    zone = dict(name="a", area_cm2=9, block="hard block", peel_um=5, peel_wavelength_mm=3)
    bare = job(coating=solid, zones=[zone])
    plan = levigate.plan(bare, stack("P1500"))
    simulation = levigate.simulate(bare, plan, draws=20)
    for one, name in ((plan, "plan"), (simulation, "simulation"), (levigate.Stack([s.to_dict() for s in plan.stack.sheets]), "stack")):
        assert list(one.to_records()[0]) == list(values[name].to_records()[0])
    (row,) = simulation.to_records()
    assert row["end_p10_film_left_um"] is None and row["step_paper_short_share"] is None


def test_headings_name_the_unit():
    told = {
        "film_left_um": "film left, um",
        "p10_minutes": "p10 minutes",
        "minutes": "minutes",
        "reading_gu": "reading, GU",
        "a_b: patch_mm": "a_b: patch, mm",
        "on_hand": "on hand",
    }
    assert {name: _notebook.heading(name) for name in told} == told


def test_a_chance_that_is_nearly_one_is_not_said_to_be_one():
    assert [_notebook.cell(x) for x in (0.9994, 0.9996, 1.0, 149.6, 2.5278)] == ["0.999", "over 0.999", "1", "150", "2.53"]


def test_unit_of_a_name():
    assert [levigate.unit_of(n) for n in ("film_left_um", "area_cm2", "minutes", "sheet", "dry_um_per_coat")] == ["um", "cm2", "min", "", "um/coat"]
    with pytest.raises(levigate.BadInput, match="'x_um_per_kg'"):
        levigate.unit_of("x_um_per_kg")
