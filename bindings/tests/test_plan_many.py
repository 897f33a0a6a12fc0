"""Many jobs at once: what plan() says of each, whatever the number of threads."""

import hashlib
import json
import pickle
import signal
import threading
import time

import levigate
import pytest


def varied(demo_job, count):
    """Jobs of pieces that differ. Number 7 cannot be used, and number 11 has no plan."""
    jobs = []
    for number in range(count):
        told = demo_job.to_dict()
        told["name"] = f"piece {number}"
        told["zones"][0]["area_cm2"] = 300 + 20 * (number % 9)
        told["zones"][0]["peel_um"] = 20 + number % 4
        told["target"] = {"size_um": 0.01 if number == 11 else 8 + number % 3}
        jobs.append(levigate.Job.from_dict(told))
    if count > 7:
        told = demo_job.to_dict()
        told["target"] = {"gloss_gu": 30, "rub_out": "nobody's pad"}
        jobs[7] = levigate.Job.from_dict(told)
    return jobs


def digest(results):
    text = "".join(one.to_json() if isinstance(one, levigate.Plan) else repr(one) for one in results)
    return hashlib.sha256(text.encode()).hexdigest()


@pytest.fixture(scope="module")
def job(demo):
    return demo[0]


@pytest.fixture(scope="module")
def stack(demo):
    return demo[1]


@pytest.fixture(scope="module")
def jobs(job):
    return varied(job, 50)


@pytest.fixture(scope="module")
def alone(jobs, stack):
    results = []
    for one in jobs:
        try:
            results.append(levigate.plan(one, stack))
        except levigate.Error as error:
            results.append(error)
    return results


def test_it_says_what_plan_says_of_each(jobs, stack, alone):
    results = levigate.plan_many(jobs, stack)
    assert [type(one) for one in results] == [type(one) for one in alone]
    assert isinstance(results[7], levigate.Error) and not results[11].found
    assert digest(results) == digest(alone)
    assert results[3] == alone[3]
    assert [one.job.name for one in results if isinstance(one, levigate.Plan)][-1] == "piece 49"


@pytest.mark.parametrize("threads", [1, 3])
def test_threads_change_nothing(jobs, stack, alone, threads):
    assert digest(levigate.plan_many(jobs, stack, threads=threads)) == digest(alone)


def test_an_error_keeps_all_that_it_says(jobs, stack, alone):
    (kept,) = levigate.plan_many(jobs[7:8], stack)
    assert kept.faults == alone[7].faults and kept.quantity == alone[7].quantity
    again = pickle.loads(pickle.dumps(kept))
    assert type(again) is type(kept) and str(again) == str(kept) and again.faults == kept.faults
    with pytest.raises(type(alone[7])):
        raise kept


def test_rules_stand_for_those_of_each_job(job, stack):
    (slow,) = levigate.plan_many([job], stack, rules={"change_minutes": 60})
    assert slow.job.rules == levigate.Rules(change_minutes=60)
    assert slow.total.minutes > levigate.plan(job, stack).total.minutes


def test_progress_is_told_on_the_callers_thread(jobs, stack):
    told = []
    levigate.plan_many(jobs[:9], stack, progress=lambda *now: told.append((*now, threading.get_ident())))
    done, of, threads = zip(*told)
    assert list(done) == sorted(done) and done[-1] == 9 and done.count(9) == 1
    assert set(of) == {9} and set(threads) == {threading.get_ident()}


def test_progress_can_stop_it(jobs, stack, alone):
    first = levigate.plan_many(jobs, stack, progress=lambda done, of: done < 3)
    assert 3 <= len(first) < len(jobs)
    assert digest(first) == digest(alone[: len(first)])


def test_a_signal_ends_it_between_jobs(job, stack):
    """As Ctrl-C does, without a progress of the caller's."""
    began = []

    def ring(number, frame):
        began.append(time.monotonic())
        raise TimeoutError

    slowest = time.monotonic()
    levigate.plan(job, stack)
    slowest = time.monotonic() - slowest
    before = signal.signal(signal.SIGALRM, ring)
    signal.setitimer(signal.ITIMER_REAL, 0.2)
    rang = time.monotonic() + 0.2
    try:
        with pytest.raises(TimeoutError):
            levigate.plan_many([job] * 5000, stack)
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, before)
    assert began[0] - rang < 2 + 10 * slowest  # 5000 jobs take far longer


def test_no_jobs_give_no_plans(stack):
    assert levigate.plan_many([], stack) == []


def test_what_is_refused(job, stack):
    with pytest.raises(levigate.OutOfRange, match="threads"):
        levigate.plan_many([job], stack, threads=100_000)
    with pytest.raises(levigate.BadInput, match="rule"):
        levigate.plan_many([job], stack, rules={"chnge_minutes": 1})
    with pytest.raises(TypeError):
        levigate.plan_many([job, "job"], stack)
    opened = json.loads(stack.to_json())
    opened["bare_number"] = "ask"
    opened["sheets"] = [{**opened["sheets"][0], "label": "600", "maker": "nobody"}]
    opened["sheets"][0].pop("system", None)
    with pytest.raises(levigate.AmbiguousLabel):
        levigate.plan_many([job], levigate.Stack.from_dict(opened))
