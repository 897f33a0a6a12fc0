"""Command for several pieces that share the paper on hand."""

from __future__ import annotations

import argparse

import levigate

from . import _after, _plan
from ._files import Files, file_name
from ._help import BEFORE, Overview
from ._terminal import worked


def add_commands(commands: Overview) -> None:
    together = commands.add(
        BEFORE,
        "together",
        run_together,
        "Plans several pieces that share one drawer, and says what to buy.",
        "STACK JOB... [options]",
        [(f"together {_after.STACK} {' '.join([_after.JOB] * 3)}", "three clock cases from one drawer")],
        "a piece has no plan, or a finding is an error",
    )
    _after.add_stack(together)
    together.add_argument(
        "jobs", metavar="JOB", type=file_name, nargs="+", help="files of the jobs, in the order of the work"
    )
    _after.add_shop(together)
    _plan.add_strict(together)
    _plan.add_draws(together, "simulated runs that show how much paper is enough", "; 0 for none")


def run_together(given: argparse.Namespace) -> int:
    with Files() as files:
        stack, shop = files.settled_stack(given.stack), files.shop(given.shop)
        jobs = [files.job(name) for name in given.jobs]
    together = worked(
        "Planning together", lambda _: levigate.plan_together(jobs, stack, shop, given.draws, given.seed)
    )
    _after.answer(given, together)
    findings = [finding for plan in together.plans for finding in plan.findings]
    return _plan.outcome(given, together.found, findings)
