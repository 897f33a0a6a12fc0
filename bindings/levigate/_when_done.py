"""The shell command when-done. What it counts is in risk/when_done.hpp."""

from __future__ import annotations

import argparse

import levigate

from . import _after
from ._files import Files, file_name
from ._help import AT_THE_BENCH, Overview
from ._terminal import worked


def add_commands(commands: Overview) -> None:
    when = commands.add(
        AT_THE_BENCH,
        "when-done",
        run_when_done,
        "Says how long the rest of the job takes, and whether the paper lasts.",
        "JOB STACK --journal JOURNAL [options]",
        [(f"when-done {_after.JOB} {_after.STACK} --journal {_after.JOURNAL}", "what is left of a day at the bench")],
        "there is no plan for the rest",
    )
    _after.add_job_and_stack(when)
    when.add_argument(
        "--journal", metavar="JOURNAL", type=file_name, required=True, help="file of the journal: what was done"
    )
    _after.add_shop(when)


def run_when_done(given: argparse.Namespace) -> int:
    with Files() as files:
        job, stack, shop = files.job(given.job), files.settled_stack(given.stack), files.shop(given.shop)
        journal = files.journal(given.journal)
    _after.require_lines_of(job, journal)
    bench = levigate.Bench(job, stack, shop, journal)
    when = worked("Working out the rest", lambda _: bench.when_done())
    _after.answer(given, when)
    return 0 if when.done or when.minutes is not None else 1
