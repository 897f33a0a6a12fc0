"""Questions to a person: answered by an option, by what is usual, or at the terminal."""

from __future__ import annotations

import sys
from collections.abc import Callable
from typing import TypeVar

import levigate

from ._words import Unclear

Answer = TypeVar("Answer")


def say(text: str = "") -> None:
    print(text, file=sys.stderr, flush=True)


def needed(option: str, question: str) -> Unclear:
    return Unclear(f"--{option} is missing. Give it, or answer in a terminal. {question}")


class Questions:
    """Where answers come from: an option, what is usual, or the person at the terminal."""

    def __init__(self, yes: bool) -> None:
        self.yes = yes
        self.asks = sys.stdin.isatty()

    def __call__(
        self,
        option: str,
        told: str | None,
        question: str,
        read: Callable[[str], Answer],
        usual: Callable[[], Answer] | None = None,
    ) -> Answer:
        if told is not None:
            try:
                return read(told)
            except (Unclear, levigate.Error) as error:
                raise Unclear(f"--{option}: {error}") from None
        if self.yes and usual is not None:
            return usual()
        if not self.asks:
            raise needed(option, question)
        say("\n" + question)
        while True:
            text = self.line()
            try:
                if text:
                    return read(text)
                if usual is not None:
                    return usual()
                say("This needs an answer. Ctrl-C stops and writes nothing.")
            except (Unclear, levigate.Error) as error:
                say(str(error))

    @staticmethod
    def line() -> str:
        sys.stderr.write("> ")
        sys.stderr.flush()
        try:
            return input().strip()
        except (EOFError, KeyboardInterrupt):
            say()
            raise Unclear("Stopped. No file was written.") from None
