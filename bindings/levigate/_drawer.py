"""The commands about the drawer alone: check and convert."""

from __future__ import annotations

import argparse

import levigate

from . import _after, _plan
from ._files import Files, Refused, file_name, told_of
from ._help import BEFORE, Overview
from ._names import Known
from ._terminal import show

SYSTEM = Known(levigate.SYSTEMS)


def add_commands(commands: Overview) -> None:
    check = commands.add(
        BEFORE,
        "check",
        run_check,
        "Lists what is wrong or missing in the drawer.",
        "STACK [options]",
        [
            ("check data/demo/stack.json", "the drawer by the usual rules"),
            ("check data/demo/stack.json --job data/demo/job.json", "the same by the rules of a job"),
        ],
        "a finding is an error",
    )
    _after.add_stack(check)
    check.add_argument("--job", metavar="JOB", type=file_name, help="use the rules of this job instead of the usual ones")
    _plan.add_strict(check)

    convert = commands.add(
        BEFORE,
        "convert",
        run_convert,
        "Says what a label may mean, and what is nearest to it in other systems.",
        "LABEL... [options]",
        [
            ("convert 600", "each grade that a bare number may be"),
            ("convert P600 400 '#800'", "several labels in one table"),
            ("convert P800 --to CAMI", "how well the nearest grade of one system matches"),
        ],
    )
    convert.add_argument(
        "labels", metavar="LABEL", nargs="+", help="as on the back of the sheet, such as P600, 400, '#800' or '9 um'"
    )
    convert.add_argument(
        "--to", metavar="SYSTEM", type=SYSTEM, help=f"look in this system alone: {', '.join(levigate.SYSTEMS)}"
    )
    convert.add_argument(
        "--bare", metavar="SYSTEM", type=SYSTEM, help="system of bare numbers such as 600 (default: each it may be)"
    )


def run_check(given: argparse.Namespace) -> int:
    with Files() as files:
        stack = files.stack(given.stack)
        job = files.job(given.job) if given.job is not None else None
    findings = levigate.check(stack, job.rules if job is not None else None)
    if given.json:
        _after.print_json([finding.to_dict() for finding in findings])
    else:
        show(levigate.findings_text(findings))
    return _plan.outcome(given, True, findings)


def run_convert(given: argparse.Namespace) -> int:
    systems = levigate.COATED_SYSTEMS if given.to is None else (given.to,)
    bare = given.bare if given.bare is not None else "ask"
    labels, told = [], []
    for label in given.labels:
        try:
            labels.append(levigate.meanings(label, bare, systems))
        except levigate.Error as error:
            told += [one for one in told_of(error) if one not in told]
    if told:
        raise Refused(told)
    if given.json:
        _after.print_json([label.to_dict() for label in labels])
    elif given.to is None:
        show(levigate.meanings_text(labels))
    else:
        found = [(one.grade, other) for label in labels for one in label.meanings for other in one.nearest]
        show("\n".join(levigate.equivalent_text(grade, other) for grade, other in found))
    return 0
