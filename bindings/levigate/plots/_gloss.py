"""What a glossmeter reads after each step, at its three angles."""

from __future__ import annotations

from typing import TYPE_CHECKING

from .._core import Plan, Simulation
from ._drawing import CUT, INK, LIMIT, QUIET, Figure, Path, apart, ask_of_plan, explain, require_same, saved, short, styled, without_steps

if TYPE_CHECKING:
    from matplotlib.axes import Axes

QUESTION = "What does a glossmeter read after each step?"
# At each angle: colour, line, mark, and how far beside the place of the step.
LOOKS = {20: (INK, ":", "v", -0.13), 60: (CUT, "-", "o", 0.0), 85: (QUIET, "--", "s", 0.13)}


def gloss(plan: Plan, simulation: Simulation | None = None, *, save: Path | None = None) -> Figure:
    """What a glossmeter reads at 20, 60 and 85 degrees, in the zone that reads least at 60, with its band."""
    require_same(plan, simulation)
    steps = plan.steps
    if not steps:
        return without_steps(QUESTION, plan, save)
    with styled():
        figure = Figure(figsize=(max(5.5, 2.5 + 0.9 * len(steps)), 4.6), layout="constrained")
        ask_of_plan(figure, QUESTION, plan)
        axes = figure.subplots()
        axes.set(ylabel="reading, GU", ylim=(-3, 103), xlim=(-0.5, len(steps) - 0.1))
        axes.set_xticks(range(len(steps)), [short(step.sheet, 16) for step in steps], rotation=30 if len(steps) > 6 else 0)
        axes.grid(axis="y", color="#e6e9ed", linewidth=0.6)
        axes.set_axisbelow(True)
        readings = [_readings(plan, simulation, number) for number in range(len(steps))]
        ends = sorted((readings[-1][angle][0], angle) for angle in LOOKS)
        heights = apart([about for about, _ in ends], gap=5.0)
        for (_, angle), height in zip(ends, heights):
            color, line, mark, beside = LOOKS[angle]
            places = [number + beside for number in range(len(steps))]
            abouts = [reading[angle][0] for reading in readings]
            for place, reading in zip(places, readings):
                axes.plot([place] * 2, reading[angle][1:], color=color, linestyle=line, linewidth=1.2, marker="_", markersize=6)
            axes.plot(places, abouts, color=color, linestyle=line, marker=mark, linewidth=1.2, markersize=6)
            axes.text(len(steps) - 0.72, height, f"{angle}°", color=color, va="center", fontweight="bold")
        _draw_target(plan, axes)
        bars = "by lay and flank of the grooves" if simulation is None else "4 of 5 simulated runs"
        explain(figure, f"The zone that reads least at 60 degrees. Lines with ends: {bars}.")
        return saved(figure, save)


def _readings(plan: Plan, simulation: Simulation | None, number: int) -> dict[int, tuple[float, float, float]]:
    """By angle: what is read, and the ends of the band. The zone is the one that the card tells of."""
    zones = plan.steps[number].zones
    dullest = min(zones, key=lambda name: zones[name].reading_60.expected_gu)
    if simulation is None:
        usual = zones[dullest]
        each = {20: usual.reading_20, 60: usual.reading_60, 85: usual.reading_85}
        return {angle: (one.expected_gu, one.low_gu, one.high_gu) for angle, one in each.items()}
    drawn = simulation.steps[number].zones[dullest]
    bands = {20: drawn.reading_20_gu, 60: drawn.reading_60_gu, 85: drawn.reading_85_gu}
    return {angle: (band.p50, band.p10, band.p90) for angle, band in bands.items()}


def _draw_target(plan: Plan, axes: Axes) -> None:
    target = plan.job.target
    for wanted_gu, word in ((target.gloss_gu, "at least"), (target.gloss_high_gu, "at most")):
        if wanted_gu is None:
            continue
        axes.axhline(wanted_gu, color=LIMIT, linestyle="-.", linewidth=1.0)
        text = f"wanted at {target.angle_deg:g}°\n{word} {wanted_gu:g} GU"
        axes.text(1.01, wanted_gu, text, color=LIMIT, fontsize=8, va="center", transform=axes.get_yaxis_transform())
