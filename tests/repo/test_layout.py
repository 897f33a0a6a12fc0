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
    # At the start of a path: lib/include/levigate/*/work/ is a folder of the library.
    machine = re.compile(r"(?<![\w.*>)}-])/(?:home|root|work|Users)/")
    found = []
    for folder in ("lib", "bindings", "examples", "tests", "data"):
        for path in (ROOT / folder).rglob("*"):
            if path.suffix in suffixes:
                text = path.read_text(encoding="utf-8")
                found += [(str(path.relative_to(ROOT)), match.group()) for match in machine.finditer(text)]
    assert found == []


def test_cpp_tests_are_named_alike_and_stand_by_area():
    tests = ROOT / "tests"
    areas = {path.name for path in (ROOT / "lib" / "include" / "levigate").iterdir() if path.is_dir()}
    files = [path.relative_to(tests) for kind in ("unit", "property", "reference") for path in (tests / kind).rglob("*.cpp")]
    assert [str(file) for file in files if not file.name.endswith("_test.cpp")] == []
    assert [str(file) for file in files if len(file.parts) == 3 and file.parts[1] not in areas] == []
    # tests/unit itself is for what stands above the areas, as error.hpp does.
    above = {path.stem for path in (ROOT / "lib" / "include" / "levigate").glob("*.hpp")}
    flat = [str(file) for file in files if file.parts[0] == "unit" and len(file.parts) == 2]
    assert [name for name in flat if Path(name).stem.removesuffix("_test") not in above] == []


def test_version_has_one_value():
    text = (ROOT / "lib" / "include" / "levigate" / "version.hpp").read_text()
    parts = [re.search(rf"version_{p} = (\d+);", text)[1] for p in ("major", "minor", "patch")]
    assert f'version_string = "{".".join(parts)}";' in text
