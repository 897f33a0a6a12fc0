"""What a figure shows: its words, whether they can be read, and how its parts look in grey."""

from itertools import combinations

from matplotlib.collections import PolyCollection
from matplotlib.colors import to_rgb
from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle
from matplotlib.text import Text

GREYS_APART = 0.15  # of 1, from black to white: what the eye tells apart in print


def words(figure):
    return " | ".join(t.get_text() for t in figure.findobj(Text) if t.get_visible())


def labels_apart(figure):
    """Whether no two texts of one part of the figure overlap."""
    figure.draw_without_rendering()
    parts = [[t.get_window_extent() for t in axes.texts if t.get_text()] for axes in figure.axes]
    return not any(
        a.shrunk(0.98, 0.9).overlaps(b.shrunk(0.98, 0.9)) for boxes in parts for a, b in combinations(boxes, 2)
    )


def shown_texts(figure):
    """All texts that stand in a figure: of the ticks only those within the limits."""
    texts = [t for t in figure.findobj(Text) if t.get_visible() and t.get_text().strip()]
    for axes in figure.findobj(lambda one: hasattr(one, "xaxis")):
        for axis in (axes.xaxis, axes.yaxis):
            low, high = sorted(axis.get_view_interval())
            outside = [t for t in (*axis.get_major_ticks(), *axis.get_minor_ticks()) if not low <= t.get_loc() <= high]
            hidden = {id(label) for tick in outside for label in (tick.label1, tick.label2)}
            texts = [t for t in texts if id(t) not in hidden]
    return texts


def cut_off(figure):
    """The texts that reach over the rim of the figure."""
    figure.draw_without_rendering()
    page = figure.bbox.padded(1.0)
    boxes = [(t.get_text(), t.get_window_extent()) for t in shown_texts(figure)]
    return [text for text, box in boxes if box.x0 < page.x0 or box.x1 > page.x1 or box.y0 < page.y0 or box.y1 > page.y1]


def grey(color):
    red, green, blue = to_rgb(color)
    return 0.299 * red + 0.587 * green + 0.114 * blue


def look(artist):
    """Colour of a line or an area, and all that tells it from others beside its colour."""
    if isinstance(artist, Line2D):
        filled = artist.get_marker() != "None" and grey(artist.get_markerfacecolor()) < 0.7
        return artist.get_color(), (artist.get_linestyle(), round(artist.get_linewidth()), artist.get_marker(), filled)
    return artist.get_facecolor()[:3], ("area", artist.get_hatch())


def alike_in_grey(axes):
    """Pairs of lines or areas of the axes that only their colour tells apart, and no grey does."""
    areas = [c for c in axes.collections if isinstance(c, PolyCollection)]
    shown = [a for a in [*axes.lines, *axes.patches, *areas] if a.get_visible() and isinstance(a, (Line2D, Rectangle, PolyCollection))]
    looks = {(tuple(to_rgb(c)) if not hasattr(c, "shape") else tuple(map(float, c[0])), rest) for c, rest in map(look, shown)}
    return [
        (one, other)
        for one, other in combinations(sorted(looks, key=str), 2)
        if one[1] == other[1] and one[0] != other[0] and abs(grey(one[0]) - grey(other[0])) < GREYS_APART
    ]
