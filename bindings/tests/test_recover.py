"""Going back, held to marks whose step is known: are the chances right, and is the way back the cheaper one?"""

import json
import math
from pathlib import Path

import levigate
import marks
import numpy as np
import pytest

CASES, SEED = 3000, 20260301
REFERENCE = Path(__file__).resolve().parents[2] / "data" / "reference" / "simulations.json"
GRID = math.exp(0.1)  # needs are rounded up to the next point of this grid


def kept(name):
    """What the reference data keep of these simulations."""
    return next(e for e in json.loads(REFERENCE.read_text())["simulations"] if e["id"] == name)


def by_policy(way, need_um):
    """Minutes until a mark that needs need_um is gone, by the tries of the library."""
    minutes = off_um = 0.0
    for one in way.tries:
        minutes += one.minutes
        off_um += one.removal_um
        if off_um >= need_um:
            return minutes
    return minutes + way.round_minutes


def by_legs(way, need_um):
    """The same by the legs, on the patch or zone that they say."""
    minutes = 0.0
    for leg in way.legs:
        for look in leg.looks:
            if look.removal_um >= need_um:
                return minutes + look.minutes
        minutes += leg.looks[-1].minutes
    return minutes + way.round_minutes


def without_needless_changes(way, need_um, change_minutes):
    """By the tries, at the price of legs: after a look, a hand that goes on with the last sheet does not change it."""
    minutes = off_um = 0.0
    for one in way.tries:
        minutes += one.minutes - (change_minutes if len(one.steps) == 1 and off_um > 0 else 0.0)
        off_um += one.removal_um
        if off_um >= need_um:
            return minutes
    return minutes + way.round_minutes


def expected(way, minutes_of):
    """Minutes on average, by the chances of the needs."""
    return sum(need.probability * minutes_of(need.need_um) for need in way.diagnosis.needs)


def by_habit(way, order, amounts, need_um):
    """The same where the steps to go back to, and what is taken off, are a habit; the last of them again and again."""
    minutes = off_um = 0.0
    for attempt in range(1000):
        entry = way.reentries[order[min(attempt, len(order) - 1)]]
        total_um = entry.above_um + amounts[order[min(attempt, len(order) - 1)]]
        if off_um + total_um > way.film_um:
            break
        minutes += entry.fixed_minutes + entry.minutes_per_um * (total_um - entry.above_um)
        off_um += total_um
        if off_um >= need_um:
            return minutes
    return minutes + way.round_minutes


def best_from(way, allowed, unchanged_minutes=0.0):
    """Expected minutes of the best policy that goes back to allowed steps only, and its tries. Written anew, backwards.

    unchanged_minutes: what going on with the last sheet after a look saves.
    """
    needs_um = [need.need_um for need in way.diagnosis.needs]
    left = [*np.cumsum([n.probability for n in way.diagnosis.needs][::-1])[::-1].tolist(), 0.0]
    entries = [(k, e.above_um, e.reach_um, e.fixed_minutes, e.minutes_per_um) for k, e in enumerate(way.reentries)]
    last, film_um = len(entries) - 1, way.film_um
    value, choice = [0.0] * len(needs_um) + [0.0], [None] * (len(needs_um) + 1)
    for met in range(len(needs_um) - 1, -1, -1):
        value[met] = way.round_minutes
        off_um = needs_um[met - 1] if met else 0.0
        for after in range(met, len(needs_um)):
            if needs_um[after] > film_um:
                break
            deep_um = needs_um[after] - off_um
            for k, above_um, reach_um, fixed_minutes, minutes_per_um in entries:
                # A step that climbs through more than is needed takes it all the same; worth it at the end only.
                total_um = max(deep_um, above_um)
                if k not in allowed or deep_um > reach_um or off_um + total_um > film_um:
                    continue
                if total_um > deep_um and after + 1 < len(needs_um):
                    continue
                here = fixed_minutes + minutes_per_um * (total_um - above_um)
                here -= unchanged_minutes if met and k == last else 0.0
                here += left[after + 1] / left[met] * value[after + 1]
                if here < value[met]:
                    value[met], choice[met] = here, (k, after, total_um)
    return value[0], choice


def by_choice(way, choice, need_um):
    minutes = off_um = 0.0
    met = 0
    while met < len(way.diagnosis.needs) and choice[met]:
        k, after, total_um = choice[met]
        entry = way.reentries[k]
        minutes += entry.fixed_minutes + entry.minutes_per_um * (total_um - entry.above_um)
        off_um += total_um
        if off_um >= need_um:
            return minutes
        met = after + 1
    return minutes + way.round_minutes


@pytest.fixture(scope="module")
def results():
    rows = []
    for case in marks.cases(CASES, SEED):
        way = levigate.go_back(case.job, case.stack, case.done, case.mark)
        causes = way.diagnosis.causes
        if not causes:
            rows.append(dict(explained=False))
            continue
        last, change = len(way.reentries) - 1, case.job.rules.change_minutes
        planned = [r.removal_um for r in way.reentries]
        planned[0] = planned[1]  # what it levelled is done; its own scratches again
        first_value, first_choice = best_from(way, [0])
        rows.append(
            dict(
                explained=True,
                probability=causes[0].probability,
                right=(causes[0].step, causes[0].stray) == case.culprit,
                chance_of_truth=next(
                    (c.probability for c in causes if (c.step, c.stray) == case.culprit), 0.0
                ),
                need_um=case.need_um,
                needs={q: way.diagnosis.need_um(q) for q in (0.1, 0.5, 0.9)},
                expected=way.expected_minutes,
                best=best_from(way, range(len(way.reentries)))[0],
                ours=by_policy(way, case.need_um),
                legs=by_legs(way, case.need_um),
                legs_expected=min(way.zone_minutes, way.patch_minutes or math.inf),
                on_zone=way.zone_minutes,
                unchanged=without_needless_changes(way, case.need_um, change),
                unchanged_expected=expected(way, lambda um: without_needless_changes(way, um, change)),
                unchanged_best=best_from(way, range(len(way.reentries)), change)[0],
                first_shares=[leg.looks[0].gone_chance for leg in way.legs],
                first=by_choice(way, first_choice, case.need_um),
                one_back=by_habit(way, [*range(max(last - 1, 0), -1, -1)], planned, case.need_um),
            )
        )
    return rows


def column(rows, name):
    return np.array([row[name] for row in rows if row["explained"]], dtype=float)


def test_nearly_every_mark_is_explained(results):
    assert len(results) >= 2000
    # A reading may be further off than four standard deviations, or fall below what stands out.
    assert sum(not row["explained"] for row in results) <= 2


@pytest.mark.parametrize("low", [0.4, 0.5, 0.6, 0.7, 0.8, 0.9])
def test_as_many_are_right_as_are_said_to_be(results, low):
    probability, right = column(results, "probability"), column(results, "right")
    here = (probability >= low) & (probability <= low + 0.1)
    assert here.sum() >= 20
    p = probability[here]
    # Sum of unequal coins, 99.9 % by the normal law.
    assert abs(right[here].sum() - p.sum()) <= 3.29 * math.sqrt((p * (1 - p)).sum()) + 0.5
    if low == 0.7:
        entry = kept("way_back_right_of_70_to_80")
        assert entry["low"] <= p.mean() <= entry["high"]
        assert right[here].mean() == pytest.approx(entry["value"], abs=5e-3)


def test_the_step_is_named_more_often_than_by_guessing(results):
    right, probability = column(results, "right"), column(results, "probability")
    spread = math.sqrt((probability * (1 - probability)).sum())
    assert abs(right.sum() - probability.sum()) <= 2.58 * spread
    assert right.mean() > 0.8


@pytest.mark.parametrize("q", [0.1, 0.5, 0.9])
def test_as_many_needs_are_met_as_are_said_to_be(results, q):
    need = column(results, "need_um")
    said = np.array([row["needs"][q] for row in results if row["explained"]])
    slack = 3.29 * math.sqrt(q * (1 - q) / len(need))
    assert (need <= said).mean() >= q - slack
    assert (need <= said / GRID).mean() <= q + slack


def test_the_policy_is_the_best_there_is(results):
    ours, best = column(results, "expected"), column(results, "best")
    np.testing.assert_allclose(ours, best, rtol=1e-9)


def test_minutes_are_as_expected_and_fewer_than_by_habit(results):
    ours, expected = column(results, "ours"), column(results, "expected")
    off = ours - expected
    assert abs(off.mean()) <= 2.58 * off.std() / math.sqrt(len(off))
    for habit in ("first", "one_back"):
        more = column(results, habit) - ours
        assert more.mean() > 3.29 * more.std() / math.sqrt(len(more))
        entry = kept(f"way_back_{habit}")
        assert entry["low"] <= more.mean() <= entry["high"]
    entry = kept("way_back_ours")
    assert entry["low"] <= ours.mean() <= entry["high"]


def test_legs_take_no_more_than_the_tries_and_as_much_as_they_say(results):
    """On a patch or the zone, whichever is offered, minutes that a mark takes: fewer than by the tries at either price."""
    legs, tries, unchanged = (column(results, name) for name in ("legs", "ours", "unchanged"))
    off = legs - column(results, "legs_expected")
    assert abs(off.mean()) <= 2.58 * off.std() / math.sqrt(len(off))
    for habit in (tries, unchanged):
        more = habit - legs
        assert more.mean() > 3.29 * more.std() / math.sqrt(len(more))
    entry = kept("way_back_legs")
    assert entry["low"] <= legs.mean() <= entry["high"]
    entry = kept("way_back_legs_tries")
    assert entry["low"] <= (unchanged - legs).mean() <= entry["high"]
    assert all(0.1 <= row["first_shares"][0] for row in results if row["explained"] and row["first_shares"])


def test_legs_on_the_whole_zone_cost_no_more_than_the_tries_at_one_price(results):
    """Without any patch. No legs can beat the best of all tries at their price; what the limits of a hand cost is kept."""
    zone, tries, best = (column(results, name) for name in ("on_zone", "unchanged_expected", "unchanged_best"))
    less = tries - zone
    assert less.mean() > 3.29 * less.std() / math.sqrt(len(less))
    entry = kept("way_back_legs_zone")
    assert entry["low"] <= less.mean() <= entry["high"]
    assert (zone >= best * (1 - 1e-9)).all()
    entry = kept("way_back_legs_limits")
    assert entry["low"] <= (zone - best).mean() <= entry["high"]


def test_marks_and_ways_are_values(demo):
    job, stack = demo
    mark = levigate.Mark(kind="haze", zone="top")
    assert mark == levigate.Mark(kind="haze", zone="top") and "haze" in repr(mark)
    done = [levigate.DoneStep(s) for s in ("a-p400", "a-p800", "a-p1500", "b-pad")]
    way = levigate.go_back(job, stack, done, mark)
    assert way.found and way.tries[0].steps[0].sheet == "b-pad"
    assert way.diagnosis == levigate.diagnose(job, stack, done, mark)
    with pytest.raises(levigate.BadInput, match="kind of mark 'scrach'.*nearest is 'scratch'"):
        levigate.Mark(kind="scrach", zone="top")
    with pytest.raises(levigate.BadInput, match="zone 'tip'.*nearest is 'top'"):
        levigate.go_back(job, stack, done, levigate.Mark(kind="haze", zone="tip"))
    with pytest.raises(levigate.BadInput, match="sheet 'a-p8000'"):
        levigate.go_back(job, stack, [levigate.DoneStep("a-p8000")], mark)
