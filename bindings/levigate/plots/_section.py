"""The film of each zone in section: the whole film above, the steps enlarged below."""

from __future__ import annotations

from math import pi, sin
from typing import TYPE_CHECKING

from matplotlib.ticker import MaxNLocator

from .._core import Defect, Grade, Plan, Zone
from ._drawing import BELOW, CUT, FILM, INK, LIMIT, Figure, Part, Path, apart, ask_of_plan, explain, saved, short, size_text, styled

if TYPE_CHECKING:
    from matplotlib.axes import Axes

TEETH = 4  # scratches drawn in a column


def section(plan: Plan, *, save: Path | None = None) -> Figure:
    """How deep each step goes: the whole film of each zone above, the steps enlarged below."""
    with styled():
        figure = Figure(figsize=(section_width(plan), 8.0), layout="constrained")
        draw_section(figure, plan)
        return saved(figure, save)


# The film in section. Depth counts downwards from the mean of the surface as it is at the start;
# each state of the surface has a column one wide.


def section_width(plan: Plan) -> float:
    columns = len(plan.steps) + 1
    return 1.5 + len(plan.job.zones) * max(3.4, 0.55 * columns)


def draw_section(figure: Part, plan: Plan) -> None:
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
    explain(
        figure,
        "Depths are to scale, widths are not. Small numbers in the columns: depth of the scratches, µm. "
        "Band: bottom of the film, mean ± standard deviation."
        + (" Orange peel that stays is not drawn in the enlarged part." if staying else ""),
    )
    ask_of_plan(figure, "How deep does each step go into the film?", plan)


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
    names += [f"{short(step.sheet, 16)}\n{size_text(step.size_um)} µm" for step in plan.steps]
    axes.set_xticks([i + 0.5 for i in range(len(names))], names, rotation=90)


def _tallest_first(zone: Zone) -> list[Defect]:
    return sorted(zone.defects, key=lambda defect: -defect.height_um)


def _name_defects(axes: Axes, zone: Zone) -> None:
    bottom_um, top_um = axes.get_ylim()
    defects = _tallest_first(zone)
    places = apart([-defect.height_um for defect in defects], gap=0.052 * (bottom_um - top_um))
    for defect, place in zip(defects, places):
        text = f"{defect.count} × {defect.kind}, {defect.height_um:g} high: taken down first"
        axes.text(1.05, place, text, color=CUT, fontsize=8, ha="left", va="center")


def _draw_whole_film(axes: Axes, plan: Plan, zone: Zone) -> None:
    top_um = -max([0.5 * zone.peel_um, *(1.05 * d.height_um for d in zone.defects)]) - 1.0
    axes.set_title(f"{short(zone.name, 28)}, {zone.area_cm2:g} cm²", fontsize=10, pad=10)
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
    places = apart([y for y, *_ in lines], gap=0.052 * (bottom_um - top_um))
    for (y, color, dashes, text), place in zip(lines, places):
        if dashes:
            axes.axhline(y, color=color, linestyle=dashes, linewidth=1.8 if dashes == "-" else 1.0)
        axes.text(
            len(plan.steps) + 0.95,
            place + 0.008 * (bottom_um - top_um),
            text,
            color=color,
            fontsize=8,
            ha="right",
            va="top",
            bbox={"facecolor": FILM, "edgecolor": "none", "pad": 0.6},
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
