"""Files and names as a person gives them: standard input, the faults of all files at once, faults as data, free spelling."""

import io
import json
import os
import threading
from pathlib import Path

import levigate
import pytest
from levigate.__main__ import main

JOB = "Walnut mantel-clock case"
MEMBERS = ["code", "message", "quantity", "value", "unit", "low", "high", "pointer", "line", "contradicts", "example", "file"]


@pytest.fixture
def files(demo_dir):
    return [str(demo_dir / "job.json"), str(demo_dir / "stack.json")]


@pytest.fixture
def journal(demo_dir):
    return str(demo_dir / "journal.jsonl")


@pytest.fixture
def piped(monkeypatch):
    """Puts a file into standard input."""

    def pipe(data):
        monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(data)))

    return pipe


@pytest.fixture
def wrong(demo_dir, tmp_path, monkeypatch):
    """Files of two faults each: a job, a drawer, and a drawer whose labels are open."""
    job = json.loads((demo_dir / "job.json").read_text())
    job["zones"][0]["area_cm2"] = -1
    job["coating"] = "latex urethane"
    stack = json.loads((demo_dir / "stack.json").read_text())
    opened = json.loads(json.dumps(stack))
    stack["sheets"][0]["width_mm"] = -3
    stack["bare_number"] = "Mars"
    opened["sheets"][0]["label"] = "320"
    opened["sheets"][1]["label"] = "P401"
    for name, data in (("job.json", job), ("stack.json", stack), ("open.json", opened)):
        (tmp_path / name).write_text(json.dumps(data, indent=1))
    (tmp_path / "journal.jsonl").write_text('{"format": "levigate.journal/1"}\n')
    monkeypatch.chdir(tmp_path)


@pytest.mark.parametrize("place", [0, 1])
def test_one_file_may_come_by_standard_input(files, piped, capsys, place):
    question = ["plan", *files, "--json", "--draws", "0"]
    assert main(question) == 0
    by_name = capsys.readouterr().out
    piped(Path(files[place]).read_bytes())
    question[1 + place] = "-"
    assert main(question) == 0
    assert capsys.readouterr().out == by_name


def test_a_journal_may_come_by_standard_input(files, journal, piped, tmp_path, capsys):
    shop = ["--shop", str(tmp_path / "shop.json")]
    for command in (
        ["journal", journal],
        ["when-done", *files, "--journal", journal],
        ["plan", *files, "--after", journal],
        ["go-back", *files, "--journal", journal, "--mark", "haze", "--zone", "top"],
        ["learn", *files, journal, *shop],
    ):
        answers = []
        for name in (journal, "-"):
            Path(shop[1]).unlink(missing_ok=True)
            piped(Path(journal).read_bytes())
            assert main([name if word == journal else word for word in command]) == 0
            answers.append(capsys.readouterr())
        assert answers[0] == answers[1] and answers[0].out


@pytest.fixture
def named_pipe(tmp_path):
    """Makes a pipe with a name, as a shell does of <(command), and writes a file into it."""
    writers = []

    def make(data):
        path = tmp_path / f"pipe{len(writers)}"
        os.mkfifo(path)
        writers.append(threading.Thread(target=path.write_bytes, args=(data,), daemon=True))
        writers[-1].start()
        return str(path)

    yield make
    for writer in writers:
        writer.join(10)
        assert not writer.is_alive(), "nobody read the pipe"


def test_every_file_may_come_by_a_pipe_with_a_name(files, journal, named_pipe, capsys):
    job, stack = files
    for command in (
        ["check", stack, "--job", job],
        ["plan", job, stack, "--after", journal, "--draws", "0"],
        ["go-back", job, stack, "--journal", journal, "--mark", "haze", "--zone", "top"],
        ["journal", journal],
    ):
        assert main(command) == 0
        by_name = capsys.readouterr()
        piped = [named_pipe(Path(word).read_bytes()) if word in (job, stack, journal) else word for word in command]
        assert main(piped) == 0
        assert capsys.readouterr() == by_name
    wrong = named_pipe(b"{")
    assert f"of {wrong}" in error_of(capsys, ["check", wrong])
    wrong = named_pipe(b"\xff")
    assert f"{wrong} is not UTF-8 at byte 0" in error_of(capsys, ["check", wrong])


def test_nothing_is_written_to_a_pipe_with_a_name(files, journal, tmp_path, capsys):
    os.mkfifo(tmp_path / "pipe")
    pipe = str(tmp_path / "pipe")
    for command in (
        ["record", pipe, "note", "--job", JOB, "--text", "a"],
        ["learn", *files, journal, "--shop", pipe],
        ["plan", *files, "--page", pipe],
    ):
        assert "give the name of a file" in error_of(capsys, command)
    assert (tmp_path / "pipe").is_fifo()


def test_standard_input_is_one_file_and_read_only(files, piped, tmp_path, capsys):
    data = Path(files[0]).read_bytes()
    shop = ["--shop", "-"]
    for command, said in (
        (["plan", "-", "-"], "standard input is one file"),
        (["record", "-", "note", "--job", JOB, "--text", "a"], "a journal is written to"),
        (["learn", *files, "no.jsonl", *shop], "a shop is written to"),
        (["plan", *files, "--out", "-"], "is written to"),
    ):
        piped(data)
        assert main(command) == 2
        err = capsys.readouterr().err
        assert said in err and err.count("\n") == 1
    piped(b'{"format": "levigate.job/1", "name": "\xff"}')
    assert main(["plan", "-", files[1]]) == 2
    assert "UTF-8 at byte 38" in capsys.readouterr().err
    piped(b"{")
    assert main(["plan", "-", files[1]]) == 2
    assert "of standard input" in capsys.readouterr().err


@pytest.mark.parametrize(
    "command",
    [
        "plan job.json stack.json --shop none.json --after journal.jsonl",
        "evaluate job.json stack.json P600 --shop none.json --after journal.jsonl",
        "calibrate job.json stack.json --shop none.json --after journal.jsonl",
        "buy job.json stack.json --shop none.json --after journal.jsonl",
        "go-back job.json stack.json --shop none.json --journal journal.jsonl",
        "when-done job.json stack.json --shop none.json --journal journal.jsonl",
    ],
)
def test_faults_of_all_files_are_told_at_once(wrong, capsys, command):
    assert main(command.split()) == 2
    lines = capsys.readouterr().err.splitlines()
    for file, faults in (("job.json", 2), ("stack.json", 2), ("none.json", 1), ("journal.jsonl", 1)):
        assert sum(f"of {file}" in line or f"'{file}'" in line for line in lines) >= faults, (file, lines)
    assert all(any(file in line for file in ("job.json", "stack.json", "none.json", "journal.jsonl")) for line in lines)
    assert len(set(lines)) == len(lines) >= 6


def test_other_commands_tell_the_faults_of_all_their_files_too(wrong, capsys):
    for command, least in (
        ("spray job.json stack.json --shop none.json", 5),
        ("together stack.json job.json job.json --shop none.json", 7),
        ("check stack.json --job job.json", 4),
        ("learn job.json stack.json journal.jsonl --shop shop.json", 5),
        ("record journal.jsonl note --text a --check job.json stack.json", 5),
    ):
        assert main(command.split()) == 2
        lines = capsys.readouterr().err.splitlines()
        assert len(lines) >= least and all(".json" in line for line in lines), lines
    assert not Path("shop.json").exists()


def test_every_open_label_is_told_with_its_file(wrong, files, capsys):
    assert main(["plan", files[0], "open.json"]) == 2
    lines = capsys.readouterr().err.splitlines()
    assert len(lines) == 2
    for line, label, place in zip(lines, ("320", "P401"), ("/sheets/0/label", "/sheets/1/label")):
        assert f'"{label}"' in line and place in line and "open.json" in line
    assert main(["plan", "job.json", "open.json"]) == 2
    assert len(capsys.readouterr().err.splitlines()) == 4


def test_faults_are_data_with_json(wrong, files, capsys):
    assert main(["plan", "job.json", "stack.json", "--json"]) == 2
    shown = capsys.readouterr()
    errors = json.loads(shown.err)["errors"]
    assert shown.out == "" and [list(one) for one in errors] == [MEMBERS] * 4
    assert set(MEMBERS) - {"file"} == {name for name in dir(levigate.Fault) if not name.startswith("_")}
    (area,) = [one for one in errors if one["quantity"] == "area_cm2"]
    assert (area["value"], area["unit"], area["low"], area["high"]) == (-1, "cm2", 0.1, 1e6)
    assert (area["pointer"], area["file"]) == ("/zones/0/area_cm2", "job.json")
    assert Path("job.json").read_text().splitlines()[area["line"] - 1].strip().startswith('"area_cm2": -1')
    for command, said in (
        (["plan", files[0], "--json"], "STACK"),
        (["plan", *files, "--draws", "x", "--json"], "--draws"),
        (["polish", "--json"], "polish"),
        (["convert", "P650", "", "--json"], "P650"),
        (["go-back", *files, "--json"], "give either"),
        (["plan", *files, "--out", "job.json", "--json"], "job.json"),
    ):
        assert main(command) == 2
        shown = capsys.readouterr()
        errors = json.loads(shown.err)["errors"]
        assert said in errors[0]["message"] and list(errors[0]) == MEMBERS and shown.out == ""
    assert len(json.loads(error_of(capsys, ["convert", "P650", "", "P651", "--json"]))["errors"]) == 3


def error_of(capsys, command):
    assert main(command) == 2
    return capsys.readouterr().err


def test_case_and_spacing_of_known_names_are_free(files, journal, tmp_path, capsys):
    def answer(*command):
        assert main(list(command)) == 0
        return capsys.readouterr().out

    assert answer("convert", " p 800", "--to", "fepa_f").splitlines()[1:] == answer(
        "convert", "P800", "--to", "FEPA F"
    ).splitlines()[1:]
    assert answer("convert", "600", "--bare", "cami") == answer("convert", "600", "--bare", "CAMI")
    guns = [answer("spray", *files, "--gun", gun) for gun in ("air-assisted airless", "Air Assisted AirLess")]
    assert guns[0] == guns[1] != answer("spray", *files)
    assert answer("evaluate", *files, "p 600", "P1200", "p2000", "P 3000") == answer(
        "evaluate", *files, "a-p600", "a-p1200", "a-p2000", "b-pad"
    )
    mark = ["--zone", "top", "--seen", "Loupe", "--width-um", "5", "--mark", "CLUSTER"]
    ids, labels = ("a-p400@0", "a-p800@90", "a-p1500@0", "b-pad@90"), ("P 400@0", "p800@90", "P1500@0", "p3000@90")
    backs = [answer("go-back", *files, "--done", *done, *mark) for done in (ids, labels)]
    assert backs[0] == backs[1]
    lines = str(tmp_path / "lines.jsonl")
    check = ["--check", *files, "--sheet"]
    for kind, sheet in (("Step Begun", "P 600"), ("step_begun", "a-p600"), ("stepbegun", "P600")):
        answer("record", lines, kind, *check, sheet)
    kinds = {(one.kind, one.sheet) for one in levigate.Journal(lines).read().entries}
    assert kinds == {("step begun", "a-p600")}
    assert "a-p400 and b-400" in error_of(capsys, ["record", lines, "cleaned", *check, "400"])
    assert "nothing is recorded" in error_of(capsys, ["record", lines, "cleaned", *check, "p401"])
    answer("record", lines, "patch-worked", *check, "P600", "--tool", "Hard Block", "--area-cm2", "100",
           "--minutes", "5", "--before-g", "9", "--after-g", "8.9")
    assert levigate.Journal(lines).read().entries[-1].tool == "hard block"


def test_options_that_would_change_nothing_are_refused(files, tmp_path, capsys):
    for more, said in (
        (["--json", "--explain"], "--explain is for text"),
        (["--json", "--units", "us"], "--units is for the sheet"),
        (["--explain", "--units", "US"], "--units is for the sheet"),
        (["--units", "ells"], "ells"),
        (["--out", str(tmp_path), "--dra", "5"], "--dra"),
    ):
        assert said in error_of(capsys, ["plan", *files, *more])
