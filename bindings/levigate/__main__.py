"""The command line: python -m levigate plan | calibrate | evaluate | buy | check | convert | record | journal | go-back | learn | spray | together | when-done.

It exits with 0 if all is well. It exits with 1 if it finds no plan, or if a finding is an error.
It exits with 2 if it cannot use the input. The error stream then has one line for each fault.
"""

from __future__ import annotations

import argparse
import io
import os
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Any, NoReturn

import levigate

from . import _after, _buy, _spray, _together, _when_done

FINE, NOT_FINE, BAD_INPUT = 0, 1, 2


class Parser(argparse.ArgumentParser):
    """Reports bad arguments in one line."""

    def error(self, message: str) -> NoReturn:
        self.exit(BAD_INPUT, f"{self.prog}: {message}\n")


def whole(text: str) -> int:
    value = int(text)
    if not 0 <= value < 2**63:
        raise ValueError
    return value


def parser() -> Parser:
    root = Parser(prog="levigate", description=levigate.__doc__)
    root.add_argument("--version", action="version", version=levigate.__version__)
    commands = root.add_subparsers(required=True, metavar="COMMAND")

    def command(name: str, run: Any, about: str) -> argparse.ArgumentParser:
        added = commands.add_parser(name, help=about, description=about)
        added.set_defaults(run=run)
        added.add_argument("--json", action="store_true", help="print JSON")
        return added

    plan = command("plan", run_plan, "find the best plan for a job from a stack, and print its card")
    evaluate = command("evaluate", run_evaluate, "compare your own sequence of sheets with the best plan")
    for either in (plan, evaluate):
        _after.add_job_and_stack(either)
    plan.add_argument("--out", type=Path, metavar="DIR", help="write data, card and pictures to this folder")
    for one, none in ((plan, "; 0 for none"), (evaluate, "")):
        one.add_argument(
            "--draws",
            type=whole,
            default=levigate.DRAWS,
            metavar="N",
            help="simulated runs that show how the plan may turn out "
            f"(default: {levigate.DRAWS}{none})",
        )
        one.add_argument(
            "--seed",
            type=whole,
            default=levigate.SEED,
            metavar="S",
            help=f"seed of the simulated runs (default: {levigate.SEED})",
        )
    calibrate = command(
        "calibrate", run_calibrate, "rank what to measure, by how far it narrows the day for the minutes it takes"
    )
    _after.add_job_and_stack(calibrate)
    for either in (plan, evaluate, calibrate):
        either.add_argument(
            "--after", metavar="JOURNAL", help="plan only what the steps in this journal left to do, at the pace that they show"
        )
        either.add_argument("--shop", metavar="SHOP", help=_after.SHOP_HELP)
    evaluate.add_argument("sheets", metavar="ID", nargs="+", help="ids or labels of the sheets, in order")

    check = command("check", run_check, "check a stack for labels to settle, gaps and near duplicates")
    check.add_argument("stack", metavar="STACK", help="file of format levigate.stack/1")
    check.add_argument(
        "--job", metavar="JOB", help="use the rules of this job instead of the defaults"
    )

    convert = command("convert", run_convert, "find the nearest grade in another system")
    convert.add_argument("label", metavar="LABEL", help="label as on the back of the sheet, such as P600")
    convert.add_argument("--to", metavar="SYSTEM", help="target system (default: each system for coated abrasives)")
    convert.add_argument(
        "--bare", metavar="SYSTEM", default="ask", help="system of a bare number such as 600 (default: ask, which refuses it)"
    )
    _after.add_commands(command)
    _buy.add_commands(command)
    _together.add_commands(command)
    _when_done.add_commands(command)
    _spray.add_commands(command)
    return root


def run_plan(given: argparse.Namespace) -> int:
    bench = _after.bench_now(given)
    plan, simulation = levigate.plan(bench), None
    if plan.found and given.draws > 0:
        simulation = levigate.simulate(bench, plan, given.draws, given.seed)
    sys.stdout.write(plan.to_json() if given.json else plan.card(simulation))
    if given.out is not None:
        write_plan(plan, simulation, given.out)
    return outcome(plan.found, plan.findings)


def run_calibrate(given: argparse.Namespace) -> int:
    bench = _after.bench_now(given)
    plan = levigate.plan(bench)
    if not plan.found:
        why = plan.why.message if plan.why else "No plan."
        print(f"levigate: nothing to calibrate without a plan. {why}", file=sys.stderr)
        return NOT_FINE
    calibration = levigate.calibrate(bench, plan)
    sys.stdout.write(calibration.to_json() if given.json else calibration.card())
    return FINE


def run_evaluate(given: argparse.Namespace) -> int:
    comparison = levigate.compare(_after.bench_now(given), given.sheets, given.draws, given.seed)
    sys.stdout.write(comparison.to_json() if given.json else comparison.card())
    return outcome(comparison.taken.found, comparison.taken.findings)


def run_check(given: argparse.Namespace) -> int:
    stack = levigate.Stack.load(given.stack)
    rules = levigate.Job.load(given.job).rules if given.job is not None else None
    findings = levigate.check(stack, rules)
    if given.json:
        _after.print_json([finding.to_dict() for finding in findings])
    else:
        sys.stdout.write(levigate.findings_text(findings))
    return outcome(True, findings)


def run_convert(given: argparse.Namespace) -> int:
    grade = levigate.grade(given.label, bare=given.bare)
    if given.to is not None:
        systems = [given.to]
    else:
        systems = [s for s in levigate.COATED_SYSTEMS if s != grade.system]
    found = [levigate.convert(grade, system) for system in systems]
    if given.json:
        _after.print_json(found[0].to_dict() if given.to is not None else [f.to_dict() for f in found])
    else:
        sys.stdout.write("\n".join(levigate.equivalent_text(grade, f) for f in found))
    return FINE


def outcome(found: bool, findings: Sequence[levigate.Finding]) -> int:
    wrong = any(finding.severity == "error" for finding in findings)
    return FINE if found and not wrong else NOT_FINE


def write_plan(plan: levigate.Plan, simulation: levigate.Simulation | None, folder: Path) -> None:
    """Writes data and card. With matplotlib it also writes the pictures of plots.PICTURES."""
    folder.mkdir(parents=True, exist_ok=True)
    write_whole(folder / "plan.json", plan.to_json().encode())
    if simulation is not None:
        write_whole(folder / "simulation.json", simulation.to_json().encode())
    write_whole(folder / "card.txt", plan.card(simulation).encode())
    try:
        from levigate import plots
    except ImportError as missing:
        print(f"levigate: no pictures, {missing}", file=sys.stderr)
        return
    for name, draw in plots.PICTURES.items():
        picture = io.BytesIO()
        draw(plan, simulation).savefig(picture, dpi=150)
        write_whole(folder / f"{name}.png", picture.getvalue())


def write_whole(path: Path, data: bytes) -> None:
    """Writes a whole file or none."""
    part = path.with_name(f"{path.name}.{os.getpid()}.part")
    try:
        part.write_bytes(data)
        part.replace(path)
    finally:
        part.unlink(missing_ok=True)


def main(arguments: Sequence[str] | None = None) -> int:
    given = parser().parse_args(arguments)
    try:
        status: int = given.run(given)
        sys.stdout.flush()
    except BrokenPipeError:  # the reader of the output has closed it
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return FINE
    except (levigate.Error, OSError) as error:
        faults = error.faults if isinstance(error, levigate.Error) else []
        for message in [fault.message for fault in faults] or [str(error)]:
            print("levigate: " + " ".join(message.split()), file=sys.stderr)
        return BAD_INPUT
    return status


if __name__ == "__main__":
    sys.exit(main())
