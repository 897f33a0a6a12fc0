"""A bench in Python: what lies on it, and that all that is asked of it is asked of the job as it stands."""

import json

import levigate
import pytest

AT = "2026-03-01T09:30:00Z"
LABELS = ("P400", "P600", "P800", "P1200", "P1500")


def ended(sheet, zone="", job="panel"):
    return levigate.Entry(kind="step ended", at=AT, job=job, sheet=sheet, zone=zone, minutes=60)


def film_read(*readings_um, job="panel"):
    return levigate.Entry(kind="film read", at=AT, job=job, zone="top", readings_um=readings_um)


HAZE = levigate.Mark(kind="haze", zone="top")
FOUND = levigate.Entry(kind="mark found", at=AT, job="panel", mark=HAZE)


@pytest.fixture(scope="module")
def panel(job, stack):
    return job(), stack(*LABELS)


@pytest.fixture(scope="module")
def shop():
    return levigate.Shop.from_dict(
        {
            "person": dict(duty_factor=0.5, low=0.4, high=0.6, observations=9),
            "films": [dict(coating="two-part urethane", offset_um=-8, low_um=-12, high_um=-4)],
        }
    )


def test_what_lies_on_it(panel, shop):
    bench = levigate.Bench(*panel)
    assert (bench.job, bench.stack) == panel
    assert (bench.shop, bench.journal, bench.done, bench.open_mark) == (None, [], [], None)
    assert bench.grades == panel[1].grades and bench.present == panel[0]
    journal = [ended("P400"), FOUND]
    bench = levigate.Bench(*panel, shop=shop, journal=journal + [ended("P600", job="tray")])
    assert bench.shop == shop and bench.journal == journal
    assert bench.done == [levigate.DoneStep("P400")] and bench.open_mark == HAZE
    assert bench == levigate.Bench(*panel, shop, journal) != levigate.Bench(*panel)


def test_a_journal_is_taken_as_it_is_read(panel, tmp_path):
    journal = levigate.Journal(tmp_path / "panel.jsonl")
    for entry in (ended("P400"), FOUND):
        journal.append(entry)
    bench = levigate.Bench(*panel, journal=journal.read())
    assert bench == levigate.Bench(*panel, journal=[ended("P400"), FOUND])


def test_forms_with_and_without_a_bench_agree(panel):
    job, stack = panel
    bench = levigate.Bench(job, stack)
    plan = levigate.plan(bench)
    assert plan == levigate.plan(job, stack) and plan.bench == bench
    assert (plan.job, plan.stack) == panel and plan.card() == levigate.plan(job, stack).card()
    assert all(point.bench == bench for point in plan.tradeoff)
    assert levigate.evaluate(bench, LABELS) == levigate.evaluate(job, stack, LABELS)
    assert levigate.simulate(bench, plan, 20, 3) == levigate.simulate(job, plan, 20, 3)
    entries = [ended(label) for label in LABELS] + [FOUND]
    bench = levigate.Bench(job, stack, journal=entries)
    done = [levigate.DoneStep(label) for label in LABELS]
    assert levigate.diagnose(bench, HAZE) == levigate.diagnose(job, stack, done, HAZE)
    assert levigate.go_back(bench) == levigate.go_back(bench, HAZE)
    assert levigate.go_back(bench) == levigate.go_back(job, stack, done, HAZE)
    assert levigate.observe(bench) == levigate.observe(job, stack, entries)
    assert levigate.learn(bench) == levigate.learn(None, job, stack, entries)


# a little thicker than computed after P400: one such reading counts in full
READINGS = [108, 114, 111, 109, 112, 110, 113]


def test_the_rest_is_planned_from_where_it_stands(panel):
    job, stack = panel
    bench = levigate.Bench(job, stack, journal=[ended("P400"), film_read(*READINGS)])
    read = dict(job.to_dict()["zones"][0], film={"readings_um": READINGS, "gauge": "ultrasonic"})
    film = levigate.Job.from_dict(dict(job.to_dict(), zones=[read])).zones[0].film
    assert film.mean_se_um > levigate.film_from_readings(READINGS).mean_se_um
    now = levigate.present(job, stack, [levigate.DoneStep("P400")], {"top": film})
    plan = levigate.plan(bench)
    assert bench.present == plan.job == now and bench.job == job
    assert plan == levigate.plan(now, stack) != levigate.plan(job, stack)
    assert levigate.simulate(bench, plan, 20) == levigate.simulate(now, plan, 20)
    assert len(plan.plot().axes) > 0


def test_a_shop_counts_once(panel, shop):
    job, stack = panel
    bench = levigate.Bench(job, stack, shop)
    plan, bare = levigate.evaluate(bench, LABELS), levigate.evaluate(job, stack, LABELS)
    assert plan.job.zones[0].film.mean_um == 112 and bench.job == job
    for step, other in zip(plan.steps, bare.steps):
        assert step.zones["top"].minutes == pytest.approx(2 * other.zones["top"].minutes, rel=1e-12)
        film_um = step.zones["top"].film_left_um, other.zones["top"].film_left_um
        assert film_um[0] == pytest.approx(film_um[1] - 8, rel=1e-12)
    assert levigate.simulate(bench, plan, 20) == levigate.simulate(job, bare, 20, shop=shop)


def test_films_of_a_shop_do_not_move_twice(panel, shop):
    job, stack = panel
    plan = levigate.evaluate(levigate.Bench(job, stack, shop), LABELS)
    assert plan.job != job
    with pytest.raises(levigate.BadInput, match="films of the plan's shop in already"):
        levigate.simulate(plan.job, plan, 20, shop=shop)
    given = levigate.simulate(job, plan, 20, shop=shop)
    assert given == levigate.simulate(plan.bench, plan, 20)


def test_what_cannot_be_followed_is_told_when_it_is_asked_for(panel):
    bench = levigate.Bench(*panel, journal=[ended("P800"), ended("P400"), FOUND])
    assert len(bench.done) == 2 and bench.open_mark == HAZE
    assert len(levigate.observe(bench).paces) == 1
    for ask in (levigate.plan, levigate.go_back, lambda b: b.present):
        with pytest.raises(levigate.BadInput, match="not finer"):
            ask(bench)
    with pytest.raises(levigate.BadInput, match="no mark is open"):
        levigate.go_back(levigate.Bench(*panel))


def test_a_file_of_before_says_what_it_does_not_know(panel):
    job, stack = (json.loads(one.to_json()) for one in panel)
    job["duty_factor"] = 1
    with pytest.raises(levigate.BadInput, match="duty_factor"):
        levigate.Job.from_dict(job)
    backing = dict(name="own", tip_spread=0.1, modulus_mpa=20, life_m=200, clean_every_m=10,
                   fade_m=30, floor=0.4)  # fmt: skip
    stack["sheets"][0]["backing"] = backing
    assert levigate.Stack.from_dict(stack).sheets[0].backing.floor == 0.4
    backing["rate_factor"] = 1
    with pytest.raises(levigate.BadInput, match="rate_factor"):
        levigate.Stack.from_dict(stack)
