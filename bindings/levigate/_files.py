"""The files of a command: read by name, from standard input or a pipe, their faults told all at once."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable
from pathlib import Path
from types import TracebackType
from typing import Any, TypeVar, cast

import levigate

Value = TypeVar("Value")
Told = dict[str, Any]

PIPE = "-"  # stands for standard input
PIPE_NAME = "standard input"
MEMBERS = [name for name, value in vars(levigate.Fault).items() if isinstance(value, property)]


def file_name(text: str) -> str:
    """An argument that names a file to read."""
    return text


def told_of(error: levigate.Error, file: str = "") -> list[Told]:
    """The members of each fault, and the file that it is in. The message names the file too."""
    told = []
    faults: list[Any] = list(error.faults) or [error]
    for fault in faults:
        one = {name: getattr(fault, name, None) for name in MEMBERS}
        one["message"] = message = " ".join((one["message"] or str(error)).split())
        if file and file not in message:
            one["message"] = f"{message}, in {file}"
        told.append({**one, "contradicts": one["contradicts"] or [], "file": file})
    return told


class Refused(Exception):
    """Files that cannot be used, with all their faults."""

    def __init__(self, told: list[Told]) -> None:
        super().__init__("\n".join(str(one["message"]) for one in told))
        self.told = told


class Files:
    """Reads files in a `with` block, at whose end it raises the faults of all of them.

    What it could not read it gives as None, which nobody is to touch within the block.
    """

    def __init__(self) -> None:
        self.told: list[Told] = []
        self.piped = False

    def __enter__(self) -> Files:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None) -> None:
        if kind is None and self.told:
            raise Refused(self.told)

    def job(self, name: str) -> levigate.Job:
        return self.read(name, levigate.Job.load, levigate.Job.from_json)

    def stack(self, name: str) -> levigate.Stack:
        """A drawer whose labels may be open."""
        return self.read(name, levigate.Stack.load, levigate.Stack.from_json)

    def settled_stack(self, name: str) -> levigate.Stack:
        """A drawer whose labels each settle a grade."""
        stack = self.stack(name)
        if stack is not None:
            self.attempt(name, lambda: stack.grades)
        return stack

    def shop(self, name: str | None) -> levigate.Shop | None:
        if name is None:
            return None
        return self.read(name, levigate.Shop.load, levigate.Shop.from_json)

    def journal(self, name: str) -> levigate.JournalReading:
        return self.read(name, lambda path: levigate.Journal(path).read(), levigate.JournalReading.from_json)

    def read(self, name: str, load: Callable[[str], Value], parse: Callable[[str, str], Value]) -> Value:
        if name == PIPE:
            return self.attempt(name, lambda: parse(self.pipe(), PIPE_NAME))
        if is_pipe(name):
            return self.attempt(name, lambda: parse(text_of(Path(name).read_bytes(), name), name))
        return self.attempt(name, lambda: load(name))

    def attempt(self, name: str, work: Callable[[], Value]) -> Value:
        try:
            return work()
        except levigate.Error as error:
            self.told += told_of(error, PIPE_NAME if name == PIPE else name)
            return cast(Value, None)

    def pipe(self) -> str:
        if self.piped:
            raise levigate.BadInput("standard input is one file: give the others by their names")
        self.piped = True
        return text_of(sys.stdin.buffer.read(), PIPE_NAME)


def is_pipe(name: str) -> bool:
    """Whether it can be read once and not be written whole: a pipe by name, as a shell makes of <(command)."""
    return Path(name).is_fifo()


def text_of(data: bytes, name: str) -> str:
    try:
        return data.decode()
    except UnicodeDecodeError as error:
        raise levigate.BadInput(f"{name} is not UTF-8 at byte {error.start}") from None


def require_file(name: str, what: str) -> None:
    """Refuses standard input and pipes where a file is to be written."""
    if name == PIPE or is_pipe(name):
        raise levigate.BadInput(f"{what} is written to: give the name of a file, not '{name}'")


def make_folder(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise levigate.BadInput(f"folder '{folder}' cannot be made: {error.strerror}") from None


def write_whole(path: Path, data: bytes) -> None:
    """Writes a whole file or none."""
    part = path.with_name(f"{path.name}.{os.getpid()}.part")
    try:
        part.write_bytes(data)
        part.replace(path)
    except OSError as error:
        raise levigate.BadInput(f"file '{path}' cannot be written: {error.strerror}") from None
    finally:
        part.unlink(missing_ok=True)
