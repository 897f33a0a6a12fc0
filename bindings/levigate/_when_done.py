"""The shell command when-done. What it counts is in risk/when_done.hpp."""

from __future__ import annotations

import argparse
import sys

import levigate

from . import _after


def add_commands(command: _after.Command) -> None:
    when = command("when-done", run_when_done, "tell what is left of a job, from its journal")
    _after.add_job_and_stack(when)
    when.add_argument(
        "--journal", metavar="JOURNAL", required=True, help="file of format levigate.journal/1"
    )
    when.add_argument("--shop", metavar="SHOP", help=_after.SHOP_HELP)


def run_when_done(given: argparse.Namespace) -> int:
    job, stack = _after.load(given)
    journal = levigate.Journal(given.journal).read()
    _after.require_lines_of(job, journal)
    when = levigate.Bench(job, stack, _after.shop_at(given.shop), journal).when_done()
    sys.stdout.write(when.to_json() if given.json else when.card())
    return 0 if when.done or when.minutes is not None else 1
