"""Plans simulated: against the closed form; threads, progress, errors, the card. See test_simulation_numpy.py as well."""

import json
import signal
import threading

import levigate
import numpy as np
import pytest
from scipy import stats



def given_job(random, chance):
    """A job whose inputs are all given, and a plan of it, with that chance of cutting through."""
    spots = int(np.exp(random.uniform(0, np.log(60))))
    sd_um, cv = random.uniform(2, 10), random.uniform(0, 0.3)
    sheets = [
        dict(
            id=f"s{i}",
            label="own",
            size_um=float(size_um),
            backing=dict(name="own", tip_spread=0.15, modulus_mpa=random.uniform(5, 60),
                         life_m=200, clean_every_m=10, fade_m=30, floor=0.4),
            width_mm=230,
            height_mm=280,
        )
        for i, size_um in enumerate(np.geomspace(40, 12, int(random.integers(2, 4))) * random.uniform(0.9, 1.1))
    ]
    zone = dict(
        name="top",
        area_square_centimetres=spots,  # meant so, however small
        block=dict(name="own", modulus_mpa=1000, area_cm2=80, force_n=random.uniform(8, 20),
                   speed_m_s=0.5, duty=0.6, wrap=1.5),
        film={"mean_um": 1000, "sd_um": sd_um, "mean_se_um": 0},
    )
    job = dict(
        name="given",
        start={"scratched_by": "P220"},
        coating=dict(name="own", kind="coat", hardness_mpa=random.uniform(80, 300),
                     wear_coefficient=0.02, refractive_index=1.5),
        zones=[zone],
        target={"size_um": 13},
        rules={"removed_cv": cv, "change_minutes": 3, "reserve_um": random.uniform(0, 15), "overcut": 5},
    )
    stack, sequence = levigate.Stack(sheets), [s["id"] for s in sheets]
    thick = levigate.evaluate(levigate.Job.from_dict(job), stack, sequence)
    depth_um = thick.steps[-1].zones["top"].depth_um
    z = stats.norm.isf(-np.expm1(np.log1p(-chance) / spots))
    mean_um = depth_um + job["rules"]["reserve_um"] + z * np.hypot(sd_um, cv * depth_um)
    zone["film"]["mean_um"] = max(mean_um, job["rules"]["reserve_um"] + 0.1)
    made = levigate.Job.from_dict(job)
    return made, levigate.evaluate(made, stack, sequence)


def test_cut_through_agrees_with_the_closed_form():
    """160 jobs, chances from 0.001 to 0.9: one by one, and all together."""
    random = np.random.default_rng(20261125)
    draws, misses, places = 2500, 0, []
    cuts = expected = variance = 0.0
    for chance in np.concatenate([np.geomspace(0.001, 0.1, 100), np.linspace(0.1, 0.9, 60)]):
        job, plan = given_job(random, chance)
        closed = plan.steps[-1].zones["top"].cut_through
        assert closed == pytest.approx(chance, rel=1e-6)
        simulation = levigate.simulate(job, plan, draws, int(random.integers(2**63)), bands=False)
        zone = simulation.zones["top"]
        assert zone.film_left_um.p10 == zone.film_left_um.p90
        cut = round(zone.cut_through.share * draws)
        misses += not zone.cut_through.low <= closed <= zone.cut_through.high
        below, at = stats.binom.cdf(cut - 1, draws, closed), stats.binom.pmf(cut, draws, closed)
        places.append(below + at * random.random())
        cuts, expected = cuts + cut, expected + draws * closed
        variance += draws * closed * (1 - closed)
        # The interval is exact: the same from the quantiles of the beta distribution.
        exact = np.nan_to_num(stats.beta.ppf([0.05, 0.95], [cut, cut + 1], [draws - cut + 1, draws - cut]))
        np.testing.assert_allclose([zone.cut_through.low, zone.cut_through.high], exact, rtol=1e-9)
    # Each interval misses with a chance of at most 0.1: more than this many do so once in a thousand times.
    assert misses <= stats.binom.ppf(0.999, 160, 0.1)
    # All cuts together are normal about what is expected: a thousandth lies further off.
    assert abs(cuts - expected) / np.sqrt(variance) < 3.29
    # Where a count lies in its distribution (a tie broken by lot) is evenly distributed if the closed form is right.
    assert stats.kstest(places, "uniform").pvalue > 0.001


def test_a_film_from_few_readings_is_as_sure_as_the_closed_form_has_it(job, stack):
    """What the readings leave open is common to all spots in both."""

    def chances(readings):
        film = dict(mean_um=65, sd_um=6)
        if readings:
            film |= dict(mean_se_um=6 / readings**0.5, sd_se_um=6 / (2 * (readings - 1)) ** 0.5, readings=readings)
        uneven = job(zone=dict(area_cm2=300, film=film))
        plan = levigate.evaluate(uneven, stack("P400", "P800", "P1500"), ["P400", "P800", "P1500"])
        simulation = levigate.simulate(uneven, plan, 20_000, bands=False)
        return plan.steps[-1].zones["top"].cut_through, simulation.zones["top"].cut_through

    for readings in (0, 3, 5, 12):
        closed, simulated = chances(readings)
        # Of 20 000 draws: four of these hold at once in 99.6 of 100 cases.
        assert abs(simulated.share - closed) < 3.29 * (closed * (1 - closed) / 20_000) ** 0.5


def test_the_same_for_any_number_of_threads(wide):
    job, plan = wide
    one = levigate.simulate(job, plan, 333, threads=1)
    for threads in (0, 2, 3, 7):
        assert levigate.simulate(job, plan, 333, threads=threads).to_json() == one.to_json()
    assert levigate.simulate(job, plan, 333, seed=2) != one


def test_a_band_matters_and_its_lack_does_not(wide):
    job, plan = wide
    given = levigate.simulate(job, plan, 50, bands=False)
    for step, planned in list(zip(given.steps, plan.steps))[1:]:  # the first levels peel, which varies
        assert step.minutes.p10 == step.minutes.p90 == pytest.approx(planned.minutes, abs=1e-4)
    drawn = levigate.simulate(job, plan, 50)
    assert drawn.minutes.p10 < given.minutes.p50 < drawn.minutes.p90
    assert [s.paper_short is None for s in drawn.steps] == [True, False, True, True]


def test_dictionary(wide):
    job, plan = wide
    simulation = levigate.simulate(job, plan, 20, 5)
    data = simulation.to_dict()
    assert data == json.loads(simulation.to_json())
    assert (data["draws"], data["seed"]) == (20, 5) == (simulation.draws, simulation.seed)
    assert data["minutes"]["p90"] == simulation.minutes.p90
    assert [z["zone"] for z in data["zones"]] == list(simulation.zones) == ["top", "rim"]
    assert data["zones"][1]["cut_through"]["high"] == simulation.zones["rim"].cut_through.high
    assert data["steps"][1]["paper_short"]["share"] == simulation.steps[1].paper_short.share


def test_progress_is_told_on_the_callers_thread(wide):
    told = []
    levigate.simulate(*wide, 500, progress=lambda *now: told.append((*now, threading.get_ident())))
    done, of, threads = zip(*told)
    assert list(done) == sorted(done) and done[-1] == 500 and done.count(500) == 1
    assert set(of) == {500} and set(threads) == {threading.get_ident()}


def test_progress_can_stop_it(wide):
    job, plan = wide
    stopped = levigate.simulate(job, plan, 100_000, threads=3, progress=lambda done, of: done < 200)
    assert 200 <= stopped.draws < 10_000
    assert stopped == levigate.simulate(job, plan, stopped.draws)


def test_an_error_of_progress_comes_out(wide):
    def fail(done, of):
        raise ZeroDivisionError(done)

    for threads in (1, 3):
        with pytest.raises(ZeroDivisionError):
            levigate.simulate(*wide, 100_000, threads=threads, progress=fail)


def test_a_signal_ends_it(wide):
    """As Ctrl-C does, without a progress of the caller's."""

    def ring(number, frame):
        raise TimeoutError

    before = signal.signal(signal.SIGALRM, ring)
    signal.setitimer(signal.ITIMER_REAL, 0.2)
    try:
        with pytest.raises(TimeoutError):
            levigate.simulate(*wide, 1_000_000)
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, before)


def test_others_may_work_meanwhile(wide):
    """The interpreter's lock is free: this thread goes on while the other simulates."""
    started, finished = threading.Event(), threading.Event()

    def work():
        levigate.simulate(*wide, 100_000, threads=1, progress=lambda *_: started.set() or not finished.is_set())

    other = threading.Thread(target=work)
    other.start()
    assert started.wait(10)
    assert sum(range(1000)) == 499500 and other.is_alive()
    finished.set()
    other.join(10)
    assert not other.is_alive()


def test_what_is_refused(wide, job, stack):
    wide_job, plan = wide
    with pytest.raises(levigate.BadInput, match="P800"):
        levigate.simulate(levigate.Bench(wide_job, stack("P400")), plan)
    never = job(target={"size_um": 0.1})
    none = levigate.plan(never, stack("P400", "P800"))
    with pytest.raises(levigate.BadInput, match="there is no plan"):
        levigate.simulate(never, none)
    for draws in (9, 1_000_001):
        with pytest.raises(levigate.OutOfRange, match=f"draws = .* is outside 10 to 1000000"):
            levigate.simulate(wide_job, plan, draws)
    with pytest.raises(levigate.OutOfRange, match="threads"):
        levigate.simulate(wide_job, plan, threads=100_000)
    other = job()
    with pytest.raises(levigate.BadInput, match="of another plan"):
        plan.card(levigate.simulate(other, levigate.plan(other, stack("P400", "P600", "P1000", "P1500"))))


def spoken(minutes):
    hours, rest = divmod(round(minutes), 60)
    return f"{hours} h {rest:02} min" if hours else f"{rest} min"


def numeral(minutes):
    return f"{minutes:.0f}" if minutes >= 0.95 else f"{minutes:.1f}"


def between(minutes):
    return f"In 4 of 5 cases it takes {spoken(minutes.p10)} to {spoken(minutes.p90)}."


def test_the_card_tells_the_odds(wide):
    job, plan = wide
    simulation = levigate.simulate(job, plan, 400, 3)
    card = plan.card(simulation)
    said = [line for line in card.splitlines() if line not in plan.card().splitlines()]
    text = " ".join(" ".join(said).split())
    assert "400 simulated runs (seed 3)" in text
    whole = " ".join(card.split())
    for number, about in enumerate(simulation.steps, start=1):
        low, high = numeral(about.minutes.p10), numeral(about.minutes.p90)
        assert f" {number} {numeral(about.minutes.p50)} ({low} to {high}) " in whole
    assert whole.count(f"{len(plan.steps)} steps, about {spoken(simulation.minutes.p50)}") == 1
    assert whole.count(between(simulation.minutes)) == 1
    assert f"Time: {spoken(plan.total.minutes)} at usual numbers" in text
    assert f"{simulation.sheets.p90:.1f} are enough in 9 of 10 runs" in text
    for name, zone in simulation.zones.items():
        thinnest = f"{zone.thinnest_um.p10:.0f} to {zone.thinnest_um.p90:.0f}"
        assert any(line.split()[0] == name and thinnest in line for line in said)
