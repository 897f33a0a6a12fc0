"""Pictures of a plan: each asks its question, draws the numbers of plan and simulation, and reads in grey."""

from pathlib import Path

import levigate
import pytest
from drawn import alike_in_grey, cut_off, labels_apart, words
from levigate import plots

ROOT = Path(__file__).resolve().parents[2]
JOBS = {
    "demo": ("data/demo/job.json", "data/demo/stack.json"),
    "day": ("data/demo/day.json", "data/demo/day_stack.json"),
    "sideboard": ("examples/sideboard/sideboard.json", "examples/sideboard/drawer.json"),
}
QUESTIONS = {
    "section": "How deep does each step go into the film?",
    "ladder": "How coarse is each sheet, whatever its label says?",
    "tradeoff": "What does more time or more film buy?",
    "film": "How much film is left after each step, and where must I stop?",
    "minutes": "How long does each step take?",
    "gloss": "What does a glossmeter read after each step?",
}


@pytest.fixture(scope="module")
def planned():
    """Plan and simulation of a job, by its name."""
    done = {}

    def plan_of(name):
        if name not in done:
            job, stack = (kind.load(ROOT / path) for kind, path in zip((levigate.Job, levigate.Stack), JOBS[name]))
            plan = levigate.plan(job, stack)
            done[name] = plan, levigate.simulate(job, plan, draws=50)
        return done[name]

    return plan_of


@pytest.mark.parametrize("of", JOBS)
def test_every_picture_asks_fits_and_reads_in_grey(planned, of):
    plan, simulation = planned(of)
    assert list(plots.PICTURES) == list(QUESTIONS)
    for name, draw in plots.PICTURES.items():
        for drawn in (simulation, None) if of == "demo" else (simulation,):
            figure = draw(plan, drawn)
            assert figure.get_suptitle() == f"{QUESTIONS[name]}\n{plan.job.name}"
            assert cut_off(figure) == [], name
            assert [pair for axes in figure.axes for pair in alike_in_grey(axes)] == [], name
            if name != "tradeoff":  # its letters stand beside marks that crowd
                assert labels_apart(figure), name


def test_alike_in_grey_is_seen(planned):
    figure = plots.gloss(*planned("demo"))
    (axes,) = figure.axes
    line = next(line for line in axes.lines if line.get_linestyle() == "-" and line.get_marker() == "o")
    axes.plot([0, 1], [50, 60], color="#8b3f3f", linestyle="-", linewidth=line.get_linewidth(), marker="o")
    assert len(alike_in_grey(axes)) == 1
    line.set_linestyle("--")
    assert alike_in_grey(axes) == []


def test_film_shows_what_is_left_and_where_to_stop(planned):
    plan, simulation = planned("demo")
    figure = plots.film(plan, simulation)
    for axes, zone in zip(figure.axes, plan.zones.values()):
        widths = [bar.get_x() + bar.get_width() for bar in axes.patches][1::2]  # the part that may go ends there
        left = [zone.film_um, *(step.zones[zone.zone].film_left_um for step in plan.steps)]
        assert widths == pytest.approx(left)
        stop_um = zone.film_um - zone.budget_um
        hatched = [bar.get_width() for bar in axes.patches if bar.get_hatch()]
        assert hatched == pytest.approx([stop_um] * len(left))
        (dashed,) = [line for line in axes.lines if line.get_linestyle() == "--"]
        assert dashed.get_xdata()[0] == pytest.approx(stop_um)
        texts = [text.get_text() for text in axes.texts]
        assert f"stop at {stop_um:.1f}" in texts and f"{left[-1]:.1f}" in texts
        drawn = simulation.zones[zone.zone]
        bands = [list(line.get_xdata()) for line in axes.lines]
        for band in (drawn.film_left_um, drawn.thinnest_um):
            assert [band.p10, band.p90] in bands
    assert "45.0  not worked" in words(figure)  # the first step keeps off the edges


def test_film_says_where_a_sequence_goes_too_deep(job, stack):
    plan = levigate.evaluate(job(zone={"film": {"mean_um": 40, "sd_um": 2}}), stack("P400", "P1500"), ["P400", "P1500"])
    (zone,) = plan.zones.values()
    assert plan.steps[-1].zones["top"].film_left_um < zone.film_um - zone.budget_um
    assert "too deep" in words(plots.film(plan))


def test_minutes_are_those_of_plan_and_simulation(planned):
    plan, simulation = planned("day")
    axes = plots.minutes(plan, simulation, {plan.steps[1].sheet: 77.0}).axes[0]
    before, *steps, whole = [bar.get_width() for bar in axes.patches]
    assert before == pytest.approx(plan.total.minutes - sum(step.minutes for step in plan.steps)) and before > 1
    assert steps == [step.minutes.p50 for step in simulation.steps] and whole == simulation.minutes.p50
    drawn = [list(line.get_xdata()) for line in axes.lines]
    for band in [*(step.minutes for step in simulation.steps), simulation.minutes]:
        assert [band.p10, band.p90] in drawn
    assert [77.0] in drawn and "took 77" in " ".join(text.get_text() for text in axes.texts)
    axes = plots.minutes(plan).axes[0]
    assert [bar.get_width() for bar in axes.patches][1:] == pytest.approx([*(s.minutes for s in plan.steps), plan.total.minutes])
    assert len(axes.lines) == 0


def test_gloss_is_that_of_the_dullest_zone(planned):
    plan, simulation = planned("demo")
    for drawn in (simulation, None):
        (axes,) = plots.gloss(plan, drawn).axes
        series = [line for line in axes.lines if len(line.get_xdata()) == len(plan.steps)]
        wanted = []
        for angle in (20, 60, 85):
            of_step = []
            for step, told in zip(plan.steps, simulation.steps):
                name = min(step.zones, key=lambda name: step.zones[name].reading_60.expected_gu)
                band = getattr(told.zones[name], f"reading_{angle}_gu")
                usual = getattr(step.zones[name], f"reading_{angle}")
                of_step.append((band.p50, band.p10, band.p90) if drawn else (usual.expected_gu, usual.low_gu, usual.high_gu))
            wanted.append([about for about, *_ in of_step])
            ends = [list(line.get_ydata()) for line in axes.lines]
            assert all([low, high] in ends for _, low, high in of_step)
        assert sorted(list(line.get_ydata()) for line in series) == sorted(wanted)
        assert len({(line.get_linestyle(), line.get_marker()) for line in series}) == 3


def test_gloss_shows_a_sheen_that_is_wanted(planned):
    plan, _ = planned("sideboard")
    target = plan.job.target
    (axes,) = plots.gloss(plan).axes
    flat = [line.get_ydata()[0] for line in axes.lines if line.get_linestyle() == "-."]
    assert flat == [target.gloss_gu, target.gloss_high_gu]
    assert f"wanted at 60°\nat least {target.gloss_gu:g} GU" in [text.get_text() for text in axes.texts]


def test_tradeoff_draws_every_way_and_names_the_best(planned):
    plan, _ = planned("demo")
    figure = plots.tradeoff(plan)
    of_film, of_cost = figure.axes
    minutes = [way.total.minutes + way.total.back_minutes for way in plan.tradeoff]
    for axes, values in ((of_film, [100 * w.total.film for w in plan.tradeoff]), (of_cost, [w.total.cost for w in plan.tradeoff])):
        assert [line.get_xdata()[0] for line in axes.lines] == minutes
        assert [line.get_ydata()[0] for line in axes.lines] == pytest.approx(values)
    marks = [line.get_marker() for line in of_film.lines]
    assert marks == ["os^"[min(2, sum(step.fragile for step in way.steps))] for way in plan.tradeoff]
    dark = [i for i, line in enumerate(of_film.lines) if line.get_markerfacecolor() != "none"]
    assert [[s.sheet for s in plan.tradeoff[i].steps] for i in dark] == [[s.sheet for s in plan.steps]]
    key = figure.get_supxlabel().splitlines()
    quickest = plan.tradeoff[minutes.index(min(minutes))]
    assert f"B: least time: {', '.join(s.sheet for s in quickest.steps)}" in key
    least = min(plan.tradeoff, key=lambda way: way.total.film)
    assert f"C: least film: {', '.join(s.sheet for s in least.steps)}" in key


def test_tradeoff_says_what_it_does_not_know(job, stack, sheet):
    unpriced = levigate.Stack([sheet("P600", price=1), sheet("P1500")])
    text = words(plots.tradeoff(levigate.plan(job(rules={"max_ratio": 3}), unpriced)))
    assert "Counted as free, for want of a price: P1500." in text
    text = words(plots.tradeoff(levigate.evaluate(job(), stack("P1500"), ["P1500"])))
    assert "A single way" in text and "cost" not in text


def test_without_a_plan_each_picture_says_why(demo):
    short = levigate.Stack([sheet for sheet in demo[1].to_dict()["sheets"] if sheet["id"] in ("a-p400", "b-pad")])
    plan = levigate.plan(demo[0], short)
    for name, draw in plots.PICTURES.items():
        figure = draw(plan, None)
        told = " ".join(figure.get_suptitle().split())
        assert told.startswith(f"{QUESTIONS[name]} {plan.job.name} {plan.why.message[:100]}"), name
        assert cut_off(figure) == [], name
    assert "stop at 61.8" in words(plots.film(plan))  # where to stop is known without a plan


def test_what_a_picture_cannot_show_is_refused(planned):
    plan, simulation = planned("demo")
    _, other = planned("day")
    for name in ("film", "minutes", "gloss"):
        with pytest.raises(levigate.BadInput, match="another plan"):
            plan.plot(name, other)
    for name in ("section", "ladder", "tradeoff", None):
        with pytest.raises(levigate.BadInput, match="film, gloss, minutes"):
            plan.plot(name, simulation)
    with pytest.raises(levigate.BadInput, match="'films' is none of film, gloss"):
        plan.plot("films")
    with pytest.raises(levigate.BadInput, match="'a-p9', which is no step"):
        plots.minutes(plan, needed={"a-p9": 3})


def test_the_stub_names_the_pictures():
    stub = (ROOT / "bindings" / "levigate" / "_core.pyi").read_text()
    assert "picture: Literal[" + ", ".join(f'"{name}"' for name in sorted(plots.PICTURES)) + "] | None" in stub
