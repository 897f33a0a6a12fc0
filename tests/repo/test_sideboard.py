"""The session of the sideboard prints what stands beside it."""

import shlex
import shutil
from pathlib import Path

import pytest
from levigate.__main__ import main

SIDEBOARD = Path(__file__).resolve().parents[2] / "examples" / "sideboard"


def test_the_session_prints_what_stands_beside_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    for file in ("sideboard.json", "drawer.json"):
        shutil.copy(SIDEBOARD / file, tmp_path)
    monkeypatch.chdir(tmp_path)
    printed = ""
    for line in (SIDEBOARD / "session.sh").read_text(encoding="utf-8").splitlines():
        if line.startswith("levigate "):
            status = main(shlex.split(line)[1:])
            answer = capsys.readouterr()
            assert not answer.err, line
            printed += f"$ {line}\n{answer.out}" + (f"exit {status}\n" if status else "")
    held = (SIDEBOARD / "session.txt").read_text(encoding="utf-8")
    for number, (now, before) in enumerate(zip(printed.splitlines(), held.splitlines()), start=1):
        assert now == before, f"line {number} of session.txt"
    assert printed == held
