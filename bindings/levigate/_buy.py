"""The command for what to buy before a day of work."""

from __future__ import annotations

import argparse

import levigate

from . import _after
from ._files import Files
from ._help import BEFORE, Overview
from ._terminal import worked


def add_commands(commands: Overview) -> None:
    buy = commands.add(
        BEFORE,
        "buy",
        run_buy,
        "Says which sheets to buy, and which one kind more saves the most time.",
        "JOB STACK [options]",
        [
            (f"buy {_after.JOB} {_after.STACK}", "sheets that suffice, and what would help"),
            (f"buy {_after.JOB} {_after.STACK} --sold 'CAMI 1200' P2500", "the same from what one shop sells"),
        ],
        "there is no plan from these sheets",
    )
    _after.add_job_and_stack(buy)
    _after.add_after(buy, "buy only for what the steps in this journal left to do")
    _after.add_shop(buy)
    buy.add_argument(
        "--sold",
        nargs="+",
        metavar="LABEL",
        default=[],
        help="labels that a shop sells (default: each grade of the drawer's systems)",
    )


def run_buy(given: argparse.Namespace) -> int:
    with Files() as files:
        job, stack, shop = files.job(given.job), files.stack(given.stack), files.shop(given.shop)
        journal = files.journal(given.after) if given.after is not None else None
    if journal is not None:
        _after.require_lines_of(job, journal)
    buying = worked("Trying what to buy", lambda _: levigate.buy(job, stack, shop, journal, given.sold))
    _after.answer(given, buying)
    return 0 if buying.found else 1
