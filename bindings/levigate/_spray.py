"""Command for the work before a plan: spray."""

from __future__ import annotations

import argparse
import sys

import levigate

from . import _after


def add_commands(command: _after.Command) -> None:
    spray = command("spray", run_spray, "find coats, film and paint that suffice, before you spray")
    _after.add_job_and_stack(spray)
    spray.add_argument("--gun", help="kind of gun (default: high volume low pressure)")
    spray.add_argument(
        "--volume-solids", type=float, metavar="SHARE", help="share of the paint's volume that stays, by its data sheet"
    )
    spray.add_argument("--thinner", type=float, help="volume of thinner for one of paint")
    spray.add_argument("--dry-um-per-coat", type=float, metavar="UM", help="dry film of a coat")
    spray.add_argument(
        "--film-cv", type=float, metavar="SHARE", help="spread of the film from spot to spot, over its mean"
    )
    spray.add_argument(
        "--transfer-efficiency", type=float, metavar="SHARE", help="share of the spray that lands on the work"
    )
    spray.add_argument("--loss-share", type=float, metavar="SHARE", help="share of the mix that stays in cup and hose")
    spray.add_argument("--way-back", action="store_true", help="keep film for one way back")
    spray.add_argument("--shop", metavar="SHOP", help=_after.SHOP_HELP)


def run_spray(given: argparse.Namespace) -> int:
    job, stack = _after.load(given)
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
    bench = levigate.Bench(job, stack, _after.shop_at(given.shop))
    spraying = levigate.how_much_to_spray(bench, **told)
    sys.stdout.write(spraying.to_json() if given.json else spraying.card())
    return 0 if spraying.zones else 1
