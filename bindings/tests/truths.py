"""Jobs at random as a shop tells them, and of each one truth: what lies on the work, and what hand, paper and coat really do.

Drawn with numpy from what is stated: the bands of data/profiles, each a whole range with its value as the median; the tolerances
of grades; the errors of film and peel. The arithmetic of a sequence is written anew from its description. Taken from the library
are the contact of a sheet and what levels a wave (both held to other arithmetic elsewhere), labels, and the bands themselves.
"""

import functools
import json
import math
from dataclasses import dataclass
from pathlib import Path

import levigate
import numpy as np
from marks import numbers
from scipy import optimize

ROOT = Path(__file__).resolve().parents[2]
RULES = numbers("rules")
PAPERS = ["P240", "P280", "P320", "P360", "P400", "P500", "P600", "P800", "P1000", "P1200", "P1500", "P2000", "P2500"]
COATS = [
    "two-part urethane",
    "polyester",
    "uv acrylic",
    "acrylic lacquer",
    "nitrocellulose lacquer",
    "water-borne",
    "shellac",
    "oil varnish",
    "epoxy",
]
HAND = ("force_n", "speed_m_s", "duty")


# ---------------------------------------------------------------- jobs as they are told


def random_drawer(random):
    """Three to eight sheets from coarse to fine: papers, and often a pad, films or a compound at the end."""
    count = int(random.integers(3, 9))
    end = random.choice(["paper", "pad", "film", "compound"], p=[0.3, 0.25, 0.2, 0.25])
    papers = max(2, count - (end != "paper") - (end == "compound" and count > 4))
    first = int(random.integers(0, 4))
    steps = np.cumsum([first, *random.integers(1, 4, papers - 1)])
    names = [PAPERS[i] for i in steps if i < len(PAPERS)]
    if end == "compound":  # which follows fine paper alone
        names = list(dict.fromkeys([*names, "P1000", "P1500", "P2500"]))[:8]
    backing = "cloth" if random.random() < 0.15 else "latex paper"
    sheets = [dict(id=x, label=x, backing=backing, width_mm=230, height_mm=280) for x in names]
    if end == "pad":
        pad = dict(id="pad", label="P3000", backing="foam-backed", block="foam pad")
        sheets.append(pad | dict(width_mm=150, height_mm=115))
    elif end == "film":
        sheets += [dict(id=x, label=x, backing="film", width_mm=216, height_mm=280) for x in ("9 um", "5 um")]
    elif end == "compound":
        for name in ("cutting", "fine") if random.random() < 0.5 else ("cutting",):
            wheel = {"wheel": "loose muslin"} if random.random() < 0.6 else {"block": "foam pad"}
            sheets.append(dict(id=name, label=name, compound=name) | wheel)
    return sheets


@dataclass
class TrueFilm:
    """A film as it is told, and as it is."""

    told: dict
    mean_um: float
    sd_um: float


def normal_error(random, half_um):
    """The stated half-width is that of an even distribution; errors of its standard deviation are drawn from the normal law."""
    return half_um / math.sqrt(3) * random.normal()


def even_error(random, half_um):
    return random.uniform(-half_um, half_um)


def random_film(random, mean_um, error=normal_error):
    """Told by a gauge: the true film first, then what the gauge reads. Else the number first, and the truth about it."""
    how = random.choice(["gauge", "bare gauge", "wet comb", "coats", "stated"])
    sd_um = float(np.exp(random.uniform(np.log(2), np.log(9))))
    if how in ("gauge", "bare gauge"):
        told, bias = {}, 0.0
        if how == "gauge":
            told, gauge = {"gauge": "ultrasonic"}, numbers("gauges", "ultrasonic")
            bias = error(random, gauge["fixed_um"] + gauge["share"] * mean_um)
        readings = random.normal(mean_um + bias, sd_um, int(random.integers(3, 16)))
        told["readings_microns"] = [float(x) for x in np.maximum(0, readings)]
        return TrueFilm(told, mean_um, sd_um)
    if how == "coats":
        coats = int(random.integers(2, 6))
        told = {"coats": coats, "dry_microns_per_coat": mean_um / coats, "sd_um": sd_um}
        half_um = numbers("gauges", "coats counted")["share"] * mean_um
    elif how == "wet comb":
        told, comb = {"mean_um": mean_um, "sd_um": sd_um, "how": "wet comb"}, numbers("gauges", "wet comb")
        half_um = comb["fixed_um"] + comb["share"] * mean_um
    else:
        half_um = float(random.uniform(0, 10))
        told = {"mean_um": mean_um, "sd_um": sd_um, "mean_se_um": half_um / math.sqrt(3)}
    return TrueFilm(told, mean_um + error(random, half_um), sd_um)


def random_zone(random, name, edge_of=None):
    """All but its film."""
    zone = dict(name=name, area_cm2=int(np.exp(random.uniform(np.log(20), np.log(2500)))))
    if edge_of:
        return zone | dict(block="foam pad", edge_of=edge_of)
    blocks = ["hard block", "cork block", "rubber block", "small hard block"]
    return zone | dict(
        block=str(random.choice(blocks, p=[0.5, 0.25, 0.1, 0.15])),
        peel_um=float(random.uniform(3, 40)),
        peel_wavelength_mm=float(random.uniform(2, 4)),
        peel_how=str(random.choice(["by eye", "comparison plate", "profile"])),
    )


def random_job(random, sheets):
    """One to three zones without their films, of which the last may be an edge; few are sanded already."""
    count = int(random.integers(1, 4))
    zones = [random_zone(random, f"zone {i}") for i in range(count)]
    if count > 1 and random.random() < 0.3:
        zones[-1] = random_zone(random, "edge", edge_of="zone 0")
    finest = levigate.Stack(sheets).grades[-1].median_um
    told = dict(name="case", coating=str(random.choice(COATS)), zones=zones, target={"size_um": finest + 1e-3})
    if random.random() < 0.15:
        told["start"] = {"scratched_by": "P220"}
    return told


# ---------------------------------------------------------------- the truth


def within(value, low, high, place):
    """The number at a place of a band, from -1, its low end, to 1, its high end: even in the logarithm on either side."""
    end = high if place > 0 else low
    return value * (end / value) ** abs(place)


class Usual:
    """Every number at its value, and what was told as it was told."""

    still = ()

    def band(self, name, quantity, subject=None):
        return levigate.source(name, quantity).value

    def size_um(self, grade):
        return grade.median_um

    def log_spread(self, grade):
        return grade.log_spread

    def peel_um(self, zone):
        return zone["peel_um"]


class Truth(Usual):
    """Each number drawn once, when it is first asked for. One hand holds all blocks. Kinds that are still keep their values:
    of blocks, wheels and so on."""

    def __init__(self, random, still=()):
        self.random, self.still, self.places = random, still, {}

    def place(self, *key):
        if key not in self.places:
            self.places[key] = self.random.uniform(-1, 1)
        return self.places[key]

    def band(self, name, quantity, subject=None):
        band = levigate.source(name, quantity)
        if subject in self.still or quantity in self.still:
            return band.value
        hand = subject == "block" and quantity in HAND
        return within(band.value, band.low, band.high, self.place("hand" if hand else name, quantity))

    def size_um(self, grade):
        """Over its tolerance; where none is printed, 3 %, and 12 % where the size is extrapolated."""
        if grade.basis == "user" or "grade" in self.still:
            return grade.median_um
        half_um = grade.tolerance_um or grade.median_um * (0.12 if grade.basis == "extrapolated" else 0.03)
        return within(grade.median_um, grade.median_um - half_um, grade.median_um + half_um, self.place(grade.label, "size"))

    def log_spread(self, grade):
        """Known to a quarter."""
        if "grade" in self.still:
            return grade.log_spread
        return grade.log_spread * within(1, 0.75, 1.25, self.place(grade.label, "spread"))

    def peel_um(self, zone):
        if "peel" in self.still:
            return zone["peel_um"]
        key = ("peel of", zone["name"])
        if key not in self.places:
            self.places[key] = self.random.normal()
        return min(1e4, zone["peel_um"] * levigate.source(zone["peel_how"], "factor").value ** self.places[key])


@dataclass
class Face:
    """What presses a sheet: a block, or the rim of a wheel."""

    area_cm2: float
    force_n: float
    speed_m_s: float
    duty: float
    modulus_mpa: float

    @property
    def pressure_kpa(self):
        return 10 * self.force_n / self.area_cm2


@dataclass
class Touch:
    """A sheet in a zone."""

    face: Face
    scratch_um: float
    rq_um: float
    rate_um_per_m: float


@dataclass
class Worked:
    """A sequence: minutes in all, and by zone the depth, and the roughness at the end."""

    minutes: float
    depth_um: dict
    rq_um: dict


@functools.cache
def comes_back(coating):
    """Share of a levelled peel that comes back, 0 where the file of the coating tells none."""
    file = ROOT / "data/profiles/coatings" / f"{coating.replace(' ', '-')}.json"
    return json.loads(file.read_text()).get("shrink_back", {}).get("comes_back", {"value": 0})["value"]


class Arithmetic:
    """A job worked out with the numbers of a truth."""

    def __init__(self, told, sheets, truth):
        self.told, self.truth = told, truth
        self.sheets = {sheet["id"]: sheet for sheet in sheets}
        self.grades = {s["id"]: g for s, g in zip(sheets, levigate.Stack(sheets).grades)}
        coating = told["coating"]
        self.hardness_mpa = truth.band(coating, "hardness_mpa", "coating")
        self.efficiency = truth.band(coating, "cutting_efficiency", "coating")
        self.index = truth.band(coating, "refractive_index", "coating")
        names = ("flank_deg", "packing", "size_exponent", "saturation_um")
        self.flank_deg, self.packing, self.exponent, self.saturation_um = (truth.band("model", q, "model") for q in names)

    def face(self, sheet, zone):
        def block(name, *quantities):
            return [self.truth.band(name, q, "block") for q in quantities]

        def wheel(*quantities):
            return [self.truth.band(sheet["wheel"], q, "wheel") for q in quantities]

        if "wheel" in sheet:
            width_mm, contact_mm, diameter_mm, rpm = wheel("width_mm", "contact_mm", "diameter_mm", "rpm")
            force_n, duty, modulus_mpa = wheel("force_n", "duty", "modulus_mpa")
            speed_m_s = math.pi * diameter_mm / 1000 * rpm / 60
            return Face(width_mm * contact_mm / 100, force_n, speed_m_s, duty, modulus_mpa)
        names = ("area_cm2", "force_n", "speed_m_s", "duty", "modulus_mpa")
        return Face(*block(sheet.get("block", zone["block"]), *names))

    def size_effect(self, size_um):
        return min(1.0, (size_um / self.saturation_um) ** self.exponent)

    def touch(self, sheet, grade, zone, truth):
        face = self.face(sheet, zone)
        size_um = worn_um = truth.size_um(grade)
        backing, share = sheet.get("backing"), 1.0
        kind = "backing"
        if "compound" in sheet:
            backing, kind = sheet["compound"], "compound"
            size_um, worn_um, share = (truth.band(backing, q, kind) for q in ("size_um", "worn_um", "wear_share"))
            worn_um = min(worn_um, size_um)
            floor = self.size_effect(worn_um) / self.size_effect(size_um)
        else:
            floor = truth.band(backing, "floor", kind)
        tip_spread, modulus_mpa, clean_every_m, fade_m = (
            truth.band(backing, q, kind) for q in ("tip_spread", "modulus_mpa", "clean_every_m", "fade_m")
        )
        contact = levigate.contact(
            size_um=worn_um,
            log_spread=truth.log_spread(grade),
            tip_spread=tip_spread,
            modulus_mpa=modulus_mpa,
            pressure_kpa=face.pressure_kpa,
            hardness_mpa=self.hardness_mpa,
            flank_deg=self.flank_deg,
            packing=self.packing,
        )
        wear = share * 2 / math.pi * self.efficiency * math.tan(math.radians(self.flank_deg))
        fresh = 1e3 * wear * self.size_effect(size_um) * face.pressure_kpa / self.hardness_mpa
        x = clean_every_m / fade_m
        rate = fresh * (floor + (1 - floor) * (1 - math.exp(-x)) / x)
        return Touch(face, contact.depth_um(RULES["scratch_quantile"]), contact.rq_um, rate)

    def levelled_um(self, peel_um, zone, face):
        """Of one peel, or of an array of them."""
        return (1 + comes_back(self.told["coating"])) * levigate.levelling_removal_um(
            peel_um=peel_um,
            wavelength_mm=zone["peel_wavelength_mm"],
            modulus_mpa=face.modulus_mpa,
            pressure_kpa=face.pressure_kpa,
            residual_um=RULES["residual_peel_um"],
        )

    def worked(self, steps):
        """The steps of a plan, with their overcuts."""
        minutes = len(steps) * self.truth.band("rule", "change_minutes", "rule")
        depth_um, rq_um = {}, {}
        for zone in self.told["zones"]:
            scratch_um, removed_um, touch = None, 0.0, None
            if "start" in self.told:
                label = self.told["start"]["scratched_by"]
                paper = dict(id=label, backing="latex paper")
                scratch_um = self.touch(paper, levigate.grade(label), zone, self.truth).scratch_um
            for place, step in enumerate(steps):
                sheet = self.sheets[step.sheet]
                touch = self.touch(sheet, self.grades[step.sheet], zone, self.truth)
                if scratch_um is not None:
                    removal_um = step.overcut * scratch_um
                elif place == 0 and "edge_of" in zone:
                    continue  # the step that levels keeps off edges
                elif place == 0:
                    removal_um = self.levelled_um(self.truth.peel_um(zone), zone, touch.face)
                else:
                    removal_um = 0.0
                travel_m = removal_um / touch.rate_um_per_m * zone["area_cm2"] / touch.face.area_cm2
                minutes += travel_m / touch.face.speed_m_s / touch.face.duty / 60
                removed_um += removal_um
                scratch_um = touch.scratch_um
            depth_um[zone["name"]] = removed_um + (scratch_um or 0.0)
            rq_um[zone["name"]] = 0.0 if scratch_um is None else touch.rq_um
        return Worked(minutes, depth_um, rq_um)


def told_as_true(told, sheets, truth):
    """The job and the stack with what is true of coating, blocks, backings, change and peel typed in."""

    def typed(name, subject, *quantities):
        return {q: truth.band(name, q, subject) for q in quantities}

    def block(name):
        names = ("modulus_mpa", "area_cm2", "force_n", "speed_m_s", "duty", "wrap")
        return typed(name, "block", *names) | {"name": f"own {name}"}

    coat = {"kind": "coat"} | typed(told["coating"], "coating", "hardness_mpa", "cutting_efficiency", "refractive_index")
    if comes_back(told["coating"]):
        coat["shrink_back"] = {"comes_back": comes_back(told["coating"]), "rest_h": 0}
    zones = [zone | {"block": block(zone["block"])} for zone in told["zones"]]
    for zone in zones:
        if "peel_um" in zone:
            zone["peel_um"] = truth.peel_um(zone)
    rules = {"change_minutes": truth.band("rule", "change_minutes", "rule")}
    drawer = [dict(sheet) for sheet in sheets]
    for sheet in drawer:
        names = ("tip_spread", "modulus_mpa", "life_m", "clean_every_m", "fade_m", "floor")
        sheet["backing"] = typed(sheet["backing"], "backing", *names) | {"name": f"own {sheet['backing']}"}
        if "block" in sheet:
            sheet["block"] = block(sheet["block"])
    return levigate.Job.from_dict(told | dict(coating=coat, zones=zones, rules=rules)), levigate.Stack(drawer)


# ---------------------------------------------------------------- what a meter reads


def share_within(phase, ratio):
    """Share of the light that a receptor takes in, whose rim is `ratio` times as far out as the images in the flanks."""
    mirror = math.exp(-phase * phase)
    u = phase / 1.8
    gain = (2 * u / (1 + u * u)) ** 3
    far = phase / math.sqrt(-math.expm1(-phase * phase)) * (1 + 0.06 * gain)
    wide = 0.97 * (1 + 0.38 * gain)
    off, rim = math.sqrt(far * far - wide * wide), ratio * phase
    lobes = math.atan((rim + off) / wide) + math.atan((rim - off) / wide)
    lobes += wide / (2 * off) * math.log((wide**2 + (rim + off) ** 2) / (wide**2 + (rim - off) ** 2))
    return mirror + (1 - mirror) * min(1.0, max(0.0, lobes / math.pi))


# of each angle of a meter, what its receptor takes in on either side of the mirror image: in the plane of incidence, and sideways
RECEPTORS = {20: (0.9, 1.8), 60: (2.2, 5.85), 85: (2.0, 3.0)}


def lay_reading_gu(index, rq_um, flank_deg, across, angle_deg=60):
    """What a meter reads across or along the lay, by the formula in the description of meter_reading_gu()."""
    cosine = math.cos(math.radians(angle_deg))
    rim = math.sin(math.radians(RECEPTORS[angle_deg][0 if across else 1])) / (1 if across else cosine)
    ratio = rim / (2 * math.tan(math.radians(flank_deg)))
    phase = 4 * math.pi * rq_um * cosine / 0.55
    smooth = levigate.gloss_gu(refractive_index=index, angle_deg=angle_deg, rq_um=0)
    if rq_um == 0:
        return smooth
    if ratio > 1 and ratio * phase > 1.15:  # beyond the minimum of the share it stays there
        found = optimize.minimize_scalar(
            lambda x: share_within(math.exp(x), ratio), bounds=(math.log(1.15 / ratio), math.log(100)), method="bounded"
        )
        phase = min(phase, math.exp(found.x))
    return smooth * share_within(phase, ratio)


# ---------------------------------------------------------------- one truth against what is said of it


def place(value, interval):
    """Below (-1), in (0) or above (1) an interval of 199 draws.

    Its ends are draws 20 and 180 by size. The truth is as likely to have any of 200 places among the draws, so 160 of these lie
    above the one and not above the other: 80 %, whatever the law, with the error of so few draws in it.
    """
    return -1 if value <= interval.p10 else 1 if value > interval.p90 else 0


DRAWS = 199


def coverage(seed, count, kind=lambda told, sheets: True, error=normal_error):
    """Jobs that have a plan, each with one truth: where minutes, film left and reading of it lie; film and reading of one zone."""
    random = np.random.default_rng(seed)
    found = 0
    while found < count:
        sheets = random_drawer(random)
        told = random_job(random, sheets)
        films = [random_film(random, float(np.exp(random.uniform(np.log(40), np.log(250)))), error) for _ in told["zones"]]
        for zone, film in zip(told["zones"], films):
            zone["film"] = film.told
        told["prefer"] = str(random.choice(["minutes", "film"]))
        if not kind(told, sheets):
            continue
        job, stack = levigate.Job.from_dict(told), levigate.Stack(sheets)
        plan = levigate.plan(job, stack)
        if not plan.found:
            continue
        found += 1
        usual = Arithmetic(told, sheets, Usual()).worked(plan.steps)
        truly = Arithmetic(told, sheets, Truth(random))
        true = truly.worked(plan.steps)
        said = levigate.simulate(job, plan, draws=DRAWS, seed=seed * 10**6 + found)
        at = int(random.integers(len(films)))
        name = told["zones"][at]["name"]
        row = plan.steps[-1].zones[name]
        left_um = films[at].mean_um - true.depth_um[name]
        across = bool(random.integers(2))
        flank_deg = Truth(random).band("model", "flank_deg")
        by_flank = Arithmetic(told, sheets, FlankAlone(flank_deg))
        by_flank_gu = lay_reading_gu(by_flank.index, by_flank.worked(plan.steps).rq_um[name], flank_deg, across)
        simulated = said.steps[-1].zones[name]
        readings = {}
        for angle_deg in RECEPTORS:
            reading_gu = lay_reading_gu(truly.index, true.rq_um[name], truly.flank_deg, across, angle_deg)
            interval = getattr(simulated, f"reading_{angle_deg}_gu")
            readings[f"reading_{angle_deg}"] = place(reading_gu, interval) if row.worked else None
        ids = [step.sheet for step in plan.steps]
        used = [sheet for sheet in sheets if sheet["id"] in ids]
        low, high = row.reading_60.low_gu, row.reading_60.high_gu
        beyond = -1 if by_flank_gu < low * (1 - 1e-6) else 1 if by_flank_gu > high * (1 + 1e-6) else 0
        yield dict(
            sprayed="start" not in told,
            compound=any("compound" in sheet for sheet in used),
            minutes=place(true.minutes, said.minutes),
            film=place(left_um, said.zones[name].film_left_um),
            reading_flank=beyond if row.worked else None,
            **readings,
            arithmetic=max(
                abs(usual.minutes - plan.total.minutes),
                abs(usual.depth_um[name] - row.depth_um),
                abs(mean_reading_gu(job, usual.rq_um[name]) - row.reading_60.expected_gu) if row.worked else 0,
            ),
        )


class FlankAlone(Usual):
    """Every number at its value but the flank."""

    def __init__(self, flank_deg):
        self.flank_deg = flank_deg

    def band(self, name, quantity, subject=None):
        return self.flank_deg if quantity == "flank_deg" else super().band(name, quantity, subject)


def mean_reading_gu(job, rq_um):
    flank_deg = levigate.source("model", "flank_deg").value
    return sum(lay_reading_gu(job.coating.refractive_index, rq_um, flank_deg, across) for across in (True, False)) / 2


# ---------------------------------------------------------------- cutting through, spot by spot


def thinnest_um(random, mean_um, sd_um, depth_um, spots):
    """The least that is left of any spot: film and evenness of each drawn, of as many zones as there are depths."""
    shape = (len(depth_um), spots)
    film_um = mean_um[:, None] + sd_um[:, None] * random.normal(size=shape)
    return (film_um - depth_um[:, None] * (1 + RULES["removed_cv"] * random.normal(size=shape))).min(axis=1)


def films_by(random, film, count):
    """Mean and spread as they may be, by the description of CommonErrors."""
    sd_um, error_um = np.full(count, film.sd_um), np.full(count, film.mean_se_um)
    if film.readings:
        df = film.readings - 1
        sd_um = film.sd_um * np.sqrt(df / random.chisquare(df, count))
        of_spots = film.sd_um**2 / film.readings
        error_um = np.sqrt(film.mean_se_um**2 + of_spots * ((sd_um / film.sd_um) ** 2 - 1))
    return film.mean_um + error_um * random.normal(size=count), sd_um


def random_sequence(random, sheets):
    """A job whose films suit a sequence so that chances from 0 to 1 occur; and the true films."""
    told = random_job(random, sheets)
    papers = [sheet["id"] for sheet in sheets if "compound" not in sheet]
    some = sorted(random.choice(len(papers), min(len(papers), int(random.integers(1, 5))), replace=False))
    sequence = [papers[i] for i in some]
    for zone in told["zones"]:
        zone["area_cm2"] = int(np.exp(random.uniform(np.log(5), np.log(300))))
        zone["film"] = {"mean_um": 1000, "sd_um": 1}
    plan = levigate.evaluate(levigate.Job.from_dict(told), levigate.Stack(sheets), sequence)
    films = []
    for zone in told["zones"]:
        depth_um = plan.steps[-1].zones[zone["name"]].depth_um
        spread_um = math.hypot(5, RULES["removed_cv"] * depth_um)
        spare_um = max(4.0, depth_um + random.uniform(-0.5, 4.5) * spread_um)
        films.append(random_film(random, RULES["reserve_um"] + spare_um))
        zone["film"] = films[-1].told
    return told, sequence, films


def chances(seed, count, truths, draws=0):
    """Zones, each with its chance of cutting through and how many of its truths are: films and peels drawn by their laws.

    With draws also the chance by so many draws of simulate(), and whether one truth in which every number is drawn is cut through.
    """
    random = np.random.default_rng(seed)
    for number in range(count):
        sheets = random_drawer(random)
        told, sequence, films = random_sequence(random, sheets)
        try:
            job = levigate.Job.from_dict(told)
        except levigate.BadInput as error:  # readings that leave nothing to remove
            assert "nothing may be removed" in str(error)
            continue
        plan = levigate.evaluate(job, levigate.Stack(sheets), sequence)
        usual = Arithmetic(told, sheets, Usual())
        if draws:
            said = levigate.simulate(job, plan, draws=draws, seed=seed * 10**6 + number)
            true = Arithmetic(told, sheets, Truth(random)).worked(plan.steps)
        for zone, of_job, film in zip(told["zones"], job.zones, films):
            row = plan.steps[-1].zones[zone["name"]]
            depth_um = np.full(truths, row.depth_um)
            if "start" not in told and "edge_of" not in zone:
                face = usual.face(usual.sheets[sequence[0]], zone)
                factor = levigate.source(zone["peel_how"], "factor").value
                peel_um = np.minimum(1e4, zone["peel_um"] * factor ** random.normal(size=truths))
                depth_um += usual.levelled_um(peel_um, zone, face) - usual.levelled_um(zone["peel_um"], zone, face)
            mean_um, sd_um = films_by(random, of_job.film, truths)
            left_um = thinnest_um(random, mean_um, sd_um, depth_um, zone["area_cm2"])
            result = dict(said=row.cut_through, cut=int(np.sum(left_um < RULES["reserve_um"])), truths=truths)
            if draws:
                one = (np.array([x]) for x in (film.mean_um, film.sd_um, true.depth_um[zone["name"]]))
                cut = thinnest_um(random, *one, zone["area_cm2"])[0] < RULES["reserve_um"]
                result |= dict(simulated=said.zones[zone["name"]].cut_through.share, truly=bool(cut))
            yield result
