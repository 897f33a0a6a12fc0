"""Commands for the work after a plan: record, journal, go-back and learn. Also what several commands share."""

from __future__ import annotations

import argparse
import contextlib
import json
import sys
from pathlib import Path
from typing import Any, Protocol

import levigate

from ._files import Files, file_name, require_file
from ._help import AFTER, AT_THE_BENCH, Overview
from ._names import Known, number, whole
from ._terminal import show, worked

JOB, STACK, JOURNAL = "data/demo/job.json", "data/demo/stack.json", "data/demo/journal.jsonl"
CHECKED = f"--check {JOB} {STACK}"


class Answer(Protocol):
    def card(self) -> str: ...

    def to_json(self) -> str: ...


def add_commands(commands: Overview) -> None:
    add_record(commands)
    journal = commands.add(
        AT_THE_BENCH,
        "journal",
        run_journal,
        "Shows the journal of a job, and reports lines that a crash cut.",
        "JOURNAL [options]",
        [(f"journal {JOURNAL}", "the lines of the first day")],
    )
    add_journal(journal)
    add_go_back(commands)
    learn = commands.add(
        AFTER,
        "learn",
        run_learn,
        "Learns your pace, scratches and film from a journal, for the next plan.",
        "JOB STACK JOURNAL --shop SHOP",
        [
            (f"learn {JOB} {STACK} {JOURNAL} --shop shop.json", "what the day taught, kept in shop.json"),
            (f"plan {JOB} {STACK} --shop shop.json", "the next plan, at your pace"),
        ],
    )
    add_job_and_stack(learn)
    add_journal(learn)
    learn.add_argument(
        "--shop",
        metavar="SHOP",
        type=file_name,
        required=True,
        help="file of what journals taught: read, brought up to date and written",
    )


def add_record(commands: Overview) -> None:
    record = commands.add(
        AT_THE_BENCH,
        "record",
        run_record,
        "Writes one line of what happened into the journal of a job.",
        "JOURNAL KIND [options]",
        [
            (f"record clock.jsonl step-begun {CHECKED} --sheet a-p400", "you begin with a sheet"),
            (f"record clock.jsonl step-ended {CHECKED} --sheet a-p400 --minutes 95", "you are done with it"),
            (f"record clock.jsonl film-read {CHECKED} --zone top --readings-um 74 71 76", "you read a film gauge"),
            ("record clock.jsonl struck --line 2 --text 'wrong sheet'", "a line was wrong: it stays, and does not count"),
        ],
    )
    record.add_argument("journal", metavar="JOURNAL", help="file of the journal; made where it is new")
    record.add_argument(
        "kind", metavar="KIND", type=Known(levigate.ENTRY_KINDS), help="what happened: " + ", ".join(levigate.ENTRY_KINDS)
    )
    line = record.add_argument_group("of every line")
    line.add_argument("--job", metavar="NAME", help="name of the job (default: of the file of --check)")
    line.add_argument(
        "--check",
        nargs=2,
        metavar=("JOB", "STACK"),
        type=file_name,
        help="files that the names of job, zone and sheet must be in",
    )
    line.add_argument("--at", metavar="TIME", help="time, such as 2026-03-01T09:30:00Z (default: now)")
    line.add_argument("--text", metavar="TEXT", help="a note of your own")
    step = record.add_argument_group("of a step, cleaning or patch")
    step.add_argument("--sheet", metavar="ID", help="id of the sheet; with --check its label will do")
    step.add_argument(
        "--minutes",
        type=number,
        metavar="MIN",
        help="minutes of work without changing sheets; of a step begun, those so far",
    )
    step.add_argument("--sheets-used", type=number, metavar="N", help="sheets used, such as 1.5")
    step.add_argument("--removal-um", type=number, metavar="UM", help="film that a step took off when you went back to it")
    step.add_argument(
        "--overcut",
        type=number,
        metavar="TIMES",
        help="how many times the scratch depth to take off, where the plan says more than usual",
    )
    read = record.add_argument_group("of film and scratches read")
    read.add_argument("--readings-um", type=number, nargs="+", metavar="UM", help="readings of a film gauge")
    read.add_argument("--readings-mil", type=number, nargs="+", metavar="MIL", help="the same from a gauge that reads in mil")
    read.add_argument("--as-read", action="store_true", help="record readings that --check takes for a slip of the unit")
    read.add_argument("--ra-um", type=number, metavar="UM", help="roughness Ra, by a roughness tester")
    patch = record.add_argument_group("of a patch that you worked to learn your pace")
    patch.add_argument("--tool", type=Known(levigate.BLOCKS), metavar="NAME", help="block or pad of the patch")
    patch.add_argument("--area-cm2", type=number, metavar="CM2", help="area of the patch")
    patch.add_argument("--before-um", type=number, nargs="+", metavar="UM", help="readings at spots of the patch, before")
    patch.add_argument("--after-um", type=number, nargs="+", metavar="UM", help="readings at the same spots, after")
    patch.add_argument("--before-g", type=number, metavar="G", help="weight of the dry part before")
    patch.add_argument("--after-g", type=number, metavar="G", help="weight of the dry part after")
    add_mark(record.add_argument_group("of a mark, and where it is"))
    struck = record.add_argument_group("of a wrong line")
    struck.add_argument("--line", type=whole, metavar="N", help="line to strike, from 1; give the reason as --text")


def add_go_back(commands: Overview) -> None:
    back = commands.add(
        AFTER,
        "go-back",
        run_go_back,
        "Finds the step that left a mark, and the step to go back to.",
        "JOB STACK (--journal JOURNAL | --done ID...) [options]",
        [
            (
                f"go-back {JOB} {STACK} --done a-p400@0 a-p800@90 a-p1500@0 b-pad@90"
                " --mark cluster --zone top --seen loupe --width-um 5 --direction-deg 88",
                "scratches side by side, read with a loupe",
            ),
            (f"go-back {JOB} {STACK} --journal {JOURNAL} --mark haze --zone top", "haze, after the steps of a journal"),
        ],
        "there is no way back",
    )
    add_job_and_stack(back)
    back.add_argument(
        "--journal", metavar="JOURNAL", type=file_name, help="take the steps done, and the open mark, from this journal"
    )
    back.add_argument(
        "--done",
        nargs="+",
        metavar="ID",
        help="ids or labels of the sheets in order; a-p800@90 says that its strokes ran at 90 degrees",
    )
    add_mark(back.add_argument_group("of the mark"))
    add_shop(back)


def add_mark(parser: argparse._ArgumentGroup) -> None:
    parser.add_argument(
        "--mark", type=Known(levigate.MARK_KINDS), metavar="KIND", help="the mark you found: " + ", ".join(levigate.MARK_KINDS)
    )
    parser.add_argument("--zone", metavar="ZONE", help="name of the zone")
    parser.add_argument(
        "--seen",
        type=Known(levigate.WAYS_SEEN),
        metavar="HOW",
        help=f"how you saw it: {', '.join(levigate.WAYS_SEEN)} (default: sunlight)",
    )
    parser.add_argument("--width-um", type=number, metavar="UM", help="width of a scratch")
    parser.add_argument(
        "--direction-deg", type=number, metavar="DEG", help="direction in degrees, from the length of the zone"
    )
    parser.add_argument("--count", type=whole, metavar="N", help="scratches in a cluster")
    parser.add_argument("--height-um", type=number, metavar="UM", help="height of a wave, peak to valley")


def add_job_and_stack(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("job", metavar="JOB", type=file_name, help="file of the job: its zones, films and goal")
    add_stack(parser)


def add_stack(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("stack", metavar="STACK", type=file_name, help="file of the drawer: the sheets on hand")


def add_journal(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("journal", metavar="JOURNAL", type=file_name, help="file of the journal: what was done")


def add_shop(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--shop", metavar="SHOP", type=file_name, help="file of what earlier journals taught")


def add_after(parser: argparse.ArgumentParser, about: str) -> None:
    parser.add_argument("--after", metavar="JOURNAL", type=file_name, help=about)


def answer(given: argparse.Namespace, found: Answer) -> None:
    if given.json:
        sys.stdout.write(found.to_json())
    else:
        show(found.card())


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


def um_of_mil(readings: list[float]) -> list[float]:
    """Readings as the reader of files takes them."""
    line = {"format": "levigate.journal/1", "kind": "film read", "job": "any", "zone": "any"}
    read: list[float] = levigate.Entry.from_dict({**line, "at": "1970-01-01T00:00:00Z", "readings_mil": readings}).readings_um
    return read


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
    if given.readings_mil is not None:
        if given.readings_um is not None:
            raise levigate.BadInput("--readings-mil does not go with --readings-um: give one of them")
        members["readings_um"] = um_of_mil(given.readings_mil)
    if given.mark is not None:
        members["mark"] = mark_of(given)
    else:
        for name in ("zone", "width_um", "direction_deg"):
            if getattr(given, name) is not None:
                members[name] = getattr(given, name)
    require_file(given.journal, "a journal")
    job, stack, reading = None, None, None
    with Files() as files:
        if given.check is not None:
            job, stack = files.job(given.check[0]), files.stack(given.check[1])
        if Path(given.journal).exists():
            reading = files.journal(given.journal)
    if "job" not in members:
        members["job"] = job_meant(given, job, reading)
    if job is not None and stack is not None:
        name_sheet(stack, members)
        require_names(job, stack, members)
        if not given.as_read:
            require_likely(job, members)
    elif reading is not None and given.kind != "struck":
        require_known_job(given, members["job"], reading.entries)
    entry = levigate.Journal(given.journal).append(**members)
    if given.json:
        print_json(entry.to_dict())
    else:
        print(f"Line added to {given.journal}.")
    return 0


def job_meant(
    given: argparse.Namespace, job: levigate.Job | None, reading: levigate.JournalReading | None
) -> str:
    """The job of a line without --job: that of the file to check by, or of the line to strike."""
    if job is not None:
        return str(job.name)
    if given.kind == "struck" and reading is not None and given.line in reading.lines:
        return str(reading.entries[reading.lines.index(given.line)].job)
    if given.kind == "struck" and given.line is not None:
        raise levigate.BadInput(f"line = {given.line} is no whole line of journal '{given.journal}'")
    raise levigate.BadInput("give --job, or the files of job and stack to --check")


def name_sheet(stack: levigate.Stack, members: dict[str, Any]) -> None:
    """Takes a label for the id of the one sheet that has it. What is no name of a sheet is left for require_names()."""
    if "sheet" not in members or members["sheet"] in [sheet.id for sheet in stack.sheets]:
        return
    with contextlib.suppress(levigate.BadInput, levigate.UnknownGrade):
        members["sheet"] = stack.sheet_called(members["sheet"]).id


def require_names(job: levigate.Job, stack: levigate.Stack, members: dict[str, Any]) -> None:
    """Refuses names that are not in the files of job and stack."""
    known = {
        "job": [job.name],
        "zone": [zone.name for zone in job.zones],
        "sheet": [sheet.id for sheet in stack.sheets],
    }
    told = {name: members.get(name) for name in known}
    if "mark" in members:
        told["zone"] = members["mark"].zone
    for what, name in told.items():
        if name is not None and name not in known[what]:
            names = ", ".join(f"'{one}'" for one in known[what])
            raise levigate.BadInput(f"{what} '{name}' is not there: nothing is recorded; there is {names}")


def require_likely(job: levigate.Job, members: dict[str, Any]) -> None:
    """Refuses readings that are most likely a slip of the unit."""
    entry = levigate.Entry(**members)
    try:
        entry.require_likely_readings(job)
    except levigate.BadInput as fault:
        raise levigate.BadInput(f"{fault}; where it was read so, add --as-read") from None


def require_known_job(given: argparse.Namespace, job: str, entries: list[levigate.Entry]) -> None:
    """Refuses a new name that is nearly one in the journal. Says aloud where another new one begins."""
    others = levigate.jobs(entries)
    if not others or job in others:
        return
    names = ", ".join(f"'{name}'" for name in others)
    near = levigate.jobs_nearly_named(entries, job)
    if near:
        raise levigate.BadInput(
            f"job '{job}' is new in this journal and nearly '{near[0]}': nothing is recorded; "
            "if both are meant, check it with --check JOB STACK"
        )
    given.notes.append(f"job '{job}' is new in this journal; its lines are of {names}")


def run_journal(given: argparse.Namespace) -> int:
    with Files() as files:
        reading = files.journal(given.journal)
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
        given.notes.append(f"line {torn.line}: {torn.message}")
    return 0


def done_step(text: str, stack: levigate.Stack) -> levigate.DoneStep:
    name, _, way = text.partition("@")
    try:
        direction_deg = float(way) if way else None
    except ValueError:
        raise levigate.BadInput(f"'{text}' is not a sheet with a direction, such as a-p800@90") from None
    return levigate.DoneStep(stack.sheet_called(name).id, direction_deg=direction_deg)


def run_go_back(given: argparse.Namespace) -> int:
    if (given.journal is None) == (given.done is None):
        raise levigate.BadInput("give either --journal or --done")
    with Files() as files:
        job, stack, shop = files.job(given.job), files.settled_stack(given.stack), files.shop(given.shop)
        journal = files.journal(given.journal) if given.journal is not None else None
    mark = mark_of(given) if given.mark is not None else None
    if journal is None:
        done = [done_step(text, stack) for text in given.done]
        bench = levigate.Bench(job, stack, shop, as_entries(done, job.name))
    else:
        require_lines_of(job, journal)
        bench = taught_by_itself(given, levigate.Bench(job, stack, shop, journal))
    if mark is None and bench.open_mark is None:
        raise levigate.BadInput("no mark after the last step: give --mark and --zone")
    way = worked("Looking for the way back", lambda _: levigate.go_back(bench, mark))
    answer(given, way)
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


def bench_now(given: argparse.Namespace) -> levigate.Bench:
    """The bench of job, stack and shop, after a journal and with what it teaches."""
    with Files() as files:
        job, stack, shop = files.job(given.job), files.settled_stack(given.stack), files.shop(given.shop)
        journal = files.journal(given.after) if given.after is not None else None
    if journal is None:
        return levigate.Bench(job, stack, shop)
    require_lines_of(job, journal)
    return taught_by_itself(given, levigate.Bench(job, stack, shop, journal))


def taught_by_itself(given: argparse.Namespace, bench: levigate.Bench) -> levigate.Bench:
    """The bench with what its own journal teaches, as plan and go-back take it alike. Says what was set aside."""
    learned = levigate.learn(bench)
    given.notes += [f"set aside: {outlier.message}" for outlier in learned.outliers]
    if learned.shop == (bench.shop or levigate.Shop.from_dict({})):
        return bench
    return levigate.Bench(bench.job, bench.stack, learned.shop, bench.journal)


def run_learn(given: argparse.Namespace) -> int:
    require_file(given.shop, "a shop")
    with Files() as files:
        job, stack, journal = files.job(given.job), files.settled_stack(given.stack), files.journal(given.journal)
        before = files.shop(given.shop) if Path(given.shop).exists() else None
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
