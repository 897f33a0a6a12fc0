"""Names and numbers as a person types them."""

from __future__ import annotations

import argparse
from collections.abc import Sequence


class Known:
    """Reads a name that the library knows, in any case, with blanks, hyphens, underscores or nothing between its words.

    It passes on what it does not know: the library refuses that, and says which names there are.
    """

    def __init__(self, names: Sequence[str]) -> None:
        self.names = {folded(name): name for name in names}

    def __call__(self, text: str) -> str:
        return self.names.get(folded(text), text)

    @property
    def in_one_word(self) -> list[str]:
        return [name.replace(" ", "-") for name in self.names.values()]


def folded(text: str) -> str:
    return "".join(letter for letter in text.casefold() if not letter.isspace() and letter not in "-_")


def whole(text: str) -> int:
    try:
        value = int(text)
    except ValueError:
        value = -1
    if not 0 <= value < 2**63:
        raise argparse.ArgumentTypeError(f"'{text}' is not a whole number from 0")
    return value


def number(text: str) -> float:
    try:
        return float(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"'{text}' is not a number, such as 12.5") from None
