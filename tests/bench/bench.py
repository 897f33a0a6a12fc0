#!/usr/bin/env python3
"""How fast, against a peer in the same run. Not a test: run it by hand on a quiet machine.

    .build/venv/bin/python tests/bench/bench.py

Each line is a ratio, the peer's time over ours, with the goal it should stay above.
"""

import sys
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "bindings/tests"))

import levigate  # noqa: E402
import networkx  # noqa: E402
import numpy as np  # noqa: E402
import test_contact_scipy as peer_contact  # noqa: E402
import test_shortest_path as peer_path  # noqa: E402
import test_simulation_numpy as peer_simulation  # noqa: E402


def seconds(work, repeat):
    """The least of `repeat` runs."""
    times = []
    for _ in range(repeat):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return min(times)


def report(name, peer, ours, goal):
    ratio = peer / ours
    print(f"{name:58} {ratio:10.1f}  goal {goal:g}  {'met' if ratio >= goal else 'MISSED'}")


def contact():
    state = dict(size_um=18.3, log_spread=0.28, tip_spread=0.15, modulus_mpa=20.0, hardness_mpa=150.0)
    many = np.full(1000, 1.7)
    ours = seconds(lambda: levigate.contact(pressure_kpa=many, **state), 5) / many.size
    tips = peer_contact.Tips(flank_deg=20.0, packing=0.5, **state)
    peer = seconds(lambda: tips.plane(1.7e-3), 5)
    report("contact: scipy quad and brentq over ours, one state", peer, ours, 50)


def search():
    sizes = np.geomspace(45, 6, 24)
    sheets = [
        dict(id=f"s{i}", label="own", size_um=float(size), backing="latex paper", width_mm=230, height_mm=280)
        for i, size in enumerate(sizes)
    ]
    stack = levigate.Stack(sheets)
    zone = dict(name="top", area_cm2=900, block="hard block", film=dict(mean_um=2000, sd_um=1),
                peel_um=35, peel_wavelength_mm=3)
    job = levigate.Job.from_dict(
        dict(format="levigate.job/1", name="bench", coating="two-part urethane", zones=[zone], target=dict(size_um=8))
    )
    latex = stack.sheets[0].backing

    def shortest():
        graph = peer_path.graph_of(job, stack, latex)
        networkx.shortest_path(graph, peer_path.START, peer_path.END, weight="weight")

    report("plan: graph and shortest path in networkx over ours, which",
           seconds(shortest, 3), seconds(lambda: levigate.plan(job, stack), 3), 1)
    print("  gives the whole trade-off, the findings and what it relies on as well")


def simulate():
    job = levigate.Job.load(ROOT / "data/demo/job.json")
    plan = levigate.plan(job, levigate.Stack.load(ROOT / "data/demo/stack.json"))
    draws = 1000
    numbers = peer_simulation.NumpyNumbers(1, draws)
    peer = seconds(lambda: peer_simulation.simulate(job, plan, numbers), 3)
    for threads, of in ((1, "one thread"), (0, "all threads")):
        ours = seconds(lambda: levigate.simulate(job, plan, draws, threads=threads), 3)
        report(f"simulate: numpy over ours, the demo, {of}", peer, ours, 1)
        print(f"  {draws / ours:.0f} draws/s; numpy calls our contact(), all draws at once, and makes its own normals")


if __name__ == "__main__":
    contact()
    search()
    simulate()
