"""Builds the reference of C++ and Python as pages for a browser: python lib/reference/build.py

They come into .build/reference/html, index.html first. A warning is an error. Needs Doxygen, and the Python module
and what tests/requirements.txt names, installed where this runs.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

from sphinx.cmd.build import build_main as sphinx_build

import headers
import pages
import python_pages

HERE = Path(__file__).resolve().parent
ROOT = HERE.parents[1]
INCLUDE = ROOT / "lib/include"
OUT = ROOT / ".build/reference"


def write_input() -> None:
    """What Doxygen reads, below OUT / "input"."""
    paths = set(pages.sources(ROOT))
    said = headers.descriptions([file.read_text(encoding="utf-8") for file in INCLUDE.rglob("*.hpp")])
    for file in headers.public_headers(INCLUDE):
        name = file.relative_to(INCLUDE / "levigate").as_posix()
        target = OUT / "input/levigate" / name
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(headers.header(name, file.read_text(encoding="utf-8"), said, paths), encoding="utf-8")
    for name, text in pages.all_pages(ROOT).items():
        (OUT / "input" / name).write_text(text, encoding="utf-8")


def layout() -> Path:
    """The layout that Doxygen has, with a tab for Python and the groups named as what they are."""
    file = OUT / "layout.xml"
    subprocess.run(["doxygen", "-l", file], check=True, stdout=subprocess.DEVNULL)
    text = file.read_text(encoding="utf-8")
    groups = '<tab type="modules" visible="yes" title=""'
    assert groups in text
    ours = '<tab type="user" visible="yes" title="Python" url="python/index.html"/>\n    '
    file.write_text(text.replace(groups, ours + groups.replace('""', '"Headers"')), encoding="utf-8")
    return file


def doxygen() -> int:
    settings = [
        (HERE / "Doxyfile").read_text(encoding="utf-8"),
        f'INPUT = "{OUT}/input"',
        f'STRIP_FROM_PATH = "{OUT}/input"',
        f'STRIP_FROM_INC_PATH = "{OUT}/input"',
        f'OUTPUT_DIRECTORY = "{OUT}"',
        f'LAYOUT_FILE = "{layout()}"',
        f'GENERATE_TAGFILE = "{OUT}/cpp.tag"',
        f'USE_MDFILE_AS_MAINPAGE = "{OUT}/input/start.md"',
    ]
    return subprocess.run(["doxygen", "-"], input="\n".join(settings), text=True, cwd=HERE).returncode


def sphinx() -> int:
    (OUT / "python").mkdir()
    shutil.copy(HERE / "conf.py", OUT / "python")
    made = python_pages.Pages(ROOT / "bindings/levigate", OUT / "cpp.tag", pages.areas(ROOT)).all()
    for name, text in made.items():
        (OUT / "python" / name).write_text(text, encoding="utf-8")
    strict = ["-q", "-E", "-W", "--keep-going", "-d", f"{OUT}/doctrees"]
    return sphinx_build([*strict, f"{OUT}/python", f"{OUT}/html/python"])


def main() -> int:
    shutil.rmtree(OUT, ignore_errors=True)
    (OUT / "input").mkdir(parents=True)
    write_input()
    return doxygen() or sphinx()


if __name__ == "__main__":
    sys.exit(main())
