"""Simulation of the demo, draw by draw as numpy has it."""

from pathlib import Path

import levigate
import test_simulation_numpy as peer
from measure import compare

DEMO = Path(__file__).resolve().parents[2] / "data" / "demo"


def rows():
    job = levigate.Job.load(DEMO / "job.json")
    plan = levigate.plan(job, levigate.Stack.load(DEMO / "stack.json"))
    draws = 1000
    numbers = peer.NumpyNumbers(1, draws)
    # numpy calls our contact() for all draws at once, and makes its own normals.
    for threads, of in ((1, "one thread"), (0, "all threads")):
        yield compare(
            f"simulation of {draws} draws, {of}",
            "numpy, all draws at once",
            lambda threads=threads: levigate.simulate(job, plan, draws, threads=threads),
            lambda: peer.simulate(job, plan, numbers),
            goal=10,
            turns=3,
        )
