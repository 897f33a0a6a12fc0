"""The paper on hand as a finisher tells it: a line of labels, or a table from a spreadsheet."""

from __future__ import annotations

import csv
import importlib
import io
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import levigate

from ._words import CM, LENGTH, LENGTH_WORDS, NUMBER, Unclear, number, plain, unit_of

LABEL = re.compile(
    rf"(?:(?:fepa|iso)\s*)?[pf]\s?\d+|(?:cami|ansi|jis|fepa)\s*[#pf]?\s?\d+|#\s?\d+|(?:{NUMBER})\s*(?:µm|μm|um|microns?|mic)\b|(?:grit\s*)?\d+(?:\s*grit)?(?![\w/])",
    re.IGNORECASE,
)
COUNT = re.compile(
    r"(?<![\w.])(?:[x*]\s?(?P<a>\d+(?:\.\d+)?)|(?P<b>\d+(?:\.\d+)?)\s?[x*]|(?P<c>\d+(?:\.\d+)?)\s*(?:sheets?|pcs|pieces|pads?(?=\s+of)))(?![\w.])(?:\s+of\b)?",
    re.IGNORECASE,
)
PAD = "foam pad"  # the tool that a foam-backed sheet is
SYSTEM_WORDS = {
    "FEPA P": "fepa p fepap fepa p-grade european",
    "CAMI": "cami ansi us american",
    "JIS": "jis # japanese",
    "FEPA F": "f fepa-f fepaf",
    "micron": "micron microns um",
}


@dataclass
class Piece:
    """One kind of abrasive, as far as it was told."""

    label: str
    maker: str = ""
    backing: str = ""
    tool: dict[str, str] = field(default_factory=dict)
    compound: str = ""
    on_hand: float | None = None
    price: float | None = None
    sides_mm: tuple[float, float] | None = None
    system: str | None = None
    taken_for_p: bool = False  # a pad printed 3000

    def is_open(self) -> bool:
        """Whether its label can belong to several systems."""
        return not self.compound and self.system is None and levigate.read_label(self.label).ambiguous

    def member(self, id_: str) -> dict[str, Any]:
        """The piece as a sheet of a stack."""
        sheet: dict[str, Any] = {"id": id_, "maker": self.maker, "label": self.label}
        if self.system:
            sheet["system"] = self.system
        if self.compound:
            sheet["compound"] = self.compound
        else:
            sheet["backing"] = self.backing
        sheet.update(self.tool)
        sides = self.sides_mm
        if not self.compound:
            usual = [levigate.source(self.backing, side).value for side in ("width_mm", "height_mm")]
            sheet["width_mm"], sheet["height_mm"] = sides or usual
        if self.on_hand is not None:
            sheet["on_hand"] = self.on_hand
        if self.price is not None:
            sheet["price"] = self.price
        return sheet


def named(kind: str, word: str) -> str | None:
    """The profile that a word means, if it means one."""
    try:
        return levigate.profile_called(kind, word).name
    except levigate.BadInput:
        return None


def take_words(piece: Piece, text: str) -> str:
    """Takes the words for a backing or pad out of a text. What is left of it is the maker."""
    words = text.split()
    for length in range(len(words), 0, -1):
        for at in range(len(words) - length + 1):
            phrase = " ".join(words[at : at + length])
            if backing := named("backing", phrase):
                set_backing(piece, backing)
                return " ".join(words[:at] + words[at + length :])
    return " ".join(words)


def set_backing(piece: Piece, backing: str) -> None:
    piece.backing = backing
    if backing == "foam-backed" and not piece.tool:
        piece.tool = {"block": PAD}


def tool_called(text: str) -> dict[str, str]:
    """What drives a compound: a wheel, a machine, or a pad in the hand."""
    for kind in ("wheel", "machine", "block"):
        if name := named(kind, text):
            return {kind: name}
    known = [one.name for kind in ("wheel", "machine", "block") for one in levigate.profiles(kind)]
    raise Unclear(f"'{text}' is no wheel, machine or pad. Known are {', '.join(known)}.")


def compound_of(text: str) -> Piece | None:
    """'fine compound on muslin wheel'; None where the text tells no compound."""
    told = re.fullmatch(r"(.+?)\s+(?:on|with|by)\s+(?:an?\s+|the\s+)?(.+)", text)
    name = named("compound", told[1] if told else text)
    if not name:
        return None
    if not told:
        raise Unclear(f"On what do you use {name} compound? Say it as {name} compound on loose muslin, or on a foam pad.")
    return Piece(name, compound=name, tool=tool_called(told[2]))


def piece(text: str) -> Piece:
    """One kind of sheet from words, such as 'P400 x4', '#800 Maker C', '3000 pad'."""
    words = plain(text)
    if found := compound_of(words):
        return found
    count = COUNT.search(words)
    if count:
        words = (words[: count.start()] + " " + words[count.end() :]).strip()
    label = LABEL.search(words)
    if not label:
        raise Unclear(f"'{text.strip()}' has no label such as P400, #800 or 9 um.")
    read = Piece(" ".join(label[0].split()))
    rest = (words[: label.start()] + " " + words[label.end() :]).strip()
    read.maker = take_words(read, rest).strip(" :()-")
    if re.search(r"\d", read.maker):
        raise Unclear(f"'{text.strip()}': what is '{read.maker}'? Say a label, then x and a count, then the maker.")
    read.on_hand = float(next(one for one in count.groupdict().values() if one)) if count else None
    return settled(read)


def settled(read: Piece) -> Piece:
    """The piece with its label as the library reads it. A pad sold as 3000 is P3000."""
    if not read.compound:
        set_backing(read, read.backing or "latex paper")
        bare = re.fullmatch(r"(?:grit\s*)?(\d+)(?:\s*grit)?", read.label, re.IGNORECASE)
        if bare:
            read.label = bare[1]
        if read.label == "3000" and read.backing == "foam-backed" and not read.system:
            read.label, read.taken_for_p = "P3000", True
        try:
            if read.system:
                levigate.grade(read.label, bare=read.system)
            else:
                levigate.read_label(read.label)
        except levigate.Error as error:
            raise Unclear(str(error)) from None
    return read


def pieces(text: str) -> list[Piece]:
    """All kinds of a line, between commas."""
    found = [piece(one) for one in re.split(r"[,;\n]", text) if one.strip()]
    if not found:
        raise Unclear("No paper was told. Say it as P400 x4, 3000 pad, #800 Maker C.")
    return found


def system_called(text: str) -> str:
    words = " ".join(text.lower().split())
    for system, known in SYSTEM_WORDS.items():
        if words == system.lower() or words in known.split():
            return system
    raise Unclear(f"'{text.strip()}' is no system. Known are {', '.join(SYSTEM_WORDS)}.")


# ---- a table

COLUMNS = {
    "label": "label grit paper grade number gritnumber printed",
    "system": "system scale numbering",
    "maker": "maker brand make manufacturer",
    "on_hand": "sheets count onhand quantity qty stock pieces pcs sheetsonhand",
    "price": "price cost pricepersheet each unitprice",
    "size": "size format sheetsize",
    "width_mm": "width",
    "height_mm": "height length",
    "backing": "backing carrier material",
    "kind": "kind type",
    "tool": "tool wheel machine block",
}
BARE_SIDE_MM = (40, 600)


def lines_of_text(data: bytes) -> Iterator[tuple[int, list[str]]]:
    """The lines of a table as text, each with its number."""
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        text = data.decode("utf-16")
    else:
        try:
            text = data.decode("utf-8-sig")
        except UnicodeDecodeError:
            text = data.decode("cp1252", errors="replace")
    lines = text.splitlines()
    skip = 1 if lines and re.fullmatch(r"sep=.", lines[0].strip()) else 0
    head = next((line for line in lines[skip:] if line.strip()), "")
    delimiter = max(";\t,", key=head.count)
    reader = csv.reader(io.StringIO("\n".join(lines[skip:])), delimiter=delimiter)
    for row in reader:
        yield reader.line_num + skip, row


def lines_of_workbook(path: Path) -> tuple[list[tuple[int, list[str]]], list[str]]:
    """The lines of a workbook's first sheet, and what is said of others."""
    try:
        openpyxl: Any = importlib.import_module("openpyxl")
    except ImportError:
        raise Unclear("A workbook needs pip install 'levigate[spreadsheet]'. Or save it as CSV.") from None
    try:
        book = openpyxl.load_workbook(path, read_only=True, data_only=True)
    except Exception as error:  # of many kinds, by what is broken
        raise Unclear(f"{path} is no workbook that can be read: {error}") from None
    first = book.worksheets[0]
    rows = enumerate(first.iter_rows(values_only=True), start=1)
    said = [f"Only the sheet '{first.title}' of {path.name} is read."] if len(book.worksheets) > 1 else []
    return [(at, [cell_text(cell) for cell in row]) for at, row in rows], said


def cell_text(cell: Any) -> str:
    if cell is None:
        return ""
    return f"{cell:g}" if isinstance(cell, float) else str(cell)


def heading(text: str) -> tuple[str, str]:
    """A heading without its unit, folded, and the unit."""
    unit = ""
    words = plain(text).lower()
    if told := re.fullmatch(rf"(.+?)[\s_]*[(\[,_ ]\s*({LENGTH})\s*[)\]]?", words):
        words, unit = told[1], unit_of(told[2], LENGTH_WORDS)
    return re.sub(r"[^a-z]", "", words), unit


def columns_of(row: list[str], where: str) -> tuple[dict[str, tuple[int, str]], list[str]]:
    """Which member stands in which column, with its unit, and headings that no member has."""
    found: dict[str, tuple[int, str]] = {}
    unused = []
    for at, text in enumerate(row):
        folded, unit = heading(text)
        member = next((name for name, words in COLUMNS.items() if folded in words.split()), None)
        if member is None:
            if text.strip():
                unused.append(text.strip())
            continue
        if member in found:
            raise Unclear(f"{where}: columns '{row[found[member][0]].strip()}' and '{text.strip()}' both tell the {member}.")
        found[member] = (at, unit)
    if "label" not in found:
        raise Unclear(f"{where}: no column is headed label, grit or paper. Its headings are {', '.join(filter(None, map(str.strip, row)))}.")
    return found, unused


def side_mm(text: str, unit: str) -> float:
    told = re.fullmatch(rf"({NUMBER})\s*({LENGTH})?", plain(text).lower())
    if not told:
        raise Unclear(f"'{text}' is no length")
    unit = unit_of(told[2], LENGTH_WORDS) if told[2] else unit
    value = number(told[1])
    if not unit and not BARE_SIDE_MM[0] <= value <= BARE_SIDE_MM[1]:
        raise Unclear(f"'{text}' may be in mm, cm or inch. Say the unit in the heading")
    return value * (10 * CM[unit] if unit else 1.0)


def sides_mm(text: str, unit: str) -> tuple[float, float]:
    told = re.fullmatch(rf"((?:{NUMBER})\s*(?:{LENGTH})?)\s*(?:x|by|\*)\s*((?:{NUMBER})\s*({LENGTH})?)", plain(text).lower())
    if not told:
        raise Unclear(f"'{text}' is no size such as 230x280")
    unit = unit_of(told[3], LENGTH_WORDS) if told[3] else unit
    return side_mm(told[1], unit), side_mm(told[2], unit)


def row_piece(cells: dict[str, str], units: dict[str, str], headings: dict[str, str], at: str) -> Piece:
    """A row of a table. What is wrong names line and column."""
    done = "label"
    try:
        read = Piece(cells["label"], maker=cells.get("maker", ""))
        if text := cells.get(done := "system", ""):
            read.system = system_called(text)
        for done in ("on_hand", "price"):
            if text := cells.get(done, ""):
                value = number(re.sub(r"\s*(sheets?|pcs|pieces|eur|usd|gbp|[€$£])\s*", "", text, flags=re.IGNORECASE))
                setattr(read, done, value)
        if text := cells.get(done := "size", ""):
            read.sides_mm = sides_mm(text, units.get("size", ""))
        sides = []
        for done in ("width_mm", "height_mm"):
            if text := cells.get(done, ""):
                sides.append(side_mm(text, units[done]))
        if sides:
            if len(sides) == 1 or read.sides_mm:
                raise Unclear("width and height go together, without a size")
            read.sides_mm = (sides[0], sides[1])
        if text := cells.get(done := "tool", ""):
            read.tool = tool_called(text)
        if text := cells.get(done := "backing", ""):
            set_backing(read, levigate.profile_called("backing", text).name)
        if text := cells.get(done := "kind", ""):
            take_kind(read, text)
        done = "label"
        return whole_label(read)
    except (Unclear, levigate.Error) as error:
        raise Unclear(f"{at}, column '{headings[done]}': {str(error).rstrip('.')}.") from None


def take_kind(read: Piece, text: str) -> None:
    if re.fullmatch(r"compounds?|polish(es)?|paste", text.strip().lower()):
        read.compound = levigate.profile_called("compound", read.label).name
        read.label = read.compound
        if not read.tool:
            raise Unclear("a compound needs a column 'tool', such as loose muslin or foam pad")
        return
    backing = levigate.profile_called("backing", text).name
    if read.backing and read.backing != backing:
        raise Unclear(f"'{text}' and the backing '{read.backing}' differ")
    set_backing(read, backing)


def whole_label(read: Piece) -> Piece:
    """A label may have the words for pad or film beside it."""
    if read.compound:
        return read
    label = LABEL.search(read.label)
    if not label:
        raise Unclear(f"'{read.label}' is no label such as P400, #800 or 9 um")
    rest = (read.label[: label.start()] + " " + read.label[label.end() :]).strip(" :()-")
    read.label = " ".join(label[0].split())
    if rest and take_words(read, rest):
        raise Unclear(f"what is '{rest}' beside {read.label}?")
    return settled(read)


def table(lines: Iterable[tuple[int, list[str]]], file: str) -> tuple[list[Piece], list[str]]:
    """The pieces of a table, and what is said of columns that are not used."""
    found: dict[str, tuple[int, str]] = {}
    headings: dict[str, str] = {}
    unused: list[str] = []
    read = []
    for line, row in lines:
        if not any(cell.strip() for cell in row):
            continue
        if not found:
            found, unused = columns_of(row, f"{file}, line {line}")
            headings = {name: row[at].strip() for name, (at, _) in found.items()}
            continue
        cells = {name: row[at].strip() if at < len(row) else "" for name, (at, _) in found.items()}
        if not cells["label"]:
            raise Unclear(f"{file}, line {line}, column '{headings['label']}': it is empty.")
        units = {name: unit for name, (_, unit) in found.items()}
        read.append(row_piece(cells, units, headings, f"{file}, line {line}"))
    if not read:
        raise Unclear(f"{file} lists no paper.")
    return read, [f"Column '{column}' is not used." for column in unused]


def drawer(path: Path) -> tuple[list[Piece], list[str]]:
    """The pieces of a file, and what is said of parts that are not used."""
    if path.suffix.lower() == ".xlsx":
        if not path.is_file():
            raise Unclear(f"{path} is not there.")
        lines, said = lines_of_workbook(path)
        pieces, unused = table(lines, path.name)
        return pieces, said + unused
    try:
        data = path.read_bytes()
    except OSError as error:
        raise Unclear(f"{path}: {error.strerror}.") from None
    return table(lines_of_text(data), path.name)
