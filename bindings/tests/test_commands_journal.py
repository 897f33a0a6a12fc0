"""Traps of a journal, from a shell: names, wrong lines, readings, paper, and what is left of the day."""

import json
from pathlib import Path

import levigate
import pytest
from levigate.__main__ import main

JOB = "Walnut mantel-clock case"


@pytest.fixture
def files(demo_dir):
    return [str(demo_dir / "job.json"), str(demo_dir / "stack.json")]


@pytest.fixture
def journal(tmp_path):
    return str(tmp_path / "journal.jsonl")


def ended(journal, sheet="a-p400", *more, job=JOB):
    return main(["record", journal, "step ended", "--job", job, "--sheet", sheet, "--minutes", "120", *more])


def test_record_checks_names_before_the_line_is_written(files, journal, capsys):
    check = ["--check", *files]
    step = ["record", journal, "step ended", "--minutes", "120", *check]
    assert main([*step, "--sheet", "a-p4000"]) == 2
    assert "sheet 'a-p4000' is not there" in capsys.readouterr().err
    assert main([*step, "--sheet", "a-p400", "--zone", "tpo"]) == 2
    assert main([*step, "--sheet", "a-p400", "--job", "Walnut clock"]) == 2
    mark = ["--mark", "haze", "--zone", "tpo"]
    assert main(["record", journal, "mark found", *mark, *check]) == 2
    assert not levigate.Journal(journal).path.exists()
    assert main([*step, "--sheet", "a-p400", "--zone", "top"]) == 0
    assert levigate.Journal(journal).read().entries[0].job == JOB


def test_record_refuses_a_new_name_that_is_nearly_one_there(files, journal, capsys):
    assert ended(journal) == 0
    assert ended(journal, job="Walnut mantel-clok case") == 2
    err = capsys.readouterr().err
    assert "'Walnut mantel-clok case'" in err and f"'{JOB}'" in err
    assert len(levigate.Journal(journal).read().entries) == 1
    assert ended(journal, job="Tray") == 0
    assert f"its lines are of '{JOB}'" in capsys.readouterr().err


def test_an_unknown_sheet_is_told_with_its_line_and_struck(files, journal, capsys):
    assert ended(journal) == 0 and ended(journal, "a-p80") == 0
    after = ["plan", *files, "--after", journal, "--draws", "0"]
    assert main(after) == 2
    err = capsys.readouterr().err
    assert "a-p80" in err and "line 2 of the journal" in err and "strike" in err
    assert main(["record", journal, "struck", "--line", "3", "--text", "no such sheet"]) == 2
    assert "line = 3" in capsys.readouterr().err
    assert main(["record", journal, "struck", "--line", "2"]) == 2, "without a reason"
    assert main(["record", journal, "struck", "--line", "2", "--text", "no such sheet"]) == 0
    assert main(after) == 0
    capsys.readouterr()
    assert main(["journal", journal]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert len(lines) == 3 and lines[1].endswith("(struck)") and "line 2" in lines[2]


def test_a_gauge_may_read_in_mil(journal, capsys):
    told = ["record", journal, "film read", "--job", JOB, "--zone", "top"]
    assert main([*told, "--readings-mil", "4.0", "3.9"]) == 0
    assert levigate.Journal(journal).read().entries[-1].readings_um == pytest.approx([101.6, 99.06])
    assert main([*told, "--readings-mil", "4.0", "--readings-um", "100"]) == 2


def test_a_reading_is_not_forgotten_by_plan_and_go_back(files, journal, capsys):
    told = ["--job", JOB, "--zone", "top"]
    assert ended(journal) == 0
    assert main(["record", journal, "film read", *told, "--readings-um", "45", "44", "46"]) == 0
    assert ended(journal, "a-p800") == 0
    capsys.readouterr()
    main(["plan", *files, "--after", journal, "--draws", "0"])
    sheet = capsys.readouterr().out
    assert "The gauge read 45 um on top" in sheet[: sheet.index("Before you start")]
    main(["plan", *files, "--after", journal, "--draws", "0", "--explain"])
    card = capsys.readouterr().out
    assert "The gauge read 45 um in zone top" in card[: card.index("Before you start")]
    main(["plan", *files, "--after", journal, "--draws", "0", "--json"])
    zones = {zone["zone"]: zone for zone in json.loads(capsys.readouterr().out)["zones"]}
    assert zones["top"]["film_um"] < 45


def test_paper_used_is_counted_off_and_said_once(files, journal, tmp_path, capsys):
    stack = json.loads(Path(files[1]).read_text())
    for sheet in stack["sheets"]:
        sheet["on_hand"] = 9
    few = tmp_path / "stack.json"
    few.write_text(json.dumps(stack))
    assert ended(journal, "a-p400", "--sheets-used", "3.5") == 0
    capsys.readouterr()
    assert main(["plan", files[0], str(few), "--after", journal, "--draws", "0", "--explain"]) == 0
    assert capsys.readouterr().out.count("3.5 of a-p400") == 1
    bench = levigate.Bench(levigate.Job.load(files[0]), levigate.Stack.load(few), None, levigate.Journal(journal).read())
    assert {s.id: s.on_hand for s in bench.paper_left.sheets}["a-p400"] == 5.5


def test_when_done(files, journal, capsys):
    assert main(["when-done", *files, "--journal", journal]) == 2
    assert ended(journal) == 0
    begun = ["record", journal, "step begun", "--job", JOB, "--sheet", "a-p800"]
    assert main(begun) == 0
    assert main([*begun, "--minutes", "12"]) == 0
    capsys.readouterr()
    assert main(["when-done", *files, "--journal", journal]) == 0
    card = capsys.readouterr().out
    assert "Step under way: a-p800, 12 min so far." in card and "Your pace:" in card
    assert main(["when-done", *files, "--journal", journal, "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["format"] == "levigate.when_done/1" and told["step"]["spent_minutes"] == 12
    assert told["minutes"]["p10"] < told["minutes"]["p50"] < told["minutes"]["p90"]
    assert told["pace"][0]["observations"] == 1


def test_a_struck_strike_shows_the_line_as_counting(journal, capsys):
    assert ended(journal) == 0
    for line in ("1", "2"):
        assert main(["record", journal, "struck", "--line", line, "--text", "wrong"]) == 0
    capsys.readouterr()
    assert main(["journal", journal]) == 0
    struck = [line.endswith("(struck)") for line in capsys.readouterr().out.splitlines()]
    assert struck == [False, True, False]
    assert levigate.Journal(journal).read().struck == [2]
    assert len(levigate.done_steps(levigate.Journal(journal).read().entries, JOB)) == 1


def test_record_refuses_a_reading_in_another_unit(files, journal, capsys):
    reading = ["record", journal, "film read", "--zone", "top", "--check", *files, "--readings-um"]
    for value in ("0.11", "800"):
        assert main([*reading, "80", value]) == 2
        err = capsys.readouterr().err
        assert f"{value} um" in err and "zone 'top'" in err and "--as-read" in err, err
    assert not levigate.Journal(journal).path.exists()
    assert main([*reading, "80", "78"]) == 0
    assert main([*reading, "800", "--as-read"]) == 0
    assert len(levigate.Journal(journal).read().entries) == 2


def test_learn_says_the_line_and_the_sheet_of_what_it_does_not_use(files, journal, tmp_path, capsys):
    assert ended(journal, "a-p400") == 0
    assert ended(journal, "a-p80") == 0
    assert main(["learn", *files, journal, "--shop", str(tmp_path / "shop.json")]) == 0
    assert capsys.readouterr().out.count("Not used: Line 2, a-p80: ") == 1
