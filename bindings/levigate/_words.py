"""What a finisher says of a piece, as numbers: sizes, edges, film, peel and the end."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Any

import levigate


class Unclear(Exception):
    """An answer that can mean several things, or none. The message asks back."""


NUMBER = r"\d+(?:[.,]\d+)?|[.,]\d+"
CM = {"mm": 0.1, "cm": 1.0, "dm": 10.0, "m": 100.0, "in": 2.54, "ft": 30.48}
UM = {"um": 1.0, "mil": 25.4}
LENGTH_WORDS = {
    "mm": "millimetres? millimeters? mm",
    "cm": "centimetres? centimeters? cm",
    "dm": "dm",
    "m": "metres? meters? m",
    "in": "inch(?:es)? in\\. in \"",
    "ft": "foot feet ft\\. ft '",
}
UM_WORDS = {"um": "micrometres? micrometers? microns? µm μm um my", "mil": "mils? thou"}
LENGTH = "|".join(word for words in LENGTH_WORDS.values() for word in words.split())
THICKNESS = "|".join(word for words in UM_WORDS.values() for word in words.split())
SIDES = re.compile(rf"({NUMBER})\s*({LENGTH})?\s*(?:x|by|\*)\s*({NUMBER})\s*({LENGTH})?\s*$")
AREA = re.compile(rf"({NUMBER})\s*(?:(?:(square|sq\.?)\s*)?({LENGTH})\s*(2|\^2)?)?\s*$")
COUNTS = dict(zip("one two three four five six seven eight nine ten eleven twelve".split(), range(1, 13)))

# What a person may leave without a unit. Beyond that it is asked back.
BARE_SIDE_CM, BARE_AREA_CM2, BARE_FILM_UM, BARE_PEEL_UM = (1, 400), (5, 50_000), (15, 1500), (2, 200)


def number(text: str) -> float:
    """A number with a full stop or a decimal comma."""
    text = text.strip()
    if re.fullmatch(r"\d{1,3}(,\d{3})+", text):
        raise Unclear(f"'{text}' can be a thousand or a decimal comma. Write {text.replace(',', '')} or {text.replace(',', '.')}.")
    if not re.fullmatch(NUMBER, text):
        raise Unclear(f"'{text}' is no number.")
    return float(text.replace(",", "."))


def unit_of(word: str, words: dict[str, str]) -> str:
    for unit, known in words.items():
        if re.fullmatch("|".join(known.split()), word):
            return unit
    raise Unclear(f"The unit '{word}' is not known.")


def plain(text: str) -> str:
    return " ".join(text.replace("×", "x").replace("²", "2").replace("”", '"').replace("’", "'").split())


@dataclass
class Size:
    """How large a zone is, and how long the line round it."""

    area_cm2: float
    outline_cm: float
    square: bool = False  # the outline is that of a square, as nobody told the sides


def size(text: str) -> Size:
    """Length by width, or an area."""
    text = plain(text).lower()
    if re.search(rf"(?:{NUMBER})\s*(?:{LENGTH})?\s*(?:x|by|\*).*(?:x|by|\*)", text):
        raise Unclear(f"'{text}' has more than two sides. A zone is length by width, or an area.")
    if sides := SIDES.fullmatch(text):
        units = [unit_of(word, LENGTH_WORDS) for word in (sides[2], sides[4]) if word]
        cm = [number(sides[1]), number(sides[3])]
        if not units:
            for side in cm:
                if not BARE_SIDE_CM[0] <= side <= BARE_SIDE_CM[1]:
                    raise Unclear(f"Is {sides[1]} by {sides[3]} in mm, cm, inch or m? Say the unit, such as {sides[1]}x{sides[3]} mm.")
        a, b = (side * CM[unit] for side, unit in zip(cm, units * 2 if len(units) == 1 else units or ["cm", "cm"]))
        return Size(round(a * b, 3), 2 * (a + b))
    area = AREA.fullmatch(text)
    if not area:
        raise Unclear(f"'{text}' is no size. Say it as 60x90 cm, 2.5 ft2 or 540, which is cm2.")
    if area[3] and not (area[2] or area[4]):
        raise Unclear(f"'{text}' is a length. Say length by width, such as 60x90 cm, or an area, such as 540 cm2.")
    value = number(area[1])
    if not area[3] and not BARE_AREA_CM2[0] <= value <= BARE_AREA_CM2[1]:
        guess = "m2 or ft2" if value < BARE_AREA_CM2[0] else "mm2"
        raise Unclear(f"Is {area[1]} in cm2, or in {guess}? Say the unit, such as {area[1]} {guess.split()[0]}.")
    cm2 = value * CM[unit_of(area[3], LENGTH_WORDS)] ** 2 if area[3] else value
    return Size(round(cm2, 3), 4 * float(cm2) ** 0.5, square=True)


def radius_mm(text: str) -> float | None:
    """How round an edge is; None: there is no edge to mind."""
    words = re.sub(r"\b(edges?|radius|of|with|all|to mind)\b", " ", plain(text).lower())
    words = " ".join(words.split())
    if words in ("no", "none", "n", "without"):
        return None
    if words in ("sharp", "crisp"):
        return 0.0
    if words in ("eased", "rounded", "round", "broken", "soft", "y", "yes"):
        if words in ("y", "yes"):
            raise Unclear("Are the edges sharp or eased?")
        return float(levigate.source("edge", "eased_radius_mm").value)
    if told := re.fullmatch(rf"({NUMBER})\s*({LENGTH})", words):
        return number(told[1]) * 10 * CM[unit_of(told[2], LENGTH_WORDS)]
    raise Unclear(f"Edges '{text.strip()}': say none, sharp, eased, or a radius such as 3 mm.")


@dataclass
class FilmTold:
    """What a person knows of a film: coats, or readings of a gauge."""

    coats: int = 0
    dry_um_per_coat: float | None = None
    readings_um: list[float] = field(default_factory=list)

    def needs_coat(self) -> bool:
        return self.coats > 0 and self.dry_um_per_coat is None


def film(text: str) -> FilmTold:
    """'3 coats', '3 coats of 35 um', or readings as '88 97 92 um' or '3.5 3.7 mil'."""
    words = re.sub(r"^(film|gauge|readings?|read)\b[:\s]*", "", plain(text).lower())
    counted = re.fullmatch(rf"(\d+|{'|'.join(COUNTS)})\s*coats?(?:\s*(?:of|at|with|x)?\s+((?:{NUMBER}).*))?", words)
    if counted:
        coats = COUNTS.get(counted[1]) or int(counted[1])
        if not 1 <= coats <= 60:
            raise Unclear(f"{coats} coats? Say how many coats the last round has, from 1 to 60.")
        return FilmTold(coats, coat_um(counted[2]) if counted[2] else None)
    told = re.fullmatch(rf"([\d.,;\s]+?)\s*({THICKNESS})?", words)
    if not told:
        raise Unclear(f"'{text.strip()}' is neither coats nor readings. Say 3 coats, or readings such as 88 97 92 um or 3.5 3.7 mil.")
    if re.search(r"\d,\d", told[1]):
        raise Unclear("Separate readings with spaces, and write decimals with a full stop, such as 88 97.5 92 um.")
    values = [number(one) for one in re.split(r"[\s,;]+", told[1].strip(" ,;"))]
    if not told[2]:
        if len(values) == 1 and values[0] == int(values[0]) and values[0] <= 20:
            raise Unclear(f"Is {values[0]:g} the number of coats? Say '{values[0]:g} coats' or '{values[0]:g} um'.")
        low, high = BARE_FILM_UM
        if not all(low <= value <= high for value in values):
            raise Unclear(f"Is {told[1]} in um or in mil? Say the unit, such as {told[1]} mil.")
    factor = UM[unit_of(told[2], UM_WORDS)] if told[2] else 1.0
    return FilmTold(readings_um=[round(value * factor, 3) for value in values])


def coat_um(text: str) -> float:
    """Dry film of a coat."""
    told = re.fullmatch(rf"({NUMBER})\s*({THICKNESS})?(?:\s*(?:each|dry|a coat|per coat))*", plain(text).lower())
    if not told:
        raise Unclear(f"'{text.strip()}' is no film of a coat. Say it as 35 um or 1.4 mil.")
    value = number(told[1])
    if not told[2] and not 3 <= value <= 300:
        raise Unclear(f"Is {told[1]} in um or in mil? Say the unit, such as {told[1]} mil.")
    return value * (UM[unit_of(told[2], UM_WORDS)] if told[2] else 1.0)


@dataclass
class ZoneTold:
    name: str
    size: Size
    radius_mm: float | None = None
    edges_told: bool = False
    film: FilmTold | None = None


def zone(text: str) -> ZoneTold:
    """'top 30x18 cm' or '2 doors 60x50 cm', with ', eased edges' and ', film 88 97 92 um' if one likes."""
    first, *rest = [part.strip() for part in re.split(r";|,\s+", plain(text)) if part.strip()] or [""]
    lower = first.lower()
    sides = SIDES.search(lower) or AREA.search(lower)
    name = first[: sides.start()].strip(" :=-") if sides else ""
    if not sides or not name:
        raise Unclear(f"'{first}' needs a name and a size, such as top 30x18 cm.")
    if re.search(r"\d\s*\w*\s*(x|by|\*)$", name.lower()):
        raise Unclear(f"'{first}' has more than two sides. For several alike, say 2 doors 60x50 cm.")
    if re.search(r"\d\s*[^\W\d]{2,4}$|\d\s*[\"']$", name):
        raise Unclear(f"The unit in '{first}' is not known. Known are mm, cm, dm, m, inch and ft.")
    told = ZoneTold(name, size(first[sides.start() :]))
    if alike := re.match(rf"(\d+|{'|'.join(COUNTS)})\s", name.lower()):
        count = COUNTS.get(alike[1]) or int(alike[1])
        if count > 1 and told.size.square:
            raise Unclear(f"Is that the area of one, or of all {count}? Say one as length by width, or leave the {alike[1]} out for all.")
        told.size = Size(count * told.size.area_cm2, count * told.size.outline_cm)
    for part in rest:
        if re.search(r"film|coats?\b|gauge|readings?", part.lower()):
            told.film = film(part)
        else:
            told.radius_mm, told.edges_told = radius_mm(part), True
    return told


def peel(text: str) -> float:
    """Height of orange peel, from a word or a number [um]."""
    words = plain(text).lower()
    if words in ("none", "no", "flat"):
        return 0.0
    if told := re.fullmatch(rf"({NUMBER})\s*({THICKNESS})?", words):
        value = number(told[1])
        if not told[2] and value and not BARE_PEEL_UM[0] <= value <= BARE_PEEL_UM[1]:
            raise Unclear(f"Is {told[1]} in um or in mil? Say the unit, such as {told[1]} mil.")
        return value * (UM[unit_of(told[2], UM_WORDS)] if told[2] else 1.0)
    return float(levigate.source(levigate.profile_called("peel", words).name, "peel_um").value)


# What a finisher calls the end, with the target that the library knows for it.
ENDS: list[tuple[str, str, dict[str, Any]]] = [
    ("satin", "satin", {"sheen": {"scheme": "institute", "name": "satin"}}),
    ("semi-gloss", "semi-gloss", {"sheen": {"scheme": "institute", "name": "semi-gloss"}}),
    ("full gloss", "full gloss, with compound on a wheel or pad", {"sheen": {"scheme": "institute", "name": "high gloss"}}),
    ("ready to buff", "ready to buff: fine enough for a medium compound", {}),
]
END_WORDS = {"semigloss": 1, "semi gloss": 1, "high gloss": 2, "mirror": 2, "buff": 3, "ready for compound": 3}


def end(text: str) -> dict[str, Any]:
    """The target of a job: a name of sheen, a grain, or a reading of a glossmeter."""
    words = plain(text).lower()
    names = [name for name, _, _ in ENDS]
    at = int(words) - 1 if re.fullmatch("[1-4]", words) else END_WORDS.get(words, -1)
    if words in names:
        at = names.index(words)
    if words == "gloss":
        return {"sheen": {"scheme": "institute", "name": "gloss"}}
    if at == 3:
        return {"size_um": levigate.source("medium", "coarsest_paper_um").value}
    if at >= 0:
        return ENDS[at][2]
    if told := re.fullmatch(rf"({NUMBER})\s*gu", words):
        return {"gloss_gu": number(told[1])}
    if told := re.fullmatch(rf"({NUMBER})\s*(um|µm|microns?)", words):
        return {"size_um": number(told[1])}
    try:
        reading = levigate.read_label(text.strip())
    except levigate.UnknownGrade:
        raise Unclear(f"'{text.strip()}' is no end. Say {', '.join(names)}, or a grain such as P2000 or 8 um.") from None
    if reading.ambiguous:
        labels = ", ".join(grade.label for grade in reading.candidates)
        raise Unclear(f"'{text.strip()}' can be {labels}. Say which.")
    return {"grade": reading.candidates[0].label}
