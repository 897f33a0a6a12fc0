"""The command for a first plan: start. It asks for a piece and the paper on hand, writes both files and plans."""

from __future__ import annotations

import argparse
import contextlib
import io
import json
import sys
from pathlib import Path
from typing import Any

import levigate

from . import _words
from ._ask import Questions, say
from ._files import write_whole
from ._help import BEFORE, Overview
from ._paper import sheet_line, stack_told
from ._plan import outcome
from ._terminal import show, worked
from ._words import Unclear

BLOCK, EDGE_BLOCK = "hard block", "foam pad"
FEW_READINGS = 6  # fewer tell the spread so badly that a plan may find no film to take off


def add_commands(commands: Overview) -> None:
    start = commands.add(
        BEFORE,
        "start",
        run_start,
        "Asks for a piece and your paper, writes both files, and plans.",
        "[options]",
        [
            (
                "start --yes --name Case --coating '2K urethane' --film '3 coats of 40 um' "
                "--zone 'top 30x18 cm, no edges' --end satin --paper 'P400 x4, P600 x4, P800 x2, P1000'",
                "all answers as options, from a script; without options it asks",
            ),
        ],
        "there is no plan, or a finding is an error",
    )
    start.add_argument("--name", help="name of the piece")
    start.add_argument("--coating", help="what was sprayed, such as nitro, 2K urethane or waterborne")
    start.add_argument("--film", help="coats, such as '3 coats of 35 um', or readings, such as '88 97 92 um'")
    start.add_argument("--dry-um-per-coat", metavar="UM", help="dry film of a coat, where --film tells coats alone")
    start.add_argument(
        "--zone",
        action="append",
        metavar="TEXT",
        help="name and size, such as 'top 60x90 cm, eased edges'; say --zone once for each",
    )
    start.add_argument("--peel", help="orange peel: light, medium, heavy, or a height such as 25 um")
    start.add_argument("--end", help="satin, semi-gloss, gloss, full gloss, ready to buff, or a grain such as P2000")
    start.add_argument("--paper", help="what is printed on your paper, such as 'P400 x4, 3000 pad, #800 Maker C'")
    start.add_argument("--drawer", metavar="FILE", help="list of your paper from a spreadsheet, .csv or .xlsx")
    start.set_defaults(strict=False)
    start.add_argument("--compound", help="your compounds for full gloss, such as 'fine on loose muslin'")
    start.add_argument(
        "--bare",
        action="append",
        metavar="MAKER=SYSTEM",
        help="system of a maker's bare numbers, such as 'Maker B=CAMI'; SYSTEM alone is for all",
    )
    start.add_argument("--job", type=Path, default=Path("job.json"), help="job file to write (default: job.json)")
    start.add_argument("--stack", type=Path, default=Path("stack.json"), help="stack file to write (default: stack.json)")
    start.add_argument("--replace", action="store_true", help="write over these files where they exist")
    start.add_argument("--yes", action="store_true", help="take the usual answer for what is not given")


def run_start(given: argparse.Namespace) -> int:
    said = io.StringIO()
    as_notes = given.json and not sys.stdin.isatty()  # nobody is asked: the error stream then has one object
    try:
        with contextlib.redirect_stderr(said) if as_notes else contextlib.nullcontext():
            return started(given)
    except Unclear as error:
        raise levigate.BadInput(str(error)) from None
    finally:
        given.notes += filter(str.strip, said.getvalue().splitlines())


def started(given: argparse.Namespace) -> int:
    for file in (given.job, given.stack):
        if file.exists() and not given.replace:
            raise Unclear(f"{file} exists. Give --replace to write over it, or another name with --job and --stack.")
    if given.paper is not None and given.drawer is not None:
        raise Unclear("--paper does not go with --drawer: one of them is wanted.")
    ask = Questions(given.yes)
    if not ask.asks:
        need = ["coating", "film", "zone", "end"] + ([] if given.yes else ["name", "peel"])
        missing = [f"--{option}" for option in need if getattr(given, option) is None]
        missing += [] if given.paper or given.drawer else ["--paper or --drawer"]
        if missing:
            raise Unclear(f"{', '.join(missing)} missing. Give them, or answer in a terminal.")
    usual: list[str] = ["The coat is as sprayed and fully cured by its data sheet."]
    job = job_told(given, ask, usual)
    stack = stack_told(given, ask, "high gloss" in str(job["target"]), usual)
    read_job, read_stack = levigate.Job.from_dict(job), levigate.Stack.from_dict(stack)
    say("\nRead as:")
    for zone in read_job.zones:
        say(f"  {zone.name}: {zone.area_cm2:g} cm2")
    for sheet, told in zip(read_stack.sheets, stack["sheets"]):
        say("  " + sheet_line(sheet, told, read_stack))
    say("Taken as usual:")
    for line in usual:
        say("  - " + line)
    write(given.job, job_text(job), given.replace)
    write(given.stack, stack_text(stack), given.replace)
    say(f"Written: {given.job} and {given.stack}. Change them as you like.\n")
    bench = levigate.Bench(read_job, read_stack)
    plan = levigate.plan(bench)
    simulation = worked("Planning", lambda _: levigate.simulate(bench, plan)) if plan.found else None
    if given.json:
        sys.stdout.write(plan.to_json())
    else:
        show(plan.bench_sheet(simulation))
    say(f"\nThe same plan again: levigate plan {given.job} {given.stack}")
    return outcome(given, plan.found, plan.findings)


# ---- the piece


def job_told(given: argparse.Namespace, ask: Questions, usual: list[str]) -> dict[str, Any]:
    name = ask("name", given.name, "What is the piece? Such as: walnut clock case", filled, lambda: "Piece")
    coating = ask("coating", given.coating, coating_question(), coating_called)
    film = ask(
        "film",
        given.film,
        "How thick is the clear coat? Say the coats, or what the gauge read at some spots.\n"
        f"Such as: 3 coats, or 88 97 92 101 85 94 um, or 3.5 3.7 3.6 3.4 3.8 3.6 mil. Read {FEW_READINGS} spots or more.",
        _words.film,
    )
    film_member = film_told(film, coating, given, ask, usual)
    zones = zones_told(given, ask, coating, film_member, usual)
    look = ask("peel", given.peel, peel_question(), _words.peel, lambda: None)
    if look is None:
        peel = levigate.source("medium peel", "peel_um").value
        usual.append(f"The orange peel is {peel:g} um from peak to valley.")
    wave = levigate.source("medium peel", "peel_wavelength_mm").value
    usual.append(f"The crests of the peel are {wave:g} mm apart.")
    for zone in zones:
        if look is not None and "edge_of" not in zone:
            zone["peel_um"] = look
    if "readings_um" in film_member and sum(zone.get("film") == film_member for zone in zones) > 1:
        usual.append("The readings count for each zone that has none of its own.")
    target = ask("end", given.end, end_question(), _words.end)
    usual.append(f"Flats are sanded with a {BLOCK}, edges with a {EDGE_BLOCK}.")
    return {
        "format": "levigate.job/1",
        "name": name,
        "coating": coating,
        "zones": zones,
        "start": {"as": "sprayed"},
        "target": target,
        "prefer": "minutes",
    }


def filled(text: str) -> str:
    if not text.strip():
        raise Unclear("The name is empty.")
    return text.strip()


def coats() -> list[levigate.NamedProfile]:
    """Coatings that leave a film when they are sprayed."""
    return [one for one in levigate.profiles("coating") if leaves_film(one.name)]


def leaves_film(coating: str) -> bool:
    try:
        return bool(levigate.source(coating, "dry_um_per_coat"))
    except levigate.BadInput:
        return False


def coating_question() -> str:
    lines = ["What was sprayed? A number, or your own word for it"]
    for at, one in enumerate(coats(), start=1):
        lines.append(f"  {at}  {one.name:22}  {', '.join(one.also[:3])}")
    return "\n".join(lines)


def coating_called(text: str) -> str:
    known = coats()
    if text.strip().isdigit():
        if not 1 <= int(text) <= len(known):
            raise Unclear(f"Say a number from 1 to {len(known)}.")
        return known[int(text) - 1].name
    name = levigate.profile_called("coating", text).name
    if all(one.name != name for one in known):
        raise Unclear(f"{name} has no film. Start plans a clear coat.")
    return name


def film_told(
    film: _words.FilmTold, coating: str, given: argparse.Namespace, ask: Questions, usual: list[str]
) -> dict[str, Any]:
    """The film as a job file has it. Without a spread of its own it gets the usual one."""
    if film.readings_um:
        usual.append("The gauge is ultrasonic, so it is good to 2 um and 3 % of a reading.")
        if len(film.readings_um) == 1:
            usual.append("One reading tells no spread of the film. The usual one is taken.")
        elif len(film.readings_um) < FEW_READINGS:
            usual.append(f"Few readings leave little film to count on. Read {FEW_READINGS} spots or more.")
        return {"readings_um": film.readings_um, "gauge": "ultrasonic"}
    usual.append("The film spreads from spot to spot as is usual.")
    if not film.needs_coat():
        return {"coats": film.coats, "dry_um_per_coat": film.dry_um_per_coat}
    number = levigate.source(coating, "dry_um_per_coat")
    least = f"{number.low:g} to {number.high:g} um"
    each = ask(
        "dry-um-per-coat",
        given.dry_um_per_coat,
        f"How much film does a dry coat leave? The data sheet tells. Usual for {coating} is\n"
        f"{least}. Enter takes the least, {number.low:g} um.",
        _words.coat_um,
        lambda: None,
    )
    if each is not None:
        return {"coats": film.coats, "dry_um_per_coat": each}
    usual.append(f"A dry coat leaves {least}, so the plan counts {number.low:g} um.")
    return {"coats": film.coats, "dry_um_per_coat": number.low}


def zones_told(
    given: argparse.Namespace, ask: Questions, coating: str, film: dict[str, Any], usual: list[str]
) -> list[dict[str, Any]]:
    """Flats and their edges, in order."""
    zones: list[dict[str, Any]] = []

    def fresh(text: str) -> _words.ZoneTold:
        told = _words.zone(text)
        if any(told.name == zone["name"] for zone in zones):
            raise Unclear(f"There is a zone '{told.name}' already.")
        return told

    def sharp(name: str) -> float:
        usual.append(f"The edges of {name} are sharp, which is the cautious answer.")
        return 0.0

    def add(told: _words.ZoneTold) -> None:
        flat = {"name": told.name, "area_cm2": told.size.area_cm2, "block": BLOCK, "film": film}
        if told.film:
            flat["film"] = film_told(told.film, coating, given, ask, usual)
        radius = told.radius_mm
        if not told.edges_told:
            radius = ask(
                "zone",
                None,
                f"Has {told.name} edges to mind? none, sharp, eased, or a radius such as 3 mm",
                _words.radius_mm,
                lambda: sharp(told.name),
            )
        zones.append(flat)
        if radius is None:
            return
        strip = levigate.source("edge", "strip_mm").value
        edge = {
            "name": f"edges of {told.name}",
            "area_cm2": round(told.size.outline_cm * strip / 10, 1),
            "block": EDGE_BLOCK,
            "edge_of": told.name,
            "radius_mm": radius,
        }
        usual.append(
            f"The edges of {told.name} are a strip {strip:g} mm wide round "
            + ("a square of its area." if told.size.square else "its sides.")
        )
        zones.append(edge)

    if given.zone is not None:
        for text in given.zone:
            told = ask("zone", text, "", fresh)
            if not told.edges_told and not ask.asks and not ask.yes:
                raise Unclear(f"--zone '{text}': say its edges too, such as ', sharp edges' or ', no edges'.")
            add(told)
        return zones
    question = (
        "Which faces do you sand? One zone a line, with its size: length by width, or an area in cm2.\n"
        "Such as: top 30x18 cm, or 2 doors 60x50 cm, or sides 2.5 ft2. Enter ends the list."
    )
    add(ask("zone", None, question, fresh))
    flats = 1
    while (more := ask("zone", None, f"Zone {flats + 1}, or Enter", fresh, lambda: None)) is not None:
        add(more)
        flats += 1
    return zones


def peel_question() -> str:
    lines = ["How heavy is the orange peel? A word, or its height such as 25 um. Enter takes medium, less sure."]
    for one in levigate.profiles("peel"):
        height = levigate.source(one.name, "peel_um")
        word = one.name.split()[0]
        lines.append(f"  {word:7} {height.value:3g} um ({height.low:g} to {height.high:g}, {height.basis}): {one.note}")
    return "\n".join(lines)


def end_question() -> str:
    lines = ["How should it end? A number, or a grain such as P2000 or 8 um"]
    lines += [f"  {at}  {about}" for at, (_, about, _) in enumerate(_words.ENDS, start=1)]
    return "\n".join(lines)


# ---- the files


def short(value: Any) -> Any:
    """The value with 540 in place of 540.0."""
    if isinstance(value, dict):
        return {key: short(one) for key, one in value.items()}
    if isinstance(value, list):
        return [short(one) for one in value]
    return int(value) if isinstance(value, float) and value.is_integer() else value


def job_text(job: dict[str, Any]) -> str:
    return json.dumps(short(job), indent=2, ensure_ascii=False) + "\n"


def stack_text(stack: dict[str, Any]) -> str:
    """One sheet a line."""
    sheets = ",\n".join("    " + json.dumps(short(sheet), ensure_ascii=False) for sheet in stack["sheets"])
    head = ",\n".join(f'  "{key}": {json.dumps(stack[key])}' for key in ("format", "bare_number"))
    return f'{{\n{head},\n  "sheets": [\n{sheets}\n  ]\n}}\n'


def write(path: Path, text: str, replace: bool) -> None:
    """A whole file or none. A file that is there stays, unless it is to be replaced."""
    if not replace:
        try:
            with path.open("x", encoding="utf-8") as file:
                file.write(text)
        except FileExistsError:
            raise Unclear(f"{path} exists. Give --replace to write over it.") from None
        return
    write_whole(path, text.encode())
