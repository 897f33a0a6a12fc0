"""The film of each zone after each step, and the line to stop at."""

from __future__ import annotations

from math import ceil, isfinite
from typing import TYPE_CHECKING

from .._core import Plan, PlannedZone, Simulation
from ._drawing import FILM, INK, LIMIT, QUIET, Figure, Path, ask_of_plan, explain, require_same, saved, short, styled

if TYPE_CHECKING:
    from matplotlib.axes import Axes

ACROSS = 3  # panels side by side
BAR = 0.62  # height of one


def film(plan: Plan, simulation: Simulation | None = None, *, save: Path | None = None) -> Figure:
    """How much film is left after each step, and where to stop; with a simulation how it may end."""
    require_same(plan, simulation)
    zones = [zone for zone in plan.zones.values() if zone.film_um is not None]
    across = max(1, min(ACROSS, len(zones)))
    down = max(1, ceil(len(zones) / across))
    rows = len(plan.steps) + (3 if simulation is not None else 1)
    with styled():
        figure = Figure(figsize=(2.0 + 3.2 * across, 1.5 + down * (0.9 + 0.27 * rows)), layout="constrained")
        ask_of_plan(figure, "How much film is left after each step, and where must I stop?", plan)
        panels = figure.subplots(down, across, squeeze=False, sharex=True)
        for number, axes in enumerate(panels.flat):
            if number < len(zones):
                _draw_zone(axes, plan, zones[number], simulation, named=number % across == 0)
            else:
                axes.set_axis_off()
        if not zones:
            panels[0, 0].text(0.5, 0.5, "No zone has a film.", ha="center", va="center", transform=panels[0, 0].transAxes)
            return saved(figure, save)
        explain(
            figure,
            "Film left above the deepest scratch, on the mean of the zone, µm. Stop at the dashed line. "
            "Hatched: film that must stay. "
            f"Dotted: reserve of {plan.reserve_um:g} µm that must stay at every spot."
            + ("" if simulation is None else " Lines with ends: 4 of 5 simulated runs."),
        )
        return saved(figure, save)


def stop_um(zone: PlannedZone) -> float | None:
    """Film left on the mean at which a zone has used its budget; None without a budget."""
    if zone.film_um is None or zone.budget_um is None or not isfinite(zone.budget_um):
        return None
    return zone.film_um - zone.budget_um


def _draw_zone(axes: Axes, plan: Plan, zone: PlannedZone, simulation: Simulation | None, *, named: bool) -> None:
    assert zone.film_um is not None
    states = [("at the start", zone.film_um, "")]
    for step in plan.steps:
        done = step.zones[zone.zone]
        left_um = zone.film_um if done.film_left_um is None else done.film_left_um
        states.append((short(step.sheet, 16), left_um, "" if done.worked else "  not worked"))
    stop = stop_um(zone)
    drawn = None if simulation is None else simulation.zones[zone.zone]
    widest_um = max(zone.film_um, 1.0, drawn.film_left_um.p90 if drawn is not None else 0.0)
    for place, (_, left_um, note) in enumerate(states):
        keep_um = min(left_um, stop if stop is not None else 0.0)
        axes.barh(place, keep_um, BAR, facecolor="white", edgecolor=QUIET, hatch="////", linewidth=0.0)
        axes.barh(place, left_um - keep_um, BAR, left=keep_um, facecolor=FILM, edgecolor=INK, linewidth=0.6)
        over = "  too deep" if stop is not None and left_um < stop else ""
        _beside(axes, widest_um, place, f"{left_um:.1f}{note}{over}")
    names = [name for name, *_ in states]
    if drawn is not None:
        for name, band in (("in the end, mean", drawn.film_left_um), ("thinnest spot", drawn.thinnest_um)):
            place = len(names)
            axes.plot([band.p10, band.p90], [place] * 2, color=INK, linewidth=1.6, marker="|", markersize=9)
            _beside(axes, widest_um, place, f"{band.p10:.0f} to {band.p90:.0f}")
            names.append(name)
    if stop is not None:
        axes.axvline(stop, color=LIMIT, linestyle="--", linewidth=1.6)
        axes.text(stop, -0.55, f"stop at {stop:.1f}", color=LIMIT, fontsize=8, ha="center", va="bottom")
    axes.axvline(plan.reserve_um, color=INK, linestyle=":", linewidth=1.0)
    axes.set_title(short(zone.zone, 28), fontsize=10, pad=16)
    axes.set_ylim(len(names) - 0.4, -0.5)
    far_um = max(1.0, axes.get_xlim()[1], 1.35 * widest_um)  # room for the numbers; the axis is shared
    axes.set_xlim(0.0, far_um)
    axes.set_yticks(range(len(names)), names if named else [])
    axes.tick_params(axis="y", length=0)
    axes.tick_params(axis="x", labelbottom=True)


def _beside(axes: Axes, x_um: float, place: int, text: str) -> None:
    axes.annotate(text, (x_um, place), xytext=(8, 0), textcoords="offset points", va="center", fontsize=8)
