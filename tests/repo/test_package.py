"""The installed Python package: its version, its type stubs, the Python examples."""

import importlib.metadata
import re
import subprocess
import sys
from pathlib import Path

import levigate
import pytest

ROOT = Path(__file__).resolve().parents[2]
EXAMPLES = sorted((ROOT / "examples" / "python").glob("*.py"))


def run(*command, cwd=ROOT):
    """Runs `python COMMAND...`, which must succeed."""
    result = subprocess.run(
        [sys.executable, *command], cwd=cwd, capture_output=True, text=True, check=False
    )
    assert result.returncode == 0, result.stdout + result.stderr
    return result.stdout


def test_version_is_that_of_the_header():
    text = (ROOT / "lib" / "include" / "levigate" / "version.hpp").read_text()
    version = re.search(r'version_string = "(.+)"', text)[1]
    assert levigate.__version__ == version
    assert importlib.metadata.version("levigate") == version


def test_stubs_agree_with_the_module(tmp_path):
    allowed = ROOT / "bindings" / "tests" / "stubtest_allowlist.txt"
    run("-m", "mypy.stubtest", "--allowlist", allowed, "levigate._core", cwd=tmp_path)


def test_package_is_fully_typed(tmp_path):
    config = ROOT / "bindings" / "pyproject.toml"
    cache = ROOT / ".build" / "mypy"
    run("-m", "mypy", "--config-file", config, "--cache-dir", cache, "-p", "levigate", cwd=tmp_path)


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda path: path.stem)
def test_example_runs(example):
    run(example)
