"""The journal: entries, and a file that keeps what it acknowledged through a thousand kills."""

import copy
import datetime
import fcntl
import json
import os
import pickle
import random
import signal
import struct
import time
from pathlib import Path

import levigate
import pytest

PLAIN = {"at": "2026-03-01T09:30:00Z", "job": "walnut clock case"}
ENTRIES = [
    levigate.Entry(kind="step begun", sheet="P800", zone="top", direction_deg=45, **PLAIN),
    levigate.Entry(kind="step ended", sheet="P800", zone="top", minutes=12.3, **PLAIN),
    levigate.Entry(kind="cleaned", sheet="P800", text="washed", **PLAIN),
    levigate.Entry(kind="film read", zone="top", readings_um=[98, 101.5], **PLAIN),
    levigate.Entry(kind="scratch read", zone="top", sheet="P800", ra_um=0.2, **PLAIN),
    levigate.Entry(kind="patch worked", sheet="P800", tool="hard block", area_cm2=100, minutes=5,
                   before_um=[90, 92.5], after_um=[80, 82.5], **PLAIN),
    levigate.Entry(kind="mark found", mark=levigate.Mark(kind="haze", zone="top"), **PLAIN),
    levigate.Entry(kind="note", text="Bürste", **PLAIN),
]


@pytest.fixture
def journal(tmp_path):
    return levigate.Journal(tmp_path / "case.journal")


@pytest.fixture
def quick():
    """A directory in memory where there is one: the same calls, and no waiting for a disk."""
    memory = Path("/dev/shm")
    return memory if os.access(memory, os.W_OK) else None


def add_bytes(path, text):
    with path.open("ab") as file:
        file.write(text.encode())


@pytest.mark.parametrize("entry", ENTRIES, ids=lambda e: e.kind)
def test_an_entry_reads_back_equal(entry):
    assert levigate.Entry.from_json(entry.to_json()) == entry
    assert levigate.Entry.from_dict(entry.to_dict()) == entry
    assert pickle.loads(pickle.dumps(entry)) == entry
    assert copy.deepcopy(entry) is entry
    assert json.loads(entry.to_json())["format"] == "levigate.journal/1"


def test_members_and_faults_of_an_entry():
    entry = ENTRIES[1]
    assert (entry.kind, entry.sheet, entry.minutes, entry.ra_um) == ("step ended", "P800", 12.3, None)
    with pytest.raises(levigate.BadInput, match="nearest is 'step ended'"):
        levigate.Entry(kind="step endet", sheet="P800", minutes=1, **PLAIN)
    assert levigate.Entry(kind="Step-ended", sheet="P800", minutes=1, **PLAIN).kind == "step ended"
    with pytest.raises(levigate.BadInput, match="minutes is missing with kind 'step ended'"):
        levigate.Entry(kind="step ended", sheet="P800", **PLAIN)
    with pytest.raises(levigate.OutOfRange, match="minutes = -1 min"):
        levigate.Entry(kind="step ended", sheet="P800", minutes=-1, **PLAIN)
    with pytest.raises(levigate.BadInput) as caught:
        levigate.Entry.from_dict({**entry.to_dict(), "minuts": 3})
    assert caught.value.pointer == "/minuts" and 'nearest is "minutes"' in str(caught.value)


def test_absent_is_now():
    before = datetime.datetime.now(datetime.timezone.utc)
    at = datetime.datetime.fromisoformat(levigate.Entry(kind="note", job="a", text="b").at)
    assert at.utcoffset() is not None
    assert datetime.timedelta(seconds=-1) < at - before < datetime.timedelta(seconds=60)


def test_a_journal_holds_what_was_appended(journal):
    assert journal.append(ENTRIES[0]) == ENTRIES[0]
    last = journal.append(kind="note", job="walnut clock case", text="done")
    add_bytes(journal.path, '{"format":"levig')
    held = journal.path.read_bytes()
    reading = journal.read()
    assert journal.path.read_bytes() == held
    assert reading.entries == [ENTRIES[0], last]
    assert reading.lines == [1, 2]
    assert [(t.line, t.bytes) for t in reading.torn] == [(3, 16)]
    journal.append(ENTRIES[2])
    assert journal.read().lines == [1, 2, 4]
    assert journal.read().torn == reading.torn
    assert journal.path.read_bytes().startswith(held)


def test_faults_of_a_journal(journal, tmp_path):
    with pytest.raises(levigate.BadInput, match="case.journal.*No such file"):
        journal.read()
    journal.append(ENTRIES[0])
    add_bytes(journal.path, ENTRIES[1].to_json().replace("12.3", '"12"') + ENTRIES[1].to_json())
    with pytest.raises(levigate.BadInput) as caught:
        journal.read()
    assert (caught.value.pointer, caught.value.line) == ("/minutes", 2)
    with pytest.raises(levigate.BadInput, match="Is a directory"):
        levigate.Journal(tmp_path).append(ENTRIES[0])
    with pytest.raises(levigate.BadInput, match="not a regular file"):
        levigate.Journal("/dev/full").append(ENTRIES[0])
    with pytest.raises(levigate.BadInput, match="text is missing"):
        journal.append(kind="note", job="a")


def test_steps_and_jobs():
    other = levigate.Entry(kind="step ended", sheet="P800", minutes=1, job="tray", at=PLAIN["at"])
    assert levigate.jobs([*ENTRIES, other]) == ["walnut clock case", "tray"]
    steps = levigate.done_steps([other, *ENTRIES], "walnut clock case")
    assert steps == [levigate.DoneStep("P800", zones=["top"], direction_deg=45)]


def in_child(work):
    """Runs `work` in a process of its own; returns its id."""
    child = os.fork()
    if child == 0:
        try:
            work()
            os._exit(0)
        finally:
            os._exit(1)
    return child


def test_two_writers_of_ten_thousand_lines_each(tmp_path, quick):
    lines = 10_000
    path = (quick or tmp_path) / f"levigate-{os.getpid()}.journal"
    journal = levigate.Journal(path)
    try:

        def write(who):
            for i in range(lines):
                journal.append(kind="note", job=who, at=PLAIN["at"], text=f"{i}" + who * (i % 97))

        writers = [in_child(lambda who=who: write(who)) for who in ("first", "second")]
        assert [os.waitstatus_to_exitcode(os.waitpid(w, 0)[1]) for w in writers] == [0, 0]
        reading = journal.read()
    finally:
        path.unlink(missing_ok=True)
    assert reading.torn == []
    for who in ("first", "second"):
        texts = [e.text for e in reading.entries if e.job == who]
        assert texts == [f"{i}" + who * (i % 97) for i in range(lines)]
    assert len(reading.entries) == 2 * lines


def check_against_the_bytes(journal, acknowledged):
    """Every acknowledged line is there, in order; a line reads as JSON or is told as torn."""
    reading = journal.read()
    written = [int(e.text.split(".")[0]) for e in reading.entries]
    assert sorted(set(written)) == written
    assert set(acknowledged) <= set(written)
    pieces = journal.path.read_bytes().split(b"\n")
    if pieces[-1] == b"":
        pieces.pop()
    whole = []
    for number, piece in enumerate(pieces, start=1):
        try:
            whole.append((number, json.loads(piece)["text"]))
        except ValueError:
            pass
    assert list(zip(reading.lines, [e.text for e in reading.entries])) == whole
    torn = sorted(set(range(1, len(pieces) + 1)) - set(reading.lines))
    assert [t.line for t in reading.torn] == torn
    assert [t.bytes for t in reading.torn] == [len(pieces[t - 1]) for t in torn]
    return len(written), len(torn)


def test_a_writer_killed_within_a_line_is_told_of(journal):
    """Half a line by design: written under the lock by a process that kills itself before the rest."""
    journal.append(ENTRIES[0])
    line = ENTRIES[1].to_json().encode()
    for cut in (1, len(line) // 2, len(line) - 2):

        def work(cut=cut):
            with journal.path.open("ab", buffering=0) as file:
                fcntl.flock(file, fcntl.LOCK_EX)
                file.write(line[:cut])
                os.kill(os.getpid(), signal.SIGKILL)

        before = len(journal.read().torn)
        assert os.waitstatus_to_exitcode(os.waitpid(in_child(work), 0)[1]) == -signal.SIGKILL
        reading = journal.read()
        assert len(reading.torn) == before + 1 and reading.torn[-1].bytes == cut
        journal.append(ENTRIES[2])
    assert journal.read().entries == [ENTRIES[0]] + 3 * [ENTRIES[2]]


READY = -1  # what a child tells before its first line


def test_a_thousand_kills_lose_nothing_acknowledged(tmp_path, quick, record_property):
    """kill -9 at random moments of a process that appends. A line is acknowledged through a pipe once append returned.

    Half of the lives are on the disk of the temporary directory, half in memory, where more lines are written a life and more
    kills hit a write. Long lines take several pages, so that a kill can leave a part.
    """
    chance = random.Random(20260301)
    total = lives = torn = 0
    for directory in (tmp_path, quick or tmp_path):
        for part in range(20):
            path = directory / f"levigate-{os.getpid()}-{part}.journal"
            journal = levigate.Journal(path)
            acknowledged = []
            try:
                for life in range(25):
                    receive, send = os.pipe()

                    def work(start=life * 1_000_000, send=send):
                        os.write(send, struct.pack("q", READY))
                        for i in range(start, start + 1_000_000):
                            text = f"{i}." + "x" * (40_000 if i % 3 == 0 else 10)
                            journal.append(kind="note", job="a", at=PLAIN["at"], text=text)
                            os.write(send, struct.pack("q", i))

                    child = in_child(work)
                    os.close(send)
                    with open(receive, "rb") as pipe:
                        assert struct.unpack("q", pipe.read(8)) == (READY,)
                        time.sleep(chance.uniform(0, 0.012))
                        os.kill(child, signal.SIGKILL)
                        assert os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == -signal.SIGKILL
                        acknowledged += [i for (i,) in struct.iter_unpack("q", pipe.read())]
                    lives += 1
                held, cut = check_against_the_bytes(journal, acknowledged)
                assert len(acknowledged) <= held <= len(acknowledged) + 25
                total += len(acknowledged)
                torn += cut
            finally:
                path.unlink(missing_ok=True)
    assert lives == 1000
    assert total > 100
    record_property("acknowledged", total)
    record_property("torn", torn)
