"""Defects, coats, edges, sheen, cleaning, wheels and compounds: values against arithmetic."""

import math

import levigate
import numpy as np
import pytest


@pytest.fixture
def run():
    return levigate.Defect(kind="run", height_um=150, width_mm=4, length_mm=40, count=3)


def test_a_tall_run_is_masked_shaved_and_blocked(run):
    work = levigate.take_down(run, small_rate_um_per_m=0.1, zone_rate_um_per_m=0.05)
    volume_mm3 = 2 / 3 * 0.150 * 4 * 40
    assert work.masked and work.shaved and work.flat_is_worse
    assert work.shaved_mm3 == pytest.approx(volume_mm3 * (1 - 60 / 150) ** 1.5)
    assert work.local.film_um == 0 < work.flat.film_um
    assert work.local.minutes == pytest.approx(work.block_minutes + 3 * (1 + 1))
    assert "shave down to the tape (60 um)" in work.verdict
    thin = levigate.take_down(run, small_rate_um_per_m=0.1, zone_rate_um_per_m=0.05, tape_um=40)
    assert thin.shaved_mm3 > work.shaved_mm3


def test_defects_that_cannot_be():
    size = dict(height_um=50, width_mm=4, length_mm=40)
    with pytest.raises(levigate.BadInput, match="wider|more than length_mm"):
        levigate.Defect(kind="run", height_um=50, width_mm=40, length_mm=4)
    with pytest.raises(levigate.BadInput, match="'ruun' is not known; the nearest is 'run'"):
        levigate.Defect(kind="ruun", **size)
    with pytest.raises(levigate.OutOfRange, match="count"):
        levigate.Defect(kind="run", **size, count=0)
    with pytest.raises(levigate.BadInput, match="too wide for a block"):
        wide = levigate.Defect(kind="sag", height_um=50, width_mm=200, length_mm=200)
        levigate.take_down(wide, small_rate_um_per_m=0.1, zone_rate_um_per_m=0.05)


def test_coats_fuse_within_the_window():
    coats = [
        levigate.Coat(wet_um=100, volume_solids=0.4, thinner=0.25, applied_h=0),
        levigate.Coat(wet_um=100, volume_solids=0.4, applied_h=2),
        levigate.Coat(dry_um=60, shrink=0.05, applied_h=24),
    ]
    low, last = levigate.rounds(coats, recoat_window_h=4)
    assert (low.coats, low.last_h, last.coats, last.first_h) == (2, 2, 1, 24)
    assert low.dry_um == pytest.approx(32 + 40) and last.dry_um == pytest.approx(57)
    film = levigate.film_of_last_round([low, last], sd_um=5, mean_se_um=2)
    assert (film.mean_um, film.sd_um, film.mean_se_um) == (last.dry_um, 5, 2)
    left = levigate.witness_depth([low, last], depth_um=40)
    assert left.left_um == pytest.approx(17) and left.in_round == 1 and not left.enters_below
    assert levigate.witness_depth([low, last], depth_um=60).enters_below
    with pytest.raises(levigate.BadInput, match="coats is empty"):
        levigate.rounds([], recoat_window_h=4)


def test_edges_hold_less_film():
    shares = levigate.edge_share(radius_mm=[0, 2, math.inf])
    np.testing.assert_allclose(shares, [0.5, 0.8, 1])
    flat = levigate.film_from_coats(coats=3, dry_um_per_coat=40, sd_um=6)
    edge = levigate.edge_film(flat, radius_mm=2)
    assert edge.mean_um == pytest.approx(96) and edge.sd_um == flat.sd_um


def test_hardness_between_points_goes_with_the_logarithm_of_age():
    cure = levigate.Cure(hard_cure_h=168, shrink=0.05, points=[(10, 40), (1000, 140)])
    assert levigate.hardness_at(cure, age_h=100).hardness_mpa == pytest.approx(90)
    young = levigate.hardness_at(cure, age_h=1)
    assert young.hardness_mpa == 40 and "younger" in young.note
    assert [(p.hours, p.hardness_mpa) for p in cure.points] == [(10, 40), (1000, 140)]
    with pytest.raises(levigate.BadInput, match="not softer"):
        levigate.Cure(hard_cure_h=168, points=[(10, 40), (100, 30)])
    with pytest.raises(levigate.BadInput, match="no hardness is known"):
        levigate.hardness_at(levigate.cure_named("shellac"), age_h=10)


def test_names_of_sheen():
    satin = levigate.band_named("institute", "satin")
    assert (satin.low_gu, satin.high_gu, satin.low_85_gu, satin.high_85_gu) == (20, 35, 35, None)
    assert satin.basis == "common practice" and satin.citation
    found = {(b.scheme, b.name) for b in levigate.bands_of(gloss_gu=88)}
    assert found == {("institute", "high gloss"), ("trade", "gloss"), ("EN 13300", "gloss")}
    with pytest.raises(levigate.BadInput, match="nearest is 'satin'"):
        levigate.band_named("institute", "satn")


def test_cleaning_and_pieces():
    paper = levigate.cleaning("latex paper", clean_every_m=60)
    assert paper.clogged_after_m == pytest.approx(30 * math.log(2))
    assert paper.clogged_share == pytest.approx(1 - 0.5 * math.log(2))
    assert paper.rate_share * paper.minutes_factor == pytest.approx(1)
    share = levigate.clogging_share(clean_every_m=60, fade_m=30, floor=0.4)
    assert paper.rate_share == pytest.approx(share)
    pieces = levigate.pieces("latex paper", "hard block", travel_m=401)
    assert (pieces.needed, pieces.minutes_each) == (3, pytest.approx(200 / 0.45 / 0.6 / 60))


def test_a_larger_wheel_at_the_same_rpm():
    wheel = levigate.Wheel("loose flannel", diameter_mm=300)
    larger = levigate.with_diameter(wheel, diameter_mm=400)
    assert larger.surface_speed_m_s == pytest.approx(wheel.surface_speed_m_s * 4 / 3)
    assert larger.contact_mm == pytest.approx(wheel.contact_mm * math.sqrt(4 / 3))
    work = dict(rate_um_per_m=1e-4, removal_um=1)
    one = levigate.wheel_pass(wheel, "two-part urethane", **work)
    other = levigate.wheel_pass(larger, "two-part urethane", **work)
    assert one.dwell_s == pytest.approx(wheel.contact_mm / 1000 / wheel.feed_m_s)
    assert one.passes == math.ceil(1 / one.film_per_pass_um)
    assert one.too_long == (one.dwell_s > one.dwell_limit_s)
    assert other.rise_k == pytest.approx(one.rise_k * (4 / 3) ** 0.75)


def test_a_wheel_too_fast_is_told_what_would_be_right():
    wheel = levigate.Wheel("loose flannel", rpm=1700, rated_rpm=3000)
    found = levigate.speed_finding(wheel, "two-part urethane")
    assert found.verdict == "too_fast" and found.rpm_is_rated
    right = levigate.Wheel("loose flannel", rpm=found.rpm * (1 - 1e-12), rated_rpm=3000)
    assert levigate.speed_finding(right, "two-part urethane").verdict == "ok"


WHEEL_NUMBERS = (
    "diameter_mm rpm rated_rpm width_mm contact_mm force_n feed_m_s modulus_mpa friction "
    "heat_share duty"
).split()


def own_coating(**changed):
    """The numbers of the two-part urethane under another name, with anything changed."""
    plain = dict(name="clear", kind="coat", hardness_mpa=150, wear_coefficient=0.02)
    return {**plain, "refractive_index": 1.5, **changed}


def test_a_coating_has_its_limits_under_any_name(sheet, job):
    known = job().coating.limits
    assert known.speed_high_m_s == levigate.source("two-part urethane", "speed_m_s").high
    assert job().coating.cure.hard_cure_h == levigate.source("two-part urethane", "hard_cure_h").value
    assert job().coating.redissolves is False
    names = ("speed_low_m_s", "speed_high_m_s", "effusivity", "rise_k")
    limits = {name: getattr(known, name) for name in names}
    fast = levigate.Wheel("loose flannel", rpm=3147, rated_rpm=4000)
    wheel = {name: getattr(fast, name) for name in WHEEL_NUMBERS}
    stack = levigate.Stack([sheet("P800", wheel=wheel)])
    told = levigate.evaluate(job(coating=own_coating(limits=limits)), stack, ["P800"])
    kinds = {finding.kind: finding for finding in told.findings}
    assert kinds["wheel_speed"].severity == "error" and "58.6 m/s" in kinds["wheel_speed"].message
    assert "wheel_unknown" not in kinds
    unknown = levigate.evaluate(job(coating=own_coating()), stack, ["P800"])
    kinds = {finding.kind: finding for finding in unknown.findings}
    assert kinds["wheel_unknown"].severity == "warning"
    assert kinds["wheel_unknown"].sheets == ["P800"]
    assert "58.6 m/s" in kinds["wheel_unknown"].message
    assert "wheel_speed" not in kinds


def test_wheels_that_cannot_be():
    with pytest.raises(levigate.OutOfRange, match="above the wheel's rated_rpm"):
        levigate.Wheel("loose flannel", rpm=3000)
    with pytest.raises(levigate.BadInput, match="nearest is 'felt'"):
        levigate.Wheel("felts")
    with pytest.raises(levigate.BadInput, match="the nearest is 'diameter_mm'"):
        levigate.Wheel("felt", diameter=300)


def test_a_wheel_of_ones_own_from_all_its_numbers():
    felt = levigate.Wheel("felt")
    mine = levigate.Wheel("mine", **{name: getattr(felt, name) for name in WHEEL_NUMBERS})
    assert mine.name == "mine" and mine.pressure_kpa == felt.pressure_kpa


def test_a_compound_reaches_deeper_on_a_softer_coat_and_cuts_it_faster():
    hard = levigate.compound_named("cutting", "two-part urethane")
    soft = levigate.compound_named("cutting", "nitrocellulose lacquer")
    assert soft.coarsest_scratch_um > hard.coarsest_scratch_um
    assert soft.worn_um == hard.worn_um < hard.size_um

    def rate(compound, coating):
        return levigate.compound_rate_um_per_m(compound, coating, pressure_kpa=5)

    assert rate(soft, "nitrocellulose lacquer") > rate(hard, "two-part urethane")
    with pytest.raises(levigate.BadInput, match="nearest is 'fine'"):
        levigate.compound_named("fin", "two-part urethane")


def test_plan_with_a_run_does_it_first(job, stack):
    defect = dict(kind="run", height_um=150, width_mm=4, length_mm=40, count=3)
    papers = stack("P600", "P800", "P1000", "P1500")
    plan = levigate.plan(job(zone={"defects": [defect]}), papers)
    [first] = plan.before
    assert (first.zone, first.block) == ("top", "small hard block")
    assert first.defect == levigate.Defect(**defect) == plan.job.zones[0].defects[0]
    assert first.work.local.minutes > 3
    # The same steps without the run: what is left of the minutes is work on it, to a millisecond.
    plain = levigate.evaluate(job(), papers, [step.sheet for step in plan.steps])
    assert plain.before == []
    assert plan.total.minutes - plain.total.minutes == pytest.approx(
        first.work.local.minutes, abs=1e-3 / 60
    )


def test_gloss_at_three_angles(job, stack):
    plan = levigate.plan(job(), stack("P600", "P800", "P1000", "P1500"))
    for step in plan.steps:
        zone = step.zones["top"]
        assert zone.gloss_20_gu < zone.gloss_gu < zone.gloss_85_gu


def test_a_wheel_and_a_compound_in_a_stack(sheet, job):
    fine = dict(id="fine", label="2 µm", compound="fine", wheel="loose flannel")
    stack = levigate.Stack([sheet("P2500"), fine])
    paper, compound = stack.sheets
    assert paper.worn_um is None and paper.block is None and paper.wear_share == 1
    assert compound.worn_um < stack.grades[1].median_um and compound.wear_share < 1
    assert compound.block is not None
    assert compound.block.wheel == levigate.Wheel("loose flannel")


def test_a_compound_that_does_not_reach_is_told(sheet, job):
    fine = dict(id="fine", label="2 µm", compound="fine", wheel="loose flannel")
    stack = levigate.Stack([sheet("P600"), fine])
    plan = levigate.plan(job(target={"size_um": 3}, rules={"max_ratio": 30}), stack)
    assert plan.why is not None
    assert (plan.why.blocked_by, plan.why.compound) == ("scratch", "fine")
    assert plan.why.too_deep_um is not None and plan.why.too_deep_um > 0


def test_age_and_sheen_of_a_job(job):
    cure = {"hard_cure_h": 200, "shrink": 0.02, "points": [[24, 60], [200, 150]]}
    target = {"sheen": {"scheme": "institute", "name": "satin"}}
    young = job(age_h=48, cure=cure, target=target)
    assert young.age_h == 48
    assert young.cure == levigate.Cure(hard_cure_h=200, shrink=0.02, points=[(24, 60), (200, 150)])
    assert (young.target.gloss_gu, young.target.gloss_high_gu) == (20, 35)
    assert job().age_h is None and job().cure is None


def test_a_coat_of_five_hours_waits_alike_on_card_in_json_and_in_python(sheet, job):
    young = job(age_h=5, age_at="2026-11-26T09:00:00+01:00")
    plan = levigate.plan(young, levigate.Stack([sheet("P800"), sheet("P1200"), sheet("P1500")]))
    assert plan.wait.wait_h == 163
    assert plan.wait.not_before == "2026-12-03T04:00:00+01:00"
    assert plan.to_dict()["wait"] == {
        "not_before": "2026-12-03T04:00:00+01:00", "wait_h": 163, "age_h": 5, "hard_cure_h": 168,
    }  # fmt: skip
    card = plan.card()
    assert "Not before Thursday 3 December 2026, 04:00" in card.split(" min")[0]
    if plan.found:
        assert repr(plan).index("wait=") < repr(plan).index("sheets=")
    assert levigate.plan(job(), plan.stack).wait is None
    with pytest.raises(levigate.BadInput, match="age_h is missing"):
        job(age_at="2026-11-26T09:00:00Z")
