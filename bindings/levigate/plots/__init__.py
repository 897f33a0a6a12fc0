"""Pictures of plans and of ways back. The title of each is the question that it answers. Needs matplotlib.

The figures belong to no window and need no screen. A notebook shows them after
`%matplotlib inline`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Optional

from .._core import BadInput, Plan, Simulation
from ._causes import causes
from ._drawing import Figure, Path, saved, styled
from ._film import film
from ._gloss import gloss
from ._ladder import draw_ladder, ladder, ladder_width
from ._minutes import minutes
from ._section import draw_section, section, section_width
from ._tradeoff import tradeoff

__all__ = ["PICTURES", "causes", "film", "gloss", "ladder", "minutes", "plot", "section", "tradeoff"]

Draw = Callable[[Plan, Optional[Simulation]], Figure]
_SIMULATED: dict[str, Draw] = {"film": film, "minutes": minutes, "gloss": gloss}
# All pictures of a plan, by name. Each draws every plan, with its simulation or None.
PICTURES: Mapping[str, Draw] = {
    "section": lambda plan, _: section(plan),
    "ladder": lambda plan, _: ladder(plan),
    "tradeoff": lambda plan, _: tradeoff(plan),
    **_SIMULATED,
}


def plot(plan: Plan, picture: str | None = None, simulation: Simulation | None = None, *, save: Path | None = None) -> Figure:
    """A picture of PICTURES by its name; without a name section and ladder in one figure.

    Raises BadInput for another name, and for a simulation that the picture does not show.
    """
    if picture is not None and picture not in PICTURES:
        raise BadInput(f"picture '{picture}' is none of {', '.join(sorted(PICTURES))}")
    if simulation is not None and picture not in _SIMULATED:
        raise BadInput(f"a simulation shows only in the pictures {', '.join(sorted(_SIMULATED))}")
    if picture is not None:
        return saved(PICTURES[picture](plan, simulation), save)
    with styled():
        width = max(section_width(plan), ladder_width(plan))
        figure = Figure(figsize=(width, 14.5), layout="constrained")
        parts = figure.subfigures(2, 1, squeeze=False, height_ratios=[8, 6], hspace=0.03)
        draw_section(parts[0, 0], plan)
        draw_ladder(parts[1, 0], plan)
        return saved(figure, save)
