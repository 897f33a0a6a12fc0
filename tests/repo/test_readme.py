"""README shows what the programs do: its code is that of examples/, its plan that of the demo."""

import re
from pathlib import Path

import levigate

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")


def blocks(language: str) -> list[str]:
    return re.findall(rf"```{language}\n(.*?)\n```", README, re.DOTALL)


def test_the_code_is_that_of_the_examples() -> None:
    for language, file in (("cpp", "cpp/first_plan.cpp"), ("python", "python/first_plan.py")):
        (block,) = blocks(language)
        assert block in (ROOT / "examples" / file).read_text(encoding="utf-8")


def test_the_plan_is_that_of_the_demo() -> None:
    job = levigate.Job.load(str(ROOT / "data/demo/job.json"))
    stack = levigate.Stack.load(str(ROOT / "data/demo/stack.json"))
    plan = levigate.plan(job, stack)
    card = iter(plan.card(levigate.simulate(job, plan)).splitlines())
    (block,) = blocks("text")
    lines = [line for line in block.splitlines() if line.strip() not in ("", "[...]")]
    assert len(lines) > 30
    for line in lines:  # in the order of the card
        assert line in card, line


def test_the_two_commands_are_there() -> None:
    assert re.findall(r"^    sh (\S+)", README, re.MULTILINE) == ["examples/first_plan.sh", "tests/run.sh"]
    for command in ("examples/first_plan.sh", "tests/run.sh"):
        assert (ROOT / command).is_file()
