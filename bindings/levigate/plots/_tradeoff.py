"""All ways that no other beats: what more time or more film buys."""

from __future__ import annotations

from math import isfinite
from typing import TYPE_CHECKING

from matplotlib.patheffects import withStroke

from .._core import Plan
from ._drawing import CUT, INK, Figure, Path, ask_of_plan, explain, saved, short, styled, without_steps

if TYPE_CHECKING:
    from collections.abc import Callable

    from matplotlib.axes import Axes

QUESTION = "What does more time or more film buy?"
MARKS = "os^"  # by steps on the edge of max_ratio; the last for more


def tradeoff(plan: Plan, *, save: Path | None = None) -> Figure:
    """Film and paper of each way over its time with going back; the plan, and the ways that are best in one thing."""
    if not plan.steps:
        return without_steps(QUESTION, plan, save)
    ways = plan.tradeoff or [plan]
    named = _named(plan, ways)
    against: list[tuple[str, Callable[[Plan], float]]] = []
    if any(way.total.film is not None for way in ways):
        against.append(("film used in the worst zone,\n% of its budget", lambda way: 100 * (way.total.film or 0.0)))
    if any(way.total.cost > 0 for way in ways):
        against.append(("cost of the paper", lambda way: way.total.cost))
    if not against:  # a solid, and paper without a price
        against.append(("steps", lambda way: way.total.steps))
    with styled():
        rows = len(against)
        figure = Figure(figsize=(7.5, 2.1 + 2.4 * rows + 0.2 * len(named)), layout="constrained")
        ask_of_plan(figure, QUESTION, plan)
        panels = figure.subplots(rows, 1, squeeze=False, sharex=True)[:, 0]
        for axes, (label, value) in zip(panels, against):
            _draw_ways(axes, ways, named, value)
            axes.set_ylabel(label)
        panels[-1].set_xlabel("minutes with going back for marks, at usual numbers")
        notes = ["A single way: there is no other to weigh it against."] if len(ways) == 1 else []
        if not all(isfinite(value(way)) for _, value in against for way in ways):
            notes.append("A way without a film budget is not drawn.")
        if any(way.total.cost > 0 for way in ways) and _without_price(plan, ways):
            notes.append(f"Counted as free, for want of a price: {', '.join(_without_price(plan, ways))}.")
        edges = "Steps on the edge of max_ratio: round none, square one, triangle more. Dark: this plan."
        explain(figure, "\n".join([*notes, edges, *(f"{letter}: {text}" for letter, text in named.values())]))
        return saved(figure, save)


def _time(way: Plan) -> float:
    return way.total.minutes + way.total.back_minutes


def _without_price(plan: Plan, ways: list[Plan]) -> list[str]:
    taken = {step.sheet for way in ways for step in way.steps}
    return [sheet.id for sheet in plan.stack.sheets if sheet.price is None and sheet.id in taken]


def _edges(way: Plan) -> int:
    return sum(step.fragile for step in way.steps)


def _is_taken(plan: Plan, way: Plan) -> bool:
    return [(s.sheet, s.overcut) for s in way.steps] == [(s.sheet, s.overcut) for s in plan.steps]


def _named(plan: Plan, ways: list[Plan]) -> dict[int, tuple[str, str]]:
    """By place among the ways: a letter and what it stands for."""
    said: dict[int, list[str]] = {}
    for place, way in enumerate(ways):
        if _is_taken(plan, way):
            said.setdefault(place, []).append("this plan")
    kinds: list[tuple[str, Callable[[Plan], float]]] = [("least time", _time)]
    if any(way.total.film is not None for way in ways):
        kinds.append(("least film", lambda way: way.total.film or 0.0))
    if any(way.total.cost > 0 for way in ways):
        kinds.append(("least cost", lambda way: way.total.cost))
    for name, value in kinds if len(ways) > 1 else []:
        best = min(range(len(ways)), key=lambda place: value(ways[place]))
        said.setdefault(best, []).append(name)
    return {
        place: ("ABCDEFG"[number], f"{', '.join(names)}: {short(', '.join(s.sheet for s in ways[place].steps), 90)}")
        for number, (place, names) in enumerate(said.items())
    }


def _draw_ways(axes: Axes, ways: list[Plan], named: dict[int, tuple[str, str]], value: Callable[[Plan], float]) -> None:
    for place, way in enumerate(ways):
        if not isfinite(value(way)):
            continue
        mark = MARKS[min(_edges(way), len(MARKS) - 1)]
        letter, text = named.get(place, ("", ""))
        face = CUT if text.startswith("this plan") else "none"
        axes.plot(_time(way), value(way), mark, color=INK, markerfacecolor=face, markersize=7)
        if letter:
            axes.annotate(
                letter,
                (_time(way), value(way)),
                xytext=(-13, -13) if face == CUT else (7, 6),
                textcoords="offset points",
                fontweight="bold",
                path_effects=[withStroke(linewidth=3.0, foreground="white")],
                zorder=4,
            )
    axes.margins(x=0.08, y=0.15)
    axes.grid(color="#e6e9ed", linewidth=0.6)
    axes.set_axisbelow(True)
