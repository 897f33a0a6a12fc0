"""The commands about one plan: plan, evaluate and calibrate."""

from __future__ import annotations

import argparse
import io
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Literal

import levigate

from . import _after
from ._after import JOB, JOURNAL, STACK
from ._files import make_folder, require_file, write_whole
from ._help import BEFORE, Overview
from ._names import Known, whole
from ._terminal import Tell, show, worked

Units = Literal["metric", "us"]
UNITS = ("metric", "us")


def add_commands(commands: Overview) -> None:
    plan = commands.add(
        BEFORE,
        "plan",
        run_plan,
        "Picks the sheets for a job, their order, and what each takes.",
        "JOB STACK [options]",
        [
            (f"plan {JOB} {STACK}", "the plan for a clock case from a drawer of mixed paper"),
            (f"plan {JOB} {STACK} --explain", "the same with reasons, readings and other ways"),
            (f"plan {JOB} {STACK} --out plan", "data, text and pictures in the folder 'plan'"),
        ],
        "there is no plan, or a finding is an error",
    )
    evaluate = commands.add(
        BEFORE,
        "evaluate",
        run_evaluate,
        "Compares your own sequence of sheets with the best plan.",
        "JOB STACK SHEET... [options]",
        [
            (f"evaluate {JOB} {STACK} a-p400 a-p800 a-p1500 b-pad", "four sheets by their ids"),
            (f"evaluate {JOB} {STACK} P600 P1200 P2000 P3000", "four sheets by their labels"),
        ],
        "the sequence or the best plan has a fault",
    )
    calibrate = commands.add(
        BEFORE,
        "calibrate",
        run_calibrate,
        "Says what to measure first, so that the time is known better.",
        "JOB STACK [options]",
        [
            (f"calibrate {JOB} {STACK}", "what to measure before the first step"),
            (f"calibrate {JOB} {STACK} --after {JOURNAL}", "what to measure after the steps done"),
        ],
        "there is no plan to measure for",
    )
    for either in (plan, evaluate, calibrate):
        _after.add_job_and_stack(either)
    evaluate.add_argument("sheets", metavar="SHEET", nargs="+", help="id or label of each sheet, in order")
    plan.add_argument("--explain", action="store_true", help="print the long card, with reasons and other ways")
    plan.add_argument(
        "--units", type=Known(UNITS), choices=UNITS, help="units of the sheet (default: metric; the card is metric)"
    )
    plan.add_argument("--page", type=Path, metavar="FILE", help="write the sheet as a page for a browser or printer")
    plan.add_argument("--out", type=Path, metavar="DIR", help="write data, text and pictures to this folder")
    for either in (plan, evaluate, calibrate):
        _after.add_after(either, "plan only what the steps in this journal left to do, at the pace that they show")
        _after.add_shop(either)
    for one, none in ((plan, "; 0 for none"), (evaluate, "")):
        add_strict(one)
        add_draws(one, "simulated runs that show how the plan may turn out", none)


def add_strict(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--strict", action="store_true", help="exit with 1 for a warning too, as for an error")


def add_draws(parser: argparse.ArgumentParser, about: str, none: str) -> None:
    parser.add_argument(
        "--draws", type=whole, default=levigate.DRAWS, metavar="N", help=f"{about} (default: {levigate.DRAWS}{none})"
    )
    parser.add_argument(
        "--seed",
        type=whole,
        default=levigate.SEED,
        metavar="S",
        help=f"another number gives other simulated runs (default: {levigate.SEED})",
    )


def run_plan(given: argparse.Namespace) -> int:
    require_use(given)
    bench = _after.bench_now(given)

    def work(tell: Tell) -> tuple[levigate.Plan, levigate.Simulation | None]:
        plan = levigate.plan(bench)
        if not plan.found or given.draws == 0:
            return plan, None
        return plan, levigate.simulate(bench, plan, given.draws, given.seed, progress=tell)

    plan, simulation = worked("Planning", work)
    units: Units = given.units or "metric"
    if given.page is not None:
        write_whole(given.page, plan.bench_sheet_html(simulation, units).encode())
    if given.out is not None:
        write_plan(plan, simulation, units, given)
    if given.json:
        sys.stdout.write(plan.to_json())
    else:
        show(plan.card(simulation) if given.explain else plan.bench_sheet(simulation, units))
    return outcome(given, plan.found, plan.findings)


def require_use(given: argparse.Namespace) -> None:
    """Refuses options that would change nothing."""
    for path in (given.page, given.out):
        require_file(str(path), "what you name here")
    if given.json and given.explain:
        raise levigate.BadInput("--explain is for text: give it without --json")
    if given.units is not None and (given.json or given.explain) and given.page is None and given.out is None:
        raise levigate.BadInput("--units is for the sheet: give it without --json and --explain, or with --page or --out")


def run_evaluate(given: argparse.Namespace) -> int:
    bench = _after.bench_now(given)
    comparison = worked("Comparing", lambda _: levigate.compare(bench, given.sheets, given.draws, given.seed))
    _after.answer(given, comparison)
    return outcome(given, comparison.taken.found, comparison.taken.findings)


def run_calibrate(given: argparse.Namespace) -> int:
    bench = _after.bench_now(given)
    plan = levigate.plan(bench)
    if not plan.found:
        why = plan.why.message if plan.why else "No plan."
        given.notes.append(f"nothing to calibrate without a plan. {why}")
        return 1
    _after.answer(given, worked("Ranking what to measure", lambda _: levigate.calibrate(bench, plan)))
    return 0


def outcome(given: argparse.Namespace, found: bool, findings: Sequence[levigate.Finding]) -> int:
    """The exit code. With --strict a warning counts as an error."""
    fails = ("error", "warning") if given.strict else ("error",)
    wrong = any(finding.severity in fails for finding in findings)
    return 0 if found and not wrong else 1


def write_plan(
    plan: levigate.Plan, simulation: levigate.Simulation | None, units: Units, given: argparse.Namespace
) -> None:
    """Writes data, sheet and card. With matplotlib it also writes the pictures of plots.PICTURES."""
    folder: Path = given.out
    make_folder(folder)
    write_whole(folder / "plan.json", plan.to_json().encode())
    if simulation is not None:
        write_whole(folder / "simulation.json", simulation.to_json().encode())
    write_whole(folder / "card.txt", plan.card(simulation).encode())
    write_whole(folder / "sheet.txt", plan.bench_sheet(simulation, units).encode())
    write_whole(folder / "sheet.html", plan.bench_sheet_html(simulation, units).encode())
    try:
        from levigate import plots
    except ImportError as missing:
        given.notes.append(f"no pictures, {missing}")
        return
    for name, draw in plots.PICTURES.items():
        picture = io.BytesIO()
        draw(plan, simulation).savefig(picture, dpi=150)
        write_whole(folder / f"{name}.png", picture.getvalue())
