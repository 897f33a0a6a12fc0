"""Several pieces planned together, from Python and from a shell."""

import json
from pathlib import Path

import levigate
import pytest
from levigate.__main__ import main

DEMO = Path(__file__).resolve().parents[2] / "data" / "demo"
JOB, STACK = str(DEMO / "job.json"), str(DEMO / "stack.json")


@pytest.fixture(scope="module")
def demo():
    return levigate.Job.load(JOB), levigate.Stack.load(STACK)


def test_one_piece_gets_the_answer_of_plan(demo):
    job, stack = demo
    one = levigate.plan_together([job], stack, draws=0)
    assert one.found and one.starves is None and one.suffices is None
    assert one.plans == [levigate.plan(job, stack)]


def test_paper_of_all_is_at_most_what_is_on_hand(demo):
    job, stack = demo
    three = levigate.plan_together([job] * 3, stack, draws=50)
    assert three.found
    used = {}
    for plan in three.plans:
        for step in plan.steps:
            used[step.sheet] = used.get(step.sheet, 0) + step.sheets_used
    for row in three.paper:
        assert row.sheets_used == pytest.approx(used.get(row.sheet, 0), abs=3e-6)
        assert row.on_hand is None or row.sheets_used <= row.on_hand
        assert row.buy == 0
    assert three.starves is not None
    assert any(row.alone_buy > 0 for row in three.paper)


def test_the_command_prints_card_or_json(demo, capsys):
    job, stack = demo
    told = levigate.plan_together([job, job], stack, draws=20, seed=3)
    more = ["together", STACK, JOB, JOB, "--draws", "20", "--seed", "3"]
    assert main(more) == (0 if told.found else 1)
    assert capsys.readouterr().out == told.card()
    main([*more, "--json"])
    data = json.loads(capsys.readouterr().out)
    assert data == told.to_dict() and data["format"] == "levigate.together/1"


def test_mixed_objectives_are_refused(demo, tmp_path, capsys):
    cheap = tmp_path / "cheap.json"
    cheap.write_text(json.dumps(demo[0].to_dict() | {"prefer": "cost"}), encoding="utf-8")
    assert main(["together", STACK, JOB, str(cheap)]) == 2
    assert "prefer different things" in capsys.readouterr().err


def test_more_than_a_dozen_are_refused(demo):
    job, stack = demo
    with pytest.raises(levigate.OutOfRange, match="jobs"):
        levigate.plan_together([job] * 13, stack)
