"""Command for the work before a plan: spray."""

from __future__ import annotations

import argparse

import levigate

from . import _after
from ._files import Files
from ._help import BEFORE, Overview
from ._names import Known, number


def add_commands(commands: Overview) -> None:
    spray = commands.add(
        BEFORE,
        "spray",
        run_spray,
        "Says how many coats to spray, and how much paint to mix.",
        "JOB STACK [options]",
        [
            (f"spray {_after.JOB} {_after.STACK}", "the coats that a clock case needs"),
            (f"spray {_after.JOB} {_after.STACK} --volume-solids 0.4 --way-back", "by the data sheet, with film to spare"),
        ],
        "no film is enough for a plan",
    )
    _after.add_job_and_stack(spray)
    spray.add_argument(
        "--gun", type=Known(levigate.GUNS), help=f"kind of gun: {', '.join(levigate.GUNS)} (default: {levigate.GUNS[0]})"
    )
    spray.add_argument(
        "--volume-solids", type=number, metavar="SHARE", help="share of the paint's volume that stays, by its data sheet, such as 0.4"
    )
    spray.add_argument("--thinner", type=number, metavar="VOLUME", help="volume of thinner for one of paint")
    spray.add_argument("--dry-um-per-coat", type=number, metavar="UM", help="dry film of a coat")
    spray.add_argument(
        "--film-cv", type=number, metavar="SHARE", help="spread of the film from spot to spot, over its mean, such as 0.1"
    )
    spray.add_argument(
        "--transfer-efficiency", type=number, metavar="SHARE", help="share of the spray that lands on the work"
    )
    spray.add_argument(
        "--loss-share", type=number, metavar="SHARE", help="share of the mix that stays in cup and hose"
    )
    spray.add_argument("--way-back", action="store_true", help="keep film for one way back")
    _after.add_shop(spray)


def run_spray(given: argparse.Namespace) -> int:
    with Files() as files:
        job, stack, shop = files.job(given.job), files.settled_stack(given.stack), files.shop(given.shop)
    names = (
        "gun",
        "volume_solids",
        "thinner",
        "dry_um_per_coat",
        "film_cv",
        "transfer_efficiency",
        "loss_share",
        "way_back",
    )
    told = {name: getattr(given, name) for name in names if getattr(given, name) is not None}
    spraying = levigate.how_much_to_spray(levigate.Bench(job, stack, shop), **told)
    _after.answer(given, spraying)
    return 0 if spraying.zones else 1
