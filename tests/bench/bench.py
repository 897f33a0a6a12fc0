#!/usr/bin/env python3
"""How fast, against a peer in the same run. Not a test: run it by hand on a quiet machine.

    .build/venv/bin/python tests/bench/bench.py            the whole table
    .build/venv/bin/python tests/bench/bench.py contact    the rows of of_contact.py

Each line is a ratio, the peer's time over ours, with the goal it should stay above. A file of_NAME.py beside this one
makes rows: its rows() gives them one by one, and what it prints stands between them.
"""

import importlib
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE), str(HERE.parents[1] / "bindings" / "tests")]

import measure  # noqa: E402


def main(names: list[str]) -> None:
    known = sorted(path.stem.removeprefix("of_") for path in HERE.glob("of_*.py"))
    unknown = [name for name in names if name not in known]
    if unknown:
        sys.exit(f"no rows are called {', '.join(unknown)}; there are {', '.join(known)}")
    print(measure.HEAD)
    for name in names or known:
        for row in importlib.import_module(f"of_{name}").rows():
            print(row.line(), flush=True)


if __name__ == "__main__":
    main(sys.argv[1:])
