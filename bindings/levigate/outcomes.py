"""Pictures of how a job went: which step made a mark, minutes planned and needed, film that is left.

Needs matplotlib. As in levigate.plots, the figures belong to no window.
"""

from __future__ import annotations

from collections.abc import Mapping

import matplotlib
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.ticker import LogLocator, NullFormatter

from ._core import Plan, Simulation, WayBack
from .plots import CUT, FILM, INK, LIMIT, QUIET, STYLE, Path, _saved, _short

__all__ = ["causes", "film_left", "minutes"]


def causes(way: WayBack, *, save: Path | None = None) -> Figure:
    """Which step made a mark, how much must come off until it is gone, and by when it is, look by look of the way back."""
    mark = way.diagnosis.mark
    with matplotlib.rc_context(STYLE):
        figure = Figure(figsize=(12.0 if way.found else 9.0, 3.8), layout="constrained")
        title = f"{mark.kind} in {_short(mark.zone, 40)} – which step made it, and the way back"
        figure.suptitle(title, fontsize=12)
        steps, depths, *looks = figure.subplots(1, 3 if way.found else 2)
        found = [c for c in way.diagnosis.causes if c.probability >= 0.005]
        found.sort(key=lambda c: (c.step, c.stray), reverse=True)
        names = [f"stray under {c.sheet}" if c.stray else c.sheet for c in found]
        bars = steps.barh(
            names, [c.probability for c in found], color=[FILM if c.stray else CUT for c in found]
        )
        steps.bar_label(bars, [f" {c.probability:.2f}" for c in found], color=INK)
        steps.set(xlim=(0, 1.15), xlabel="chance, given what was seen")
        sofar, at, chance = 0.0, [0.0], [0.0]
        for need in way.diagnosis.needs:
            sofar += need.probability
            at.append(need.need_um)
            chance.append(sofar)
        depths.step(at, chance, where="post", color=CUT)
        most = max(at[-1], 1e-3)
        if way.film_um is not None and way.film_um < 1.5 * most:
            depths.axvline(way.film_um, color=LIMIT)
            depths.annotate(
                "film", (way.film_um, 1.0), color=LIMIT, ha="right", va="top", rotation=90
            )
        depths.set(
            xlim=(0, 1.1 * most),
            ylim=(0, 1.05),
            xlabel="taken off in all, µm",
            ylabel="chance that it is gone",
        )
        for axes in looks:
            _legs(axes, way)
        return _saved(figure, save)


def _legs(axes: Axes, way: WayBack) -> None:
    """Of all such marks, the share gone by when: a dot each look, a line where a leg begins with another sheet."""
    began, at, gone = 0.0, [0.0], [0.0]
    for number, leg in enumerate(way.legs, start=1):
        axes.axvline(began, color=QUIET, linewidth=0.8)
        axes.annotate(
            f"{number}: {_short(leg.sheet)}",
            (began, 0.02),
            xytext=(2, 0),
            textcoords="offset points",
            rotation=90,
            va="bottom",
            fontsize=8,
        )
        at += [began + look.minutes for look in leg.looks]
        gone += [look.gone_chance for look in leg.looks]
        began = at[-1]
    axes.step([*at, 1.1 * began], [*gone, gone[-1]], where="post", color=CUT)
    axes.plot(at[1:], gone[1:], "o", color=CUT)
    where = "whole zone" if way.legs[0].looks[0].patch_mm is None else "patch"
    axes.set(
        xlim=(0, 1.1 * began),
        ylim=(0, 1.05),
        xlabel=f"minutes on the {where}\nwith changing and looking",
        ylabel="share of such marks gone",
    )


def minutes(
    plan: Plan,
    simulation: Simulation,
    needed: Mapping[str, float] | None = None,
    *,
    save: Path | None = None,
) -> Figure:
    """Minutes of each step: as planned, in 4 of 5 runs, and as it went. needed: minutes by id of the sheet."""
    with matplotlib.rc_context(STYLE):
        figure = Figure(figsize=(7.0, 1.6 + 0.5 * len(plan.steps)), layout="constrained")
        figure.suptitle(f"{_short(plan.job.name, 50)} – minutes by step", fontsize=12)
        axes = figure.subplots()
        places = range(len(plan.steps))
        for place, (step, drawn) in enumerate(zip(plan.steps, simulation.steps)):
            band = drawn.minutes
            label = "4 of 5 runs" if place == 0 else None
            axes.plot(
                [band.p10, band.p90],
                [place, place],
                color=QUIET,
                linewidth=6,
                alpha=0.5,
                label=label,
                solid_capstyle="butt",
            )
            axes.plot(step.minutes, place, "o", color=CUT, label="planned" if place == 0 else None)
            if needed is not None and step.sheet in needed:
                axes.plot(
                    needed[step.sheet],
                    place,
                    "D",
                    color=LIMIT,
                    label="needed" if place == 0 else None,
                )
        axes.set_yticks(places, [step.sheet for step in plan.steps])
        axes.invert_yaxis()
        axes.set(xscale="log", xlabel="minutes with washing and changing")
        axes.xaxis.set_major_locator(LogLocator(subs=(1.0, 2.0, 5.0)))
        axes.xaxis.set_major_formatter(lambda value, _: f"{value:g}")
        axes.xaxis.set_minor_formatter(NullFormatter())
        axes.legend(frameon=False, fontsize=8)
        return _saved(figure, save)


def film_left(plan: Plan, simulation: Simulation, *, save: Path | None = None) -> Figure:
    """Film of each zone: at the start, mean that is left, and thinnest spot."""
    zones = [zone for zone in plan.job.zones if zone.film is not None]
    with matplotlib.rc_context(STYLE):
        figure = Figure(figsize=(7.0, 1.8 + 0.6 * max(len(zones), 1)), layout="constrained")
        figure.suptitle(f"{_short(plan.job.name, 50)} – film that is left", fontsize=12)
        axes = figure.subplots()
        for place, zone in enumerate(zones):
            drawn = simulation.zones[zone.name]
            first = place == 0
            assert zone.film is not None
            axes.barh(
                place,
                zone.film.mean_um,
                color=FILM,
                height=0.6,
                label="at the start" if first else None,
            )
            for band, color, name, shift in (
                (drawn.film_left_um, CUT, "left, on the mean", -0.12),
                (drawn.thinnest_um, LIMIT, "at the thinnest spot", 0.12),
            ):
                axes.plot(
                    [band.p10, band.p90],
                    [place + shift] * 2,
                    color=color,
                    linewidth=4,
                    label=name if first else None,
                    solid_capstyle="butt",
                )
                axes.plot(band.p50, place + shift, "|", color=INK, markersize=9)
        reserve = plan.job.rules.reserve_um
        axes.axvline(reserve, color=QUIET, linestyle=":", label=f"reserve, {reserve:g} µm")
        axes.set_yticks(range(len(zones)), [_short(zone.name) for zone in zones])
        axes.invert_yaxis()
        axes.set(xlabel="film, µm; bands hold 4 of 5 runs", xlim=(0, None))
        axes.legend(frameon=False, fontsize=8)
        return _saved(figure, save)
