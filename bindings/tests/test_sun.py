"""What a plan says of the first look in the sun, held to spots that are simulated: marks, clean zones, minutes of going back.

The whole runs are in data/reference/simulations.json; the tests run their first jobs. `python test_sun.py` prints the rows anew.
"""

import json
import math
from pathlib import Path

import levigate
import numpy as np
import pytest
import spots
from scipy import stats

SEED = 20260401
JOBS, JOBS_HERE = 4000, 150
CHOICES, CHOICES_HERE = 500, 20
REFERENCE = Path(__file__).resolve().parents[2] / "data" / "reference" / "simulations.json"
EQUAL = 0.03  # expected minutes no further apart count as equal
BINS = range(0, 100, 10)


def kept(name):
    return next(row for row in json.loads(REFERENCE.read_text())["simulations"] if row["id"] == name)


def in_bin(jobs, percent):
    """Those whose chance of a clean first look lies in these ten per cent."""
    return [job for job in jobs if min(int(job["clean_said"] * 10), 9) * 10 == percent]


def looks_off(jobs, said):
    """Share of the looks drawn that were clean, less the chance; and its standard error were the chances right."""
    said = np.array([job[said] for job in jobs])
    seen = np.array([job["clean"].mean() for job in jobs])
    error = math.sqrt((said * (1 - said)).sum() / spots.LOOKS) / len(jobs)
    return (seen - said).mean(), error


def chance_off(jobs):
    """Chance of a clean first look less the one said; and its standard error."""
    off = np.array([job["clean_mean"] - job["clean_said"] for job in jobs])
    return off.mean(), off.std(ddof=1) / math.sqrt(len(off))


def over(jobs, said, found):
    """Sum of what is said over that of what is found; and its standard error."""
    said = np.array([np.sum(job[said]) for job in jobs])
    found = np.array([np.sum(job[found]) for job in jobs])
    ratio = said.sum() / found.sum()
    return ratio, math.sqrt(((said - ratio * found) ** 2).sum()) / found.sum()


def standing(choice):
    """Of the plan chosen: whether it is the best, within the noise of it, as good as equal, or worse."""
    noise = 2.58 * choice["error"]
    if choice["more"] <= 0:
        return "best"
    if choice["more"] <= noise:
        return "noise"
    return "equal" if choice["more"] <= EQUAL * choice["best"] + noise else "worse"


@pytest.fixture(scope="module")
def jobs():
    return list(spots.calibration(SEED, JOBS_HERE))


@pytest.fixture(scope="module")
def choices():
    return list(spots.choices(SEED + 1, CHOICES_HERE))


# ---------------------------------------------------------------- marks, and clean zones


def test_as_many_first_looks_are_clean_as_are_said_to_be(jobs):
    for low, high in ((0, 100), (0, 30), (30, 70), (70, 100)):
        some = [job for job in jobs if low <= 100 * job["clean_said"] < high]
        assert len(some) >= 20
        off, error = looks_off(some, "clean_said")
        assert abs(off) <= 3.29 * error
        # those drawn scratch by scratch, and their mean by the spots
        off, error = looks_off(some, "clean_mean")
        assert abs(off) <= 3.29 * error


@pytest.mark.parametrize("percent", BINS)
def test_the_chance_of_a_clean_first_look_is_no_more_than_a_hundredth_off(percent):
    row = kept(f"sun_clean_{percent}_to_{percent + 10}")
    assert abs(row["value"]) <= 0.01
    assert row["high"] >= 0  # and not too hopeful


def test_the_first_jobs_come_out_as_the_whole_run(jobs):
    off, error = chance_off(jobs)
    row = kept("sun_clean")
    assert abs(off - row["value"]) <= 3.29 * error
    for name, said, found in (
        ("sun_marks", "marks_said", "marks_mean"),
        ("sun_back_minutes", "back_said", "back_mean"),
    ):
        ratio, error = over(jobs, said, found)
        assert abs(ratio - kept(name)["value"]) <= 3.29 * error


def test_marks_and_minutes_are_a_few_per_cent_too_many(jobs):
    """No stray is worn by what came off later, and a spot that shows marks of two layers counts twice. Nor do two steps miss the
    same spot, which has less weight. On minutes plans are decided: they must be closer than those that count as equal."""
    for name, most in (("sun_marks", 1.05), ("sun_back_minutes", 1 + EQUAL)):
        row = kept(name)
        assert 1 <= row["low"] and row["high"] <= most
    # scratch by scratch
    for said, seen in (("marks_said", "marks"), ("steps_said", "steps"), ("back_said", "back")):
        drawn = [dict(said=job[said], seen=np.sum(job[seen]) / spots.LOOKS) for job in jobs]
        ratio, error = over(drawn, "said", "seen")
        assert abs(ratio - 1) <= 0.05 + 3.29 * error


# ---------------------------------------------------------------- the plan that is chosen


def test_the_plan_chosen_is_the_best_or_as_good_as_equal(choices):
    assert len(choices) == CHOICES_HERE
    # Of the whole run 1 in 250; two of twenty would come in 3 of 1000 such runs.
    assert sum(standing(choice) == "worse" for choice in choices) <= 1
    for choice in choices:
        assert choice["more"] <= 0.05 * choice["best"] + 3.29 * choice["error"]
        assert choice["arithmetic"] == pytest.approx(choice["planned"], abs=1e-3)
    assert kept("sun_choice_worse")["high"] <= 0.02
    assert kept("sun_choice_more")["high"] <= 0.01
    assert abs(kept("sun_choice_said")["value"]) <= 0.01


def test_expected_minutes_are_as_said(choices):
    said = np.array([choice["said"] for choice in choices])
    took = np.array([choice["ours"] for choice in choices])
    noise = 3.29 * np.array([choice["ours_error"] for choice in choices])
    assert np.all(np.abs(said - took) <= EQUAL * took + noise)


# ---------------------------------------------------------------- going back counts the same marks


@pytest.mark.parametrize("zone", ["top", "front and sides", "edges"])
def test_a_diagnosis_counts_the_same_scratches(demo, zone):
    """Scratches that the last step should have taken out: by diagnose, spot by spot, and by the plan.

    To diagnose, a spot is missed by one step or none, and the first step may miss it, too. So each of n steps misses
    (1 - (1 - m)^n) / n of the spots; to the plan each misses m. The plan counts strays as well, no more than two steps make.
    A spot shows one scratch, or two and more of the same step; one of each of two steps is as good as never.
    """
    job, stack = demo
    for sheets in (["a-p400", "a-p800", "a-p1500", "b-pad"], ["a-p400", "a-p800", "a-p1500"]):
        plan = levigate.evaluate(job, stack, sheets)
        said = plan.steps[-1].zones[zone].marks
        layers = sum(step.zones[zone].worked for step in plan.steps)
        done = [levigate.DoneStep(sheet) for sheet in sheets]
        counted = 0.0
        for kind, count in (("scratch", None), ("cluster", 2)):
            for seen in ("sunlight", "lamp"):
                mark = levigate.Mark(kind=kind, zone=zone, seen=seen, count=count)
                causes = levigate.diagnose(job, stack, done, mark).causes
                counted += sum(c.expected for c in causes if c.step == len(sheets) - 2 and not c.stray)
        miss = spots.EYE["missed_share"]
        counted *= miss * layers / (1 - (1 - miss) ** layers)
        strays = 2e-4 * spots.EYE["stray_per_m2"] * plan.zones[zone].area_cm2
        assert said - strays <= counted <= said


# ---------------------------------------------------------------- the whole runs


def row(name, quantity, value, low, high, interval, seed):
    """A row of data/reference/simulations.json."""
    digits = {key: float(f"{x:.4g}") for key, x in (("value", value), ("low", low), ("high", high))}
    return dict(
        id=name,
        quantity=quantity,
        **digits,
        confidence_percent=99,
        interval=interval,
        seed=str(seed),
        supports="plan",
    )


def rows_of(jobs, choices):
    def of(name, quantity, value, error, seed, count):
        interval = f"normal, {count} jobs"
        return row(name, quantity, value, value - 2.576 * error, value + 2.576 * error, interval, seed)

    count = len(jobs)
    for percent in BINS:
        some = in_bin(jobs, percent)
        told = f"chance of a clean first look, less the one said: {percent} to {percent + 10} %"
        yield of(f"sun_clean_{percent}_to_{percent + 10}", told, *chance_off(some), SEED, len(some))
    yield of("sun_clean", "the same, all chances said", *chance_off(jobs), SEED, count)
    told = f"share of {spots.LOOKS * count} first looks drawn scratch by scratch that were clean, less the chance by the spots"
    yield of("sun_clean_drawn", told, *looks_off(jobs, "clean_mean"), SEED, count)
    told = "spots said to show a mark after the last step over those that do"
    yield of("sun_marks", told, *over(jobs, "marks_said", "marks_mean"), SEED, count)
    told = "minutes of going back said over those expected by the spots"
    yield of("sun_back_minutes", told, *over(jobs, "back_said", "back_mean"), SEED, count)
    words = dict(
        best="has the fewest expected minutes of all sequences and overcuts, by the spots",
        noise="takes more than the best by no more than the noise, 99 %",
        equal="takes more than the best, and no more than the 3 % that count as equal",
        worse="takes more than the 3 % that count as equal",
    )
    for kind, what in words.items():
        found = sum(standing(choice) == kind for choice in choices)
        share = stats.binomtest(found, len(choices)).proportion_ci(0.99, method="exact")
        interval = f"Clopper-Pearson, {len(choices)} jobs"
        told = f"share of the plans chosen that {what}"
        yield row(f"sun_choice_{kind}", told, found / len(choices), share.low, share.high, interval, SEED + 1)
    for name, told, each in (
        ("more", "minutes that the plan chosen takes more than the best, over those of the best", "more"),
        ("said", "expected minutes said of the plan chosen, less those by the spots, over them", "said"),
    ):
        base = "best" if each == "more" else "ours"
        off = np.array([(c["more"] if each == "more" else c["said"] - c["ours"]) / c[base] for c in choices])
        error = off.std(ddof=1) / math.sqrt(len(off))
        yield of(f"sun_choice_{name}", told, off.mean(), error, SEED + 1, len(choices))


if __name__ == "__main__":
    whole = rows_of(list(spots.calibration(SEED, JOBS)), list(spots.choices(SEED + 1, CHOICES)))
    print(",\n".join("  " + json.dumps(one) for one in whole))
