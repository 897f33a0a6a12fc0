"""What the pictures share: their style, their titles, and labels that keep apart.

Every picture reads in black and white: what differs in colour differs in line, mark, hatch or grey too.
"""

from __future__ import annotations

import os
import textwrap
from collections.abc import Sequence
from typing import Any, Union

from .._core import BadInput, Plan, Simulation

try:
    import matplotlib
    from matplotlib.figure import Figure as Figure
    from matplotlib.figure import SubFigure
except ImportError as missing:
    raise ImportError("pictures need matplotlib: pip install 'levigate[plot]'") from missing

Path = Union[str, "os.PathLike[str]"]
Part = Union[Figure, SubFigure]  # of a page, or all of it

INK = "#39424e"
QUIET = "#8b95a1"
FILM = "#f3dfae"
BELOW = "#c9b29a"
CUT = "#2f6690"
LIMIT = "#b3432b"
STYLE: Any = {
    "font.size": 9.0,
    "text.color": INK,
    "text.parse_math": False,  # a dollar sign in a name is a dollar sign
    "axes.edgecolor": QUIET,
    "axes.labelcolor": INK,
    "axes.spines.top": False,
    "axes.spines.right": False,
    "hatch.linewidth": 0.6,
    "xtick.color": INK,
    "ytick.color": INK,
}


def styled() -> Any:
    return matplotlib.rc_context(STYLE)


def saved(figure: Figure, path: Path | None) -> Figure:
    if path is not None:
        figure.savefig(path, dpi=150)
    return figure


def short(text: str, most: int = 22) -> str:
    return text if len(text) <= most else text[: most - 1] + "…"


def size_text(size_um: float, _: Any = None) -> str:
    return f"{size_um:.3g}"


def ask(figure: Part, question: str, *of: str) -> None:
    """Titles a picture with the question that it answers, and what it is of."""
    wide = int(11 * figure.bbox.width / figure.figure.dpi)
    lines = [line for text in (question, *of) for line in textwrap.wrap(text, wide)]
    figure.suptitle("\n".join(lines), fontsize=11)


def ask_of_plan(figure: Part, question: str, plan: Plan) -> None:
    """The same of a plan, or why there is none."""
    why = [] if plan.why is None else [textwrap.shorten(plan.why.message, 160, placeholder=" …")]
    ask(figure, question, short(plan.job.name, 60), *why)


def without_steps(question: str, plan: Plan, save: Path | None) -> Figure:
    """A picture of steps where there are none: the question, and why there is no plan."""
    with styled():
        figure = Figure(figsize=(7.5, 1.6))
        ask_of_plan(figure, question, plan)
        return saved(figure, save)


def explain(figure: Part, text: str) -> None:
    """The key of a picture, below it."""
    wide = int(14 * figure.bbox.width / figure.figure.dpi)
    lines = [line for part in text.split("\n") for line in textwrap.wrap(part, wide)]
    figure.supxlabel("\n".join(lines), fontsize=8)


def require_same(plan: Plan, simulation: Simulation | None) -> None:
    """Raises BadInput for the simulation of another plan."""
    if simulation is None:
        return
    steps = [(step.sheet, list(step.zones)) for step in plan.steps]
    if steps != [(step.sheet, list(step.zones)) for step in simulation.steps]:
        raise BadInput(f"the simulation is of another plan, in a picture of '{plan.job.name}'")


def apart(places: Sequence[float], gap: float) -> list[float]:
    """Places for labels: ascending `places`. Labels that are too near move apart by `gap`."""
    groups: list[list[float]] = []  # of labels that touch: [sum of wanted starts, count]
    for index, place in enumerate(places):
        groups.append([place - index * gap, 1])
        while len(groups) > 1 and groups[-2][0] / groups[-2][1] >= groups[-1][0] / groups[-1][1]:
            total, count = groups.pop()
            groups[-1][0] += total
            groups[-1][1] += count
    starts = [total / count for total, count in groups for _ in range(int(count))]
    return [start + index * gap for index, start in enumerate(starts)]
