"""From the root of the checkout: an order book planned one by one, on threads, and by processes of Dask.

    .build/venv/bin/python examples/python/many_jobs.py 10000

100 jobs unless told.
`pip install "./bindings[many]"` brings Dask and a bar. Without them, that part is left out.
All ways give the same plans, which their hash shows.
"""

import hashlib
import importlib
import importlib.util
import os
import sys
import time
from collections.abc import Iterable, Iterator
from itertools import islice
from typing import Any

import levigate

BATCH = 250  # a plan keeps its whole trade-off: so many are in memory at once
JOB = levigate.Job.load("data/demo/job.json").to_dict()
STACK = levigate.Stack.load("data/demo/stack.json")


def jobs(count: int) -> Iterator[levigate.Job]:
    """Pieces that differ in size, orange peel, film and goal."""
    for number in range(count):
        told = {**JOB, "name": f"piece {number}"}
        told["zones"] = [{**zone, "area_cm2": zone["area_cm2"] * (0.5 + number % 101 / 100)} for zone in JOB["zones"]]
        told["zones"][0]["peel_um"] = 15 + number % 17
        told["target"] = {"size_um": 6 + number % 7}
        yield levigate.Job.from_dict(told)


def batches(count: int) -> Iterator[list[levigate.Job]]:
    more = jobs(count)
    while batch := list(islice(more, BATCH)):
        yield batch


def text_of(result: levigate.Plan | levigate.Error) -> str:
    """A plan as JSON text; of a job that cannot be used, what is wrong with it."""
    return result.to_json() if isinstance(result, levigate.Plan) else f"{type(result).__name__}: {result}"


def one_by_one(batch: list[levigate.Job]) -> list[str]:
    results: list[levigate.Plan | levigate.Error] = []
    for job in batch:
        try:
            results.append(levigate.plan(job, STACK))
        except levigate.Error as error:
            results.append(error)
    return [text_of(one) for one in results]


def on_threads(batch: list[levigate.Job]) -> list[str]:
    return [text_of(one) for one in levigate.plan_many(batch, STACK)]


def on_one_thread(batch: list[levigate.Job]) -> list[str]:
    """What a process of Dask does: there is one for each core."""
    return [text_of(one) for one in levigate.plan_many(batch, STACK, threads=1)]


def timed(way: str, count: int, results: Iterable[list[str]]) -> str:
    """Prints how long a way takes, and the hash of all that it gives. `results`: of each batch, in order."""
    began, digest, plans = time.perf_counter(), hashlib.sha256(), 0
    bar: Any = None
    if importlib.util.find_spec("tqdm"):
        bar = importlib.import_module("tqdm").tqdm(total=count, desc=way, leave=False)
    for texts in results:
        for text in texts:
            digest.update(text.encode())
        plans += len(texts)
        if bar is not None:
            bar.update(len(texts))
    if bar is not None:
        bar.close()
    took = time.perf_counter() - began
    print(f"{way:<12}{plans:7} jobs {took:8.1f} s  {1e3 * took / max(plans, 1):6.2f} ms each  {digest.hexdigest()[:16]}")
    return digest.hexdigest()


def by_dask(count: int) -> Iterator[list[str]]:
    """The batches worked by processes, a few sent ahead of those that come back."""
    dask: Any = importlib.import_module("distributed")
    cores = os.cpu_count() or 1
    cluster = dask.LocalCluster(n_workers=cores, threads_per_worker=1, dashboard_address=None)
    with cluster, dask.Client(cluster) as client:
        sent: list[Any] = []
        for batch in batches(count):
            sent.append(client.submit(on_one_thread, batch, pure=False))
            if len(sent) > 2 * cores:
                yield sent.pop(0).result()
        while sent:
            yield sent.pop(0).result()


def main(count: int = 100) -> None:
    same = {
        timed("one by one", count, map(one_by_one, batches(count))),
        timed("on threads", count, map(on_threads, batches(count))),
    }
    if importlib.util.find_spec("distributed"):
        same.add(timed("by Dask", count, by_dask(count)))
    else:
        print("by Dask is left out: pip install ./bindings[many]")
    if len(same) != 1:
        sys.exit("The ways differ.")
    print("All ways give the same.")


if __name__ == "__main__":
    main(*map(int, sys.argv[1:]))
