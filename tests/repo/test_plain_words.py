"""What a person reads has short sentences: at most 20 words from one full stop to the next."""

import argparse
import re
from pathlib import Path

import levigate
import pytest
from levigate.__main__ import parser

ROOT = Path(__file__).resolve().parents[2]
DEMO = ROOT / "data" / "demo"
MOST_WORDS = 20
FILES = [ROOT / "README.md", ROOT / "DEVELOPERS.md", ROOT / "lib" / "CHANGES.md", *sorted((ROOT / "lib" / "decisions").glob("*.md"))]


def long_sentences(text: str) -> list[str]:
    """Sentences of more words than that; numbers and units are words."""
    return [one for one in re.split(r"(?<=[.!?])\s+", text) if len(one.split()) > MOST_WORDS]


def paragraphs_of_card(card: str) -> list[str]:
    """The paragraphs of a card, on one line each, without its tables and rules."""
    found: list[list[str]] = []
    indent = 0
    for line in card.splitlines():
        text = line.strip()
        deep = len(line) - len(line.lstrip())
        if text.startswith(("levigate ", "--")):  # a command
            found.append([])
            continue
        if not text or set(text) <= set("=-") or "  " in text or deep > 20:
            found.append([])
        elif deep > 2 and found[-1] or found and found[-1] and deep == indent:
            found[-1].append(text)
        else:
            found.append([text])
            indent = deep
        if text.endswith((".", ":")):
            found.append([])
    return [" ".join(lines) for lines in found if lines]


def paragraphs_of_markdown(text: str) -> list[str]:
    """Paragraphs, points of lists and cells of tables, without code and lines that name tests."""
    text = re.sub(r"^```.*?^```|^    .*?$|^Held by: .*?$", "", text, flags=re.DOTALL | re.MULTILINE)
    text = re.sub(r"`[^`]*`", "code", text)
    return [" ".join(one.split()) for one in re.split(r"\n\s*\n|\n(?=[-#|])|\|", text) if one.strip()]


def all_parsers(root: argparse.ArgumentParser) -> list[argparse.ArgumentParser]:
    (commands,) = [a for a in root._actions if isinstance(a, argparse._SubParsersAction)]
    return [root, *commands.choices.values()]


@pytest.mark.parametrize("one", all_parsers(parser()), ids=lambda one: one.prog)
def test_every_option_has_a_short_help(one: argparse.ArgumentParser) -> None:
    for action in one._actions:
        assert action.help or isinstance(action, argparse._SubParsersAction), action.dest
        assert long_sentences(action.help or "") == []
    assert one.description and long_sentences(one.description) == []


def plan_card(job_name: str, stack_name: str) -> str:
    job, stack = levigate.Job.load(DEMO / job_name), levigate.Stack.load(DEMO / stack_name)
    plan = levigate.plan(job, stack)
    return plan.card(levigate.simulate(job, plan, draws=20))


def other_cards() -> dict[str, str]:
    job, stack = levigate.Job.load(DEMO / "job.json"), levigate.Stack.load(DEMO / "stack.json")
    short = levigate.Stack([sheet for sheet in stack.to_dict()["sheets"] if sheet["id"] in ("a-p400", "b-pad")])
    taken = levigate.evaluate(job, stack, ["b-pad", "a-p400", "a-p2000"])
    done = [levigate.DoneStep(step.sheet) for step in levigate.plan(job, stack).steps]
    mark = levigate.Mark(kind="cluster", zone="top", seen="loupe", width_um=5)
    return {
        "no plan": levigate.plan(job, short).card(),
        "comparison": levigate.comparison_card(taken, levigate.plan(job, stack)),
        "way back": levigate.go_back(job, stack, done, mark).card(),
        "calibration": levigate.calibrate(job, levigate.plan(job, stack), draws=20).card(),
        "together": levigate.plan_together([job] * 3, stack, draws=20).card(),
        "when done": levigate.Bench(job, stack).when_done(20).card(),
        "check": levigate.findings_text(levigate.check(stack)),
        "meanings": levigate.meanings_text([levigate.meanings(one) for one in ("600", "#800", "A16", "K120", "P4000", "P24")]),
        "spray": levigate.how_much_to_spray(levigate.Bench(job, stack), way_back=True, thinner=0.5).card(),
    }


@pytest.mark.parametrize(
    "card",
    [
        pytest.param(lambda: plan_card("job.json", "stack.json"), id="plan"),
        pytest.param(lambda: plan_card("day.json", "day_stack.json"), id="day"),
        *(
            pytest.param(lambda name=name: other_cards()[name], id=name)
            for name in ("no plan", "comparison", "way back", "calibration", "together", "check", "meanings", "spray")
        ),
    ],
)
def test_cards_have_short_sentences(card) -> None:
    paragraphs = paragraphs_of_card(card())
    assert len(paragraphs) > 3
    assert [one for text in paragraphs for one in long_sentences(text)] == []


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.name)
def test_files_have_short_sentences(path: Path) -> None:
    paragraphs = paragraphs_of_markdown(path.read_text(encoding="utf-8"))
    assert paragraphs
    assert [one for text in paragraphs for one in long_sentences(text)] == []


def test_a_long_sentence_is_seen() -> None:
    words = " ".join(["1.5"] * MOST_WORDS)
    assert long_sentences(f"Short. {words}. Short.") == []
    assert len(long_sentences(f"Short. {words} um. Short.")) == 1
    assert paragraphs_of_card("One is\nhere.\n  - Two\n    more.\n  a  table\n\nThree:\n") == ["One is here.", "- Two more.", "Three:"]
    assert paragraphs_of_markdown("One\nis.\n\n- Two\n- `a b c`\n\n    code\n") == ["One is.", "- Two", "- code"]
