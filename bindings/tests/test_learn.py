"""Learning against an independent implementation: dense Bayesian regression with numpy and scipy, in other unknowns."""

import json
from pathlib import Path

import levigate
import numpy as np
import pytest
from marks import profiles_of
from scipy import stats

AT = "2026-03-01T09:30:00Z"
SHEETS = [
    ("P400", "latex paper"),
    ("P600", "latex paper"),
    ("P800", "cloth"),
    ("P1000", "film"),
    ("P1500", "film"),
]


def job_of(coating="two-part urethane", **changes):
    return levigate.Job.from_dict(
        dict(
            name="clock case",
            coating=coating,
            zones=[
                dict(name="top", area_cm2=90, block="hard block", peel_um=25,
                     peel_wavelength_mm=3, film={"mean_um": 120, "sd_um": 6}),
                dict(name="door", area_cm2=50, block="cork block", peel_um=15,
                     peel_wavelength_mm=3, film={"mean_um": 110, "sd_um": 8}),
            ],
            target={"grade": "P1500"},
        )
        | changes
    )


def scratched(job):
    """The same with no peel to level, which a simulation draws."""
    return levigate.Job.from_dict(job.to_dict() | {"start": {"scratched_by": "P220"}})


def stack_of(sheets=SHEETS):
    return levigate.Stack(
        [
            dict(id=label, label=label, backing=backing, width_mm=230, height_mm=280)
            for label, backing in sheets
        ]
    )


def ended(sheet, minutes, zone="", job="clock case"):
    return levigate.Entry(kind="step ended", at=AT, job=job, zone=zone, sheet=sheet,
                          minutes=minutes)


def read(sheet, **seen):
    return levigate.Entry(kind="scratch read", at=AT, job="clock case", zone="top", sheet=sheet,
                          **seen)


def minutes_of(job, stack, shop=None):
    """Sanding minutes of each sheet in each zone, every sheet used."""
    bench = levigate.Bench(job, stack, shop)
    plan = levigate.evaluate(bench, [sheet.id for sheet in stack.sheets])
    return {s.sheet: {name: z.minutes for name, z in s.zones.items()} for s in plan.steps}


# ---- the prior, from the files of the profiles


def profile(kind, name=None):
    rows = profiles_of(kind)
    return rows if name is None else next(row for row in rows if row["name"] == name)


def variance(band, f=lambda x: x):
    low, value, high = (np.log(f(band[k])) for k in ("low", "value", "high"))
    return ((low - value) ** 2 + (high - value) ** 2) / 6


def duty_variance():
    blocks = profile("blocks")
    return np.mean([sum(variance(b[q]) for q in ("duty", "speed_m_s", "force_n")) for b in blocks])


def coating_variance(name):
    p = profile("coatings", name)
    model = profile("model")[0]
    exponent, saturation_um = model["size_exponent"], model["saturation_um"]
    size_um = levigate.grade("P1000").median_um
    by_size = variance(exponent, lambda x: (size_um / saturation_um["value"]) ** x)
    by_size += variance(saturation_um, lambda x: (size_um / x) ** exponent["value"])
    flank = variance(model["flank_deg"], lambda x: np.tan(np.radians(x)))
    return variance(p["cutting_efficiency"]) / 2 + flank + variance(p["hardness_mpa"]) + by_size


def backing_variance(coating, name):
    p = profile("backings", name)
    value = {q: p[q]["value"] for q in ("clean_every_m", "fade_m", "floor")}

    def share(clean_every_m, fade_m, floor):
        x = clean_every_m / fade_m
        return floor + (1 - floor) * (1 - np.exp(-x)) / x

    return variance(profile("coatings", coating)["cutting_efficiency"]) / 2 + sum(
        variance(p[q], lambda x, q=q: share(**value | {q: x})) for q in value
    )


def scratch_variance(coating, name):
    p, block = profile("backings", name), profile("blocks", "hard block")
    nominal = dict(
        size_um=levigate.grade("P1000").median_um,
        log_spread=levigate.grade("P1000").log_spread,
        tip_spread=profile("backings", "latex paper")["tip_spread"]["value"],
        modulus_mpa=profile("backings", "latex paper")["modulus_mpa"]["value"],
        hardness_mpa=profile("coatings", "two-part urethane")["hardness_mpa"]["value"],
        pressure_kpa=10 * block["force_n"]["value"] / block["area_cm2"]["value"],
    )

    def over(state, q, band):
        return variance(band, lambda x: levigate.contact(**state | {q: x}).depth_um(0.99))

    backed = nominal | {q: p[q]["value"] for q in ("tip_spread", "modulus_mpa")}
    hard = profile("coatings", coating)["hardness_mpa"]
    return sum(over(backed, q, p[q]) for q in ("tip_spread", "modulus_mpa")) + over(
        nominal | {"hardness_mpa": hard["value"]}, "hardness_mpa", hard
    )


# ---- regression with unknown noise, dense and in one go


def regression(prior_variances, noise, x, y):
    """Mean, scale matrix over the noise variance, noise variance and degrees of freedom."""
    precision = np.diag(noise**2 / np.asarray(prior_variances)) + x.T @ x
    mean = np.linalg.solve(precision, x.T @ y)
    df = 4 + len(y)
    squares = 4 * noise**2 + y @ y - mean @ precision @ mean
    return mean, np.linalg.inv(precision), squares / df, df


def expect_factor(found, median, scale, df):
    reach = stats.t.ppf(0.95, df) * scale
    assert found.factor == pytest.approx(np.exp(median), rel=1e-9)
    assert found.low == pytest.approx(np.exp(median - reach), rel=1e-9)
    assert found.high == pytest.approx(np.exp(median + reach), rel=1e-9)


def journals(random, coatings, slower=2.3, noise=0.3, count=4):
    """Entries of jobs, zone by zone or in all zones, each with what was computed and actual."""
    stack = stack_of()
    backing = dict(SHEETS)
    for i in range(count):
        job = job_of(coatings[i % len(coatings)], name=f"case {i}")
        planned, entries, rows = minutes_of(job, stack), [], []
        for sheet, zones in planned.items():
            parts = zones.items() if i % 2 else [("", sum(zones.values()))]
            for zone, computed in parts:
                actual = computed * slower * np.exp(noise * random.normal())
                entries.append(ended(sheet, actual, zone, job.name))
                rows.append((job.coating.name, backing[sheet], np.log(actual / computed)))
        yield job, stack, entries, rows


def posterior(rows):
    """The regression of ln(actual/computed) in independent unknowns, and those as the shop has them."""
    coatings = sorted({coating for coating, *_ in rows})
    pairs = sorted({(coating, backing) for coating, backing, _ in rows})
    names = ["person", *coatings, *pairs]
    prior = [
        duty_variance(),
        *(coating_variance(c) for c in coatings),
        *(backing_variance(*p) for p in pairs),
    ]
    x = np.zeros((len(rows), len(names)))
    for i, (coating, backing, _) in enumerate(rows):
        for name in ("person", coating, (coating, backing)):
            x[i, names.index(name)] = -1
    fit = regression(prior, 0.3, x, np.array([y for *_, y in rows]))
    shown = sorted([(c, "") for c in coatings] + pairs)
    to_shop = np.zeros((1 + len(shown), len(names)))
    to_shop[0, 0] = 1
    for i, (coating, backing) in enumerate(shown):
        to_shop[1 + i, names.index(coating)] = 1
        if backing:
            to_shop[1 + i, names.index((coating, backing))] = 1
    return fit, shown, to_shop


@pytest.mark.parametrize("coatings", [["two-part urethane"], ["two-part urethane", "shellac"]])
def test_pace_is_the_dense_regression(coatings):
    random = np.random.default_rng(3)
    shop, rows = None, []
    for job, stack, entries, more in journals(random, coatings):
        learned = levigate.learn(shop, job, stack, entries)
        assert learned.outliers == learned.unmatched == []
        shop, rows = learned.shop, rows + more
    (mean, spread, variance_, df), shown, to_shop = posterior(rows)
    medians, spread = to_shop @ mean, to_shop @ spread @ to_shop.T
    scales = np.sqrt(np.diag(spread) * variance_)
    assert shop.minutes_noise.weight == df
    assert shop.minutes_noise.log_sd == pytest.approx(np.sqrt(variance_), rel=1e-9)
    expect_factor(shop.person, medians[0], scales[0], df)
    assert shop.person.observations == len(rows)
    assert [(r.coating, r.backing) for r in shop.rates] == shown
    correlation = spread / np.sqrt(np.outer(np.diag(spread), np.diag(spread)))
    for i, rate in enumerate(shop.rates, start=1):
        expect_factor(rate, medians[i], scales[i], df)
        np.testing.assert_allclose(rate.correlations, correlation[i, :i], atol=1e-9)
        product = np.zeros(len(medians))
        product[[0, i]] = -1
        line = shop.report[i]
        reach = stats.t.ppf(0.95, df) * np.sqrt(product @ spread @ product * variance_)
        assert line.value == pytest.approx(np.exp(product @ medians), rel=1e-9)
        assert line.high == pytest.approx(np.exp(product @ medians + reach), rel=1e-9)


def test_scratches_are_the_dense_regression():
    random = np.random.default_rng(4)
    job, stack = job_of(), stack_of()
    flank = np.tan(np.radians(11))
    shop = levigate.Shop.from_dict({"minutes_noise": {"log_sd": 0.3, "weight": 4}})
    plan = levigate.evaluate(job, stack, [sheet.id for sheet in stack.sheets])
    entries, backings, y = [], [], []
    for _ in range(3):
        for step, (sheet, backing) in zip(plan.steps, SHEETS):
            log = np.log(1.4) + 0.2 * random.normal()
            computed = step.zones["top"].scratch_um
            entries.append(read(sheet, width_um=2 * computed * np.exp(log) / flank))
            backings.append(backing)
            y.append(log)
    learned = levigate.learn(shop, job, stack, entries)
    assert learned.outliers == learned.unmatched == []
    known = sorted(set(backings))
    x = np.array([[b == k for k in known] for b in backings], dtype=float)
    prior = [scratch_variance("two-part urethane", k) for k in known]
    mean, spread, variance_, df = regression(prior, 0.2, x, np.array(y))
    assert [s.backing for s in learned.shop.scratches] == known
    for i, scratch in enumerate(learned.shop.scratches):
        expect_factor(scratch, mean[i], np.sqrt(spread[i, i] * variance_), df)
    assert learned.shop.person == shop.person


def test_simulated_minutes_are_the_predictive_distribution():
    """Quantiles of the minutes drawn, in the distribution that numpy draws of the regression."""
    random = np.random.default_rng(5)
    shop, rows = None, []
    for job, stack, entries, more in journals(random, ["two-part urethane"], count=2):
        shop, rows = levigate.learn(shop, job, stack, entries).shop, rows + more
    (mean, spread, variance_, df), shown, to_shop = posterior(rows)
    draws = 100_000
    noise = np.sqrt(df * variance_ / random.chisquare(df, draws))
    unknown = mean + noise[:, None] * (
        random.normal(size=(draws, len(mean))) @ np.linalg.cholesky(spread).T
    )
    shop_unknown = unknown @ to_shop.T
    total = np.full(draws, 2.0 * len(SHEETS))  # changes
    for sheet, zones in minutes_of(scratched(job), stack).items():
        row = 1 + shown.index(("two-part urethane", dict(SHEETS)[sheet]))
        scatter = noise * random.normal(size=draws)
        total += sum(zones.values()) * np.exp(
            -shop_unknown[:, 0] - shop_unknown[:, row] + scatter
        )
    job = scratched(job)
    plan = levigate.evaluate(job, stack, [sheet.id for sheet in stack.sheets])
    count = 3000
    found = levigate.simulate(job, plan, draws=count, seed=8, bands=False, shop=shop).minutes
    for quantile, share in ((found.p10, 0.1), (found.p50, 0.5), (found.p90, 0.9)):
        # Both are random: 3.3 standard errors, one case in 1000 for each.
        error = np.sqrt(share * (1 - share) * (1 / count + 1 / draws))
        assert np.mean(total <= quantile) == pytest.approx(share, abs=3.3 * error)


def test_hundred_journals_of_a_slow_worker():
    """All the way by entries, jobs of two shapes: the pace is found, and the next job's minutes."""
    random = np.random.default_rng(6)
    shop = None
    for job, stack, entries, _ in journals(random, ["two-part urethane"], count=100):
        shop = levigate.learn(shop, job, stack, entries).shop
    assert shop.person.observations == 50 * 5 + 50 * 10
    for line in shop.report[2:]:
        assert line.low < 2.3 < line.high or abs(np.log(line.value / 2.3)) < 3.3 * np.log(
            line.high / line.low
        ) / (2 * 1.645)
        assert line.high / line.low < 1.2
    learned = sum(sum(zones.values()) for zones in minutes_of(job_of(), stack_of(), shop).values())
    computed = sum(sum(zones.values()) for zones in minutes_of(job_of(), stack_of()).values())
    assert learned / computed == pytest.approx(2.3, rel=0.05)


# ---- synthetic truth: what a worker's journals teach, a thousand times

RUNS = 1000
REFERENCE = Path(__file__).resolve().parents[2] / "data" / "reference" / "simulations.json"


def committed(name, value, low, high):
    """Holds a figure of the reference data to a rerun and its 99 % interval."""
    rows = json.loads(REFERENCE.read_text())["simulations"]
    row = next(r for r in rows if r["id"] == name)
    assert low <= row["value"] <= high, (name, value, low, high)
    assert row["low"] == pytest.approx(low, rel=0.02) and row["high"] == pytest.approx(high, rel=0.02)


def held_share(held):
    ci = stats.binomtest(sum(held), len(held)).proportion_ci(0.99, method="exact")
    return sum(held) / len(held), ci.low, ci.high


def slow_workers(journals, noise, seed):
    """Of each run: whether 90 % of the pace hold it, 80 % of the next job's minutes, and ln(predicted/true).

    A journal is the steps of one zone, so that one call learns them all; each by its entries.
    """
    random = np.random.default_rng(seed)
    slower, stack = 2.3, stack_of()
    zone = job_of().to_dict()["zones"][0]
    shape = job_of(zones=[zone | {"name": f"top {i}"} for i in range(journals)])
    planned = minutes_of(shape, stack)
    next_job = scratched(job_of())
    plan = levigate.evaluate(next_job, stack, [label for label, _ in SHEETS])
    computed, of_next = (
        np.array([sum(z.values()) for z in minutes_of(job, stack).values()])
        for job in (job_of(), next_job)
    )
    rows = [backing for _, backing in SHEETS]
    pace, minutes, error = [], [], []
    for run in range(RUNS):
        entries = [
            ended(sheet, slower * one * np.exp(noise * random.normal()), name)
            for sheet, zones in planned.items()
            for name, one in zones.items()
        ]
        learned = levigate.learn(None, shape, stack, entries)
        assert learned.unmatched == []
        line = next(x for x in learned.report if x.subject.startswith("latex paper"))
        pace.append(line.low <= slower <= line.high)
        truth = 2 * len(SHEETS) + slower * of_next @ np.exp(noise * random.normal(size=len(SHEETS)))
        # Of 19 draws P10 is the second and P90 the 18th: 16 of 20 places for the truth lie between.
        drawn = levigate.simulate(
            next_job, plan, draws=19, seed=run, threads=1, bands=False, shop=learned.shop
        ).minutes
        minutes.append(drawn.p10 < truth < drawn.p90)
        rate = {r.backing: r.factor for r in learned.shop.rates}
        found = computed @ [1 / (learned.shop.person.factor * rate[b]) for b in rows]
        error.append(np.log(found / (slower * computed.sum())))
    return pace, minutes, error


@pytest.fixture(scope="module")
def errors():
    return {}


@pytest.mark.parametrize("journals, noise, name", [(20, 0.3, "20"), (100, 0.3, "100"), (20, 0.5, "20_wide")])
def test_intervals_hold_a_slow_worker_as_often_as_they_say(journals, noise, name, errors):
    pace, minutes, error = slow_workers(journals, noise, seed=2)
    for what, held, stated in (("pace", pace, 0.9), ("minutes", minutes, 0.8)):
        share, low, high = held_share(held)
        assert low <= stated <= high, (what, share)
        committed(f"learned_{what}_{name}", share, low, high)
    squares = np.sum(np.square(error))
    low, high = np.sqrt(squares / stats.chi2.ppf([0.995, 0.005], RUNS))
    committed(f"learned_error_{name}", np.sqrt(squares / RUNS), low, high)
    errors[name] = np.sqrt(squares / RUNS)


def test_the_error_falls_with_the_root_of_the_journals(errors):
    """Of rms errors of 1000 runs, the square of the ratio has an F distribution: 99 % within 1.177 times."""
    assert {"20", "100"} <= set(errors)
    ends = np.sqrt(stats.f.ppf([0.005, 0.995], RUNS, RUNS))
    assert ends[0] < errors["20"] / errors["100"] / np.sqrt(5) < ends[1]


def test_what_is_set_aside_and_what_teaches_nothing():
    job, stack = job_of(), stack_of()
    planned = minutes_of(job, stack)
    entries = [ended(s, z, name) for s, zones in planned.items() for name, z in zones.items()]
    entries[4] = ended("P800", 60 * entries[4].minutes, "top")
    learned = levigate.learn(None, job, stack, [*entries, ended("P80", 9)])
    (outlier,) = learned.outliers
    assert (outlier.entry, outlier.at) == (4, AT)
    assert outlier.actual == pytest.approx(60 * outlier.predicted) and outlier.t > 5
    (unmatched,) = learned.unmatched
    assert (unmatched.entry, unmatched.reason) == (10, "Line 11, P80: The stack has no sheet 'P80'.")
    seen = levigate.observe(job, stack, entries)
    assert [p.actual_minutes for p in seen.paces] == [e.minutes for e in entries]


def test_a_journal_learned_twice_counts_once():
    job, stack = job_of(), stack_of()
    entries = [ended("P400", 90), read("P400", width_um=9), ended("P600", 20)]
    once = levigate.learn(None, job, stack, entries[:2])
    assert once.lines_before == 0 and once.report == once.shop.report
    assert [(j.job, j.lines) for j in once.shop.jobs] == [("clock case", 2)]
    assert levigate.Shop.from_dict(once.shop.to_dict()) == once.shop
    again = levigate.learn(once.shop, job, stack, entries[:2])
    assert again.shop == once.shop and again.lines_before == 2
    assert again.report[-1].sentence == "The shop already knew 2 lines of this journal."
    more = levigate.learn(once.shop, job, stack, entries).shop
    at_once = levigate.learn(None, job, stack, entries).shop
    assert more.person.observations == 2
    assert more.person.factor == pytest.approx(at_once.person.factor, rel=1e-9)


def test_what_has_no_name_of_its_own_teaches_nothing():
    job = job_of(dict(kind="coat", hardness_mpa=150, wear_coefficient=0.02, refractive_index=1.5))
    learned = levigate.learn(None, job, stack_of(), [ended("P400", 90)])
    assert learned.shop.rates == [] and learned.shop.person == levigate.Shop().person
    (unmatched,) = learned.unmatched
    assert unmatched.reason == "Line 1, P400: The coating has no name of its own. Learning needs one."


def test_an_offset_is_added_once():
    shop = levigate.Shop.from_dict(
        {"films": [dict(coating="two-part urethane", offset_um=-8, low_um=-12, high_um=-3)]}
    )
    entry = levigate.Entry(kind="film read", at=AT, job="clock case", zone="top",
                           readings_um=[108, 112])
    bench = levigate.Bench(job_of(), stack_of(), shop)
    assert bench.present.zones[0].film.mean_um == 112
    assert bench.job == job_of() and bench.job.zones[0].film.mean_um == 120
    begun = levigate.Bench(job_of(), stack_of(), shop, [ended("P400", 90)])
    removed_um = levigate.evaluate(bench, ["P400"]).steps[0].zones["top"].removal_um
    assert begun.present.zones[0].film.mean_um == pytest.approx(112 - removed_um, rel=1e-12)
    rest = levigate.evaluate(begun, ["P1000"]).steps[0].zones["top"]
    assert rest.film_left_um == pytest.approx(112 - removed_um - rest.depth_um, rel=1e-12)
    # Readings are compared with the coats as they were given, whatever the shop says of them.
    read = levigate.Bench(job_of(), stack_of(), shop, [entry])
    assert levigate.observe(read).films[0].expected_um == 120
    # The reading is the film then, and no offset is added to it.
    assert read.present.zones[0].film.mean_um == 110


def test_film_readings_before_the_first_step():
    entry = levigate.Entry(kind="film read", at=AT, job="clock case", zone="top",
                           readings_um=[108, 112, 110, 106])
    shop = levigate.learn(None, job_of(), stack_of(), [entry]).shop
    prior, noise = ((5 + 0.1 * 60) / np.sqrt(3)) ** 2, 25 + 36 / 4
    (film,) = shop.films
    assert film.offset_um == pytest.approx(-11 * prior / (prior + noise), rel=1e-9)
    sd = np.sqrt(prior * noise / (prior + noise))
    assert film.high_um - film.offset_um == pytest.approx(stats.norm.ppf(0.95) * sd, rel=1e-9)
    job = levigate.Bench(job_of(), stack_of(), shop).present
    assert job.zones[0].film.mean_um == pytest.approx(120 + film.offset_um)
