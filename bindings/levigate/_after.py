"""Commands for what comes after the plan: record, journal, go-back, learn; and plan --after, --shop."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import levigate

Command = Callable[[str, Any, str], argparse.ArgumentParser]

def add_commands(command: Command) -> None:
    record = command("record", run_record, "add one line to a journal")
    record.add_argument(
        "journal", metavar="JOURNAL", help="file of format levigate.journal/1; made if new"
    )
    record.add_argument("kind", metavar="KIND", help="as 'step ended' or 'film read'")
    record.add_argument("--job", required=True, help="name of the job")
    record.add_argument("--at", help="when, as 2026-03-01T09:30:00Z (default: now)")
    record.add_argument("--sheet", metavar="ID")
    record.add_argument("--minutes", type=float, help="of a step that ended, without the change")
    record.add_argument("--sheets-used", type=float)
    record.add_argument("--removal-um", type=float, help="taken off, where one went back to a step")
    record.add_argument("--readings-um", type=float, nargs="+", help="of a film gauge")
    record.add_argument("--ra-um", type=float)
    record.add_argument("--text")
    record.add_argument("--mark", metavar="KIND", help="of the mark that was found, as scratch or haze")

    journal = command("journal", run_journal, "what a journal holds, and lines that a crash cut")
    journal.add_argument("journal", metavar="JOURNAL", help="file of format levigate.journal/1")

    back = command("go-back", run_go_back, "which step made a mark, and where to go back to")
    add_job_and_stack(back)
    back.add_argument(
        "--journal", help="the steps done, and the mark where none is given, are the journal's"
    )
    back.add_argument(
        "--done",
        nargs="+",
        metavar="ID[@DEG]",
        help="sheets in order, with the way of the strokes in degrees",
    )
    back.add_argument("--mark", metavar="KIND", help="as scratch or haze")
    back.add_argument("--shop", metavar="SHOP", help="file of format levigate.shop/1: what was learned")

    for either in (record, back):
        either.add_argument("--zone")
        either.add_argument("--seen", help="loupe, comparison, lamp or sunlight (default)")
        either.add_argument("--width-um", type=float)
        either.add_argument("--direction-deg", type=float, help="against the length of the zone")
        either.add_argument("--count", type=int, help="of a cluster")
        either.add_argument("--height-um", type=float, help="of a wave")

    learn = command("learn", run_learn, "learn pace, scratches and film from the journal of a job")
    add_job_and_stack(learn)
    learn.add_argument("journal", metavar="JOURNAL", help="file of format levigate.journal/1")
    learn.add_argument(
        "--shop",
        type=Path,
        required=True,
        help="file of format levigate.shop/1: what is known, and where what is learned goes",
    )


def add_job_and_stack(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("job", metavar="JOB", help="file of format levigate.job/1")
    parser.add_argument("stack", metavar="STACK", help="file of format levigate.stack/1")


def load(given: argparse.Namespace) -> tuple[levigate.Job, levigate.Stack]:
    return levigate.Job.load(given.job), levigate.Stack.load(given.stack)


def print_json(data: object) -> None:
    print(json.dumps(data, indent=2, ensure_ascii=False))


def mark_of(given: argparse.Namespace) -> levigate.Mark:
    names = ("seen", "width_um", "direction_deg", "count", "height_um")
    told = {name: getattr(given, name) for name in names if getattr(given, name) is not None}
    return levigate.Mark(kind=given.mark, zone=given.zone or "", **told)


def run_record(given: argparse.Namespace) -> int:
    members = {
        name: getattr(given, name)
        for name in (
            "kind",
            "job",
            "at",
            "sheet",
            "minutes",
            "sheets_used",
            "removal_um",
            "readings_um",
            "ra_um",
            "text",
        )
        if getattr(given, name) is not None
    }
    if given.mark is not None:
        members["mark"] = mark_of(given)
    else:
        for name in ("zone", "width_um", "direction_deg"):
            if getattr(given, name) is not None:
                members[name] = getattr(given, name)
    entry = levigate.Journal(given.journal).append(**members)
    if given.json:
        print_json(entry.to_dict())
    else:
        print(f"Line added to {given.journal}.")
    return 0


def run_journal(given: argparse.Namespace) -> int:
    reading = levigate.Journal(given.journal).read()
    if given.json:
        print_json([entry.to_dict() for entry in reading.entries])
    else:
        for line, entry in zip(reading.lines, reading.entries):
            told = {
                k: v for k, v in entry.to_dict().items() if k not in ("format", "at", "kind", "job")
            }
            rest = ", ".join(f"{k} {json.dumps(v, ensure_ascii=False)}" for k, v in told.items())
            print(
                f"{line:5}  {entry.at}  {entry.job}: {entry.kind}" + (f", {rest}" if rest else "")
            )
    for torn in reading.torn:
        print(f"levigate: line {torn.line}: {torn.message}", file=sys.stderr)
    return 0


def done_step(text: str) -> levigate.DoneStep:
    sheet, _, way = text.partition("@")
    try:
        return levigate.DoneStep(sheet, direction_deg=float(way) if way else None)
    except ValueError:
        raise levigate.BadInput(
            f"'{text}' is no sheet with a way of strokes, as a-p800@90"
        ) from None


def run_go_back(given: argparse.Namespace) -> int:
    job, stack = load(given)
    shop = shop_at(given.shop)
    if (given.journal is None) == (given.done is None):
        raise levigate.BadInput("one of --journal and --done is needed")
    mark = mark_of(given) if given.mark is not None else None
    if given.done is not None:
        done = [done_step(text) for text in given.done]
        bench = levigate.Bench(job, stack, shop, as_entries(done, job.name))
    else:
        bench = levigate.Bench(job, stack, shop, levigate.Journal(given.journal).read())
    if mark is None and bench.open_mark is None:
        raise levigate.BadInput("no mark since the last step: give --mark and --zone")
    way = levigate.go_back(bench, mark)
    sys.stdout.write(way.to_json() if given.json else way.card())
    return 0 if way.found else 1


def as_entries(done: list[levigate.DoneStep], job: str) -> list[levigate.Entry]:
    """The steps as a journal tells of them."""
    entries = []
    for step in done:
        sheet = step.sheet
        entries += [
            levigate.Entry(
                kind="step begun", job=job, sheet=sheet, direction_deg=step.direction_deg
            ),
            levigate.Entry(kind="step ended", job=job, sheet=sheet, minutes=0),
        ]
    return entries


def shop_at(path: str | Path | None) -> levigate.Shop | None:
    return levigate.Shop.load(path) if path is not None else None


def run_learn(given: argparse.Namespace) -> int:
    job, stack = load(given)
    before = shop_at(given.shop) if given.shop.exists() else None
    journal = levigate.Journal(given.journal).read()
    learned = levigate.learn(levigate.Bench(job, stack, before, journal))
    learned.shop.save(given.shop)
    if given.json:
        print_json(learned.shop.to_dict())
    else:
        for line in learned.report:
            print(line.sentence)
        for outlier in learned.outliers:
            print(f"Set aside: {outlier.message}")
        for other in learned.unmatched:
            print(f"Not used: {other.reason}")
    return 0
