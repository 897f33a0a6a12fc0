"""What the sun shows of a finished zone, simulated spot by spot: the truth that the marks of a plan are held to.

Nothing here is taken from the library but the contact of a sheet (held to scipy elsewhere), the depth of its scratches, what a
step takes off, its rate and its minutes, and the assumptions of data/profiles. A zone is spots of 1 cm2. A spot has one
evenness for all steps. Each step misses it by chance, so two may miss the same one. Each layer of scratches is as deep as its
step cut, and what came off later wears scratches and strays alike.
"""

import functools
import itertools
from dataclasses import dataclass

import levigate
import numpy as np
from marks import EYE, TAN, Layer, numbers, stray_depths

LABELS = ["P320", "P400", "P500", "P600", "P800", "P1000", "P1200", "P1500", "P2000"]
RULES = numbers("rules")


# ---------------------------------------------------------------- what a sheet does, and random work


@dataclass
class Scratching:
    """A sheet in a zone: its layer, with what its scratches and strays come to."""

    layer: Layer
    size_um: float
    scratch_um: float
    minutes_per_um: float
    levelling_um: float  # taken off as the first step of a zone as sprayed

    def __post_init__(self):
        contact, places = self.layer.contact, 4001
        self.deepest = contact.depth_um(1.0)
        self.depths = np.linspace(0, self.deepest, places)
        self.share = np.asarray(contact.exceedance(self.depths))
        self.beyond = integral_from(self.depths, self.share)
        # strays: sizes even in logarithm, so depths of even quantiles have even weights
        quantiles = np.linspace(0, 1, places)
        even = np.maximum.accumulate(stray_depths(self.layer.stray, places, Even(quantiles)))
        self.stray_depths = np.linspace(0, even[-1] + 1e-9, places)
        here = 1 - np.searchsorted(even, self.stray_depths, side="right") / places
        self.stray_beyond = integral_from(self.stray_depths, here)

    def deeper(self, depth_um):
        """Share of its tips that scratch deeper."""
        return np.interp(depth_um, self.depths, self.share, right=0.0)

    def depth_of(self, share):
        """Depth that this share of its tips exceeds."""
        return np.interp(share, self.share[::-1], self.depths[::-1])

    def numbers(self, depth_um, off_um):
        """Scratches a spot deeper than depth_um, once its step took off off_um evenly."""
        part = np.interp(depth_um, self.depths, self.beyond, right=0.0)
        part = part - np.interp(depth_um + off_um, self.depths, self.beyond, right=0.0)
        return self.layer.per_um * part

    def strays(self, depth_um, off_um):
        """The same of strays."""
        part = np.interp(depth_um, self.stray_depths, self.stray_beyond, right=0.0)
        part = part - np.interp(depth_um + off_um, self.stray_depths, self.stray_beyond, right=0.0)
        return 1e-4 * EYE["stray_per_m2"] / self.layer.removal_um * part


class Even:
    """Stands for a stream whose numbers are given."""

    def __init__(self, given):
        self.given = given

    def random(self, count):
        return self.given


def integral_from(places, values):
    """Integral of values from each place to the last, by trapezoids."""
    pieces = 0.5 * np.diff(places) * (values[1:] + values[:-1])
    return np.append(np.cumsum(pieces[::-1])[::-1], 0.0)


@functools.cache
def contact_of(label, backing, block):
    grade, paper, tool = levigate.grade(label), numbers("backings", backing), numbers("blocks", block)
    return levigate.contact(
        size_um=grade.median_um,
        log_spread=grade.log_spread,
        tip_spread=paper["tip_spread"],
        modulus_mpa=paper["modulus_mpa"],
        pressure_kpa=10 * tool["force_n"] / tool["area_cm2"],
        hardness_mpa=numbers("coatings", "two-part urethane")["hardness_mpa"],
    )


def scratching(sheet, zone, step):
    """What a sheet does in a zone, by the library's step of it that takes something off."""
    tool = sheet.get("block", zone["block"])
    block, backing = numbers("blocks", tool), numbers("backings", sheet["backing"])
    touch, size = contact_of(sheet["label"], sheet["backing"], tool), levigate.grade(sheet["label"]).median_um
    rate = step.removal_um * zone["area_cm2"] / block["area_cm2"] / step.travel_m
    stray = dict(
        d=size,
        z=touch.plane_height_um,
        spring=backing["modulus_mpa"],
        cone=np.pi * numbers("coatings", "two-part urethane")["hardness_mpa"] / (2 * TAN**2),
        force=block["force_n"],
    )
    per_um = 10 * touch.active_per_mm2 * 1000 / rate
    layer = Layer(touch, step.removal_um, per_um, "block" in sheet, stray, None)
    return Scratching(layer, size, step.scratch_um, step.minutes / step.removal_um, step.removal_um)


def random_sheets(random, count):
    """Papers of different grades, from coarse to fine; often a pad or a film comes last."""
    finish = random.random()
    papers = count - (finish < 0.7)
    labels = [LABELS[i] for i in sorted(random.choice(len(LABELS), papers, replace=False))]
    sheets = [dict(id=x, label=x, backing="latex paper", width_mm=230, height_mm=280) for x in labels]
    if finish < 0.4:
        pad = dict(id="pad", label="P3000", backing="foam-backed", block="foam pad")
        sheets.append(pad | dict(width_mm=150, height_mm=115))
    elif finish < 0.7:
        sheets.append(dict(id="film", label="5 um", backing="film", width_mm=216, height_mm=280))
    return sheets


def random_job(random, sheets, target_um, film_um, stated):
    """A small job of one or two zones, as sprayed or sanded already; of some the overcut is stated."""
    zones = [
        dict(
            name=f"zone {i}",
            area_cm2=int(np.exp(random.uniform(np.log(5), np.log(400)))),
            block=str(random.choice(["hard block", "cork block"])),
            film={"mean_um": film_um, "sd_um": 4},
            peel_um=float(random.uniform(5, 40)),
            peel_wavelength_mm=3,
        )
        for i in range(int(random.integers(1, 3)))
    ]
    rules = dict(removed_cv=float(random.uniform(0.05, 0.2)))
    if random.random() < stated:
        rules["overcut"] = float(random.uniform(1, 3))
    told = dict(name="case", coating="two-part urethane", zones=zones, target={"size_um": target_um}, rules=rules)
    if random.random() < 0.3:
        told["start"] = {"scratched_by": "P240"}
    return Work(told, sheets)


class Work:
    """A job and its sheets: what each does in each zone, from which any sequence is worked out by plain arithmetic."""

    def __init__(self, told, sheets):
        self.told, self.sheets = told, sheets
        self.job, self.stack = levigate.Job.from_dict(told), levigate.Stack(sheets)
        self.cv = told["rules"]["removed_cv"]
        self.change = RULES["change_minutes"]
        self.start = told.get("start", {}).get("scratched_by")
        sprayed = levigate.Job.from_dict({k: v for k, v in told.items() if k != "start"})
        self.of = [self._alone(sprayed, self.stack, sheet) for sheet in sheets]
        if self.start:
            before = dict(id="before", label=self.start, backing="latex paper", width_mm=230, height_mm=280)
            self.before = self._alone(sprayed, levigate.Stack([before]), before)

    def _alone(self, job, stack, sheet):
        (step,) = levigate.evaluate(job, stack, [sheet["id"]]).steps
        return [scratching(sheet, zone, step.zones[zone["name"]]) for zone in self.told["zones"]]

    def least_overcut(self):
        """As the rules say, else so that no more than short_share of the spots stop short."""
        z = 3.090232306167813  # Q(z) = 0.001
        assert RULES["short_share"] == 0.001
        return self.told["rules"].get("overcut") or 1 / (1 - z * self.cv)

    def removals(self, sequence, overcuts, zone):
        result = []
        for place, (sheet, overcut) in enumerate(zip(sequence, overcuts)):
            if place:
                result.append(overcut * self.of[sequence[place - 1]][zone].scratch_um)
            elif self.start:
                result.append(overcut * self.before[zone].scratch_um)
            else:
                result.append(self.of[sheet][zone].levelling_um)
        return np.array(result)

    def minutes(self, sequence, overcuts, zone):
        """Of each step in a zone, without the change."""
        each = [self.of[sheet][zone].minutes_per_um for sheet in sequence]
        return self.removals(sequence, overcuts, zone) * each

    def planned(self, sequence, overcuts):
        zones = range(len(self.told["zones"]))
        return len(sequence) * self.change + sum(self.minutes(sequence, overcuts, z).sum() for z in zones)

    def depth(self, sequence, overcuts, zone):
        return self.removals(sequence, overcuts, zone).sum() + self.of[sequence[-1]][zone].scratch_um

    def shows(self, last, zone, removal_um):
        """Depth from which a mark stands out after the last step: where its own scratches are few, and the sun shows them."""
        own = self.of[last][zone]
        few = own.numbers(own.depths, removal_um)[::-1]
        return max(EYE["sunlight_um"] / 2 * TAN, np.interp(EYE["finish_per_spot"], few, own.depths[::-1]))

    def sequences(self):
        """All that keep the ratio rule and the budgets and end with the first sheet that meets the target, with all overcuts."""
        found = levigate.evaluate(self.job, self.stack, [self.sheets[0]["id"]])
        budgets = [found.zones[zone["name"]].budget_um for zone in self.told["zones"]]
        size = [rows[0].size_um for rows in self.of]
        ends = [s <= self.told["target"]["size_um"] for s in size]
        least = self.least_overcut()
        choice = [least] if "overcut" in self.told["rules"] else [least, 1.5 * least, 2 * least]

        def allowed(coarse, fine):
            return RULES["min_ratio"] <= coarse / fine <= RULES["max_ratio"]

        def grow(sequence):
            if ends[sequence[-1]]:
                yield sequence
                return
            for sheet in range(len(size)):
                if allowed(size[sequence[-1]], size[sheet]):
                    yield from grow([*sequence, sheet])

        for first in range(len(size)):
            if self.start and not allowed(self.before[0].size_um, size[first]):
                continue
            for sequence in grow([first]):
                free = len(sequence) if self.start else len(sequence) - 1
                for overcuts in itertools.product(choice, repeat=free):
                    overcuts = [least] * (len(sequence) - free) + list(overcuts)
                    if all(self.depth(sequence, overcuts, z) <= most for z, most in enumerate(budgets)):
                        yield sequence, overcuts


# ---------------------------------------------------------------- scratch by scratch


def evennesses(random, cv, count):
    """Normal, cut at four standard deviations and at a twentieth of the mean."""
    result = np.empty(0)
    while len(result) < count:
        more = random.normal(1, cv, 2 * count)
        kept = (np.abs(more - 1) <= 4 * cv) & (more >= 0.05)
        result = np.append(result, more[kept])
    return result[:count]


@dataclass
class Seen:
    """Looks at a zone: where a mark is left, and to which step it sends the shop back."""

    marked: np.ndarray  # [look, spot, step]

    def spots(self):
        return self.marked.any(axis=2).sum(axis=1)

    def back_to(self):
        """The first step that failed, of each look; as many as there are steps where none did."""
        failed = self.marked.any(axis=1)
        return np.where(failed.any(axis=1), failed.argmax(axis=1), failed.shape[1])


def looked_at(work, sequence, overcuts, zone, looks, random):
    """Draws every scratch that matters, with its depth and the moment of its step, and wears it by what came off later."""
    spots, steps = work.told["zones"][zone]["area_cm2"], len(sequence)
    count = looks * spots
    even = evennesses(random, work.cv, count)
    mean_um = work.removals(sequence, overcuts, zone)
    missed = random.random((count, steps)) < EYE["missed_share"]
    done = np.where(missed, random.random((count, steps)), 1.0)
    off = even[:, None] * mean_um * done
    shows = work.shows(sequence[-1], zone, mean_um[-1])
    marked = np.zeros((count, steps), bool)
    since = np.zeros(count)
    for place in reversed(range(-1 if work.start else 0, steps)):
        here = work.before[zone] if place < 0 else work.of[sequence[place]][zone]
        # what was there before the first step was cut through the whole of its depth
        own = off[:, place] if place >= 0 else np.full(count, here.deepest)
        if place + 1 < steps:
            share = here.deeper(shows + since)
            where = np.repeat(np.arange(count), random.poisson(here.layer.per_um * own * share))
            fresh = here.depth_of(random.random(len(where)) * share[where])
            left = fresh - random.random(len(where)) * own[where] - since[where]
            marked[where[left >= shows], place + 1] = True
        if place >= 0:
            rate = 1e-4 * EYE["stray_per_m2"] * own / mean_um[place]
            where = np.repeat(np.arange(count), random.poisson(rate))
            fresh = stray_depths(here.layer.stray, len(where), random)
            left = fresh - random.random(len(where)) * own[where] - since[where]
            marked[where[left >= shows], min(place + 1, steps - 1)] = True
            since = since + own
    return Seen(marked.reshape(looks, spots, steps))


def climbs(work, sequence, overcuts, zone):
    """Minutes of going back to each step in a zone, with a look at the end; 0 where none failed."""
    each = work.minutes(sequence, overcuts, zone) + work.change
    return np.append(np.cumsum(each[::-1])[::-1] + EYE["look_minutes"], 0.0)


# ---------------------------------------------------------------- many sequences on the same spots


class Fates:
    """Spots to try many sequences on: how even each is, which sheets miss it, and how much of their work they do there.

    Of each sheet there are spots that it misses, and others that none misses, so that few are enough: a spot that k sheets of a
    sequence miss stands for 1/k of itself in the group of each. Others miss these spots more often than they should, too; the
    spots weigh as much less.
    """

    OFTEN = 0.2

    def __init__(self, sheets, cv, count, random):
        self.count = count
        self.even = np.stack([evennesses(random, cv, count) for _ in range(sheets + 1)])
        self.missed = random.random((sheets + 1, sheets, count)) < self.OFTEN
        self.missed[0] = False
        self.share = random.random((sheets + 1, sheets, count))
        for sheet in range(sheets):
            self.missed[sheet + 1, sheet] = True
            self.share[sheet + 1, sheet] = random.permutation((np.arange(count) + random.random(count)) / count)

    def of(self, sequence):
        """Evenness, share of its work that each step does, and weight, of every spot."""
        groups = [0, *(sheet + 1 for sheet in sequence)]
        even = self.even[groups].ravel()
        missed = np.stack([self.missed[groups][:, sheet].ravel() for sheet in sequence])
        share = np.stack([self.share[groups][:, sheet].ravel() for sheet in sequence])
        miss, others = EYE["missed_share"], len(sequence) - 1
        times = missed.sum(axis=0)
        again = np.maximum(times - 1, 0)
        weight = miss * (miss / self.OFTEN) ** again * ((1 - miss) / (1 - self.OFTEN)) ** (others - again)
        weight = np.where(times > 0, weight / np.maximum(times, 1), (1 - miss) ** len(sequence)) / self.count
        return even, np.where(missed, share, 1.0), weight


def step_chances(work, sequence, overcuts, zone, fates, batches=1):
    """Chance that a spot shows marks that send back to a step up to each; and marks expected of a spot, by step.

    Given the fate of the spot, scratches are a Poisson process; so their number is not drawn. Of each batch of the spots.
    """
    even, done, weight = fates.of(sequence)
    mean_um = work.removals(sequence, overcuts, zone)
    steps = len(sequence)
    shows = work.shows(sequence[-1], zone, mean_um[-1])
    means = np.zeros((steps, len(even)))
    since = np.zeros(len(even))
    for place in reversed(range(-1 if work.start else 0, steps)):
        here = work.before[zone] if place < 0 else work.of[sequence[place]][zone]
        own = even * mean_um[place] * done[place] if place >= 0 else here.deepest
        if place + 1 < steps:
            means[place + 1] += here.numbers(shows + since, own)
        if place >= 0:
            part = here.strays(shows + since, own) * here.layer.removal_um / mean_um[place]
            means[min(place + 1, steps - 1)] += part
            since = since + own
    shown = -np.expm1(-np.cumsum(means, axis=0)) * weight
    single = -np.expm1(-means) * weight
    by_batch = np.arange(fates.count) % batches
    by_batch = np.tile(by_batch, len(even) // fates.count)
    upto = np.stack([shown[:, by_batch == b].sum(axis=1) * batches for b in range(batches)])
    each = np.stack([single[:, by_batch == b].sum(axis=1) * batches for b in range(batches)])
    return upto, each


def back_minutes(work, sequence, overcuts, fates, batches=1):
    """Expected minutes of going back, of each batch of the spots."""
    total = np.zeros(batches)
    for zone, told in enumerate(work.told["zones"]):
        upto, _ = step_chances(work, sequence, overcuts, zone, fates, batches)
        none = (1 - upto) ** told["area_cm2"]
        first = -np.diff(np.concatenate([np.ones((batches, 1)), none], axis=1), axis=1)
        total += first @ climbs(work, sequence, overcuts, zone)[:-1]
    return total


def last_again(work, sequence, overcuts, fates):
    """Expected minutes of doing the last step again, where what was before it is left: going back takes no less."""
    if len(sequence) < 2:
        return 0.0
    total = 0.0
    for zone, told in enumerate(work.told["zones"]):
        _, each = step_chances(work, sequence[-2:], overcuts[-2:], zone, fates)
        minutes = overcuts[-1] * work.of[sequence[-2]][zone].scratch_um * work.of[sequence[-1]][zone].minutes_per_um
        total += (1 - (1 - each[0, -1]) ** told["area_cm2"]) * (minutes + work.change + EYE["look_minutes"])
    return total


# ---------------------------------------------------------------- the runs


LOOKS = 10


def calibration(seed, count):
    """Of each random job: what the plan of a whole drawer says of the first look, what looks at it show, and what they would
    show on the mean: by the same spots, but without drawing the scratches."""
    for number in range(count):
        random = np.random.default_rng([seed, number])
        sheets = random_sheets(random, int(random.integers(2, 6)))
        work = random_job(random, sheets, 0.1, 400, 0.5)
        plan = levigate.evaluate(work.job, work.stack, [sheet["id"] for sheet in sheets])
        sequence, overcuts = range(len(sheets)), [work.least_overcut()] * len(sheets)
        zones = range(len(work.told["zones"]))
        seen = [looked_at(work, sequence, overcuts, zone, LOOKS, random) for zone in zones]
        names = [zone["name"] for zone in work.told["zones"]]
        fates = Fates(len(sheets), work.cv, 1000, random)
        shown = [step_chances(work, sequence, overcuts, zone, fates)[0][0, -1] for zone in zones]
        area = np.array([zone["area_cm2"] for zone in work.told["zones"]])
        yield dict(
            clean_said=plan.total.clean_chance,
            clean=np.all([zone.spots() == 0 for zone in seen], axis=0),
            clean_mean=np.prod((1 - np.array(shown)) ** area),
            marks_mean=shown * area,
            back_mean=back_minutes(work, sequence, overcuts, fates)[0],
            back_said=plan.total.back_minutes,
            back=sum(climbs(work, sequence, overcuts, z)[seen[z].back_to()] for z in zones),
            marks_said=np.array([plan.zones[name].marks for name in names]),
            marks=np.array([zone.spots() for zone in seen]),
            steps_said=np.array([sum(step.zones[name].marks for name in names) for step in plan.steps]),
            steps=sum(zone.marked.sum(axis=1) for zone in seen),
        )


BATCHES = 20


def choices(seed, count, rough=400, fine=8000):
    """Of each random job: the expected minutes of the plan that is chosen, and of the best of all sequences.

    Sequences are tried in the order of their planned minutes. To go back takes no less than nothing, so none that is planned
    for longer than the best so far is expected to take can be better. Nor can one that is so with the last step done again
    where it fails: that hangs on the last two sheets alone. Those near the best are tried again, on other spots.
    """
    number = made = 0
    while made < count:
        random = np.random.default_rng([seed, number])
        number += 1
        sheets = random_sheets(random, int(random.integers(4, 8)))
        sizes = [float(levigate.grade(sheet["label"]).median_um) for sheet in sheets]
        target = sizes[-1 if random.random() < 0.7 else -2]
        film = float(random.uniform(30, 60)) if random.random() < 0.3 else 400.0
        work = random_job(random, sheets, target, film, 0.2)
        every = sorted(work.sequences(), key=lambda one: work.planned(*one))
        plan = levigate.plan(work.job, work.stack)
        assert plan.found == bool(every), number
        if len(every) < 10:
            continue
        made += 1
        least = work.least_overcut()
        chosen = (
            [next(i for i, s in enumerate(sheets) if s["id"] == step.sheet) for step in plan.steps],
            [step.overcut or least for step in plan.steps],
        )
        assert any(one[0] == chosen[0] and np.allclose(one[1], chosen[1], rtol=1e-9) for one in every), number
        spots = Fates(len(sheets), work.cv, rough, random)
        tried, best, least_back = [], np.inf, {}
        for one in every:
            planned = work.planned(*one)
            if planned > best:
                break
            end = (*one[0][-2:], one[1][-1])
            if end not in least_back:
                least_back[end] = last_again(work, *one, spots)
            if planned + 0.98 * least_back[end] > best:  # the same spots, but other misses
                continue
            tried.append((planned + back_minutes(work, *one, spots)[0], one))
            best = min(best, tried[-1][0])
        spots = Fates(len(sheets), work.cv, fine, random)

        def again(one):
            return work.planned(*one) + back_minutes(work, *one, spots, BATCHES)

        ours = again(chosen)
        near = [again(one) for expected, one in tried if expected <= 1.01 * best]
        other = min(near, key=np.mean)
        off = ours - other
        yield dict(
            number=number - 1,
            sequences=len(every),
            tried=len(tried),
            planned=plan.total.minutes,
            said=plan.total.minutes + plan.total.back_minutes,
            arithmetic=work.planned(*chosen),
            ours=ours.mean(),
            ours_error=ours.std(ddof=1) / np.sqrt(BATCHES),
            best=other.mean(),
            more=off.mean(),
            error=off.std(ddof=1) / np.sqrt(BATCHES),
        )
