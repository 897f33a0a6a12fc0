"""Times ours and a peer's work in turn, so that a busy machine slows both, and prints the ratio."""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable
from dataclasses import dataclass

Work = Callable[[], object]


@dataclass
class Row:
    """One line of the table: work, whose time stands above the line, and the ratio that it should reach."""

    work: str
    peer: str
    peer_s: list[float]
    ours_s: list[float]
    goal: float

    @property
    def ratio(self) -> float:
        """Peer's time over ours, of the medians."""
        return statistics.median(self.peer_s) / statistics.median(self.ours_s)

    def spread(self) -> tuple[float, float]:
        """Least and greatest ratio of one turn."""
        turns = [peer / ours for peer, ours in zip(self.peer_s, self.ours_s)]
        return min(turns), max(turns)

    def line(self) -> str:
        low, high = self.spread()
        ours = statistics.median(self.ours_s)
        verdict = "met" if self.ratio >= self.goal else "MISSED"
        return (
            f"| {self.work} | {self.peer} | {ours * 1e3:.4g} ms | {self.ratio:.3g} ({low:.3g} to {high:.3g}) "
            f"| {self.goal:g} | {verdict} |"
        )


HEAD = "| work | peer | ours | peer's time over ours (range) | goal | |\n|---|---|---|---|---|---|"


def seconds(work: Work, clock: Callable[[], float] = time.perf_counter) -> float:
    """How long one run of `work` takes."""
    start = clock()
    work()
    return clock() - start


def compare(
    work: str,
    peer: str,
    ours: Work,
    theirs: Work,
    goal: float,
    *,
    turns: int = 7,
    ours_of: float = 1.0,
    peer_of: float = 1.0,
    clock: Callable[[], float] = time.perf_counter,
) -> Row:
    """Runs both in turn, after one run each that does not count.

    `ours_of` and `peer_of` say how many times the work is in one run; the row then holds the time of one.
    """
    ours()
    theirs()
    row = Row(work, peer, [], [], goal)
    for _ in range(turns):
        row.peer_s.append(seconds(theirs, clock) / peer_of)
        row.ours_s.append(seconds(ours, clock) / ours_of)
    return row


def exponent(sizes: list[float], times_s: list[float]) -> float:
    """The power of size with which time grows: the slope of a line through the logarithms."""
    from numpy import log, polyfit

    return float(polyfit(log(sizes), log(times_s), 1)[0])
