"""Notebooks run from top to bottom, and what they hold is what they show."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

FOLDER = Path(__file__).resolve().parents[2] / "examples" / "notebooks"
NOTEBOOKS = sorted(FOLDER.glob("*.ipynb"))


def test_there_is_one():
    assert NOTEBOOKS


@pytest.mark.parametrize("notebook", NOTEBOOKS, ids=lambda path: path.stem)
def test_it_shows_what_it_says(notebook):
    command = [sys.executable, FOLDER / "run.py", "--check", notebook]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert (done.returncode, done.stderr) == (0, "")


def test_a_stale_output_is_seen(tmp_path):
    cell = {"cell_type": "code", "source": ["print(1 + 1)"], "metadata": {}, "execution_count": None}
    old = {"name": "stdout", "output_type": "stream", "text": ["3\n"]}
    path = tmp_path / "stale.ipynb"
    path.write_text(json.dumps({"cells": [{**cell, "outputs": [old]}]}))
    run = [sys.executable, FOLDER / "run.py"]
    assert subprocess.run([*run, "--check", path], capture_output=True, check=False).returncode == 1
    assert subprocess.run([*run, path], check=False).returncode == 0
    assert subprocess.run([*run, "--check", path], check=False).returncode == 0
