"""Every decision says why, and which test fails where it is reversed."""

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
FILES = [ROOT / "DEVELOPERS.md", *sorted((ROOT / "lib" / "decisions").glob("*.md"))]
MOST_BYTES = 6000  # of DEVELOPERS.md, which holds what crosses areas only

# Held by no test. The list may only get shorter.
HELD_BY_NOTHING = []


def decisions(text, marks):
    """Titles and what stands below each."""
    parts = re.split(rf"^{marks} (.*)\n", text, flags=re.MULTILINE)[1:]
    return list(zip(parts[::2], parts[1::2]))


def all_decisions():
    for path in FILES:
        text = path.read_text(encoding="utf-8")
        if path.name == "DEVELOPERS.md":
            found = decisions(text.partition("## Decisions that cross areas\n")[2], "###")
        else:
            found = decisions(text, "##")
        assert found, path
        yield from ((path.name, title, body) for title, body in found)


DECISIONS = list(all_decisions())


def held_by(body):
    """Of each "Held by" line what stands behind it."""
    return re.findall(r"^Held by: *(.*?) *$", body, flags=re.MULTILINE)


def faults(title, body):
    """What a decision lacks."""
    lacks = []
    why = [line for line in body.splitlines() if line.strip() and not line.startswith("Held by:")]
    if not title.strip():
        lacks.append("title")
    if not why:
        lacks.append("why")
    holders = held_by(body)
    if not holders:
        lacks.append("Held by")
    if "nothing yet" in holders:
        return lacks + (["one of nothing and a test"] if len(holders) > 1 else [])
    return lacks + [holder for holder in holders if not is_there(holder)]


def is_there(holder):
    """Whether "path: test" names a test that the file holds. In a .cmake file it is the line that adds it."""
    path, _, test = holder.partition(": ")
    file = ROOT / path
    if not test or not file.is_file():
        return False
    text = file.read_text(encoding="utf-8")
    if file.suffix == ".cmake":
        return test in text.splitlines()
    if file.suffix == ".py":
        return re.fullmatch(r"test_\w+", test) is not None and f"\ndef {test}(" in text
    suite, _, name = test.partition(".")
    return re.search(rf"^TEST(_F|_P)?\(\s*{re.escape(suite)},\s*{re.escape(name)}\)", text, re.MULTILINE) is not None


@pytest.mark.parametrize("file, title, body", DECISIONS, ids=[f"{d[0]}: {d[1]}" for d in DECISIONS])
def test_a_decision_says_why_and_what_holds_it(file, title, body):
    assert faults(title, body) == []


def test_no_rule_is_decided_twice():
    titles = [title for _, title, _ in DECISIONS]
    assert len(set(titles)) == len(titles)


def test_what_no_test_holds_is_known():
    assert sorted(title for _, title, body in DECISIONS if held_by(body) == ["nothing yet"]) == sorted(HELD_BY_NOTHING)


def test_developers_md_is_short():
    assert len((ROOT / "DEVELOPERS.md").read_bytes()) <= MOST_BYTES


def test_every_file_of_decisions_is_of_an_area():
    areas = {path.name for path in (ROOT / "lib" / "include" / "levigate").iterdir() if path.is_dir()}
    assert {path.stem for path in FILES[1:]} <= areas


@pytest.mark.parametrize(
    "body, lacks",
    [
        ("Because.\n\nHeld by: tests/repo/test_decisions.py: test_developers_md_is_short\n", []),
        ("Because.\n\nHeld by: nothing yet\n", []),
        ("Because.\n", ["Held by"]),
        ("\nHeld by: nothing yet\n", ["why"]),
        ("Because.\n\nHeld by: tests/repo/gone.py: test_a\n", ["tests/repo/gone.py: test_a"]),
        (
            "Because.\n\nHeld by: tests/repo/test_decisions.py: test_gone\n",
            ["tests/repo/test_decisions.py: test_gone"],
        ),
        (
            "Because.\n\nHeld by: tests/unit/film/film_test.cpp: Film.FromReading\n",
            ["tests/unit/film/film_test.cpp: Film.FromReading"],
        ),
    ],
)
def test_what_a_decision_lacks_is_seen(body, lacks):
    assert faults("A rule", body) == lacks
