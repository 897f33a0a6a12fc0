"""A plan: of a stack that a shortest path can settle."""

import levigate
import networkx
import numpy as np
import test_shortest_path as peer
from measure import compare


def rows():
    sizes = np.geomspace(45, 6, 24)
    sheets = [
        dict(id=f"s{i}", label="own", size_um=float(size), backing="latex paper", width_mm=230, height_mm=280)
        for i, size in enumerate(sizes)
    ]
    stack = levigate.Stack(sheets)
    zone = dict(name="top", area_cm2=900, block="hard block", film=dict(mean_um=2000, sd_um=1),
                peel_um=35, peel_wavelength_mm=3)
    job = levigate.Job.from_dict(
        dict(format="levigate.job/1", name="bench", coating="two-part urethane", zones=[zone], target=dict(size_um=8),
             rules=dict(overcut=1.5))
    )
    latex = stack.sheets[0].backing

    def shortest():
        graph = peer.graph_of(job, stack, latex)
        networkx.shortest_path(graph, peer.START, peer.END, weight="weight")

    # Ours gives the whole trade-off, the findings and what it relies on as well.
    yield compare("plan of 24 sheets and one zone", "networkx, graph and shortest path",
                  lambda: levigate.plan(job, stack), shortest, goal=1, turns=3)
