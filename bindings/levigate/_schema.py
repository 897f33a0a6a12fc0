"""The command that prints the schema of a kind of file."""

from __future__ import annotations

import argparse
import json
import sys
from importlib import resources
from typing import Any

import levigate

from . import _after
from ._help import ELSE, Overview
from ._names import Known

ENDING = ".schema.json"


def texts() -> dict[str, str]:
    """The schema of each kind of file, by its name; none where the package was put together without them."""
    folder: Any = resources.files("levigate") / "data" / "schema"
    if not folder.is_dir():
        return {}
    files = {file.name: file for file in folder.iterdir() if file.name.endswith(ENDING)}
    return {name.removesuffix(ENDING): files[name].read_text(encoding="utf-8") for name in sorted(files)}


def add_commands(commands: Overview) -> None:
    schema = commands.add(
        ELSE,
        "schema",
        run_schema,
        "Prints what a kind of file may hold, as a JSON schema.",
        "[NAME] [options]",
        [
            ("schema", "the kinds of files"),
            ("schema job", 'keep it, and name it in your file: "$schema": "job.schema.json"'),
        ],
    )
    schema.add_argument(
        "name", metavar="NAME", nargs="?", type=Known(list(texts())), help="kind of file, such as job (default: list them)"
    )


def run_schema(given: argparse.Namespace) -> int:
    known = texts()
    if not known:
        raise levigate.BadInput("this package has no schemas in it: install it again")
    if given.name is None and given.json:
        _after.print_json(list(known))
    elif given.name is None:
        for name, text in known.items():
            print(f"{name:<12}{json.loads(text)['title']}")
    elif given.name in known:
        sys.stdout.write(known[given.name])
    else:
        raise levigate.BadInput(f"there is no file of kind '{given.name}'; there are {', '.join(known)}")
    return 0
