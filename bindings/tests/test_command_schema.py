"""The command schema, what a file says to an editor, and exit codes and the error stream in continuous integration."""

import json
from pathlib import Path

import jsonschema
import levigate
import pytest
from levigate import _schema
from levigate.__main__ import main

ROOT = Path(__file__).resolve().parents[2]
SCHEMAS = {path.name.removesuffix(".schema.json"): path for path in (ROOT / "data" / "schema").glob("*.schema.json")}


def answer(capsys, *command, code=0):
    assert main(list(command)) == code
    return capsys.readouterr()


@pytest.mark.parametrize("name", SCHEMAS)
def test_it_prints_the_schema_as_it_is(capsys, name):
    assert answer(capsys, "schema", name).out == SCHEMAS[name].read_text()


def test_it_lists_the_kinds_of_files(capsys):
    lines = answer(capsys, "schema").out.splitlines()
    assert [line.split()[0] for line in lines] == sorted(SCHEMAS)
    assert json.loads(answer(capsys, "schema", "--json").out) == sorted(SCHEMAS)
    assert answer(capsys, "schema", "way-back").out == answer(capsys, "schema", "way_back").out


def test_an_unknown_kind_is_refused(capsys):
    assert "'jobs'; there are buy, " in answer(capsys, "schema", "jobs", code=2).err


def test_a_package_without_schemas_says_so(capsys, monkeypatch, tmp_path):
    monkeypatch.setattr(_schema.resources, "files", lambda _: tmp_path)
    assert "no schemas" in answer(capsys, "schema", code=2).err


def told(path, **more):
    return {**more, **json.loads(path.read_text())}


def test_a_file_may_name_its_schema(demo_dir, tmp_path, capsys):
    entry = json.loads((demo_dir / "journal.jsonl").read_text().splitlines()[0])
    shop = levigate.Shop().to_dict()
    for name, value, read in (
        ("job", told(demo_dir / "job.json"), levigate.Job.from_json),
        ("stack", told(demo_dir / "stack.json"), levigate.Stack.from_json),
        ("journal", entry, levigate.Entry.from_json),
        ("shop", shop, levigate.Shop.from_json),
    ):
        plain = json.dumps(value)
        named = json.dumps({"$schema": f"{name}.schema.json", **value})
        assert read(named) == read(plain) and "$schema" not in read(named).to_json()
        jsonschema.validate(json.loads(named), json.loads(SCHEMAS[name].read_text()))
        with pytest.raises(levigate.BadInput, match=r"\$schema is no text.*line 1"):
            read(json.dumps({"$schema": 3, **value}))
    with pytest.raises(levigate.BadInput, match="schema"):  # it is the file that names it, no part of it
        levigate.Job.from_json(json.dumps(told(demo_dir / "job.json", target={"$schema": "x", "size_um": 8})).replace('"target": {"size', '"target": {"$schema": "x", "size'))


@pytest.fixture
def questions(demo_dir):
    """Questions whose answers have warnings and no errors."""
    job, stack = str(demo_dir / "job.json"), str(demo_dir / "stack.json")
    return [["check", stack], ["plan", job, stack, "--draws", "0"], ["together", stack, job, "--draws", "0"]]


def test_strict_fails_for_a_warning(questions, capsys):
    for question in questions:
        plain = answer(capsys, *question)
        strict = answer(capsys, *question, "--strict", code=1)
        assert strict == plain and plain.err == ""


def test_strict_says_nothing_of_notes(demo_dir, tmp_path, capsys):
    stack = json.loads((demo_dir / "stack.json").read_text())
    stack["sheets"] = [sheet for sheet in stack["sheets"] if sheet["id"] in ("a-p800", "a-p1200")]
    (tmp_path / "stack.json").write_text(json.dumps(stack))
    findings = levigate.check(levigate.Stack.from_dict(stack))
    assert {one.severity for one in findings} <= {"note"}
    answer(capsys, "check", str(tmp_path / "stack.json"), "--strict")


def test_notes_are_data_with_json(demo_dir, tmp_path, capsys):
    journal = tmp_path / "cut.jsonl"
    journal.write_bytes((demo_dir / "journal.jsonl").read_bytes() + b'{"format": "levi')
    shown = answer(capsys, "journal", str(journal), "--json")
    (note,) = json.loads(shown.err)["notes"]
    assert note.startswith("line ")
    assert answer(capsys, "journal", str(journal)).err == f"levigate: {note}\n"


def test_what_start_refuses_is_data_with_json(tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    (error,) = json.loads(answer(capsys, "start", "--json", code=2).err)["errors"]
    assert "--coating" in error["message"] and error["code"] == levigate.BadInput.code


def test_start_takes_a_drawer_from_standard_input(tmp_path, monkeypatch, capsys):
    import io

    drawer = b"label,maker,backing,count\nP400,Maker A,paper,4\nP800,Maker A,paper,4\nP1500,Maker A,paper,4\nP2000,Maker A,paper,4\n"
    answers = {}
    for name in ("drawer.csv", "-"):
        folder = tmp_path / f"of {name}"
        folder.mkdir()
        monkeypatch.chdir(folder)
        Path("drawer.csv").write_bytes(drawer)
        monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(drawer)))
        shown = answer(
            capsys, "start", "--yes", "--json", "--coating", "2K urethane", "--film", "4 coats of 40 um",
            "--zone", "top 30x40 cm", "--end", "P2000", "--drawer", name,
        )
        assert any("Taken as usual" in note for note in json.loads(shown.err)["notes"])
        answers[name] = shown.out, Path("stack.json").read_text()
    assert answers["-"] == answers["drawer.csv"]
