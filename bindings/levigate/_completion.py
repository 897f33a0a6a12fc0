"""The command that prints a script for completion in a shell."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable
from pathlib import Path

from ._files import file_name
from ._help import ELSE, Overview
from ._names import Known

SHELLS = ("bash", "zsh", "tcsh")


def add_commands(commands: Overview, again: Callable[[str], Overview]) -> None:
    """`again` makes the whole parser for a program of another name."""
    completion = commands.add(
        ELSE,
        "completion",
        lambda given: run_completion(given, again),
        "Prints a script with which your shell completes commands, files and names.",
        "SHELL",
        [("completion bash", "keep it as ~/.local/share/bash-completion/completions/levigate")],
    )
    completion.add_argument("shell", metavar="SHELL", choices=SHELLS, help=f"your shell: {', '.join(SHELLS)}")


def run_completion(given: argparse.Namespace, again: Callable[[str], Overview]) -> int:
    import shtab

    root = again("levigate")
    for command in root.commands.values():
        for action in command._actions:
            if isinstance(action.type, Known) and action.choices is None:
                action.choices = action.type.in_one_word
            elif action.type is file_name or action.type is Path:
                action.complete = shtab.FILE  # type: ignore[attr-defined]  # where shtab looks for it
    sys.stdout.write(shtab.complete(root, given.shell))
    return 0
