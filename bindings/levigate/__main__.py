"""The command line: levigate COMMAND, or python -m levigate COMMAND.

It exits with 0 if all is well. It exits with 1 if it finds no plan, or if a finding is an error.
With --strict, a finding that is a warning counts as an error.
It exits with 2 if it cannot use the input. The error stream then has one line for each fault, or with --json one object: {"errors": [...]}.
Notes beside an answer go there too, with --json as {"notes": [...]}.
"""

from __future__ import annotations

import json
import os
import sys
from collections.abc import Sequence
from pathlib import Path

import levigate

from . import _after, _buy, _completion, _drawer, _plan, _schema, _spray, _start, _terminal, _together, _when_done
from ._files import Refused, Told, told_of
from ._help import Misused, Overview

FINE, NOT_FINE, BAD_INPUT = 0, 1, 2


def called_as() -> str:
    """The words before a command, as they were typed."""
    by_module = Path(sys.argv[0]).parts[-2:] == ("levigate", "__main__.py")
    return "python -m levigate" if by_module else "levigate"


def parser(prog: str | None = None) -> Overview:
    root = Overview(
        prog or called_as(),
        "Plans the grits that take a cured clear coat from orange peel to the gloss you want. "
        "It counts film, time and paper.",
        [
            (f"plan {_after.JOB} {_after.STACK}", "the plan for a clock case"),
            ("convert 600", "what a bare number on a sheet may mean"),
        ],
        levigate.__version__,
    )
    _start.add_commands(root)
    _spray.add_commands(root)
    _drawer.add_commands(root)
    _plan.add_commands(root)
    _buy.add_commands(root)
    _together.add_commands(root)
    _after.add_commands(root)
    _when_done.add_commands(root)
    _schema.add_commands(root)
    _completion.add_commands(root, parser)
    for name, command in root.commands.items():
        if name == "completion":
            command.set_defaults(json=False)
        else:
            command.add_argument("--json", action="store_true", help="print the answer as data (JSON), and faults too")
    return root


def run(arguments: Sequence[str]) -> int:
    root = parser()
    given = root.parse_args(arguments)
    if given.command is None:
        _terminal.show(root.format_help(), sys.stderr)
        return BAD_INPUT
    given.notes = []
    try:
        status: int = given.run(given)
        sys.stdout.flush()
    except (Refused, levigate.Error):
        if given.json:
            given.notes.clear()  # the error stream then has one object
        raise
    finally:
        tell_notes([" ".join(note.split()) for note in given.notes], given.json)
    return status


def tell_notes(notes: list[str], as_json: bool) -> None:
    """On the error stream, as faults are: a line each, or with --json one object."""
    if as_json and notes:
        print(json.dumps({"notes": notes}, indent=2, ensure_ascii=False), file=sys.stderr)
    elif notes:
        print("\n".join(f"levigate: {note}" for note in notes), file=sys.stderr)


def refused(told: list[Told], as_json: bool) -> int:
    if as_json:
        print(json.dumps({"errors": told}, indent=2, ensure_ascii=False), file=sys.stderr)
    else:
        for one in told:
            print(f"levigate: {one['message']}", file=sys.stderr)
    return BAD_INPUT


def main(arguments: Sequence[str] | None = None) -> int:
    arguments = sys.argv[1:] if arguments is None else arguments
    as_json = "--json" in arguments
    try:
        return run(arguments)
    except BrokenPipeError:  # the reader of the output has closed it
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return FINE
    except KeyboardInterrupt:
        return _terminal.stopped()
    except Refused as error:
        return refused(error.told, as_json)
    except levigate.Error as error:
        return refused(told_of(error), as_json)
    except (Misused, OSError) as error:
        return refused(told_of(levigate.BadInput(str(error))), as_json)


if __name__ == "__main__":
    sys.exit(main())
