"""The command for what to buy before a day of work."""

from __future__ import annotations

import argparse
import sys

import levigate

from . import _after


def add_commands(command: _after.Command) -> None:
    buy = command("buy", run_buy, "list the sheets to buy, the kind that saves most time, and labels that matter")
    _after.add_job_and_stack(buy)
    buy.add_argument("--shop", metavar="SHOP", help=_after.SHOP_HELP)
    buy.add_argument("--after", metavar="JOURNAL", help="buy only for what the steps in this journal left to do")
    buy.add_argument(
        "--sold",
        nargs="+",
        metavar="LABEL",
        default=[],
        help="labels that a shop sells (default: each grade of the drawer's systems)",
    )


def run_buy(given: argparse.Namespace) -> int:
    job, stack = _after.load(given)
    journal = None
    if given.after is not None:
        journal = levigate.Journal(given.after).read()
        _after.require_lines_of(job, journal)
    buying = levigate.buy(job, stack, _after.shop_at(given.shop), journal, given.sold)
    sys.stdout.write(buying.to_json() if given.json else buying.card())
    return 0 if buying.found else 1
