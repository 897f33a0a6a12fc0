"""README shows what the programs do: its code is that of examples/, its plan that of the demo."""

import re
import shlex
from pathlib import Path

import levigate
import pytest
from levigate.__main__ import main

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")


def blocks(language: str) -> list[str]:
    return re.findall(rf"```{language}\n(.*?)\n```", README, re.DOTALL)


def test_the_code_is_that_of_the_examples() -> None:
    for language, file in (("cpp", "cpp/first_plan.cpp"), ("python", "python/first_plan.py")):
        (block,) = blocks(language)
        assert block in (ROOT / "examples" / file).read_text(encoding="utf-8")


def lines_of_card(block: str, card: str, least: int) -> None:
    """The lines of a block stand on the card, in its order."""
    shown = [line for line in block.splitlines() if line.strip() not in ("", "[...]")]
    assert len(shown) > least
    rest = iter(card.splitlines())
    for line in shown:
        assert line in rest, line


def test_the_plan_is_that_of_the_demo() -> None:
    job = levigate.Job.load(str(ROOT / "data/demo/job.json"))
    stack = levigate.Stack.load(str(ROOT / "data/demo/stack.json"))
    plan = levigate.plan(job, stack)
    lines_of_card(blocks("text")[0], plan.bench_sheet(levigate.simulate(job, plan)), least=14)


def test_the_commands_do_what_they_say(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (script,) = blocks("sh")
    (tmp_path / "data").symlink_to(ROOT / "data")
    monkeypatch.chdir(tmp_path)
    shown = []
    for line in script.replace("\\\n", " ").splitlines():
        words = shlex.split(line, comments=True)
        assert words[0] == "levigate"
        assert main(words[1:]) == 0
        shown.append(capsys.readouterr().out)
    lines_of_card(blocks("text")[1], shown[1], least=10)


def test_the_two_commands_are_there() -> None:
    assert re.findall(r"^    sh (\S+)", README, re.MULTILINE) == ["examples/first_plan.sh", "tests/run.sh"]
    for command in ("examples/first_plan.sh", "tests/run.sh"):
        assert (ROOT / command).is_file()
