"""What only a terminal gets: colour, and how far long work has come. Ctrl-C ends such work at once."""

from __future__ import annotations

import os
import sys
import threading
from collections.abc import Callable
from typing import TextIO, TypeVar

Result = TypeVar("Result")
Tell = Callable[[int, int], bool]

PATIENCE_S = 1.0  # work that is done by then shows no progress

# A heading stands at the margin and ends at its colon. The word of a finding opens a paragraph.
STYLES = (
    (r"(?m)^[A-Za-z][^.:\n]{0,60}:(?=\s|$)", "bold"),
    (r"(?m)^ *Error(?=:)", "bold red"),
    (r"(?m)^ *Warning(?=:)", "bold yellow"),
    (r"(?m)^ *Note(?=:)", "bold cyan"),
)

unfinished: set[threading.Event] = set()  # work that still runs


def coloured(stream: TextIO) -> bool:
    return stream.isatty() and not os.environ.get("NO_COLOR")


def show(text: str, stream: TextIO | None = None) -> None:
    """Writes text; to a terminal with its headings and its words of warning in colour."""
    stream = stream or sys.stdout
    if not coloured(stream):
        stream.write(text)
        return
    from rich.console import Console
    from rich.text import Text

    styled = Text(text, end="")
    for pattern, style in STYLES:
        styled.highlight_regex(pattern, style)
    Console(file=stream, highlight=False).print(styled, soft_wrap=True, end="")


def worked(about: str, work: Callable[[Tell], Result]) -> Result:
    """The result of work that may be long.

    It runs beside the main thread, which meanwhile hears Ctrl-C and shows progress. `work` may tell of what is done, of how much.
    """
    results: list[Result] = []
    errors: list[BaseException] = []
    so_far: list[int] = []
    finished = threading.Event()

    def tell(done: int, of: int) -> bool:
        so_far[:] = done, of
        return True

    def run() -> None:
        try:
            results.append(work(tell))
        except BaseException as error:  # raised again below, where the caller sees it
            errors.append(error)
        finished.set()

    unfinished.add(finished)
    threading.Thread(target=run, daemon=True).start()
    if not finished.wait(PATIENCE_S) and sys.stderr.isatty():
        show_progress(about, finished, so_far)
    finished.wait()
    unfinished.remove(finished)
    if errors:
        raise errors[0]
    return results[0]


def show_progress(about: str, finished: threading.Event, so_far: list[int]) -> None:
    from rich.console import Console
    from rich.progress import BarColumn, Progress, TextColumn, TimeElapsedColumn

    columns = (TextColumn("{task.description}"), BarColumn(), TimeElapsedColumn())
    with Progress(*columns, console=Console(stderr=True), transient=True) as progress:
        task = progress.add_task(about, total=None)
        while not finished.wait(0.1):
            if so_far:
                progress.update(task, completed=so_far[0], total=so_far[1])


def stopped() -> int:
    """Says that Ctrl-C ended it. Work that still runs has no say in when the program ends: nothing is left to tidy up."""
    print("levigate: stopped.", file=sys.stderr, flush=True)
    if unfinished:
        os._exit(130)
    return 130
