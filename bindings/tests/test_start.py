"""levigate start: the real prompts through a terminal, scripts with options, and tables of paper."""

import json
import os
import pty
import re
import select
import subprocess
import sys
import time
from pathlib import Path

import levigate
import openpyxl
import pytest
from levigate import _paper_list, _words
from levigate.__main__ import main

PROMPT = "> "


def talk(folder: Path, answers: list[str], *options: str) -> tuple[int, str, list[str]]:
    """Runs start in a terminal and gives one answer a prompt. Returns status, all that was shown, and the questions."""
    master, slave = pty.openpty()
    done = subprocess.Popen(
        [sys.executable, "-m", "levigate", "start", *options],
        cwd=folder, stdin=slave, stdout=slave, stderr=slave, close_fds=True,
        env={**os.environ, "TERM": "dumb"},
    )  # fmt: skip
    os.close(slave)
    shown, questions, left, end = "", [], list(answers), time.monotonic() + 120
    since = 0
    try:
        while time.monotonic() < end:
            if select.select([master], [], [], 0.2)[0]:
                try:
                    data = os.read(master, 65536)
                except OSError:  # the program has closed its end
                    break
                if not data:
                    break
                shown += data.decode().replace("\r\n", "\n")
            if shown[since:].endswith("\n" + PROMPT):
                assert left, f"asked once more: {shown[since:]}"
                questions.append(shown[since:])
                since = len(shown)
                os.write(master, (left.pop(0) + "\n").encode())
        assert not left, f"never asked for {left}"
        return done.wait(timeout=30), shown, questions
    finally:
        done.kill()
        done.wait()
        os.close(master)


def plans(folder: Path) -> levigate.Plan:
    """The plan of the files that were written."""
    return levigate.plan(levigate.Job.load(folder / "job.json"), levigate.Stack.load(folder / "stack.json"))


def test_a_clock_case_in_a_terminal(tmp_path):
    status, shown, questions = talk(
        tmp_path,
        [
            "Walnut clock case",
            "nitro laquer",  # a slip: the nearest is named, and it asks again
            "2k Urethane",
            "3.5",  # um or mil?
            "3.5 3.7 3.6 3.4 3.6 3.7 mil",
            "top 30x18 cm",
            "eased",
            "front 0.54",  # m2?
            "front and sides 1450, no edges",
            "",
            "medium",
            "ready to buff",
            "P400 x4, P600 x6, 1500 Maker B x3, P1200 x2, P2000 x2, 3000 pad x3",
            "CAMI",  # there is no CAMI 1500
            "JIS",
        ],
    )
    assert status == 0, shown
    assert len(questions) == 15
    assert "the nearest is 'nitrocellulose lacquer'" in questions[2]
    assert "um or in mil? Say the unit" in questions[4]
    assert "m2 or ft2? Say the unit" in questions[8]
    assert "1500" in questions[14] and "no grade of CAMI" in questions[14]
    job, plan = levigate.Job.load(tmp_path / "job.json"), plans(tmp_path)
    assert job.coating.name == "two-part urethane"
    assert [zone.name for zone in job.zones] == ["top", "edges of top", "front and sides"]
    top, edges, sides = job.zones
    assert (top.area_cm2, edges.area_cm2, edges.edge.radius_mm) == (540, 96, 2)
    assert sides.area_cm2 == 1450 and top.film.mean_um == pytest.approx(3.583333 * 25.4, abs=1e-3)
    assert top.peel_um == 20 and top.peel_how == "by eye" and top.usual_wavelength
    sheets = levigate.Stack.load(tmp_path / "stack.json").sheets
    assert {sheet.id: (sheet.label, sheet.system, sheet.on_hand) for sheet in sheets}["jis1500"] == ("1500", "JIS", 3)
    assert "A foam pad printed 3000 is P3000." in shown
    assert "The readings count for each zone that has none of its own." in shown
    assert plan.found and plan.bench_sheet(levigate.simulate(plan.bench, plan)) in shown


def test_a_sideboard_in_a_terminal_takes_nine_answers(tmp_path):
    status, shown, questions = talk(
        tmp_path,
        ["Oak sideboard", "1", "3 coats of 35 um", "top 210x30 cm, no edges", "doors 5200 cm2, no edges", "",
         "", "1", "P400 x20, P600 x20, P800 x10, #1000 Maker C x6"],
    )  # fmt: skip
    assert status == 0, shown
    assert len(questions) == 9
    assert "The orange peel is 20 um from peak to valley." in shown
    assert plans(tmp_path).found


def test_a_stop_writes_nothing(tmp_path):
    status, shown, _ = talk(tmp_path, ["Case", "\x04"])
    assert status == 2 and "Stopped. No file was written." in shown
    assert list(tmp_path.iterdir()) == []


ALL = {
    "--name": "Case",
    "--coating": "waterborne",
    "--film": "4 coats of 30 um",
    "--zone": "lid 2.5 ft2, no edges",
    "--peel": "light",
    "--end": "semi-gloss",
    "--paper": "P400, P600, 800 Maker B, P1000, P1500 film, P2000, P2500",
    "--bare": "Maker B=FEPA P",
}


def script(*more: str, **change: "str | None") -> list[str]:
    told = {**ALL, **{f"--{name}": value for name, value in change.items()}}
    return ["start", *(text for key, value in told.items() if value is not None for text in (key, value)), *more]


@pytest.fixture
def here(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    with open(os.devnull) as nobody:
        monkeypatch.setattr("sys.stdin", nobody)
        yield tmp_path


def test_a_script_asks_nothing_and_prints_the_plans_sheet(here, capsys):
    assert main(script()) == 0
    printed = capsys.readouterr()
    assert PROMPT not in printed.err.replace("-> ", "")
    plan = plans(here)
    assert printed.out == plan.bench_sheet(levigate.simulate(plan.bench, plan))
    assert main(["plan", "job.json", "stack.json"]) == 0
    assert capsys.readouterr().out == printed.out
    job = json.loads((here / "job.json").read_text())
    assert job["coating"] == "water-borne" and job["target"] == {"sheen": {"scheme": "institute", "name": "semi-gloss"}}
    assert job["zones"][0]["area_cm2"] == 2322.576 and job["zones"][0]["peel_um"] == 10
    assert main(script()) == 2  # a file is never written over
    assert "job.json exists. Give --replace" in capsys.readouterr().err
    own = script("--replace", film="3 coats of 40 um", zone="lid 40x30 cm, film 100 110 104 99 107 103 um, no edges")
    assert main(own) == 0
    assert levigate.Job.load(here / "job.json").zones[0].film.how == "gauge"
    capsys.readouterr()
    assert main(script("--replace", "--json", film="100 110 104 99 107 103 um")) == 0
    assert json.loads(capsys.readouterr().out)["found"] is True
    assert json.loads((here / "job.json").read_text())["zones"][0]["film"]["readings_um"] == [100, 110, 104, 99, 107, 103]


def test_the_usual_answers(here, capsys):
    bare = script("--yes", name=None, film="4 coats", zone="lid 60x40 cm", peel=None)
    assert main(bare) in (0, 1)  # whether the film suffices is the plan's to say
    told = capsys.readouterr().err
    for text in ("counts 20 um", "are sharp, which is the cautious answer", "20 um from peak to valley"):
        assert text in told
    lid, edges = levigate.Job.load(here / "job.json").zones
    assert lid.film.mean_um == 4 * levigate.source("water-borne", "dry_um_per_coat").low == 80
    assert lid.peel_how == "usual" and edges.edge.radius_mm == 0


WRONG = {
    "all missing": (["start"], "--coating, --film, --zone, --end, --name, --peel, --paper or --drawer missing"),
    "film is never guessed": (script("--yes", film=None), "--film missing"),
    "bare number": (script("--yes", bare=None), "--bare is missing"),
    "bare of another maker": (script(bare="Maker C=CAMI"), "no paper is of 'maker c'"),
    "implausible area": (script(zone="lid 0.54, no edges"), "Is 0.54 in cm2, or in m2"),
    "implausible sides": (script(zone="lid 600x900, no edges"), "in mm, cm, inch or m"),
    "unknown unit": (script(zone="lid 52 yd2, no edges"), "The unit in 'lid 52 yd2' is not known"),
    "three sides": (script(zone="lid 60x40x2 cm, no edges"), "more than two sides"),
    "edges not told": (script(zone="lid 60x40 cm"), "say its edges too"),
    "thin reading": (script(film="4.1 4.2"), "in um or in mil"),
    "coats or um": (script(film="3"), "the number of coats"),
    "decimal commas": (script(film="88,97,92"), "with a full stop"),
    "thousands": (script(zone="lid 1,200 cm2, no edges"), "a thousand or a decimal comma"),
    "unknown peel": (script(peel="awful"), "peel 'awful' is not known"),
    "bare grain": (script(end="2000"), "can be P2000"),
    "full gloss without compound": (script(end="full gloss"), "--compound is missing"),
    "no grade": (script(paper="P401"), "P401"),
    "what is 7": (script(paper="P400 7 Maker B"), "what is"),
    "paper twice": (script(drawer="x.csv"), "--paper does not go with --drawer"),
    "no such file": (script(paper=None, drawer="x.csv"), "x.csv"),
    "solid": (script(coating="PMMA"), "has no film"),
}


@pytest.mark.parametrize("given, message", WRONG.values(), ids=WRONG.keys())
def test_what_is_unclear_is_refused_in_a_line_and_writes_nothing(here, capsys, given, message):
    assert main(given) == 2
    printed = capsys.readouterr()
    assert message in printed.err and printed.out == "" and printed.err.startswith("levigate: ")
    assert printed.err.count("\n") == 1 and list(here.iterdir()) == []


def test_full_gloss_with_compounds(here, capsys):
    options = script(
        end="full gloss", coating="2K", film="4 coats of 45 um", paper="P600, P1000, P1500, P2000, 3000 pad", bare=None,
        compound="cutting on a foam pad, fine on loose muslin, ultra-fine on flannel wheel",
    )  # fmt: skip
    assert main(options) == 0, capsys.readouterr().err
    sheets = json.loads((here / "stack.json").read_text())["sheets"]
    assert sheets[-2:] == [
        {"id": "fine", "maker": "", "label": "fine", "compound": "fine", "wheel": "loose muslin"},
        {"id": "ultra-fine", "maker": "", "label": "ultra-fine", "compound": "ultra-fine", "wheel": "loose flannel"},
    ]
    assert sheets[4]["block"] == "foam pad" and sheets[4]["label"] == "P3000"


ROWS = [["Grit", "Brand", "On hand", "Price", "Size", "Backing", "Shelf"],
        ["P400", "Maker Ä", "20", "0.90", "230x280", "wet and dry", "left"],
        ["#1000", "", "6", "1.10", "9x11 in", "film", ""],
        ["3000", "Maker B", "2", "3.50", "150 x 115 mm", "foam pad", ""]]  # fmt: skip
DIALECTS = {
    "comma": (",", ".", "utf-8", "\n"),
    "semicolon, decimal comma, BOM": (";", ",", "utf-8-sig", "\r\n"),
    "tab, cp1252": ("\t", ",", "cp1252", "\r\n"),
    "tab, utf-16": ("\t", ".", "utf-16", "\r\n"),
}


def text_of(rows, delimiter=",", point=".", end="\n"):
    return end.join(delimiter.join(cell.replace(".", point) for cell in row) for row in rows) + end


@pytest.mark.parametrize("delimiter, point, encoding, end", DIALECTS.values(), ids=DIALECTS.keys())
def test_dialects_of_a_table(tmp_path, delimiter, point, encoding, end):
    file = tmp_path / "drawer.csv"
    file.write_bytes(text_of(ROWS, delimiter, point, end).encode(encoding))
    check_pieces(*_paper_list.drawer(file))


def test_a_workbook(tmp_path):
    book = openpyxl.Workbook()
    book.active.append(ROWS[0])
    for row in ROWS[1:]:
        label, maker, count, price, *rest = row
        book.active.append([int(label) if label.isdigit() else label, maker, int(count), float(price), *rest])
    book.save(tmp_path / "drawer.xlsx")
    check_pieces(*_paper_list.drawer(tmp_path / "drawer.xlsx"))


def check_pieces(pieces, unused):
    assert unused == ["Column 'Shelf' is not used."]
    assert [piece.label for piece in pieces] == ["P400", "#1000", "P3000"]
    assert [piece.maker for piece in pieces] == ["Maker Ä", "", "Maker B"]
    assert [(piece.on_hand, piece.price) for piece in pieces] == [(20, 0.9), (6, 1.1), (2, 3.5)]
    assert [piece.backing for piece in pieces] == ["latex paper", "film", "foam-backed"]
    assert [tuple(map(round, piece.sides_mm)) for piece in pieces] == [(230, 280), (229, 279), (150, 115)]
    assert pieces[2].tool == {"block": "foam pad"}


BAD_TABLES = {
    "Grit,Sheets\nP400,lots\n": "d.csv, line 2, column 'Sheets': 'lots' is no number.",
    "Grit,Sheets\n\nP400,4\nP9,1\n": "d.csv, line 4, column 'Grit': ",
    "Colour,Sheets\nred,4\n": "d.csv, line 1: no column is headed label, grit or paper. Its headings are Colour, Sheets.",
    "Grit,Paper\nP400,P400\n": "d.csv, line 1: columns 'Grit' and 'Paper' both tell the label.",
    "Grit,Backing\nP400,wood\n": "d.csv, line 2, column 'Backing': backing 'wood' is not known",
    "Grit,Width,Height\nP400,9,11\n": "d.csv, line 2, column 'Width': '9' may be in mm, cm or inch. Say the unit in the heading.",
    "Grit,Count\n,4\n": "d.csv, line 2, column 'Grit': it is empty.",
    "Grit\n": "d.csv lists no paper.",
}


@pytest.mark.parametrize("text, message", BAD_TABLES.items())
def test_a_bad_table_names_line_and_column(tmp_path, text, message):
    (tmp_path / "d.csv").write_text(text)
    with pytest.raises(_words.Unclear, match=re.escape(message)):
        _paper_list.drawer(tmp_path / "d.csv")


SIZES = {
    "60x90 cm": 5400, "60 x 90": 5400, "600 × 900 mm": 5400, "1 m by 60 cm": 6000, "2.5 ft2": 2322.576,
    "540": 540, "12x8 in": 619.354, '12" x 8"': 619.354, "0,54 m2": 5400, "22,5x30 cm": 675, "2 sq ft": 1858.061, "52 dm2": 5200,
}  # fmt: skip


@pytest.mark.parametrize("text, area_cm2", SIZES.items())
def test_sizes(text, area_cm2):
    assert _words.size(text).area_cm2 == pytest.approx(area_cm2, abs=1e-3)


def test_several_alike_are_counted():
    doors = _words.zone("2 doors 60x50 cm, sharp edges")
    assert (doors.name, doors.size.area_cm2, doors.size.outline_cm) == ("2 doors", 6000, 440)
    with pytest.raises(_words.Unclear, match="the area of one, or of all 2"):
        _words.zone("two doors 3000 cm2")
    with pytest.raises(_words.Unclear, match="say 2 doors 60x50 cm"):
        _words.zone("doors 2x 60x50")


def test_labels_with_words():
    told = _paper_list.pieces("P400 x4; 2 sheets of #800 Maker C, 9 um film Maker B, wet/dry P1500 3x, CAMI 600, 3000 pad")
    assert [(one.label, one.maker, one.backing, one.on_hand) for one in told] == [
        ("P400", "", "latex paper", 4), ("#800", "Maker C", "latex paper", 2), ("9 um", "Maker B", "film", None),
        ("P1500", "", "latex paper", 3), ("CAMI 600", "", "latex paper", None), ("P3000", "", "foam-backed", None),
    ]  # fmt: skip


def test_every_other_name_means_its_profile_in_files_too(demo):
    for profile in levigate.profiles("coating"):
        for name in [profile.name, *profile.also]:
            assert levigate.profile_called("coating", name.upper()).name == profile.name
    data = {**demo[0].to_dict(), "coating": "2K Urethane"}
    assert levigate.Job.from_dict(data) == demo[0]
    with pytest.raises(levigate.BadInput, match="the nearest is 'nitrocellulose lacquer'"):
        levigate.Job.from_dict({**data, "coating": "nitro laquer"})
