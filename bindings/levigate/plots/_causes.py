"""Which step left a mark, how much must come off until it is gone, and by when it is."""

from __future__ import annotations

from typing import TYPE_CHECKING

from .._core import WayBack
from ._drawing import CUT, FILM, INK, LIMIT, QUIET, Figure, Path, ask, saved, short, styled

if TYPE_CHECKING:
    from matplotlib.axes import Axes


def causes(way: WayBack, *, save: Path | None = None) -> Figure:
    """Which step made a mark, how much must come off until it is gone, and by when it is, look by look of the way back."""
    mark = way.diagnosis.mark
    with styled():
        figure = Figure(figsize=(12.0 if way.found else 9.0, 4.0), layout="constrained")
        ask(figure, "Which step left the mark, and by when is it gone?", f"{mark.kind} in {short(mark.zone, 40)}")
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
            depths.axvline(way.film_um, color=LIMIT, linestyle="--")
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
        return saved(figure, save)


def _legs(axes: Axes, way: WayBack) -> None:
    """Of all such marks, the share gone by when: a dot each look, a line where a leg begins with another sheet."""
    began, at, gone = 0.0, [0.0], [0.0]
    for number, leg in enumerate(way.legs, start=1):
        axes.axvline(began, color=QUIET, linewidth=0.8)
        axes.annotate(
            f"{number}: {short(leg.sheet)}",
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
