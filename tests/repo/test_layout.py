"""The checkout holds what it should, where it should."""

import re
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


def test_root_holds_exactly_the_agreed_names():
    names = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
    folders = {"lib", "bindings", "examples", "tests", "data"}
    assert names == folders | {"README.md", "DEVELOPERS.md", "CMakeLists.txt", "LICENSE"}


def test_no_file_names_a_path_of_one_machine():
    suffixes = {".hpp", ".cpp", ".py", ".pyi", ".ipynb", ".sh", ".md", ".txt", ".cmake", ".toml"}
    prefixes = ["/" + folder + "/" for folder in ("home", "root", "work", "Users")]
    found = []
    for folder in ("lib", "bindings", "examples", "tests", "data"):
        for path in (ROOT / folder).rglob("*"):
            if path.suffix in suffixes:
                text = path.read_text(encoding="utf-8")
                found += [(str(path.relative_to(ROOT)), p) for p in prefixes if p in text]
    assert found == []


def test_version_has_one_value():
    text = (ROOT / "lib" / "include" / "levigate" / "version.hpp").read_text()
    parts = [re.search(rf"version_{p} = (\d+);", text)[1] for p in ("major", "minor", "patch")]
    assert f'version_string = "{".".join(parts)}";' in text
