"""Marks on finished work, simulated scratch by scratch: the truth that going back is held to.

Nothing here is taken from the library but the contact of a sheet (held to scipy elsewhere), the removal and the rate of each
step, and the assumptions of data/profiles/inspection.json. Each scratch is drawn with its depth and with the moment of the step it was
made in, and worn by what came off after it.
"""

import functools
import json
from dataclasses import dataclass
from pathlib import Path

import levigate
import numpy as np

PROFILES = Path(__file__).resolve().parents[2] / "data" / "profiles"


@functools.cache
def profiles_of(kind):
    """The profiles of a kind in their order: of one file, or of a folder with a file each."""
    folder = PROFILES / kind
    if folder.is_dir():
        return sorted((json.loads(file.read_text()) for file in folder.glob("*.json")), key=lambda row: row["order"])
    return json.loads((PROFILES / f"{kind}.json").read_text())["profiles"]


def numbers(kind, name="default"):
    profile = next(p for p in profiles_of(kind) if p["name"] == name)
    return {k: v["value"] for k, v in profile.items() if isinstance(v, dict) and "value" in v}


EYE = numbers("inspection")
MODEL = numbers("model")
TAN = np.tan(np.radians(MODEL["flank_deg"]))
DEPTHS, DEPTHS_PER_ROOT = 3600, 720  # down to a share of e^-25; a depth is off by less than 2e-6 of the deepest
LABELS = ["P400", "P600", "P800", "P1000", "P1200", "P1500", "P2000"]


@dataclass
class Layer:
    contact: levigate.Contact
    removal_um: float
    per_um: float  # tips across a spot of 1 cm2 for each um taken off
    own_tool: bool
    stray: dict
    direction_deg: float | None

    def __post_init__(self):
        self._depth_um = self.contact.depth_um(1 - np.exp(-((np.arange(DEPTHS + 1) / DEPTHS_PER_ROOT) ** 2)))

    def depth_um(self, deeper):
        """Depth that this share of the tips exceeds, between the depths of a table even in the root of the share's logarithm."""
        place = np.minimum(DEPTHS_PER_ROOT * np.sqrt(-np.log(deeper)), DEPTHS - 1e-6)
        at = place.astype(int)
        return self._depth_um[at] + (place - at) * (self._depth_um[at + 1] - self._depth_um[at])


@dataclass
class Case:
    job: levigate.Job
    stack: levigate.Stack
    done: list
    mark: levigate.Mark
    culprit: tuple  # step, stray
    need_um: float


def random_shop(random):
    """A job of one zone, a stack, the steps done, and their layers."""
    count = int(random.integers(2, 5))
    labels = [LABELS[i] for i in sorted(random.choice(len(LABELS), count, replace=False))]
    sheets = [
        dict(id=f"{i}-{label}", label=label, backing="latex paper", width_mm=230, height_mm=280)
        for i, label in enumerate(labels)
    ]
    finish = random.random()
    if finish < 0.5:
        sheets.append(
            dict(
                id="pad",
                label="P3000",
                backing="foam-backed",
                block="foam pad",
                width_mm=150,
                height_mm=115,
            )
        )
    elif finish < 0.8:
        sheets.append(dict(id="film", label="5 um", backing="film", width_mm=216, height_mm=280))
    zone = dict(
        name="top",
        area_cm2=float(random.uniform(100, 2000)),
        block=str(random.choice(["hard block", "cork block"])),
        film={"mean_um": 150, "sd_um": 6},
        peel_um=float(random.uniform(10, 40)),
        peel_wavelength_mm=3,
    )
    job = levigate.Job.from_dict(
        dict(name="case", coating="two-part urethane", zones=[zone], target={"size_um": 0.1})
    )
    stack = levigate.Stack(sheets)
    plan = levigate.evaluate(job, stack, [s["id"] for s in sheets])
    hardness = numbers("coatings", "two-part urethane")["hardness_mpa"]
    layers, done = [], []
    turn = float(random.choice([0.0, 90.0]))
    for sheet, step in zip(sheets, plan.steps):
        block = numbers("blocks", sheet.get("block", zone["block"]))
        backing = numbers("backings", sheet["backing"])
        grade = levigate.grade(sheet["label"])
        pressure = 10 * block["force_n"] / block["area_cm2"]
        touch = levigate.contact(
            size_um=grade.median_um,
            log_spread=grade.log_spread,
            tip_spread=backing["tip_spread"],
            modulus_mpa=backing["modulus_mpa"],
            pressure_kpa=pressure,
            hardness_mpa=hardness,
        )
        work = step.zones["top"]
        rate = work.removal_um * zone["area_cm2"] / block["area_cm2"] / work.travel_m
        known = random.random() < 0.9
        turn = (turn + 90.0) % 180 if random.random() < 0.7 else float(random.uniform(0, 180))
        layers.append(
            Layer(
                contact=touch,
                removal_um=work.removal_um,
                per_um=10 * touch.active_per_mm2 * 1000 / rate,
                own_tool="block" in sheet,
                stray=dict(
                    d=grade.median_um,
                    z=touch.plane_height_um,
                    spring=backing["modulus_mpa"],
                    cone=np.pi * hardness / (2 * TAN**2),
                    force=block["force_n"],
                ),
                direction_deg=turn if known else None,
            )
        )
        done.append(levigate.DoneStep(sheet["id"], direction_deg=turn if known else None))
    return job, stack, done, layers


def stray_depths(stray, count, random):
    """Depths of stray grains, each sinking in on its own spring."""
    r = EYE["stray_size_ratio"] ** random.random(count)
    gap = np.maximum((r - 1) * stray["d"] - stray["z"], 0)
    k = stray["spring"] * r * stray["d"]
    depth = 2 * gap * k / (k + np.sqrt(k * k + 4 * stray["cone"] * k * gap))
    return np.minimum(depth, 1e3 * np.sqrt(stray["force"] / stray["cone"]))


def finish_depth(layer):
    """Depth beyond which the last layer's own scratches number finish_per_spot a spot."""
    deepest = layer.contact.depth_um(1.0)
    y = np.linspace(0, deepest, 20001)
    share = layer.contact.exceedance(y)
    later = np.interp(y + layer.removal_um, y, share, right=0.0)
    density = layer.per_um * (share - later)
    beyond = np.cumsum(density[::-1])[::-1] * (y[1] - y[0])
    return float(y[np.argmax(beyond <= EYE["finish_per_spot"])])


class Spots:
    """Many spots of one zone, with all the scratches that show on them."""

    def __init__(self, layers, shows_um, count, random, removed_cv=0.15):
        n = len(layers)
        even = random.normal(1, removed_cv, 2 * count)
        self.even = even[np.abs(even - 1) < 4 * removed_cv][:count]
        count = len(self.even)
        missed = np.where(
            random.random(count) < 1 - (1 - EYE["missed_share"]) ** n, random.integers(0, n, count), -1
        )
        share = random.random(count)
        spot, depth, source = [], [], []
        since = np.zeros(count)
        for i in reversed(range(n)):
            layer = layers[i]
            own = self.even * layer.removal_um * np.where(missed == i, share, 1.0)
            tail = np.asarray(layer.contact.exceedance(shows_um + since))
            made = random.poisson(layer.per_um * own * tail)
            where = np.repeat(np.arange(count), made)
            fresh = layer.depth_um(random.random(len(where)) * tail[where])
            self._keep(spot, depth, source, where, fresh, own, since, 2 * i, shows_um, random)
            made = random.poisson(EYE["stray_per_m2"] * 1e-4 * own / (layer.removal_um), count)
            where = np.repeat(np.arange(count), made)
            fresh = stray_depths(layer.stray, len(where), random)
            self._keep(spot, depth, source, where, fresh, own, since, 2 * i + 1, shows_um, random)
            since = since + own
        self.spot = np.concatenate(spot)
        self.depth = np.concatenate(depth)
        self.source = np.concatenate(source)

    @staticmethod
    def _keep(spot, depth, source, where, fresh, own, since, number, shows_um, random):
        left = fresh - random.random(len(where)) * own[where] - since[where]
        shown = left >= shows_um
        spot.append(where[shown])
        depth.append(left[shown])
        source.append(np.full(int(shown.sum()), number))


def events(spots, kind, few=int(EYE["cluster_count"])):
    """(spot, source, depth of the deepest) of marks of a kind, by spot."""
    order = np.argsort(spots.spot, kind="stable")
    where, depth, source = spots.spot[order], spots.depth[order], spots.source[order]
    for at in np.unique(where):
        here = slice(np.searchsorted(where, at), np.searchsorted(where, at, side="right"))
        if kind == "scratch":
            if here.stop - here.start == 1:
                yield [(at, source[here][0], depth[here][0])]
            continue
        found = [
            (at, s, depth[here][source[here] == s].max())
            for s in np.unique(source[here])
            if (source[here] == s).sum() >= few
        ]
        if found:
            yield found


def observed(layers, kind, source, depth_um, shows_um, random):
    """What is seen of a mark, or None where it runs in an arc."""
    layer = layers[source // 2]
    arcs = EYE["arc_share_tool"] if layer.own_tool else EYE["arc_share_block"]
    if random.random() < arcs:
        return None
    told = dict(kind=kind, zone="top")
    if random.random() < 0.5:
        width = 2 * depth_um / TAN * np.exp(random.normal(0, EYE["loupe_log_sd"]))
        if not 0.1 <= width <= 1000:
            return None
        told.update(seen="loupe", width_um=float(width))
    else:
        lamp = max(EYE["lamp_um"] / 2 * TAN, EYE["lamp_ratio"] * shows_um)
        told.update(seen="lamp" if depth_um >= lamp else "sunlight")
    if random.random() < 0.7:
        turned = random.random() < EYE["other_direction_share"] or layer.direction_deg is None
        way = (
            random.uniform(0, 180)
            if turned
            else random.normal(layer.direction_deg, EYE["direction_sd_deg"])
        )
        told.update(direction_deg=float(way % 180))
    return levigate.Mark(**told)


BATCHES = [20, 100, 500, 2000, *([5000] * 4)]


def cases(count, seed):
    """Marks with their true causes, from random shops."""
    random = np.random.default_rng(seed)
    found = 0
    while found < count:
        job, stack, done, layers = random_shop(random)
        shows = max(EYE["sunlight_um"] / 2 * TAN, finish_depth(layers[-1]))
        kind = str(random.choice(["scratch", "cluster"]))
        for spots_at_once in BATCHES:
            spots = Spots(layers, shows, spots_at_once, random)
            first = next(events(spots, kind), None)
            if first is not None:
                break
        else:
            continue
        for at, source, depth in first:
            mark = observed(layers, kind, int(source), float(depth), shows, random)
            if mark is None:
                continue
            found += 1
            yield Case(
                job,
                stack,
                done,
                mark,
                (int(source) // 2, bool(source % 2)),
                float(depth / spots.even[at]),
            )
