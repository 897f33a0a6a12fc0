"""What --help says, and that it is true: each example is run, each exit code is one that the command has."""

import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest
from levigate.__main__ import main, parser

ROOT = Path(__file__).resolve().parents[2]
COMMANDS = parser("levigate").commands
FAILS = re.compile(r"^  1   ", re.MULTILINE)


def examples_of(text):
    """The commands of a help text, each on one line, with what it says of them."""
    part = text.split("examples:\n")[1].split("\n\n")[0].replace(" \\\n    ", " ")
    lines = part.splitlines()
    assert len(lines) % 2 == 0 and lines
    return [(command.strip(), about.strip()) for command, about in zip(lines[::2], lines[1::2])]


@pytest.fixture
def shop_floor(tmp_path, monkeypatch):
    """A folder with the demo where the examples look for it."""
    (tmp_path / "data").symlink_to(ROOT / "data")
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.mark.parametrize("name", [None, *COMMANDS])
def test_each_example_does_what_it_says(shop_floor, capsys, name):
    text = (COMMANDS[name] if name else parser("levigate")).format_help()
    for command, about in examples_of(text):
        words = shlex.split(command)
        assert words[0] == "levigate" and (name is None or words[1] in (name, "plan"))
        assert about and len(about.split()) <= 20
        assert main(words[1:]) == 0, command
        shown = capsys.readouterr()
        assert shown.out and (shown.err == "" or name == "start"), command  # start tells what it takes as usual


@pytest.mark.parametrize("name", COMMANDS)
def test_each_help_has_one_sentence_its_arguments_and_exit_codes(name):
    text = COMMANDS[name].format_help()
    usage, about = text.split("\n\n")[:2]
    assert usage.startswith(f"usage: levigate {name} ")
    assert about.endswith(".") and about.count(".") == 1
    assert ("\nwhat you give:\n" in text or name == "start") and "\nexit codes:\n  0   fine\n" in text
    assert "positional" not in text and "levigate." not in text
    assert [line for line in text.splitlines() if len(line) > 88] == []
    assert 1 <= len(examples_of(text)) <= 4


def test_exit_code_1_is_told_of_by_the_commands_that_have_it():
    with_1 = {name for name, one in COMMANDS.items() if FAILS.search(one.format_help())}
    assert with_1 == {"spray", "check", "plan", "evaluate", "calibrate", "buy", "together", "when-done", "go-back", "start"}


def test_the_overview_names_every_command_once_by_when_it_is_asked(capsys):
    with pytest.raises(SystemExit) as ended:
        main(["--help"])
    text = capsys.readouterr().out
    assert ended.value.code == 0
    groups = ["before the work:", "at the bench:", "after the last step:", "for your shell:"]
    places = [text.index(f"\n{group}\n") for group in groups]
    assert places == sorted(places)
    listed = re.findall(r"^  ([a-z-]+) {2,}\w", text[: text.index("examples:")], re.MULTILINE)
    assert sorted(listed) == sorted(COMMANDS)


def test_without_a_command_the_overview_goes_to_the_error_stream(capsys):
    overview = parser().format_help()
    assert main([]) == 2
    assert capsys.readouterr() == ("", overview)


def test_both_ways_to_call_it_name_themselves(tmp_path):
    script = Path(sys.executable).with_name("levigate")
    for command, prog in (([script], "levigate"), ([sys.executable, "-m", "levigate"], "python -m levigate")):
        for more, usage in (([], "COMMAND ..."), (["convert"], "convert LABEL... [options]")):
            done = subprocess.run(
                [*command, *more, "--help"], cwd=tmp_path, capture_output=True, text=True, check=False
            )
            assert done.returncode == 0
            assert done.stdout.startswith(f"usage: {prog} {usage}\n")
            assert f"\n  {prog} convert 600\n" in done.stdout
