"""Command for several pieces that share the paper on hand."""

from __future__ import annotations

import argparse
import sys

import levigate

from ._after import SHOP_HELP, Command, shop_at


def add_commands(command: Command) -> None:
    together = command(
        "together", run_together, "plan several pieces from one stack, and say what to buy and which starves first"
    )
    together.add_argument("stack", metavar="STACK", help="file of format levigate.stack/1")
    together.add_argument(
        "jobs", metavar="JOB", nargs="+", help="files of format levigate.job/1, in the order of the work"
    )
    together.add_argument("--shop", metavar="SHOP", help=SHOP_HELP)
    together.add_argument(
        "--draws",
        type=int,
        default=levigate.DRAWS,
        metavar="N",
        help=f"simulated runs that show how much paper is enough (default: {levigate.DRAWS}; 0 for none)",
    )
    together.add_argument(
        "--seed",
        type=int,
        default=levigate.SEED,
        metavar="S",
        help=f"seed of the simulated runs (default: {levigate.SEED})",
    )


def run_together(given: argparse.Namespace) -> int:
    stack = levigate.Stack.load(given.stack)
    jobs = [levigate.Job.load(path) for path in given.jobs]
    together = levigate.plan_together(jobs, stack, shop_at(given.shop), given.draws, given.seed)
    sys.stdout.write(together.to_json() if given.json else together.card())
    wrong = any(finding.severity == "error" for plan in together.plans for finding in plan.findings)
    return 0 if together.found and not wrong else 1
