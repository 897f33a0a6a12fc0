"""Rules of the headers: which way includes point, how a header opens, what a comment must state."""

import re
from pathlib import Path

import pytest

INCLUDE = Path(__file__).resolve().parents[2] / "lib" / "include"
HEADERS = sorted((INCLUDE / "levigate").rglob("*.hpp"))
NAMES = [path.relative_to(INCLUDE / "levigate").as_posix() for path in HEADERS]

# What each area may include: itself, and these. "" is the files beside levigate.hpp.
BASE = {"", "detail"}
STACK = BASE | {"grade"}
SURFACE = STACK | {"stack"}
FILM = SURFACE | {"surface"}
PLAN = FILM | {"film"}
RECOVER = PLAN | {"plan"}
JOURNAL = RECOVER | {"recover"}
BENCH = JOURNAL | {"journal"}
RISK = BENCH | {"bench"}
CORE = RISK | {"wheel", "risk"}
ALLOWED = {
    "": BASE,
    "detail": BASE,
    "grade": BASE,
    "stack": STACK,
    "surface": SURFACE,
    "film": FILM,
    "wheel": FILM,
    "plan": PLAN | {"wheel"},
    "recover": RECOVER,
    "journal": JOURNAL,
    "bench": BENCH,
    "risk": RISK,
    "io": CORE,
    "text": CORE,
}
THIRD_PARTY = {"io": "nlohmann/", "text": "fmt/"}
# What C++ has no word for: locks, and writing through to the disk.
POSIX = {"io/journal.hpp": {"<fcntl.h", "<sys/file.h", "<sys/stat.h", "<unistd.h"}}
MAX_LINES = 400


def area(name):
    return name.split("/")[0] if "/" in name else ""


def includes(header):
    return re.findall(r'^\s*#\s*include\s*([<"][^>"]+)[>"]', header.read_text(), re.MULTILINE)


def forbidden_includes(name, lines):
    """Those of `lines` that the header `name` must not include. Each opens with its < or \"."""
    bad = []
    for line in lines:
        target = line[1:]
        if target.startswith("levigate/"):
            to = area(target.removeprefix("levigate/"))
            ok = line[0] == '"' and (to == area(name) or to in ALLOWED[area(name)])
        elif line in POSIX.get(name, ()):
            ok = True
        elif "/" in target:
            third_party = THIRD_PARTY.get(area(name))
            ok = third_party is not None and target.startswith(third_party)
        else:  # a standard header has no folder and no suffix
            ok = line[0] == "<" and "." not in target
        if not ok:
            bad.append(target)
    return bad


@pytest.mark.parametrize("header", HEADERS, ids=NAMES)
def test_includes_point_one_way(header):
    name = header.relative_to(INCLUDE / "levigate").as_posix()
    if name != "levigate.hpp":
        assert forbidden_includes(name, includes(header)) == []


@pytest.mark.parametrize(
    "name, line",
    [
        ("grade/label.hpp", '"levigate/stack/sheet.hpp'),
        ("surface/contact.hpp", '"levigate/film/film.hpp'),
        ("film/film.hpp", '"levigate/plan/job.hpp'),
        ("wheel/heat.hpp", '"levigate/film/film.hpp'),
        ("plan/job.hpp", '"levigate/io/json.hpp'),
        ("text/card.hpp", "<nlohmann/json.hpp"),
        ("error.hpp", '"levigate/grade/grade.hpp'),
        ("error.hpp", "<math.h"),
        ("error.hpp", "<fmt/format.h"),
        ("io/file.hpp", "<unistd.h"),
    ],
)
def test_an_arrow_the_wrong_way_is_seen(name, line):
    assert forbidden_includes(name, [line]) == [line[1:]]


def test_umbrella_is_complete():
    umbrella = INCLUDE / "levigate" / "levigate.hpp"
    outside = {"detail", "io", "text"}
    wanted = [n for n in NAMES if n != "levigate.hpp" and area(n) not in outside]
    # Read the message as the text that levigate.hpp should hold.
    held = "".join(f'#include "{line[1:]}"\n' for line in sorted(includes(umbrella)))
    assert held == "".join(f'#include "levigate/{name}"\n' for name in wanted)


@pytest.mark.parametrize("header", HEADERS, ids=NAMES)
def test_opens_with_what_it_is_for(header):
    lines = header.read_text().splitlines()
    assert re.match(r"// \S.{20,}", lines[0]), "the first line says what the header is for"
    after = next(line for line in lines if not line.startswith("//"))
    assert after == "#pragma once"
    assert len(lines) <= MAX_LINES


def documented_functions(text):
    """(comment, declaration) of everything that carries an `@param` or `@return`."""
    for block in re.finditer(r"((?:^[ \t]*///.*\n)+)([^{;]*)", text, re.MULTILINE):
        if re.search(r"@(param|return)", block[1]):
            yield block[1], block[2]


def complaints(comment, declaration):
    """What the comment of a function lacks."""
    required = ["Source:"]
    if "noexcept" not in declaration:
        required += ["Throws:"]
    if "double" in declaration:
        required += ["NaN:"]
    if "double" in declaration.split("(")[0]:
        required += ["Accuracy:"]
    lacks = [word for word in required if word not in comment]
    entries = re.findall(r"@param +(\w+)(.*(?:\n[ \t]*///  +.*)*)", comment)
    lacks += [f"{name} in the declaration" for name, _ in entries if name not in declaration]
    suffix = re.compile(r"_(um|mm|cm2|m|kpa|mpa|n|m_s|min|gu|s|deg|rpm|percent)$")
    lacks += [f"[unit] of {name}" for name, rest in entries if suffix.search(name) and "[" not in rest]
    return lacks


@pytest.mark.parametrize("header", HEADERS, ids=NAMES)
def test_comments_state_the_contract(header):
    found = {}
    for comment, declaration in documented_functions(header.read_text()):
        lacks = complaints(comment, declaration)
        if lacks:
            found[" ".join(declaration.split())[:80]] = lacks
    assert found == {}


def undocumented(text):
    """The public functions on numbers that have no comment at all."""
    public = re.sub(r"^namespace detail.*?^}  // namespace", "", text, flags=re.DOTALL | re.MULTILINE)
    function = r"^(?!.*///|template).*\n((?:template.*\n)?(?:inline|constexpr) [^=;\n]*\([^{;]*)"
    return [found for found in re.findall(function, public, re.MULTILINE) if "double" in found]


@pytest.mark.parametrize("name", [n for n in NAMES if area(n) not in THIRD_PARTY])
def test_every_number_has_a_comment(name):  # io and text only print what the others computed
    assert undocumented((INCLUDE / "levigate" / name).read_text()) == []


def test_a_function_without_comment_is_seen():
    text = "}\n\ninline double f(double d_um) { return d_um; }\n"
    assert undocumented(text) == ["inline double f(double d_um) "]
    assert undocumented(text.replace("}\n\n", "}\n\n/// Depth.\n")) == []


def test_a_comment_without_its_contract_is_seen():
    text = "/// Depth.\n/// @param size_um  median\ninline double f(double d_um) { return d_um; }\n"
    (function,) = documented_functions(text)
    assert complaints(*function) == [
        "Source:",
        "Throws:",
        "NaN:",
        "Accuracy:",
        "size_um in the declaration",
        "[unit] of size_um",
    ]
