"""The command line: python -m levigate plan | evaluate | check | convert | record | journal | go-back | learn.

Ends with 0 where all is well, with 1 where there is no plan or a finding is an error, with 2 for
input that cannot be used: the error stream has a line for each fault, what and where.
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

from . import _after

FINE, NOT_FINE, BAD_INPUT = 0, 1, 2


class Parser(argparse.ArgumentParser):
    """Tells of bad arguments in one line."""

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

    plan = command("plan", run_plan, "the best plan for a job from a stack, as a card")
    evaluate = command("evaluate", run_evaluate, "a sequence of your own beside the best plan")
    for either in (plan, evaluate):
        _after.add_job_and_stack(either)
    plan.add_argument("--out", type=Path, metavar="DIR", help="write data, card and pictures there")
    plan.add_argument(
        "--draws",
        type=whole,
        default=1000,
        metavar="N",
        help="how often the plan is worked through with other numbers, to tell how it may turn out "
        "(default: 1000; 0 leaves it out)",
    )
    plan.add_argument(
        "--seed", type=whole, default=1, metavar="S", help="of those numbers (default: 1)"
    )
    plan.add_argument("--after", metavar="JOURNAL", help="plan what is left after the steps in it")
    plan.add_argument("--shop", metavar="SHOP", help="file of format levigate.shop/1: what was learned")
    evaluate.add_argument("sheets", metavar="ID", nargs="+", help="ids of the sheets, in order")

    check = command("check", run_check, "what there is to say of a stack")
    check.add_argument("stack", metavar="STACK", help="file of format levigate.stack/1")
    check.add_argument(
        "--job", metavar="JOB", help="the job whose rules count, and not the defaults"
    )

    convert = command("convert", run_convert, "the nearest grade of another system")
    convert.add_argument("label", metavar="LABEL", help="as on the back of the sheet")
    convert.add_argument("--to", metavar="SYSTEM", help="default: each system for coated abrasives")
    convert.add_argument(
        "--bare", metavar="SYSTEM", default="ask", help="the system of a bare number"
    )
    _after.add_commands(command)
    return root


def run_plan(given: argparse.Namespace) -> int:
    job, stack = _after.load(given)
    journal = levigate.Journal(given.after).read() if given.after is not None else None
    bench = levigate.Bench(job, stack, _after.shop_at(given.shop), journal)
    plan, simulation = levigate.plan(bench), None
    if plan.found and given.draws > 0:
        simulation = levigate.simulate(bench, plan, given.draws, given.seed)
    sys.stdout.write(plan.to_json() if given.json else plan.card(simulation))
    if given.out is not None:
        write_plan(plan, simulation, given.out)
    return outcome(plan.found, plan.findings)


def run_evaluate(given: argparse.Namespace) -> int:
    job, stack = _after.load(given)
    taken = levigate.evaluate(job, stack, given.sheets)
    if given.json:
        sys.stdout.write(taken.to_json())
    else:
        sys.stdout.write(levigate.comparison_card(taken, levigate.plan(job, stack)))
    return outcome(taken.found, taken.findings)


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
        systems = [s for s in ("FEPA P", "CAMI", "JIS", "micron") if s != grade.system]
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
    """Data, card and, where matplotlib is there, section.png and ladder.png."""
    folder.mkdir(parents=True, exist_ok=True)
    write_whole(folder / "plan.json", plan.to_json().encode())
    if simulation is not None:
        write_whole(folder / "simulation.json", simulation.to_json().encode())
    write_whole(folder / "card.txt", plan.card(simulation).encode())
    try:
        from levigate import plots
    except ImportError as missing:
        print(f"levigate: no section.png and ladder.png, {missing}", file=sys.stderr)
        return
    for name, draw in (("section.png", plots.section), ("ladder.png", plots.ladder)):
        picture = io.BytesIO()
        draw(plan).savefig(picture, dpi=150)
        write_whole(folder / name, picture.getvalue())


def write_whole(path: Path, data: bytes) -> None:
    """Writes a file so that it is there completely or not at all."""
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
    except BrokenPipeError:  # the reader of our output has seen enough
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
