"""Nothing without a source: table rows, profile values, rules, constants of headers; and no header that is stale."""

import json
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
DATA = ROOT / "data"
HEADERS = ROOT / "lib" / "include" / "levigate"
STANDARDS = sorted((DATA / "standards").glob("*.json"))
TABLES = sorted((DATA / "profiles").glob("*.json"))
COATINGS = sorted((DATA / "profiles" / "coatings").glob("*.json"))
PROFILES = TABLES + COATINGS
BASES = {
    "standard",
    "published table",
    "computed",
    "common practice",
    "from memory",
    "extrapolated",
    "assumption",
}
NUMBERS = {"median_um", "tolerance_um", "coarse_limit_um", "fine_limit_um", "largest_um"}
NUMBERS |= {"low_gu", "high_gu", "low_85_gu", "high_85_gu"}


def once(pairs):
    """A JSON object, in which no key may stand twice: json keeps the last one silently."""
    keys = [key for key, _ in pairs]
    assert len(set(keys)) == len(keys), keys
    return dict(pairs)


def read(path):
    return json.loads(path.read_text(encoding="utf-8"), object_pairs_hook=once)


def profiles_of(path):
    """The profiles of a file, each with its numbers in one level. A coating has parts, and its place in the lists."""
    content = read(path)
    if path not in COATINGS:
        return content["profiles"]
    assert type(content.pop("order")) is int
    parts = [content.pop(part, {}) for part in ("cure", "shrink_back", "limits", "spray")]
    return [content | {field: entry for part in parts for field, entry in part.items() if field != "note"}]


def names(paths):
    return [path.stem for path in paths]


def is_sourced(entry):
    return entry.get("basis") in BASES and len(entry.get("citation", "").strip()) > 3


@pytest.mark.parametrize("path", STANDARDS, ids=names(STANDARDS))
def test_every_number_of_a_grade_table_has_a_source(path):
    table = read(path)
    for section in table["sections"]:
        assert section["edition"] and section["method"]
        for row in section["rows"]:
            for key in NUMBERS & row.keys():
                _, source = row[key]
                assert is_sourced(table["sources"][source]), (row["label"], key)
            for _, source in row.get("also_printed", []):
                assert is_sourced(table["sources"][source]), row["label"]
            assert "median_um" in row or section.get("note") or row.get("note"), row["label"]


@pytest.mark.parametrize("path", STANDARDS, ids=names(STANDARDS))
def test_what_is_remembered_is_not_called_read(path):
    for source in read(path)["sources"].values():
        assert source["basis"] != "standard", "no standard's table was read"
        assert ("from memory" in source["citation"]) == (source["basis"] == "from memory")


@pytest.mark.parametrize("path", PROFILES, ids=names(PROFILES))
def test_every_number_of_a_profile_has_a_band_and_a_source(path):
    profiles = profiles_of(path)
    assert len({profile["name"] for profile in profiles}) == len(profiles)
    for profile in profiles:
        for field, entry in profile.items():
            if field == "also":  # other names, which are text
                assert is_sourced(entry) and entry["names"], profile["name"]
            elif isinstance(entry, dict):
                assert is_sourced(entry), (profile["name"], field)
                if not isinstance(entry["value"], bool):
                    assert entry["low"] < entry["value"] or entry["value"] < entry["high"], (profile["name"], field)
            else:  # the rest is text and flags: a bare number would have no source
                assert isinstance(entry, (str, bool)), (profile["name"], field)


def test_a_coating_is_one_file():
    read_all = {path: read(path) for path in COATINGS}
    for path, coating in read_all.items():
        assert path.stem == coating["name"].replace(" ", "-")
        assert {"kind", "two_part", "hardness_mpa", "cutting_efficiency", "refractive_index"} <= coating.keys()
    coatings = {coating["name"] for coating in read_all.values()}
    assert len(coatings) == len(COATINGS) >= 10
    orders = [coating["order"] for coating in read_all.values()]
    assert len(set(orders)) == len(orders)
    elsewhere = {profile["name"] for path in TABLES for profile in profiles_of(path)}
    assert coatings & elsewhere == set()
    table = (HEADERS / "surface" / "coating_table.hpp").read_text()
    assert set(re.findall(r'^    \{"([^"]+)", "', table, re.MULTILINE)) == coatings


def changed(path, change):
    """The text of a coating's file after a change of its content."""
    coating = read(path)
    change(coating)
    return json.dumps(coating)


@pytest.mark.parametrize("path", COATINGS, ids=names(COATINGS))
def test_a_coating_may_lack_a_part_but_no_half_of_it(copy, path):
    for part in {"cure", "shrink_back", "limits"} & read(path).keys():
        assert status_with(copy, path, changed(path, lambda c, p=part: c.pop(p))) == 0
        for number in read(path)[part].keys() - {"note"}:
            assert status_with(copy, path, changed(path, lambda c, p=part, n=number: c[p].pop(n))) == 1
    assert generate(copy).returncode == 0  # the headers as they were


def test_a_coating_of_another_name_or_with_an_unknown_key_is_refused(copy):
    path = COATINGS[0]
    assert status_with(copy, path, changed(path, lambda c: c.update(name="another"))) == 1
    assert status_with(copy, path, changed(path, lambda c: c.update(colour="clear"))) == 1
    assert status_with(copy, path, changed(path, lambda c: c.pop("hardness_mpa"))) == 1
    assert status_with(copy, path, changed(path, lambda c: c.update(redissolves={"value": True}))) == 1


def public_headers():
    for path in sorted(HEADERS.rglob("*.hpp")):
        if path.parent.name != "detail":
            yield path


def public_part(text):
    """The header without comments and without its detail namespace."""
    text = re.sub(r"^namespace detail \{.*?^}  // namespace", "", text, flags=re.DOTALL | re.MULTILINE)
    return re.sub(r"//.*", "", text)


def test_every_source_in_a_header_cites_something():
    empty = []
    for path in public_headers():
        for basis, citation in re.findall(r'\{\s*Basis::(\w+),\s*((?:"[^"]*"\s*)*)\}', path.read_text()):
            if len(citation.strip().strip('"')) < 4:
                empty.append((path.name, basis))
    assert empty == []


def constants(text):
    """Names of the constants and default numbers of a header that are not 0, 1 or made from a table."""
    found = re.findall(r"inline constexpr double (\w+) = ", text)
    found += re.findall(r"^  double (\w+) =\s*([0-9.e-]+);", text, re.MULTILINE)
    return [f if isinstance(f, str) else f[0] for f in found if isinstance(f, str) or float(f[1]) not in (0, 1)]


# Whose numbers have their source elsewhere.
SOURCED_ELSEWHERE = {
    # numbers of profiles
    "coating.hpp": ["usual_cutting_efficiency"],
    "calibration.hpp": ["patch_area_cm2", "patch_minutes", "gauging_minutes", "weighing_minutes", "noting_minutes", "loupe_minutes"],
    "prior.hpp": [
        "prior_minutes_noise", "prior_scratch_noise", "prior_noise_weight", "film_noise_um", "usual_film_um", "common_wear_share",
        "coat_density_g_cm3", "coat_density_share", "weighing_error_g",
    ],  # fmt: skip
    # the usual angle of ISO 2813
    "job.hpp": ["angle_deg"],
    "patch.hpp": ["most_patch_log_sd"],  # a bound on what teaches: lib/decisions/journal.md
    "sheet_facts.hpp": ["told_share_of_limit"],  # an assumption, and said so beside it
    "spot.hpp": ["spot_um"],  # the spot of cut_through()
}


def test_every_constant_of_a_header_has_a_source_beside_it():
    bare = {}
    for path in public_headers():
        text = public_part(path.read_text())
        if constants(text) and "inline constexpr Source" not in text:
            bare[path.name] = constants(text)
    assert bare == SOURCED_ELSEWHERE


def test_a_bare_constant_is_seen():
    text = "struct A {\n  double flank_deg = 20.0;\n  double size_um = 0;\n};\ninline constexpr double edge = 0.5;\n"
    assert constants(text) == ["edge", "flank_deg"]


@pytest.fixture(scope="module")
def copy(tmp_path_factory):
    """A copy of data/ and of the headers, to break one file at a time."""
    root = tmp_path_factory.mktemp("checkout")
    for folder in ("data", "lib/include"):
        shutil.copytree(ROOT / folder, root / folder)
    return root


def generate(root, *arguments):
    command = [sys.executable, "-B", root / "data" / "generate.py", *arguments]
    return subprocess.run(command, capture_output=True, text=True, check=False)


def status_with(root, path, text, *arguments):
    """Exit status of the generator with other text in one file."""
    file = root / path.relative_to(ROOT)
    whole = file.read_text()
    assert whole != text
    file.write_text(text)
    try:
        return generate(root, *arguments).returncode
    finally:
        file.write_text(whole)


def test_headers_are_what_the_data_gives(copy):
    result = generate(copy, "--check")
    assert result.returncode == 0, result.stdout + result.stderr


@pytest.mark.parametrize("path", STANDARDS + PROFILES, ids=names(STANDARDS + PROFILES))
def test_headers_change_with_every_file(copy, path):
    text = path.read_text()
    digit = re.search(r'("median_um": \["|"low_gu": \["|"value": )(\d)', text)
    changed = str((int(digit[2]) + 1) % 9 + 1)
    text = text[: digit.start(2)] + changed + text[digit.end(2) :]
    assert status_with(copy, path, text, "--check") == 1


@pytest.mark.parametrize("path", PROFILES, ids=names(PROFILES))
@pytest.mark.parametrize(
    "found, put",
    [
        (r'"citation": "[^"]*"', '"citation": " "'),
        (r', "citation": "[^"]*"', ""),
        (r'"basis": "[^"]*"', '"basis": "verified"'),
        (r'"low": [0-9.]+', '"low": 1e9'),
        (r'"high": [0-9.]+', '"high": -1'),
        (r'"kind": "[a-z_]+"', '"kind": "other"'),
    ],
)
def test_nothing_is_generated_without_source_or_band(copy, path, found, put):
    assert status_with(copy, path, re.sub(found, put, path.read_text(), count=1)) == 1


def test_every_generated_header_has_its_file():
    made = [path for path in HEADERS.rglob("*.hpp") if "Generated from data/" in path.read_text()]
    for path in made:
        source = re.search(r"Generated from (data/[\w./]+)", path.read_text())[1].rstrip(".")
        assert (ROOT / source).exists(), f"{path.name} outlived {source}"
    assert len(made) == len(TABLES) + 3  # the coatings, the grades and the names of sheen
