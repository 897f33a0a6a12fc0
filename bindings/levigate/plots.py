"""Pictures of a plan: the film in section, and the ladder of sizes. Needs matplotlib.

The figures belong to no window and need no screen. A notebook shows them after
`%matplotlib inline`.
"""

from __future__ import annotations

import os
from collections.abc import Sequence
from math import exp, log, pi, sin
from typing import TYPE_CHECKING, Any, Union

from ._core import Defect, Grade, Plan, Sheet, Zone

try:
    import matplotlib
    from matplotlib.figure import Figure, FigureBase
    from matplotlib.patheffects import withStroke
    from matplotlib.ticker import FuncFormatter, MaxNLocator, NullFormatter
except ImportError as missing:
    raise ImportError("pictures need matplotlib: pip install 'levigate[plot]'") from missing

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["ladder", "plot", "section"]

Path = Union[str, "os.PathLike[str]"]

INK = "#39424e"
QUIET = "#8b95a1"
FILM = "#f3dfae"
BELOW = "#c9b29a"
CUT = "#2f6690"
LIMIT = "#b3432b"
TEETH = 4  # scratches drawn in a column
STYLE: Any = {
    "font.size": 9.0,
    "text.color": INK,
    "text.parse_math": False,  # a dollar sign in a name is a dollar sign
    "axes.edgecolor": QUIET,
    "axes.labelcolor": INK,
    "axes.spines.top": False,
    "axes.spines.right": False,
    "xtick.color": INK,
    "ytick.color": INK,
}


def plot(plan: Plan, *, save: Path | None = None) -> Figure:
    """Section and ladder in one figure."""
    with matplotlib.rc_context(STYLE):
        width = max(_section_width(plan), _ladder_width(plan))
        figure = Figure(figsize=(width, 14.0), layout="constrained")
        parts = figure.subfigures(2, 1, squeeze=False, height_ratios=[8, 6], hspace=0.03)
        _draw_section(parts[0, 0], plan)
        _draw_ladder(parts[1, 0], plan)
        return _saved(figure, save)


def section(plan: Plan, *, save: Path | None = None) -> Figure:
    """The film of each zone in section: the whole film above, the steps enlarged below."""
    with matplotlib.rc_context(STYLE):
        figure = Figure(figsize=(_section_width(plan), 8.0), layout="constrained")
        _draw_section(figure, plan)
        return _saved(figure, save)


def ladder(plan: Plan, *, save: Path | None = None) -> Figure:
    """The sheets of the stack by size, a column for each system, with the chosen sequence."""
    with matplotlib.rc_context(STYLE):
        figure = Figure(figsize=(_ladder_width(plan), 6.5), layout="constrained")
        _draw_ladder(figure, plan)
        return _saved(figure, save)


def _saved(figure: Figure, path: Path | None) -> Figure:
    if path is not None:
        figure.savefig(path, dpi=150)
    return figure


def _short(text: str, most: int = 22) -> str:
    return text if len(text) <= most else text[: most - 1] + "…"


def _title(figure: FigureBase, plan: Plan, found: str) -> None:
    """Titles a picture with the job and what it shows, or that there is no plan."""
    if plan.why is not None:
        found = f"no plan ({plan.why.blocked_by})"
    figure.suptitle(f"{_short(plan.job.name, 60)} – {found}", fontsize=12)


def _apart(places: Sequence[float], gap: float) -> list[float]:
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


# The film in section. Depth counts downwards from the mean of the surface as it is at the start;
# each state of the surface has a column one wide.


def _section_width(plan: Plan) -> float:
    columns = len(plan.steps) + 1
    return 1.5 + len(plan.job.zones) * max(3.4, 0.55 * columns)


def _draw_section(figure: FigureBase, plan: Plan) -> None:
    zones = plan.job.zones
    rows = 2 if plan.found else 1
    panels = figure.subplots(rows, len(zones), squeeze=False)
    for column, zone in enumerate(zones):
        _draw_whole_film(panels[0][column], plan, zone)
        if plan.found:
            _draw_enlarged(panels[1][column], plan, zone)
    panels[0][0].set_ylabel("depth below the first surface, µm")
    if plan.found:
        panels[1][0].set_ylabel("the same enlarged, µm")
    staying = any(_peel_stays(plan, zone) for zone in zones)
    figure.supxlabel(
        "Depths are to scale, widths are not. Small blue numbers: depth of the scratches, µm. "
        "Band: bottom of the film, mean ± standard deviation."
        + (" Orange peel that stays is not drawn in the enlarged part." if staying else ""),
        fontsize=8,
        wrap=True,
    )
    _title(figure, plan, "the film in section, before and after each step")


def _planes_um(plan: Plan, zone: Zone) -> list[float]:
    """Depth of the surface after each step, without the scratches."""
    return [
        step.zones[zone.name].depth_um - step.zones[zone.name].scratch_um for step in plan.steps
    ]


def _peel_stays(plan: Plan, zone: Zone) -> bool:
    return _carried(plan, zone) is None and not zone.levelled and zone.peel_um > 0


def _carried(plan: Plan, zone: Zone) -> Grade | None:
    """The grade whose scratches a zone starts with; None as sprayed."""
    return zone.carries.grade if zone.carries else plan.job.scratched_by


def _start(zone: Zone, half_um: float) -> list[tuple[float, float]]:
    """The surface at the start, over a column: defects and two waves of orange peel."""
    defects = _tallest_first(zone)
    share = min(0.2, 0.9 / max(1, len(defects)))
    points = []
    for x in (i / 200 for i in range(201)):
        index, place = divmod((x - 0.05) / share, 1.0)
        if 0 <= index < len(defects):
            points.append((x, -defects[int(index)].height_um * (1 - (2 * place - 1) ** 2)))
        else:
            points.append((x, half_um * sin(4 * pi * x)))
    return points


def _profile(plan: Plan, zone: Zone, whole: bool) -> tuple[list[float], list[float]]:
    """The surface in every column: as it is at the start, then planes with scratches.

    Where orange peel stays, the whole film shows it without scratches, the enlarged part the reverse.
    """
    stays = _peel_stays(plan, zone)
    sprayed = _carried(plan, zone) is None
    half_um = zone.peel_um / 2 if sprayed and (whole or not stays) else 0.0
    surface = _start(zone, half_um)
    for index, (step, plane_um) in enumerate(zip(plan.steps, _planes_um(plan, zone)), start=1):
        if whole and stays:
            xs = [i / 100 for i in range(101)]
            surface += [(index + x, plane_um + half_um * sin(4 * pi * x)) for x in xs]
            continue
        for tooth in range(TEETH):
            for place, depth in ((0.0, 0.0), (0.5, 1.0), (1.0, 0.0)):
                y = plane_um + depth * step.zones[zone.name].scratch_um
                surface.append((index + (tooth + place) / TEETH, y))
    return [x for x, _ in surface], [y for _, y in surface]


def _draw_surface(axes: Axes, plan: Plan, zone: Zone, floor_um: float, *, whole: bool) -> None:
    xs, ys = _profile(plan, zone, whole)
    axes.fill_between(xs, ys, floor_um, color=FILM, linewidth=0)
    axes.plot(xs, ys, color=CUT, linewidth=1.0)
    axes.set_xlim(0, len(plan.steps) + 1)
    axes.grid(axis="y", color="white", linewidth=0.6)
    axes.set_axisbelow("line")
    axes.yaxis.set_major_locator(MaxNLocator(nbins=7, steps=[1, 2, 5, 10]))
    axes.tick_params(axis="x", length=0)


def _columns(axes: Axes, plan: Plan, zone: Zone) -> None:
    start = _carried(plan, zone)
    names = ["as sprayed" if start is None else f"{start.label} scratches"]
    names += [f"{_short(step.sheet, 16)}\n{_size_text(step.size_um)} µm" for step in plan.steps]
    axes.set_xticks([i + 0.5 for i in range(len(names))], names, rotation=90)


def _tallest_first(zone: Zone) -> list[Defect]:
    return sorted(zone.defects, key=lambda defect: -defect.height_um)


def _name_defects(axes: Axes, zone: Zone) -> None:
    bottom_um, top_um = axes.get_ylim()
    defects = _tallest_first(zone)
    places = _apart([-defect.height_um for defect in defects], gap=0.052 * (bottom_um - top_um))
    for defect, place in zip(defects, places):
        text = f"{defect.count} × {defect.kind}, {defect.height_um:g} high: taken down first"
        axes.text(1.05, place, text, color=CUT, fontsize=8, ha="left", va="center")


def _draw_whole_film(axes: Axes, plan: Plan, zone: Zone) -> None:
    top_um = -max([0.5 * zone.peel_um, *(1.05 * d.height_um for d in zone.defects)]) - 1.0
    axes.set_title(f"{_short(zone.name, 28)}, {zone.area_cm2:g} cm²", fontsize=10, pad=10)
    if zone.film is None:
        deepest_um = max([1.0, *(step.zones[zone.name].depth_um for step in plan.steps)])
        _draw_surface(axes, plan, zone, 1.5 * deepest_um, whole=True)
        axes.set_ylim(1.5 * deepest_um, top_um)
        axes.set_xticks([])
        _name_defects(axes, zone)
        return
    mean_um, sd_um = zone.film.mean_um, zone.film.spot_sd_um
    bottom_um = 1.06 * (mean_um + sd_um) + 2.0
    _draw_surface(axes, plan, zone, mean_um, whole=True)
    axes.axhspan(mean_um, bottom_um, color=BELOW, linewidth=0)
    axes.axhspan(mean_um - sd_um, mean_um + sd_um, color=BELOW, alpha=0.55, linewidth=0)
    axes.set_ylim(bottom_um, top_um)
    axes.set_xticks([])
    _name_defects(axes, zone)
    reserve_um = mean_um - plan.job.rules.reserve_um
    budget_um = plan.job.budget_um[zone.name]
    lines = [
        (mean_um, INK, "-", f"bottom of the film {mean_um:.0f} ± {sd_um:.0f}"),
        (reserve_um, LIMIT, ":", f"reserve of {plan.job.rules.reserve_um:g} begins"),
    ]
    if budget_um is not None and budget_um < bottom_um:
        lines.append((budget_um, LIMIT, "--", f"may go down to {budget_um:.1f}"))
    if plan.found:
        depth_um = plan.steps[-1].zones[zone.name].depth_um
        lines.append((depth_um, CUT, "", f"goes down to {depth_um:.1f}"))
    lines.sort()
    places = _apart([y for y, *_ in lines], gap=0.052 * (bottom_um - top_um))
    for (y, color, dashes, text), place in zip(lines, places):
        if dashes:
            axes.axhline(y, color=color, linestyle=dashes, linewidth=1.0)
        axes.text(
            len(plan.steps) + 0.95,
            place + 0.008 * (bottom_um - top_um),
            text,
            color=color,
            fontsize=8,
            ha="right",
            va="top",
            path_effects=[withStroke(linewidth=2.0, foreground=FILM)],
        )


def _draw_enlarged(axes: Axes, plan: Plan, zone: Zone) -> None:
    planes_um = _planes_um(plan, zone)
    deepest_um = max(step.zones[zone.name].depth_um for step in plan.steps)
    spare_um = 0.15 * (deepest_um - planes_um[0]) + 0.05
    bottom_um = deepest_um + spare_um
    _draw_surface(axes, plan, zone, bottom_um, whole=False)
    axes.set_ylim(bottom_um, planes_um[0] - 2 * spare_um)
    for index, step in enumerate(plan.steps, start=1):
        done = step.zones[zone.name]
        axes.text(
            index + 0.5,
            planes_um[index - 1] - 0.2 * spare_um,
            f"{done.scratch_um:.2f}" if done.scratch_um > 0 else "–",
            color=CUT,
            fontsize=8,
            ha="center",
            va="bottom",
        )
    _columns(axes, plan, zone)


# The ladder of sizes.


def _systems(plan: Plan) -> list[str]:
    """Systems that the sheets belong to, in the order of the stack."""
    return list(dict.fromkeys(grade.system for grade in plan.stack.grades))


def _ladder_width(plan: Plan) -> float:
    return max(6.5, 1.5 + 2.6 * len(_systems(plan)))


def _size_text(size_um: float, _: Any = None) -> str:
    return f"{size_um:.3g}"


def _draw_ladder(figure: FigureBase, plan: Plan) -> None:
    axes = figure.subplots()
    systems = _systems(plan)
    sheets = list(zip(plan.stack.sheets, plan.stack.grades))
    place = {sheet.id: (systems.index(g.system), g.median_um) for sheet, g in sheets}
    used = [step.sheet for step in plan.steps]
    _title(figure, plan, "the sheets by true size")
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
            f"target\n{label + ', ' if label else ''}{_size_text(target_um)} µm",
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
    axes.yaxis.set_major_formatter(FuncFormatter(_size_text))
    axes.yaxis.set_minor_formatter(NullFormatter())
    axes.yaxis.minorticks_off()
    axes.grid(axis="y", color="#e6e9ed", linewidth=0.6)
    axes.set_axisbelow(True)
    axes.set_xlabel(
        "Filled marks: the chosen sequence. "
        "Whiskers: up to the size that at most 3 % of the grain exceeds.",
        fontsize=8,
    )


def _draw_column(
    axes: Axes, column: int, members: list[tuple[Sheet, Grade]], used: list[str]
) -> None:
    members = sorted(members, key=lambda member: member[1].median_um)
    low, high = axes.get_ylim()
    heights = _apart([log(g.median_um) for _, g in members], gap=0.03 * log(high / low))
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
            f"{_short(sheet.id, 16)}  {grade.label}  {_size_text(size_um)}",
            color=INK if chosen else QUIET,
            fontweight="bold" if chosen else "normal",
            fontsize=8,
            va="center",
            bbox={"facecolor": "white", "edgecolor": "none", "pad": 0.8},
        )
