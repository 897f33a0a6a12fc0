"""The ladder of sizes: what is printed on the sheets, and how coarse they are."""

from __future__ import annotations

from math import exp, log
from typing import TYPE_CHECKING

from matplotlib.ticker import FuncFormatter, NullFormatter

from .._core import Grade, Plan, Sheet
from ._drawing import CUT, INK, LIMIT, QUIET, Figure, Part, Path, apart, ask_of_plan, explain, saved, short, size_text, styled

if TYPE_CHECKING:
    from matplotlib.axes import Axes


def ladder(plan: Plan, *, save: Path | None = None) -> Figure:
    """How coarse the sheets of the stack are, a column for each system, and which ones the plan takes."""
    with styled():
        figure = Figure(figsize=(ladder_width(plan), 6.5), layout="constrained")
        draw_ladder(figure, plan)
        return saved(figure, save)


def _systems(plan: Plan) -> list[str]:
    """Systems that the sheets belong to, in the order of the stack."""
    return list(dict.fromkeys(grade.system for grade in plan.stack.grades))


def ladder_width(plan: Plan) -> float:
    return max(6.5, 1.5 + 2.6 * len(_systems(plan)))


def draw_ladder(figure: Part, plan: Plan) -> None:
    axes = figure.subplots()
    systems = _systems(plan)
    sheets = list(zip(plan.stack.sheets, plan.stack.grades))
    place = {sheet.id: (systems.index(g.system), g.median_um) for sheet, g in sheets}
    used = [step.sheet for step in plan.steps]
    ask_of_plan(figure, "How coarse is each sheet, whatever its label says?", plan)
    if not sheets:
        return

    finest_um = min(grade.median_um for _, grade in sheets)
    coarsest_um = max(grade.coarse_tail_um for _, grade in sheets)
    target_um = plan.job.target.size_um
    if target_um is not None:
        finest_um = min(finest_um, target_um)
        coarsest_um = max(coarsest_um, target_um)
    axes.set_yscale("log")
    axes.set_ylim(finest_um / 1.12, coarsest_um * 1.05)
    axes.set_xlim(-0.3, len(systems) - 0.3)

    line = [place[sheet] for sheet in used]
    axes.plot([x for x, _ in line], [y for _, y in line], color=CUT, linewidth=1.4, alpha=0.55)
    for column, system in enumerate(systems):
        members = [(s, g) for s, g in sheets if g.system == system]
        _draw_column(axes, column, members, used)
    if target_um is not None:
        axes.axhline(target_um, color=LIMIT, linestyle="--", linewidth=1.0)
        label = plan.job.target.label
        axes.text(
            1.01,
            target_um,
            f"target\n{label + ', ' if label else ''}{size_text(target_um)} µm",
            color=LIMIT,
            fontsize=8,
            va="center",
            transform=axes.get_yaxis_transform(),
        )
    axes.set_xticks(range(len(systems)), systems)
    axes.tick_params(axis="x", length=0)
    axes.set_ylabel("median grain size, µm (logarithmic)")
    ticks = [m * 10.0**e for e in range(-2, 5) for m in (1, 1.5, 2, 3, 5, 7)]
    axes.set_yticks([tick for tick in ticks if finest_um / 1.12 <= tick <= coarsest_um * 1.05])
    axes.yaxis.set_major_formatter(FuncFormatter(size_text))
    axes.yaxis.set_minor_formatter(NullFormatter())
    axes.yaxis.minorticks_off()
    axes.grid(axis="y", color="#e6e9ed", linewidth=0.6)
    axes.set_axisbelow(True)
    explain(
        figure,
        "At each mark: the label as printed, the size in µm, the id. Filled marks, joined by a line: the chosen sequence. "
        "Whiskers: up to the size that at most 3 % of the grain exceeds.",
    )


def _draw_column(
    axes: Axes, column: int, members: list[tuple[Sheet, Grade]], used: list[str]
) -> None:
    members = sorted(members, key=lambda member: member[1].median_um)
    low, high = axes.get_ylim()
    heights = apart([log(g.median_um) for _, g in members], gap=0.03 * log(high / low))
    lane_ends: list[float] = []  # whiskers that would overlap stand side by side
    for (sheet, grade), height in zip(members, heights):
        chosen = sheet.id in used
        color = CUT if chosen else QUIET
        size_um, label_um = grade.median_um, exp(height)
        lane = next((i for i, end in enumerate(lane_ends) if end < size_um), len(lane_ends))
        lane_ends[lane : lane + 1] = [1.05 * grade.coarse_tail_um]
        x = column - 0.05 - 0.025 * lane
        axes.plot([column, x], [size_um] * 2, color=color, linewidth=0.5)
        axes.plot([x, x], [size_um, grade.coarse_tail_um], color=color, linewidth=0.9)
        axes.plot(x, grade.coarse_tail_um, "_", color=color, markersize=5)
        axes.plot(
            column,
            size_um,
            "o",
            color=color,
            markerfacecolor=color if chosen else "white",
            zorder=3,
        )
        axes.plot([column + 0.03, column + 0.1], [size_um, label_um], color=color, linewidth=0.5)
        axes.text(
            column + 0.11,
            label_um,
            f"{short(sheet.label, 16)}  {size_text(size_um)}  {short(sheet.id, 16)}",
            color=INK,
            fontweight="bold" if chosen else "normal",
            fontsize=8,
            va="center",
            bbox={"facecolor": "white", "edgecolor": "none", "pad": 0.8},
        )
