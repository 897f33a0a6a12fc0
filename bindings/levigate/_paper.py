"""Questions on the paper on hand, and the stack that the answers make."""

from __future__ import annotations

import argparse
import re
import sys
from pathlib import Path
from typing import Any

import levigate

from . import _paper_list
from ._ask import Questions, say
from ._files import PIPE, PIPE_NAME
from ._words import Unclear


def paper_called(text: str) -> list[_paper_list.Piece]:
    """A line of labels, or the name of a file."""
    if re.search(r"\.(csv|xlsx|txt|tsv)$", text.strip(), re.IGNORECASE):
        return drawer_read(text)
    return _paper_list.pieces(text)


def drawer_read(text: str) -> list[_paper_list.Piece]:
    if text.strip() == PIPE:
        pieces, unused = _paper_list.table(_paper_list.lines_of_text(piped()), PIPE_NAME)
    else:
        pieces, unused = _paper_list.drawer(Path(text.strip()).expanduser())
    for line in unused:
        say(line)
    return pieces


def piped() -> bytes:
    if sys.stdin.isatty():
        raise Unclear("Standard input is a terminal. Give a list there, or name its file.")
    return sys.stdin.buffer.read()


def stack_told(given: argparse.Namespace, ask: Questions, gloss: bool, usual: list[str]) -> dict[str, Any]:
    if given.drawer is not None:
        pieces = ask("drawer", given.drawer, "", drawer_read)
    else:
        pieces = ask(
            "paper",
            given.paper,
            "What is printed on your paper? Say labels between commas, or the name of a CSV file.\n"
            "Such as: P400 x4, P800 film, #800 Maker C, 3000 pad. Without x4 there is enough of it.",
            paper_called,
        )
    if given.compound is not None or (gloss and not any(piece.compound for piece in pieces)):
        pieces += ask(
            "compound",
            given.compound,
            "With which compounds do you buff, and on what? Known are "
            f"{', '.join(one.name for one in levigate.profiles('compound'))}.\n"
            "Such as: fine on loose muslin, ultra-fine on a foam pad",
            compounds_called,
        )
    settle_bare(pieces, given.bare or [], ask)
    if any(not piece.sides_mm and not piece.compound for piece in pieces):
        usual.append("A sheet without a size has the usual size of its backing.")
    if any(piece.taken_for_p for piece in pieces):
        usual.append("A foam pad printed 3000 is P3000.")
    if any(piece.on_hand is None for piece in pieces):
        usual.append("Of paper without a count there is enough.")
    ids: list[str] = []
    for piece in pieces:
        ids.append(id_of(piece, ids))
    sheets = [piece.member(id_) for piece, id_ in zip(pieces, ids)]
    return {"format": "levigate.stack/1", "bare_number": "ask", "sheets": sheets}


def compounds_called(text: str) -> list[_paper_list.Piece]:
    pieces = []
    for one in filter(str.strip, re.split(r"[,;]", text)):
        piece = _paper_list.compound_of(" ".join(one.split()))
        if piece is None:
            known = ", ".join(profile.name for profile in levigate.profiles("compound"))
            raise Unclear(f"'{one.strip()}' is no compound. Known are {known}.")
        pieces.append(piece)
    return pieces


def id_of(piece: _paper_list.Piece, taken: list[str]) -> str:
    """A short name: the grade, with the maker's last word where that is not enough."""
    grade = piece.label if piece.compound else levigate.grade(piece.label, bare=piece.system or "ask").label
    label = re.sub(r"[^a-z0-9.-]+", "", grade.lower())
    maker = re.sub(r"[^a-z0-9]+", "", (piece.maker.lower().split() or [""])[-1])
    wanted = [label, f"{maker}-{label}"] if maker else [label]
    wanted += [f"{wanted[-1]}-{at}" for at in range(2, len(taken) + 3)]
    return next(one for one in wanted if one not in taken)


def settle_bare(pieces: list[_paper_list.Piece], told: list[str], ask: Questions) -> None:
    """Gives each bare number the system of its maker. Nobody guesses it."""
    rules: dict[str | None, str] = {}
    for text in told:
        maker, is_of, system = text.rpartition("=")
        try:
            rules[maker.strip().lower() if is_of else None] = _paper_list.system_called(system)
        except Unclear as error:
            raise Unclear(f"--bare: {error}") from None
    makers = {None, *(piece.maker.lower() for piece in pieces)}
    for unknown in rules.keys() - makers:
        raise Unclear(f"--bare: no paper is of '{unknown}'.")
    while opened := [piece for piece in pieces if piece.is_open()]:
        maker = opened[0].maker
        mine = [piece for piece in opened if piece.maker.lower() == maker.lower()]
        rule = rules.get(maker.lower(), rules.get(None))

        def settle(text: str) -> str:
            system = _paper_list.system_called(text)
            for piece in mine:
                levigate.grade(piece.label, bare=system)
            return system

        system = ask("bare", rule, bare_question(maker, mine), settle)
        for piece in mine:
            piece.system = system


def bare_question(maker: str, pieces: list[_paper_list.Piece]) -> str:
    whose = f"{maker}'s bare numbers" if maker else "The bare numbers without a maker"
    lines = [f"{whose} are in which system? {', '.join(_paper_list.SYSTEM_WORDS)}"]
    for piece in pieces:
        can = levigate.read_label(piece.label).candidates
        lines.append(f"  {piece.label} can be " + ", ".join(f"{grade.label} ({grade.median_um:.3g} um)" for grade in can))
    return "\n".join(lines)


def sheet_line(sheet: levigate.Sheet, told: dict[str, Any], stack: levigate.Stack) -> str:
    """How one kind of sheet was read."""
    if "compound" in told:
        tool = next(told[key] for key in ("wheel", "machine", "block") if key in told)
        return f"{sheet.id}: {told['compound']} compound on {tool}"
    grade = levigate.grade(told["label"], bare=told.get("system", "ask"))
    parts = [f"{grade.label} ({grade.median_um:.3g} um)", told["backing"]]
    parts += [told["block"]] if "block" in told else []
    parts += [told["maker"]] if told["maker"] else []
    parts.append("as much as needed" if "on_hand" not in told else f"{told['on_hand']:g} sheets")
    return f"{sheet.id}: " + ", ".join(parts)
