"""Plans from Python: the demo, findings, reasons, bad input."""

import json
import math
import subprocess
from pathlib import Path

import jsonschema
import levigate
import numpy as np
import pytest

ROOT = Path(__file__).resolve().parents[2]
HABIT = ["P600", "P800", "P1000", "P1200", "P1500"]


@pytest.fixture(scope="module")
def demo_plan(demo):
    return levigate.plan(*demo)


def test_the_demo_says_the_same_in_cpp(demo_plan):
    programs = sorted(
        ROOT.glob(".build/*/examples/example_first_plan"), key=lambda p: p.stat().st_mtime
    )
    if not programs:
        pytest.skip("examples/cpp/first_plan.cpp is not built: tests/run.sh does so")
    sheet = subprocess.run([programs[-1]], cwd=ROOT, check=True, capture_output=True).stdout
    assert demo_plan.bench_sheet() == sheet.decode()


def test_the_demo_adds_up(demo, demo_plan):
    job, _ = demo
    assert demo_plan.found and demo_plan.why is None
    assert list(demo_plan.steps[0].zones) == [zone.name for zone in job.zones]
    minutes = sum(step.minutes for step in demo_plan.steps)
    assert demo_plan.total.minutes == pytest.approx(minutes, abs=len(demo_plan.steps) / 60e3)
    for step in demo_plan.steps:
        sanding = sum(zone.minutes for zone in step.zones.values())
        assert step.minutes == pytest.approx(sanding + job.rules.change_minutes, rel=1e-12)
    for zone in job.zones:
        removed_um = 0.0
        for step in demo_plan.steps:
            done = step.zones[zone.name]
            removed_um += done.removal_um
            assert done.depth_um == pytest.approx(removed_um + done.scratch_um, rel=1e-12)
            assert done.film_left_um == pytest.approx(zone.film.mean_um - done.depth_um, rel=1e-12)
        assert done.depth_um <= job.budget_um[zone.name]
    shares = [demo_plan.steps[-1].zones[n].depth_um / b for n, b in job.budget_um.items()]
    assert demo_plan.total.film == pytest.approx(max(shares), rel=1e-6)


def test_a_bench_sheet_shows_one_plan_in_both_units(demo, demo_plan):
    simulation = levigate.simulate(demo[0], demo_plan, draws=20)
    text, page = demo_plan.bench_sheet(simulation), demo_plan.bench_sheet_html(simulation)
    assert "Gauge now: top 92, front and sides 84 and edges 45 um." in text and "stop below, um" in page
    assert "top 3.61, front and sides 3.31 and edges 1.77 mil" in demo_plan.bench_sheet(units="us")
    assert "stop below, mil" in demo_plan.bench_sheet_html(simulation, "us")
    assert "usual numbers" in demo_plan.bench_sheet() and "usual numbers" not in text
    assert {zone.below_um for zone in demo_plan.zones.values()} == {0}
    for sheet in (demo_plan.bench_sheet, demo_plan.bench_sheet_html):
        with pytest.raises(levigate.BadInput, match="units 'metrical' is not known; the nearest is 'metric'"):
            sheet(units="metrical")


def test_numbers_of_a_step_are_those_of_the_functions(demo, demo_plan):
    job, stack = demo
    rules, coating = job.rules, job.coating
    sheets = {sheet.id: (sheet, grade) for sheet, grade in zip(stack.sheets, stack.grades)}
    for step in demo_plan.steps:
        sheet, grade = sheets[step.sheet]
        for zone in job.zones:
            tool = sheet.block or zone.block
            contact = levigate.contact(
                size_um=grade.median_um,
                log_spread=grade.log_spread,
                tip_spread=sheet.backing.tip_spread,
                modulus_mpa=sheet.backing.modulus_mpa,
                pressure_kpa=tool.pressure_kpa,
                hardness_mpa=coating.hardness_mpa,
            )
            done = step.zones[zone.name]
            if step.sheet == demo_plan.steps[0].sheet and not zone.levelled:
                assert (done.removal_um, done.scratch_um, done.minutes) == (0, 0, 0)
                continue
            assert done.scratch_um == contact.depth_um(rules.scratch_quantile)
            assert done.gloss_gu == levigate.gloss_gu(
                refractive_index=coating.refractive_index, angle_deg=60, rq_um=contact.rq_um
            )
            assert done.cut_through == levigate.cut_through(
                depth_um=done.depth_um,
                mean_um=zone.film.mean_um,
                sd_um=zone.film.sd_um,
                removed_cv=rules.removed_cv,
                reserve_um=rules.reserve_um,
                spots=max(1, zone.area_cm2),
                mean_se_um=zone.film.mean_se_um,
                sd_se_um=zone.film.sd_se_um,
                readings=zone.film.readings,
                peel_um=zone.peel_um if zone.levelled else 0,  # under a hard block, which cuts crests alone
                peel_factor=levigate.source(zone.peel_how, "factor").value,
            )


def test_the_tradeoff_is_a_front(demo_plan):
    points = [
        (
            p.total.minutes + p.total.back_minutes,
            p.total.film,
            p.total.cost,
            sum(step.fragile for step in p.steps),
        )
        for p in demo_plan.tradeoff
    ]
    assert len(points) > 3 and points == sorted(points)
    for a in points:
        assert not any(b != a and all(x <= y for x, y in zip(b, a)) for b in points)
    taken = points[[p.total for p in demo_plan.tradeoff].index(demo_plan.total)]
    near = [p for p in points if p[0] <= 1.03 * points[0][0]]
    assert taken == min(near, key=lambda p: (p[3], p[1]))
    assert demo_plan.tradeoff[0].card()


def test_a_plan_says_what_it_is_for_and_what_each_step_asks(demo, demo_plan):
    job = demo[0]
    assert (demo_plan.coating, demo_plan.scratched_by) == (job.coating.name, "")
    assert demo_plan.target == job.target
    assert list(demo_plan.zones) == [zone.name for zone in job.zones]
    top = demo_plan.zones["top"]
    assert (top.area_cm2, top.block, top.stands) == (540, "hard block", "")
    assert top.budget_um == pytest.approx(job.budget_um["top"])
    first, *_, last = demo_plan.steps
    assert first.levels and (first.way, first.done) == ("one way", "no shiny spot")
    assert (last.way, last.takes_out) == ("across the step before", [demo_plan.steps[-2].label])
    assert (last.size_basis, last.maker, last.wheel) == ("extrapolated", "Maker B", None)
    assert first.zones["edges"].passed_by == "not levelled" and first.zones["top"].passed_by is None
    assert last.zones["top"].tool == "foam pad"
    worst = max(zone.film_used for zone in last.zones.values())
    assert worst == pytest.approx(demo_plan.total.film, abs=1e-6)
    assert last.rinse_every_minutes < last.change_every_minutes


def test_json_of_a_plan_keeps_its_schema(demo, demo_plan):
    for name, data in (
        ("plan", demo_plan.to_dict()),
        ("job", demo[0].to_dict()),
        ("stack", demo[1].to_dict()),
    ):
        schema = json.loads((ROOT / "data" / "schema" / f"{name}.schema.json").read_text())
        jsonschema.validate(data, schema)
    assert json.loads(demo_plan.to_json()) == demo_plan.to_dict()


def test_evaluate_tells_the_rules_that_a_habit_breaks(demo, job, stack):
    long_step = levigate.evaluate(job(), stack("P400", "P1500"), ["P400", "P1500"])
    assert [f.kind for f in long_step.findings if f.severity == "error"] == ["step_too_long"]
    assert long_step.steps[1].size_ratio == pytest.approx(35.0 / 12.6)
    with pytest.raises(levigate.BadInput, match="'P450' is not known; the nearest is 'P400'"):
        levigate.evaluate(job(), stack("P400", "P1500"), ["P450"])
    with pytest.raises(levigate.BadInput, match="empty"):
        levigate.evaluate(job(), stack("P400"), [])


def test_a_habit_is_beaten_from_the_same_drawer(job, stack):
    drawer = stack("P400", *HABIT)
    usual, best = levigate.evaluate(job(), drawer, HABIT), levigate.plan(job(), drawer)
    assert best.total.minutes < usual.total.minutes
    text = levigate.comparison_card(usual, best)
    assert "P600" in text and "panel" in text


def test_a_soft_pad_first_is_called_out(job, sheet):
    pad = sheet("P1500", id="pad", backing="foam-backed", block="foam pad")
    plan = levigate.evaluate(job(), levigate.Stack([pad]), ["pad"])
    (finding,) = [f for f in plan.findings if f.kind == "soft_first"]
    assert "foam pad" in finding.message and finding.sheets == ["pad"]
    assert finding.zone == "top"
    assert finding.numbers["removal_um"] > finding.numbers["hard_removal_um"] > 0


def test_a_film_too_thin_before_any_work_is_called_out(job, stack):
    top = job().to_dict()["zones"][0]
    thin = {**top, "name": "lip", "area_cm2": 90, "levelled": False, "film": {"mean_um": 45, "sd_um": 12, "mean_se_um": 0}, "peel_um": 0}
    plan = levigate.plan(job(zones=[top, thin], target={"size_um": 36}), stack("P400"))
    assert plan.found and plan.steps[-1].zones["lip"].depth_um == 0
    (finding,) = [f for f in plan.findings if f.kind == "film_too_thin"]
    assert (finding.severity, finding.zone, finding.sheets) == ("error", "lip", [])
    chance = -math.expm1(90 * math.log1p(-math.erfc(35 / 12 / math.sqrt(2)) / 2))
    assert finding.numbers["cut_through"] == pytest.approx(chance, rel=1e-12)
    assert chance > finding.numbers["cut_through_limit"] == 0.01
    assert "Do not sand the zone" in finding.message
    assert plan.steps[-1].zones["lip"].film_used == 0 and "nan" not in plan.card()


def test_check_orders_by_size(stack):
    findings = levigate.check(stack("P800", "CAMI 600", "JIS #800", "P600"))
    assert {"misleading_numbers"} <= {f.kind for f in findings}
    assert not any("CAMI 600 (CAMI 600, 16.0 um) is coarser" in f.message for f in findings)
    assert levigate.findings_text(findings).count("\n") >= len(findings)
    assert levigate.check(stack("P400", "P1500")) != []
    assert levigate.check(stack("P400", "P1500"), {"max_ratio": 3}) == []
    assert levigate.check(stack("P400", "P1500"), levigate.Rules(max_ratio=3)) == []


def test_labels_that_cannot_be_read_are_findings_of_check_and_errors_of_plan(job, stack):
    drawer = stack("600", "P650", "P800")
    kinds = [f.kind for f in levigate.check(drawer) if f.severity == "error"]
    assert kinds == ["ambiguous_label", "unknown_label"]
    with pytest.raises(levigate.BadInput) as both:
        levigate.plan(job(), drawer)
    assert [fault.pointer for fault in both.value.faults] == ["/sheets/0/label", "/sheets/1/label"]
    with pytest.raises(levigate.UnknownGrade, match="/sheets/1"):
        levigate.plan(job(), levigate.Stack(drawer.sheets, bare_number="CAMI"))


def test_bare_numbers_may_have_a_rule_for_each_maker(sheet):
    rule = {"Maker B": "CAMI", "Maker C": "JIS"}
    sheets = [sheet("600", id="b", maker="Maker B"), sheet("600", id="c", maker="maker c")]
    stack = levigate.Stack(sheets, bare_number=rule)
    assert stack.bare_number == rule
    assert [grade.label for grade in stack.grades] == ["CAMI 600", "JIS #600"]
    assert [f.message for f in levigate.check(stack) if f.kind == "label_by_rule"] == [
        "b: 600 of Maker B read as CAMI (16.0 um), by the rule for Maker B",
        "c: 600 of maker c read as JIS (20.0 um), by the rule for maker c",
    ]
    assert levigate.Stack.from_dict(stack.to_dict()) == stack


def test_why_there_is_no_plan(job, sheet, stack):
    gap = levigate.plan(job(rules={"max_ratio": 1.2}), stack("P400", "P1500")).why
    assert gap is None  # P1500 alone may do all of it

    scratched = dict(start={"scratched_by": "P400"})
    gap = levigate.plan(job(**scratched), stack("P1500")).why
    assert gap.blocked_by == "ratio" and gap.smallest_max_ratio == pytest.approx(35.0 / 12.6)
    assert gap.gaps[0].bridges and gap.gaps[0].ratio == gap.smallest_max_ratio

    out_of_reach = levigate.plan(job(target={"size_um": 1}), stack("P400"))
    assert not out_of_reach.found and out_of_reach.steps == []
    assert out_of_reach.why.blocked_by == "target"
    assert "No plan" in repr(out_of_reach) and "No plan" in out_of_reach.card()

    thin = levigate.plan(job(zone={"film": {"mean_um": 25, "sd_um": 5}}), stack("P1500")).why
    assert (thin.blocked_by, thin.zone) == ("film", "top") and thin.film_short_um > 0
    (film,) = thin.films
    assert film.zone == "top" and film.film_um == 25 and film.coats is None
    assert f"Zone top needs {film.needed_um:.0f} um of film on the mean." in thin.message
    for um, found in ((film.needed_um - 1, False), (film.needed_um, True)):
        one = {"coats": 1, "dry_um_per_coat": um, "sd_um": 5}
        assert levigate.plan(job(zone={"film": one}), stack("P1500")).found is found
    two = levigate.plan(job(zone={"film": {"coats": 2, "dry_um_per_coat": 12.5, "sd_um": 5}}), stack("P1500"))
    assert two.to_dict()["why"]["films"] == [
        {"zone": "top", "film_um": 25, "needed_um": film.needed_um, "dry_um_per_coat": 12.5,
         "coats": math.ceil(film.needed_um / 12.5), "on_flat_um": None}
    ]  # fmt: skip
    assert film == levigate.plan(job(zone={"film": {"mean_um": 25, "sd_um": 5}}), stack("P1500")).why.films[0]

    drawer = levigate.Stack([sheet("P1500", on_hand=0.5)])
    paper = levigate.plan(job(), drawer).why
    assert paper.blocked_by == "paper"
    (short,) = paper.paper
    assert short.sheet == "P1500" and short.needed > short.on_hand == 0.5
    assert short == levigate.plan(job(), drawer).why.paper[0]


def test_numpy_in_dictionaries(job):
    readings = np.array([88.0, 97.0, 92.0])
    made = job(zone={"area_cm2": np.float32(900), "film": {"readings_um": readings}})
    assert made.zones[0].film.mean_um == pytest.approx(readings.mean())
    with pytest.raises(TypeError, match="no data for JSON"):
        job(zone={"area_cm2": {1, 2}})


def test_a_rigid_block_and_infinite_numbers(job):
    block = dict(modulus_mpa="rigid", area_cm2=87.5, force_n=15, speed_m_s=0.5, duty=0.6, wrap=1.6)
    assert job(zone={"block": block}).zones[0].block.modulus_mpa == math.inf
    for wrong in (math.inf, math.nan):
        with pytest.raises(levigate.Error):
            job(zone={"area_cm2": wrong})


BAD_ZONES = {
    "area_cm2": [-1, 0, 1e308, "900", None, [900]],
    "film": [None, {}, {"mean_um": 5, "sd_um": 1}, {"mean_um": 100, "sd_um": -1}],
    "block": ["hard blok", {}, 3],
    "peel_um": [-1, 1e308, "35"],
}


@pytest.mark.parametrize("key, value", [(k, v) for k, values in BAD_ZONES.items() for v in values])
def test_bad_zones_are_refused_by_name(job, key, value):
    with pytest.raises(levigate.Error, match="/zones/0"):
        job(zone={key: value})


@pytest.mark.parametrize(
    "changed, pointer",
    [
        ({"zones": []}, "/zones"),
        ({"coating": "urethan"}, "/coating"),
        ({"rules": {"min_ratio": 2, "max_ratio": 1.5}}, "/rules/min_ratio"),
        ({"rules": {"overcutt": 2}}, "/rules/overcutt"),
        ({"format": "levigate.job/2"}, "/format"),
        ({"prefer": "fun"}, "/prefer"),
        ({"target": {}}, "/target"),
    ],
)
def test_bad_jobs_carry_a_pointer(job, changed, pointer):
    with pytest.raises(levigate.BadInput) as caught:
        job(**changed)
    assert caught.value.pointer == pointer


def test_a_coat_needs_film_and_a_solid_has_none(job):
    solid = dict(kind="solid", hardness_mpa=150, wear_coefficient=0.02, refractive_index=1.5)
    with pytest.raises(levigate.BadInput, match="film"):
        job(coating=solid)
    zone = dict(name="top", area_cm2=9, block="hard block", peel_um=5, peel_wavelength_mm=3)
    made = job(coating=solid, zones=[zone])
    assert made.budget_um == {"top": None} and made.zones[0].film is None
    with pytest.raises(levigate.BadInput, match="film"):
        job(zones=[zone])


def test_bad_stacks(sheet):
    with pytest.raises(levigate.BadInput, match="is repeated") as caught:
        levigate.Stack([sheet("P400"), sheet("P400")])
    assert caught.value.pointer == "/sheets/1/id"
    for changed in (
        {"label": ""},
        {"size_um": -1},
        {"size_um": 0},
        {"width_mm": None},
        {"colour": 1},
    ):
        with pytest.raises(levigate.Error, match="/sheets/0"):
            levigate.Stack([sheet("P400", **changed)])
    with pytest.raises(levigate.Error, match="bare_number"):
        levigate.Stack([sheet("P400")], bare_number="CAMIX")


def test_files_that_are_not_there(tmp_path):
    with pytest.raises(levigate.BadInput, match="no file"):
        levigate.Job.load(tmp_path / "none.json")
    (tmp_path / "cut.json").write_text('{"format": "levigate.stack/1", "sheets": [')
    with pytest.raises(levigate.BadInput) as caught:
        levigate.Stack.load(tmp_path / "cut.json")
    assert caught.value.line == 1 and "cut.json" in str(caught.value)
