"""The commands and what --help says of them."""

from __future__ import annotations

import argparse
import re
import textwrap
from collections.abc import Callable, Sequence
from typing import NoReturn

from ._terminal import show

BEFORE, AT_THE_BENCH, AFTER, ELSE = "before the work", "at the bench", "after the last step", "for your shell"
FINE = "fine"
BAD_INPUT = "the input cannot be used; the error stream has one line for each fault"
WIDTH = 88

Example = tuple[str, str]


class Misused(Exception):
    """Arguments that do not go together."""


class Format(argparse.RawDescriptionHelpFormatter):
    def __init__(self, prog: str) -> None:
        super().__init__(prog, max_help_position=26, width=WIDTH)


class Parser(argparse.ArgumentParser):
    """Raises bad arguments, and shows help as a terminal has it."""

    def __init__(self, prog: str, usage: str, description: str, epilog: str) -> None:
        super().__init__(
            prog=prog, usage=usage, description=description, epilog=epilog, formatter_class=Format, allow_abbrev=False, add_help=False
        )
        self.add_argument("-h", "--help", action="help", help="print this text")
        self.color = False  # show() colours
        self._positionals.title = "what you give"

    def error(self, message: str) -> NoReturn:
        raise Misused(f"{message}; see '{self.prog} --help'")

    def print_help(self, file: object = None) -> None:
        show(self.format_help())


class Overview(Parser):
    """The parser of the whole command. Its help lists the commands by when they are asked."""

    def __init__(self, prog: str, about: str, examples: Sequence[Example], version: str) -> None:
        super().__init__(prog, f"{prog} COMMAND ...", about, "")
        self.add_argument("--version", action="version", version=version)
        self.examples = examples
        self.groups: dict[str, list[tuple[str, str]]] = {BEFORE: [], AT_THE_BENCH: [], AFTER: [], ELSE: []}
        self.commands: dict[str, Parser] = {}
        self.choices = self.add_subparsers(metavar="COMMAND", dest="command", parser_class=Parser)

    def add(
        self,
        when: str,
        name: str,
        run: Callable[[argparse.Namespace], int],
        about: str,
        words: str,
        examples: Sequence[Example],
        not_fine: str | None = None,
    ) -> Parser:
        """A command. `words` are its arguments in the usage line. `not_fine` is what exit code 1 means, if it has one."""
        prog = f"{self.prog} {name}"
        epilog = examples_text(self.prog, examples) + exit_codes({"0": FINE, "1": not_fine, "2": BAD_INPUT})
        made: Parser = self.choices.add_parser(
            name, help=about, prog=prog, usage=f"{prog} {words}", description=about, epilog=epilog
        )
        made.set_defaults(run=run)
        self.groups[when].append((name, about))
        self.commands[name] = made
        return made

    def format_help(self) -> str:
        text = f"usage: {self.usage}\n\n{textwrap.fill(self.description or '', WIDTH)}\n"
        for when, commands in self.groups.items():
            text += f"\n{when}:\n" + "".join(f"  {name:<12}{about}\n" for name, about in commands)
        text += "\n" + examples_text(self.prog, self.examples)
        text += exit_codes(
            {"0": FINE, "1": "no plan, or a finding is an error; with --strict, or a warning", "2": BAD_INPUT, "130": "stopped by Ctrl-C"}
        )
        return (
            text
            + f"\n'{self.prog} COMMAND --help' says what a command takes, with examples."
            + "\nIn place of one file, - takes standard input. --json gives answers and faults as data.\n"
            + "data/demo holds files to begin with, and 'schema' prints what they may hold.\n"
            + "Without a command, this text goes to the error stream and the exit code is 2.\n"
        )


def examples_text(prog: str, examples: Sequence[Example]) -> str:
    text = "examples:\n"
    for words, about in examples:
        text += "  " + " \\\n    ".join(command_lines(f"{prog} {words}")) + f"\n      {about}\n"
    return text


def command_lines(command: str) -> list[str]:
    """A command on lines that are not too long. It is broken before an option where it can be."""
    lines = [""]
    for part in re.split(r" (?=--)", command):
        whole = f"{lines[-1]} {part}".strip()
        lines[-1:] = [whole] if len(whole) <= WIDTH - 8 else [*lines[-1:], part]
    wrapped = [textwrap.wrap(line, WIDTH - 8, break_long_words=False, break_on_hyphens=False) for line in lines]
    return [line for one in wrapped for line in one]


def exit_codes(meaning: dict[str, str | None]) -> str:
    return "\nexit codes:\n" + "".join(f"  {code:<4}{said}\n" for code, said in meaning.items() if said)
