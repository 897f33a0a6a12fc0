"""What a plan and its simulation say, held to truths that are drawn from the errors stated: bands, and chances of cutting through.

The whole runs are in data/reference/simulations.json; the tests run their first jobs. `python test_coverage.py` prints the rows
anew. A band of 80 % is as wide as it says where 78 to 82 % of the truths lie in it, as many below it as above.
"""

import json
import math
from concurrent.futures import ProcessPoolExecutor

import levigate
import numpy as np
import pytest
import truths
from scipy import stats
from test_sun import kept, row

SEED = 20260801
JOBS, JOBS_HERE = 2000, 300
CASES, CASES_HERE = 4000, 250
TRUTHS = 100
DECILES = range(0, 100, 10)
BANDS = {
    "minutes": "share of true minutes in the 80 % band of simulate()",
    "film": "share of true film left of a zone in the 80 % band of simulate()",
    "reading_20": "share of true readings at 20 degrees in the 80 % band of simulate()",
    "reading_60": "share of true readings at 60 degrees in the 80 % band of simulate()",
    "reading_85": "share of true readings at 85 degrees in the 80 % band of simulate()",
}


def plain(told, sheets):
    return "start" not in told and not with_compound(told, sheets)


def sanded(told, sheets):
    return "start" in told and not with_compound(told, sheets)


def with_compound(told, sheets):
    return any("compound" in sheet for sheet in sheets)


# the whole runs: end of the row's name, what it is of, seed, jobs, and what is other than usual
RUNS = [
    ("", "all jobs", SEED, JOBS, {}),
    ("_even", "all jobs, films off by an even error of the half-width stated", SEED + 10, 1000, dict(error=truths.even_error)),
    ("_paper", "as sprayed, no compound in the drawer", SEED + 20, 2000, dict(kind=plain)),
    ("_sanded", "sanded already, no compound in the drawer", SEED + 30, 1000, dict(kind=sanded)),
    ("_compound", "a compound in the drawer", SEED + 50, 2000, dict(kind=with_compound)),
]


def places(jobs, what):
    return np.array([job[what] for job in jobs if job[what] is not None])


def share_of(places, at=0):
    """Share that lies at a place, with its exact interval of 99 %."""
    found = stats.binomtest(int(np.sum(places == at)), len(places))
    interval = found.proportion_ci(0.99, method="exact")
    return found.statistic, interval.low, interval.high


def in_decile(zones, said, percent):
    return [zone for zone in zones if min(int(zone[said] * 10), 9) * 10 == percent]


def off(zones):
    """Share of the truths that are cut through less the chance said; and its standard error were the chances right."""
    said = np.array([zone["said"] for zone in zones])
    count = np.array([zone["truths"] for zone in zones])
    cut = np.array([zone["cut"] for zone in zones])
    return (cut / count - said).mean(), math.sqrt((said * (1 - said) / count).sum()) / len(zones)


def off_by_all(zones, said):
    """The same of the truths in which every number is drawn, one a zone; its standard error by their scatter."""
    each = np.array([zone["truly"] - zone[said] for zone in zones])
    return each.mean(), each.std(ddof=1) / math.sqrt(len(each))


@pytest.fixture(scope="module")
def jobs():
    return list(truths.coverage(SEED, JOBS_HERE))


@pytest.fixture(scope="module")
def zones():
    return list(truths.chances(SEED + 1, CASES_HERE, TRUTHS))


# ---------------------------------------------------------------- the arithmetic of the truth


def test_at_usual_numbers_the_arithmetic_is_that_of_the_plan(jobs):
    assert max(job["arithmetic"] for job in jobs) <= 1e-4  # minutes are whole ms; a reading is that of a search


def test_with_true_numbers_typed_in_the_arithmetic_is_that_of_evaluate():
    random = np.random.default_rng(SEED)
    compared = 0
    for _ in range(50):
        sheets = truths.random_drawer(random)
        told, sequence, _ = truths.random_sequence(random, sheets)
        if "start" in told:  # whose paper cannot be typed in
            continue
        for zone in told["zones"]:
            zone["film"] = {"mean_um": 1000, "sd_um": 1}
        papers = [sheet for sheet in sheets if "compound" not in sheet]
        plan = levigate.evaluate(levigate.Job.from_dict(told), levigate.Stack(papers), sequence)
        truth = truths.Truth(random, still=("model", "grade"))
        true = truths.Arithmetic(told, papers, truth).worked(plan.steps)
        job, stack = truths.told_as_true(told, papers, truth)
        ours = levigate.evaluate(job, stack, sequence)
        assert true.minutes == pytest.approx(ours.total.minutes, abs=1e-4)
        assert abs(true.minutes - plan.total.minutes) > 1e-3
        for name, depth_um in true.depth_um.items():
            assert depth_um == pytest.approx(ours.steps[-1].zones[name].depth_um, rel=1e-9)
        compared += 1
    assert compared >= 30


# ---------------------------------------------------------------- bands


@pytest.mark.parametrize("what", BANDS)
def test_four_of_five_truths_lie_in_the_band(jobs, what):
    found = places(jobs, what)
    assert len(found) >= (0.9 if "reading" in what else 1) * JOBS_HERE
    for at, chance in ((0, 0.8), (-1, 0.1), (1, 0.1)):
        # as many as 99.9 % of such runs find
        low, high = stats.binom.ppf([0.0005, 0.9995], len(found), chance)
        assert low <= np.sum(found == at) <= high


@pytest.mark.parametrize("what", BANDS)
def test_the_whole_run_covers_80_percent(what):
    for end in ("", "_paper", "_sanded", "_compound"):
        found = kept(f"coverage_{what}{end}")
        assert 0.78 <= found["value"] <= 0.82
        assert found["low"] <= 0.8 <= found["high"]
    for side in ("below", "above"):
        assert kept(f"coverage_{what}_{side}")["value"] == pytest.approx(0.1, abs=0.015)


def test_the_ends_of_a_reading_are_those_of_flank_and_lay(jobs):
    """Without a simulation. They are no band of 80 %: with the flank and the lay alone open, all readings lie between them."""
    found = places(jobs, "reading_flank")
    assert len(found) >= 0.9 * JOBS_HERE
    assert np.all(found == 0)


# ---------------------------------------------------------------- chance of cutting through


def test_as_many_zones_are_cut_through_as_are_said_to_be(zones):
    for percent in DECILES:
        some = in_decile(zones, "said", percent)
        assert len(some) >= 10
        wrong, error = off(some)
        assert abs(wrong) <= 3.29 * error
    wrong, error = off([zone for zone in zones if zone["said"] < 0.01])
    assert abs(wrong) <= 3.29 * error


@pytest.mark.parametrize("percent", DECILES)
def test_the_chance_of_cutting_through_is_right_by_decile(percent):
    found = kept(f"cut_{percent}_to_{percent + 10}")
    assert abs(found["value"]) <= 0.005
    assert found["low"] <= 0 <= found["high"]


# ---------------------------------------------------------------- the whole runs


def run(number):
    _, _, seed, count, changed = RUNS[number]
    return list(truths.coverage(seed, count, **changed))


def rows():
    with ProcessPoolExecutor() as pool:
        runs = list(pool.map(run, range(len(RUNS))))

    def share(name, told, found, at, seed):
        interval = f"Clopper-Pearson, {len(found)} jobs"
        return row(name, told, *share_of(found, at), interval, seed)

    for (end, words, seed, _, _), jobs in zip(RUNS, runs):
        for what, told in BANDS.items():
            yield share(f"coverage_{what}{end}", f"{told}: {words}", places(jobs, what), 0, seed)
    for what in BANDS:
        for at, side in ((-1, "below"), (1, "above")):
            found = places(runs[0], what)
            yield share(f"coverage_{what}_{side}", BANDS[what].replace("in the", f"{side} the") + ": all jobs", found, at, SEED)

    def chance(name, told, value, error, seed, count):
        interval = f"normal, {count} zones"
        return row(name, told, value, value - 2.576 * error, value + 2.576 * error, interval, seed)

    zones = list(truths.chances(SEED + 1, CASES, TRUTHS))
    for percent in DECILES:
        some = in_decile(zones, "said", percent)
        told = f"share cut through of {TRUTHS} truths a zone, less the chance said: {percent} to {percent + 10} %"
        yield chance(f"cut_{percent}_to_{percent + 10}", told, *off(some), SEED + 1, len(some))
    few = [zone for zone in zones if zone["said"] < 0.01]
    yield chance("cut_below_1", "the same, below 1 %", *off(few), SEED + 1, len(few))
    zones = list(truths.chances(SEED + 2, CASES, 1, truths.DRAWS))
    for said, source in (("said", "the plan"), ("simulated", f"{truths.DRAWS} draws of simulate()")):
        for percent in DECILES:
            some = in_decile(zones, said, percent)
            told = f"share cut through with every number drawn, less the chance by {source}: {percent} to {percent + 10} %"
            yield chance(f"cut_all_{said}_{percent}_to_{percent + 10}", told, *off_by_all(some, said), SEED + 2, len(some))


if __name__ == "__main__":
    print(",\n".join("  " + json.dumps(one) for one in rows()))
