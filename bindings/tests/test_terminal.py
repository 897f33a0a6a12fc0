"""What a terminal gets and a file does not: colour, progress, completion, an end by Ctrl-C."""

import os
import pty
import re
import select
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

COMMAND = [str(Path(sys.executable).with_name("levigate"))]
COLOUR = re.compile(r"\x1b\[[0-9;]*m")
PATIENCE_S = 60.0


class Terminal:
    """A program on a pseudo terminal; its output may go to a file instead."""

    def __init__(self, *command, output=None, **environment):
        self.ours, theirs = pty.openpty()
        given = {key: value for key, value in os.environ.items() if key not in ("NO_COLOR", "COLUMNS")}
        self.process = subprocess.Popen(
            command,
            stdin=theirs,
            stdout=theirs if output is None else output,
            stderr=theirs,
            start_new_session=True,
            env={**given, "TERM": "xterm-256color", **environment},
        )
        os.close(theirs)
        self.shown = ""

    def read_until(self, wanted):
        """Reads until a text is shown, or to the end of the program for None."""
        end = time.monotonic() + PATIENCE_S
        while wanted is None or wanted not in self.shown:
            assert time.monotonic() < end, self.shown
            if not select.select([self.ours], [], [], 0.1)[0]:
                continue
            try:
                more = os.read(self.ours, 65536)
            except OSError:  # the last process on it has ended
                more = b""
            if not more:
                assert wanted is None, self.shown
                break
            self.shown += more.decode(errors="replace")

    def type(self, text):
        os.write(self.ours, text.encode())

    def close(self):
        self.read_until(None)
        os.close(self.ours)
        return self.process.wait(PATIENCE_S)


@pytest.fixture
def files(demo_dir):
    return [str(demo_dir / "job.json"), str(demo_dir / "stack.json")]


def on_terminal(*arguments, **environment):
    terminal = Terminal(*COMMAND, *arguments, **environment)
    return terminal.close(), terminal.shown.replace("\r\n", "\n")


def in_a_pipe(*arguments):
    return subprocess.run([*COMMAND, *arguments], capture_output=True, text=True, check=False).stdout


def test_a_terminal_has_the_same_text_in_colour(files, demo_dir):
    bold, warning = "\x1b[1m", "\x1b[1;33m  Warning\x1b[0m"
    for arguments in (["plan", *files, "--explain", "--draws", "20"], ["check", files[1]], ["plan", "--help"]):
        status, shown = on_terminal(*arguments)
        assert status == 0
        assert COLOUR.search(shown) and COLOUR.sub("", shown) == in_a_pipe(*arguments)
        if arguments[0] == "plan" and files[0] in arguments:
            assert f"{bold}Plan explained:\x1b[0m" in shown and warning in shown


@pytest.mark.parametrize("arguments", [["check", "STACK"], ["check", "STACK", "--json"], ["convert", "600", "--json"]])
def test_neither_pipes_nor_data_are_coloured(files, arguments):
    given = [files[1] if word == "STACK" else word for word in arguments]
    assert "\x1b" not in in_a_pipe(*given)
    if "--json" in given:
        assert on_terminal(*given) == (0, in_a_pipe(*given))
    else:
        assert "\x1b" in on_terminal(*given)[1]
        assert on_terminal(*given, NO_COLOR="1") == (0, in_a_pipe(*given))
        assert on_terminal(*given, TERM="dumb") == (0, in_a_pipe(*given))


def test_long_work_shows_progress_and_ctrl_c_ends_it_at_once(files):
    terminal = Terminal(*COMMAND, "plan", *files, "--draws", "1000000")
    terminal.read_until("0:00:02")
    assert "Planning" in terminal.shown
    began = time.monotonic()
    terminal.process.send_signal(signal.SIGINT)
    assert terminal.close() == 130
    assert time.monotonic() - began < 5
    assert terminal.shown.rstrip().endswith("levigate: stopped.")
    assert "Traceback" not in terminal.shown and "Bench sheet" not in terminal.shown


def test_short_work_and_pipes_show_no_progress(files, tmp_path):
    with (tmp_path / "plan.json").open("wb") as output:
        terminal = Terminal(*COMMAND, "plan", *files, "--json", output=output)
    assert terminal.close() == 0 and terminal.shown == ""
    assert (tmp_path / "plan.json").read_text() == in_a_pipe("plan", *files, "--json")
    piped = subprocess.Popen(
        [*COMMAND, "plan", *files, "--draws", "1000000"], stdout=subprocess.PIPE, stderr=subprocess.PIPE
    )
    time.sleep(2)
    piped.send_signal(signal.SIGINT)
    assert piped.communicate(timeout=PATIENCE_S) == (b"", b"levigate: stopped.\n")
    assert piped.returncode == 130


def test_ctrl_c_ends_the_wait_for_standard_input(files):
    terminal = Terminal(*COMMAND, "check", "-")
    time.sleep(1)
    terminal.process.send_signal(signal.SIGINT)
    assert terminal.close() == 130
    assert terminal.shown.replace("^C", "").strip() == "levigate: stopped."


def test_bash_completes_commands_names_and_files(files, tmp_path):
    script = tmp_path / "completion.sh"
    script.write_text(in_a_pipe("completion", "bash"))
    (tmp_path / "walnut.json").touch()
    terminal = Terminal("bash", "--norc", "--noprofile", "-i", PS1="ready> ", HOME=str(tmp_path))
    terminal.read_until("ready> ")
    terminal.type(f"bind 'set enable-bracketed-paste off'; cd {tmp_path}; source {script}; echo loa''ded\n")
    terminal.read_until("loaded")
    for typed, completed in (
        ("levigate cal", "levigate calibrate "),
        ("levigate plan --exp", "levigate plan --explain "),
        ("levigate record a.jsonl step-e", "levigate record a.jsonl step-ended "),
        ("levigate convert 600 --to mic", "levigate convert 600 --to micron "),
        ("levigate check waln", "levigate check walnut.json "),
    ):
        terminal.shown = ""
        terminal.type(typed + "\t")
        terminal.read_until(completed)
        terminal.type("\x15")  # away with the line
    terminal.type("exit\n")
    terminal.close()


@pytest.mark.parametrize("shell, opens", [("zsh", "#compdef levigate"), ("tcsh", "complete levigate")])
def test_other_shells_have_a_script_too(shell, opens):
    script = in_a_pipe("completion", shell)
    assert opens in script
    for known in ("go-back", "when-done", "readings-um", "witness-line", "JIS-sedimentation"):
        assert known in script, known
