"""Values: read-only, equal by their members, with a text, copied and pickled."""

import copy
import pickle
from pathlib import Path

import levigate
import pytest


ROOT = Path(__file__).resolve().parents[2]
# What one call gives: one has it again by asking again.
OF_ONE_CALL = set((
    "AgedHardness Cleaning Compound Contact Contacts Equivalent FilmSeen Formula Journal "
    "JournalReading LabelMeaning LabelMeanings LabelReading Learned LearnedLine NamedProfile "
    "Observed Outlier PaceSeen Pieces Round RoundLeft ScratchSeen SheenBand Sourced SpeedFinding "
    "Together Torn Unmatched WheelPass "
).split())  # fmt: skip
STACK = {
    "sheets": [
        dict(id=label, label=label, backing="latex paper", width_mm=230, height_mm=280)
        for label in ("P400", "P600", "P800", "P1000", "P1500")
    ]
}


def learned_values(job, stack):
    """One instance of every class of what journals teach."""
    at, zone, sheet = "2026-03-01T09:30:00Z", job.zones[0].name, stack.sheets[0].id
    coats = job.to_dict()
    coats["zones"][0]["film"] = {"mean_um": 100, "sd_um": 5}
    job = levigate.Job.from_dict(coats)
    ended = dict(kind="step ended", sheet=sheet, minutes=100, zone=zone)
    entries = [
        levigate.Entry(at=at, job=job.name, **one)
        for one in [
            dict(kind="film read", zone=zone, readings_um=[95, 99]),
            ended,
            *(dict(kind="scratch read", zone=zone, sheet=sheet, width_um=w) for w in [9] * 9 + [1e3]),
            dict(kind="step ended", sheet="none", minutes=1),
        ]
    ]
    seen = levigate.observe(job, stack, entries)
    learned = levigate.learn(None, job, stack, entries)
    shop = learned.shop
    return [
        seen, seen.paces[0], seen.scratches[0], seen.films[0], seen.unmatched[0],
        learned, learned.outliers[0], learned.report[0], shop, shop.person, shop.rates[0],
        shop.films[0], shop.jobs[0], shop.minutes_noise,
    ]  # fmt: skip


def inspected_values(job):
    """One instance of every class of simulating, and of going back."""
    stack = levigate.Stack.from_dict(STACK)
    job = levigate.Job.from_dict(job.to_dict() | {"target": {"grade": "P1500"}})
    done = [levigate.DoneStep(s.id) for s in stack.sheets]
    mark = levigate.Mark(kind="scratch", zone=job.zones[0].name, seen="loupe", width_um=6)
    way = levigate.go_back(job, stack, done, mark)
    found = way.diagnosis
    plan = levigate.evaluate(job, stack, [s.id for s in stack.sheets])
    simulation = levigate.simulate(job, plan, draws=10)
    calibration = levigate.calibrate(job, plan, draws=10)
    together = levigate.plan_together([job, job], stack, draws=10)
    spraying = levigate.how_much_to_spray(levigate.Bench(job, stack))
    zone = simulation.zones["top"]
    return [
        done[0], mark, way, found, found.signs[0], found.causes[0], found.needs[0], way.reentries[0],
        way.tries[0], way.tries[0].steps[0], way.legs[0], way.legs[0].looks[0],
        simulation, simulation.steps[0], simulation.steps[0].zones["top"], simulation.minutes, zone, zone.cut_through,
        spraying, spraying.how, spraying.zones[0], calibration, calibration.measurements[0], together, together.pieces[0], together.paper[0],
    ]  # fmt: skip


def told_of_wheels_and_targets(stack, job):
    """What a step at a wheel tells, what comes nearest to a target out of reach, and what a finding names."""
    day = levigate.plan(
        levigate.Job.load(ROOT / "data/demo/day.json"), levigate.Stack.load(ROOT / "data/demo/day_stack.json")
    )
    wheeled = next(step for step in day.steps if step.wheel is not None)
    far = levigate.plan(levigate.Job.from_dict(job.to_dict() | {"target": {"size_um": 0.01}}), stack)
    named = next(finding.about[0] for finding in day.findings if finding.about)
    quantity = next(sign for sign in signs(stack, job) if sign.numbers).numbers[0]
    young = levigate.plan(levigate.Job.from_dict(job.to_dict() | {"age_h": 5}), stack)
    lacquer = levigate.Job.from_dict(job.to_dict() | {"coating": "nitrocellulose lacquer"})
    fine = dict(id="fine", label="2 µm", compound="fine", wheel="loose flannel")
    polished = levigate.Stack.from_dict({**STACK, "sheets": [*STACK["sheets"], fine]})
    done = [levigate.DoneStep(sheet.id) for sheet in polished.sheets]
    haze = levigate.Mark(kind="haze", zone="top")
    way = levigate.go_back(job, polished, done, haze)
    at_wheel = next(s.wheel for t in way.tries for s in t.steps if s.wheel is not None)
    return [
        wheeled.wheel, wheeled.wheel.still, far.why.nearest, named, quantity, young.wait,
        lacquer.coating.shrink_back, at_wheel,
    ]  # fmt: skip


def machine_values(job):
    """A machine, and what a step with it tells."""
    data = job.to_dict()
    data["zones"][0]["area_cm2"] = 6000
    disc = dict(id="d", label="P400", backing="latex paper", width_mm=150, height_mm=150, machine="random-orbit sander")
    stack = levigate.Stack([disc])
    step = levigate.evaluate(levigate.Job.from_dict(data), stack, ["d"]).steps[0]
    return [levigate.Machine("random-orbit sander"), step.machine]


def signs(stack, job):
    mark = levigate.Mark(kind="scratch", zone="top", seen="loupe", width_um=6)
    return levigate.go_back(job, stack, [levigate.DoneStep("a-p400"), levigate.DoneStep("a-p800")], mark).diagnosis.signs


def journal_values(path):
    """One instance of every class of a journal."""
    journal = levigate.Journal(path)
    entry = journal.append(kind="note", job="clock case", text="dry")
    with path.open("a") as file:
        file.write('{"format"')
    reading = journal.read()
    return [journal, entry, reading, reading.torn[0]]


def compared_values(job, stack):
    slow = {"coating": job.coating.name, "backing": "latex paper", "factor": 0.3, "low": 0.2, "high": 0.4, "observations": 9}
    shop = levigate.Shop.from_dict({"rates": [slow]})
    change = levigate.plan(levigate.Bench(job, stack, shop)).change
    both = levigate.compare(job, stack, [sheet.id for sheet in stack.sheets[2:4]], draws=10)
    sheets = [{**sheet.to_dict(), "label": "600", "system": None} if sheet.id == "b-600" else sheet.to_dict() for sheet in stack.sheets]
    drawer = levigate.Stack.from_dict({"sheets": [{k: v for k, v in one.items() if v is not None} for one in sheets]})
    buying = levigate.buy(job, drawer, labels=["CAMI 1200"], draws=10)
    label = buying.labels[0]
    return (change, change.was, change.learned[0], change.more_sheets[0], both, both.minutes,
            buying, buying.sheets[0], buying.offers[0], label, label.meanings[0])  # fmt: skip


def when_done_values(job, stack):
    """One instance of every class of what is left of a job."""
    begun = levigate.Entry(kind="step begun", job=job.name, sheet=stack.sheets[0].id)
    when = levigate.Bench(job, stack, None, [begun]).when_done(20)
    return [when, when.step, when.paper[0]]


@pytest.fixture(scope="module")
def values(demo, tmp_path_factory):
    """One instance of every class."""
    job, stack = demo
    plan = levigate.plan(job, stack)
    scratched = {**job.to_dict(), "start": {"scratched_by": "P400"}}
    gap = levigate.plan(levigate.Job.from_dict(scratched), levigate.Stack(stack.sheets[-2:]))
    contact = dict(
        log_spread=0.28, tip_spread=0.15, modulus_mpa=20, pressure_kpa=1.7, hardness_mpa=150
    )
    run = levigate.Defect(kind="run", height_um=150, width_mm=4, length_mm=40)
    work = levigate.take_down(run, small_rate_um_per_m=0.1, zone_rate_um_per_m=0.05)
    marred = job.to_dict()
    marred["zones"][0]["defects"] = [
        dict(kind="run", height_um=150, width_mm=4, length_mm=40, count=1)
    ]
    before = levigate.plan(levigate.Job.from_dict(marred), stack).before
    marred["zones"][0]["start"] = dict(scratched_by="P800", scratch_um=1.5)
    carried = levigate.Job.from_dict(marred).zones[0].carries
    cure = levigate.Cure(hard_cure_h=168, points=[(24, 60), (168, 150)])
    coat = levigate.Coat(dry_um=40)
    rounds = levigate.rounds([coat], recoat_window_h=4)
    wheel = levigate.Wheel("felt")
    with pytest.raises(levigate.OutOfRange) as outside:
        levigate.Rules(overcut=-1)
    found = [
        job, stack, plan, gap.why, plan.total, plan.steps[0], plan.steps[0].zones["top"], plan.steps[0].zones["top"].reading_60,
        plan.zones["top"], *told_of_wheels_and_targets(stack, job), *machine_values(job), plan.findings[0], plan.cautions[0], plan.relies_on[0], job.coating, job.coating.limits, job.zones[0], job.zones[2].edge,
        job.zones[0].film, job.zones[0].block, job.target, job.rules, stack.sheets[0],
        stack.sheets[0].backing, levigate.grade("P800"), levigate.read_label("P800"),
        levigate.meanings("800"), levigate.meanings("800").meanings[0], levigate.convert("P800", "JIS"), levigate.contact(size_um=18.3, **contact),
        levigate.contact(size_um=[18.3], **contact), gap.why.gaps[0], gap.why.gaps[0].bridges[0],
        levigate.source("contact"), levigate.source("rule", "max_ratio"), levigate.profiles("coating")[0],
        run, work, work.local, before[0], cure, cure.points[0],
        levigate.hardness_at(cure, age_h=30), coat, rounds[0],
        levigate.witness_depth(rounds, depth_um=5), wheel, levigate.speed_finding(wheel, "shellac"),
        levigate.wheel_pass(wheel, "shellac", rate_um_per_m=1e-4, removal_um=1),
        levigate.compound_named("fine", "shellac"), levigate.band_named("institute", "satin"),
        levigate.cleaning("film", clean_every_m=10), levigate.pieces("film", "foam pad", travel_m=9),
        carried, outside.value.faults[0], plan.bench, *learned_values(job, stack), *inspected_values(job),
        *compared_values(job, stack), *when_done_values(job, stack), *journal_values(tmp_path_factory.mktemp("values") / "journal"),
    ]  # fmt: skip
    return {type(value).__name__: value for value in found}


def test_there_is_one_of_each(values):
    classes = {
        name
        for name in levigate.__all__
        if isinstance(getattr(levigate, name), type)
        and not issubclass(getattr(levigate, name), Exception)
    }
    assert classes - set(values) == {"PaperShort", "FilmNeeded"}  # compared in test_plan.py


def test_read_only(values):
    for value in values.values():
        for name in (n for n in dir(value) if not n.startswith("_")):
            with pytest.raises(AttributeError):
                setattr(value, name, getattr(value, name))
        with pytest.raises(AttributeError):
            value.something_else = 1


def test_a_member_says_its_unit_its_range_and_its_type():
    assert levigate.Wheel.diameter_mm.__doc__ == "of the wheel [mm], 10 to 2000"
    assert levigate.Wheel.name.__doc__ == "name of the profile, or the user's own"
    assert levigate.Cause.expected.__doc__.endswith("on average, at least 0")

    def told(of):
        return of.fget.__doc__.splitlines()[0]

    assert told(levigate.Wheel.diameter_mm) == "(self: levigate._core.Wheel) -> float"
    assert told(levigate.Mark.count) == "(self: levigate._core.Mark) -> int | None"
    assert told(levigate.Job.zones) == "(self: levigate._core.Job) -> list[levigate._core.Zone]"
    ways = 'typing.Literal["loupe", "comparison", "lamp", "sunlight"]'
    assert told(levigate.Mark.seen) == f"(self: levigate._core.Mark) -> {ways}"


def test_a_member_is_read_of_its_own_class(values):
    for wrong in (None, 1.5, values["Job"]):
        with pytest.raises(TypeError, match="diameter_mm is of"):
            levigate.Wheel.diameter_mm.fget(wrong)


def test_a_whole_number_is_whole(demo):
    job, stack = demo
    simulation = levigate.simulate(job, levigate.plan(job, stack), draws=10, seed=2**64 - 1)
    assert simulation.seed == 2**64 - 1 and simulation.draws == 10


def test_a_value_inside_keeps_what_it_lies_in(demo):
    zones = levigate.Job.from_dict(demo[0].to_dict()).zones
    assert [zone.film for zone in zones] == [zone.film for zone in demo[0].zones]


def test_a_list_handed_out_is_a_copy(values):
    values["Stack"].sheets.clear()
    values["Plan"].steps.clear()
    assert values["Stack"].sheets and values["Plan"].steps


def test_text(values):
    for name, value in values.items():
        text = repr(value)
        assert text.startswith(f"{name}(") and text.endswith(")") and " object at " not in text


def test_equality(values):
    for name, value in values.items():
        if name == "Contacts":
            continue
        assert value == value and not value != value
        assert value != "another type" and value != 1
        assert copy.copy(value) == value and copy.deepcopy(value) == value
    assert levigate.grade("P800") == levigate.grade(" p 800 ") != levigate.grade("P1000")
    assert levigate.Rules() == levigate.Rules(max_ratio=1.75) != levigate.Rules(max_ratio=1.8)


def test_pickling(values):
    refused = set()
    for name, value in values.items():
        try:
            text = pickle.dumps(value)
        except TypeError:
            refused.add(name)
            continue
        assert name == "Contacts" or pickle.loads(text) == value, name
    assert refused == OF_ONE_CALL


def test_json_reads_back_equal(values):
    job, stack = values["Job"], values["Stack"]
    assert levigate.Job.from_json(job.to_json()) == job == levigate.Job.from_dict(job.to_dict())
    assert levigate.Stack.from_json(stack.to_json()) == stack
    assert levigate.Stack.from_dict(stack.to_dict()) == stack
    assert levigate.Stack(stack.sheets, bare_number=stack.bare_number) == stack
    assert levigate.Stack(s.to_dict() for s in stack.sheets) == stack


def test_rules():
    rules = levigate.Rules(max_ratio=2, reserve_um=5)
    assert (rules.max_ratio, rules.reserve_um, rules.min_ratio) == (2, 5, 1.15)
    with pytest.raises(
        levigate.BadInput, match="'max_ration' is not known; the nearest is 'max_ratio'"
    ):
        levigate.Rules(max_ration=2)
    with pytest.raises(levigate.BadInput, match="min_ratio"):
        levigate.Rules(min_ratio=2, max_ratio=1.5)
    with pytest.raises(levigate.OutOfRange, match="overcut"):
        levigate.Rules(overcut=float("nan"))
