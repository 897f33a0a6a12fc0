"""Minutes of each step as bars of time, with the band of a simulation and what it took."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from .._core import BadInput, Plan, Simulation
from ._drawing import BELOW, FILM, INK, LIMIT, Figure, Path, ask_of_plan, explain, require_same, saved, short, styled, without_steps

QUESTION = "How long does each step take?"
Band = tuple[float, float]
LEAST = 0.05  # minutes of work before the first step that are worth a bar


def minutes(
    plan: Plan,
    simulation: Simulation | None = None,
    needed: Mapping[str, float] | None = None,
    *,
    save: Path | None = None,
) -> Figure:
    """How long each step takes: half of the runs take less, and 4 of 5 lie in the band; usual minutes without a simulation.

    needed: minutes that it took, by id of the sheet.
    """
    require_same(plan, simulation)
    unknown = [sheet for sheet in needed or {} if sheet not in [step.sheet for step in plan.steps]]
    if unknown:
        raise BadInput(f"needed has minutes of '{unknown[0]}', which is no step of the plan")
    if not plan.steps:
        return without_steps(QUESTION, plan, save)
    rows = _rows(plan, simulation)
    with styled():
        figure = Figure(figsize=(7.5, 2.1 + 0.36 * len(rows)), layout="constrained")
        ask_of_plan(figure, QUESTION, plan)
        axes = figure.subplots()
        for place, (sheet, about, band) in enumerate(rows):
            whole = place == len(rows) - 1
            axes.barh(place, about, 0.62, facecolor=BELOW if whole else FILM, edgecolor=INK, linewidth=0.8)
            text, end = f"{about:.0f} min", about
            if band is not None:
                axes.plot(band, [place] * 2, color=INK, linewidth=1.6, marker="|", markersize=10)
                text, end = f"{text} ({band[0]:.0f} to {band[1]:.0f})", max(about, band[1])
            if needed is not None and sheet in needed:
                axes.plot(needed[sheet], place, "D", color=LIMIT, markersize=6)
                text, end = f"{text}, took {needed[sheet]:.0f}", max(end, needed[sheet])
            axes.annotate(text, (end, place), xytext=(8, 0), textcoords="offset points", va="center", fontsize=8)
        axes.set_yticks(range(len(rows)), [short(name, 28) for name, *_ in rows])
        axes.tick_params(axis="y", length=0)
        axes.set_ylim(len(rows) - 0.4, -0.6)
        axes.set_xlabel("minutes, with washing and changing")
        far = max(max(about, *(band or (0.0,)), *(needed or {}).values()) for _, about, band in rows)
        axes.set_xlim(0.0, 1.35 * far)
        hours = axes.secondary_xaxis("top", functions=(_hours, _minutes_of))
        hours.set_xlabel("hours")
        hours.spines["top"].set_visible(True)
        key = ["Bars: usual numbers."]
        if simulation:
            key = ["Half of the simulated runs take less than a bar. Lines with ends: 4 of 5 runs."]
            key.append("Bars and lines of the steps do not add up to those of all.")
        explain(figure, " ".join(key + (["Diamonds: what it took."] if needed else [])))
        return saved(figure, save)


def _rows(plan: Plan, simulation: Simulation | None) -> list[tuple[str, float, Band | None]]:
    """Name, minutes and band of what comes before the first step, of each step, and of all of it."""
    before = plan.total.minutes - sum(step.minutes for step in plan.steps)
    rows: list[tuple[str, float, Band | None]] = []
    if before > LEAST:
        rows.append(("before the first step", before, None))
    for number, step in enumerate(plan.steps):
        if simulation is None:
            rows.append((step.sheet, step.minutes, None))
        else:
            drawn = simulation.steps[number].minutes
            rows.append((step.sheet, drawn.p50, (drawn.p10, drawn.p90)))
    if simulation is None:
        rows.append(("in all", plan.total.minutes, None))
    else:
        drawn = simulation.minutes
        rows.append(("in all", drawn.p50, (drawn.p10, drawn.p90)))
    return rows


def _hours(minutes: Any) -> Any:
    return minutes / 60.0


def _minutes_of(hours: Any) -> Any:
    return hours * 60.0
