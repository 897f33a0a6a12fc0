"""Commands for the work after a plan: record, journal, go-back and learn."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import levigate

Command = Callable[[str, Any, str], argparse.ArgumentParser]
SHOP_HELP = "file of format levigate.shop/1: what earlier journals taught"


def add_commands(command: Command) -> None:
    record = command("record", run_record, "add one line to a journal")
    record.add_argument(
        "journal", metavar="JOURNAL", help="file of format levigate.journal/1 (created if new)"
    )
    record.add_argument("kind", metavar="KIND", help="kind of line, such as 'step ended' or 'film read'")
    record.add_argument("--job", metavar="NAME", help="name of the job (default: of the file of --check)")
    record.add_argument(
        "--check",
        nargs=2,
        metavar=("JOB", "STACK"),
        help="files that the names of job, zone and sheet must be in",
    )
    record.add_argument("--line", type=int, help="line to strike, from 1; give the reason as --text")
    record.add_argument("--at", help="time, such as 2026-03-01T09:30:00Z (default: now)")
    record.add_argument("--sheet", metavar="ID", help="id of the sheet")
    record.add_argument("--minutes", type=float, help="minutes of a step that ended, without changing, of a patch, or so far of a step under way")
    record.add_argument("--sheets-used", type=float, help="sheets that the step used")
    record.add_argument("--removal-um", type=float, help="film that a step took off when you went back to it")
    record.add_argument(
        "--overcut", type=float, help="overcut of the step in the plan, where it is not that of the rules"
    )
    record.add_argument("--readings-um", type=float, nargs="+", help="readings of a film gauge")
    record.add_argument(
        "--as-read",
        action="store_true",
        help="record readings that --check takes for a slip of the unit",
    )
    record.add_argument("--ra-um", type=float, help="roughness Ra")
    record.add_argument("--tool", help="block or pad of a patch")
    record.add_argument("--area-cm2", type=float, help="area of a patch")
    record.add_argument("--before-um", type=float, nargs="+", help="readings at the spots of a patch, before")
    record.add_argument("--after-um", type=float, nargs="+", help="readings at the same spots, after")
    record.add_argument("--before-g", type=float, help="weight of the dry part before the patch")
    record.add_argument("--after-g", type=float, help="weight of the dry part after it")
    record.add_argument("--text", help="a note of your own")
    record.add_argument("--mark", metavar="KIND", help="kind of the mark you found, such as scratch or haze")

    journal = command("journal", run_journal, "show a journal, and report lines that a crash cut")
    journal.add_argument("journal", metavar="JOURNAL", help="file of format levigate.journal/1")

    back = command("go-back", run_go_back, "find the step that made a mark, and the step to go back to")
    add_job_and_stack(back)
    back.add_argument(
        "--journal", metavar="JOURNAL", help="take the steps done, and the open mark, from this journal"
    )
    back.add_argument(
        "--done",
        nargs="+",
        metavar="ID[@DEG]",
        help="sheets in order, each with the direction of its strokes in degrees",
    )
    back.add_argument("--mark", metavar="KIND", help="kind of the mark, such as scratch or haze")
    back.add_argument("--shop", metavar="SHOP", help=SHOP_HELP)

    for either in (record, back):
        either.add_argument("--zone", help="name of the zone")
        either.add_argument("--seen", help="how you saw it: loupe, comparison, lamp or sunlight (default)")
        either.add_argument("--width-um", type=float, help="width of a scratch")
        either.add_argument("--direction-deg", type=float, help="direction, from the length of the zone")
        either.add_argument("--count", type=int, help="scratches in a cluster")
        either.add_argument("--height-um", type=float, help="height of a wave, peak to valley")

    learn = command("learn", run_learn, "learn pace, scratches and film from the journal of a job")
    add_job_and_stack(learn)
    learn.add_argument("journal", metavar="JOURNAL", help="file of format levigate.journal/1")
    learn.add_argument(
        "--shop",
        type=Path,
        required=True,
        help="file of format levigate.shop/1 to read, update and write",
    )


def add_job_and_stack(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("job", metavar="JOB", help="file of format levigate.job/1")
    parser.add_argument("stack", metavar="STACK", help="file of format levigate.stack/1")


def load(given: argparse.Namespace) -> tuple[levigate.Job, levigate.Stack]:
    return levigate.Job.load(given.job), levigate.Stack.load(given.stack)


def require_lines_of(job: levigate.Job, journal: levigate.JournalReading) -> None:
    """Refuses a journal of other jobs alone: it is most likely a slip in a name."""
    others = levigate.jobs(journal.entries)
    if others and job.name not in others:
        names = ", ".join(f"'{name}'" for name in others)
        raise levigate.BadInput(f"no line of the journal is of job '{job.name}'; its lines are of {names}")


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
            "overcut",
            "readings_um",
            "ra_um",
            "text",
            "tool",
            "area_cm2",
            "before_um",
            "after_um",
            "before_g",
            "after_g",
            "line",
        )
        if getattr(given, name) is not None
    }
    if given.mark is not None:
        members["mark"] = mark_of(given)
    else:
        for name in ("zone", "width_um", "direction_deg"):
            if getattr(given, name) is not None:
                members[name] = getattr(given, name)
    reading = levigate.Journal(given.journal).read() if Path(given.journal).exists() else None
    if "job" not in members:
        members["job"] = job_meant(given, reading)
    if given.check is not None:
        require_names(given, members)
        if not given.as_read:
            require_likely(given, members)
    elif reading is not None and given.kind != "struck":
        entries = reading.entries
        near = levigate.jobs_nearly_named(entries, members["job"])
        require_known_job(members["job"], levigate.jobs(entries), near)
    entry = levigate.Journal(given.journal).append(**members)
    if given.json:
        print_json(entry.to_dict())
    else:
        print(f"Line added to {given.journal}.")
    return 0


def job_meant(given: argparse.Namespace, reading: levigate.JournalReading | None) -> str:
    """The job of a line without --job: that of the line to strike, or of the file to check by."""
    if given.check is not None:
        return str(levigate.Job.load(given.check[0]).name)
    if given.kind == "struck" and reading is not None and given.line in reading.lines:
        return str(reading.entries[reading.lines.index(given.line)].job)
    if given.kind == "struck" and given.line is not None:
        raise levigate.BadInput(f"line = {given.line} is no whole line of journal '{given.journal}'")
    raise levigate.BadInput("give --job, or the files of job and stack to --check")


def require_names(given: argparse.Namespace, members: dict[str, Any]) -> None:
    """Refuses names that are not in the files of job and stack."""
    job, stack = levigate.Job.load(given.check[0]), levigate.Stack.load(given.check[1])
    zones = [zone.name for zone in job.zones]
    known = {
        "job": [job.name],
        "zone": zones,
        "sheet": [sheet.id for sheet in stack.sheets],
    }
    told = {name: members.get(name) for name in known}
    if "mark" in members:
        told["zone"] = members["mark"].zone
    for what, name in told.items():
        if name is not None and name not in known[what]:
            names = ", ".join(f"'{one}'" for one in known[what])
            raise levigate.BadInput(f"{what} '{name}' is not there: nothing is recorded; there is {names}")


def require_likely(given: argparse.Namespace, members: dict[str, Any]) -> None:
    """Refuses readings that are most likely a slip of the unit."""
    entry = levigate.Entry(**members)
    try:
        entry.require_likely_readings(levigate.Job.load(given.check[0]))
    except levigate.BadInput as fault:
        raise levigate.BadInput(f"{fault}; where it was read so, add --as-read") from None


def require_known_job(job: str, others: list[str], near: list[str]) -> None:
    """Refuses a new name that is nearly one in the journal. Says aloud where another new one begins."""
    if not others or job in others:
        return
    names = ", ".join(f"'{name}'" for name in others)
    if near:
        raise levigate.BadInput(
            f"job '{job}' is new in this journal and nearly '{near[0]}': nothing is recorded; "
            "if both are meant, check it with --check JOB STACK"
        )
    print(f"levigate: job '{job}' is new in this journal; its lines are of {names}", file=sys.stderr)


def run_journal(given: argparse.Namespace) -> int:
    reading = levigate.Journal(given.journal).read()
    if given.json:
        print_json([entry.to_dict() for entry in reading.entries])
    else:
        struck = set(reading.struck)
        for line, entry in zip(reading.lines, reading.entries):
            told = {
                k: v for k, v in entry.to_dict().items() if k not in ("format", "at", "kind", "job")
            }
            rest = ", ".join(f"{k} {json.dumps(v, ensure_ascii=False)}" for k, v in told.items())
            print(
                f"{line:5}  {entry.at}  {entry.job}: {entry.kind}"
                + (f", {rest}" if rest else "")
                + (" (struck)" if line in struck else "")
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
            f"'{text}' is not a sheet with a direction, such as a-p800@90"
        ) from None


def run_go_back(given: argparse.Namespace) -> int:
    job, stack = load(given)
    shop = shop_at(given.shop)
    if (given.journal is None) == (given.done is None):
        raise levigate.BadInput("give either --journal or --done")
    mark = mark_of(given) if given.mark is not None else None
    if given.done is not None:
        done = [done_step(text) for text in given.done]
        bench = levigate.Bench(job, stack, shop, as_entries(done, job.name))
    else:
        journal = levigate.Journal(given.journal).read()
        require_lines_of(job, journal)
        bench = taught_by_itself(levigate.Bench(job, stack, shop, journal))
    if mark is None and bench.open_mark is None:
        raise levigate.BadInput("no mark after the last step: give --mark and --zone")
    way = levigate.go_back(bench, mark)
    sys.stdout.write(way.to_json() if given.json else way.card())
    return 0 if way.found else 1


def as_entries(done: list[levigate.DoneStep], job: str) -> list[levigate.Entry]:
    """The steps as entries of a journal."""
    entries = []
    for step in done:
        sheet = step.sheet
        entries += [
            levigate.Entry(
                kind="step begun", job=job, sheet=sheet, direction_deg=step.direction_deg
            ),
            levigate.Entry(
                kind="step ended", job=job, sheet=sheet, minutes=0, overcut=step.overcut
            ),
        ]
    return entries


def shop_at(path: str | Path | None) -> levigate.Shop | None:
    return levigate.Shop.load(path) if path is not None else None


def bench_now(given: argparse.Namespace) -> levigate.Bench:
    """The bench of job, stack and shop, after a journal and with what it teaches."""
    job, stack = load(given)
    if given.after is None:
        return levigate.Bench(job, stack, shop_at(given.shop))
    journal = levigate.Journal(given.after).read()
    require_lines_of(job, journal)
    return taught_by_itself(levigate.Bench(job, stack, shop_at(given.shop), journal))


def taught_by_itself(bench: levigate.Bench) -> levigate.Bench:
    """The bench with what its own journal teaches, as plan and go-back take it alike. Says what was set aside."""
    learned = levigate.learn(bench)
    for outlier in learned.outliers:
        print(f"levigate: set aside: {outlier.message}", file=sys.stderr)
    if learned.shop == (bench.shop or levigate.Shop.from_dict({})):
        return bench
    return levigate.Bench(bench.job, bench.stack, learned.shop, bench.journal)


def run_learn(given: argparse.Namespace) -> int:
    job, stack = load(given)
    before = shop_at(given.shop) if given.shop.exists() else None
    journal = levigate.Journal(given.journal).read()
    require_lines_of(job, journal)
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
