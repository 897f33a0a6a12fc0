"""Many jobs: on all cores, beside a loop over plan()."""

from pathlib import Path

import levigate
from measure import compare

DEMO = Path(__file__).resolve().parents[2] / "data" / "demo"
COUNT = 400  # ten thousand take as long each


def rows():
    told = levigate.Job.load(DEMO / "job.json").to_dict()
    stack = levigate.Stack.load(DEMO / "stack.json")
    jobs = []
    for number in range(COUNT):
        told["zones"][0]["peel_um"] = 15 + number % 17
        told["target"] = {"size_um": 6 + number % 7}
        jobs.append(levigate.Job.from_dict(told))
    yield compare(f"plan of one of {COUNT} jobs", "a loop over plan()",
                  lambda: levigate.plan_many(jobs, stack), lambda: [levigate.plan(job, stack) for job in jobs],
                  goal=1.8, turns=3, ours_of=COUNT, peer_of=COUNT)
