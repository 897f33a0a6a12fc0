"""What comes after the plan, from a shell: calibrate, record, journal, go-back, learn, plan --after and --shop."""

import json
import shlex
from pathlib import Path

import levigate
import pytest
from levigate.__main__ import main

JOB = "Walnut mantel-clock case"
SHEETS = ["a-p400", "a-p800", "a-p1500", "b-pad"]


@pytest.fixture
def files(demo_dir):
    return [str(demo_dir / "job.json"), str(demo_dir / "stack.json")]


@pytest.fixture
def journal(tmp_path):
    """A journal of the demo's first three steps, twice as slow as planned; with a mark found."""
    path = tmp_path / "journal.jsonl"
    for number, (sheet, minutes) in enumerate(zip(SHEETS[:3], (320, 130, 70))):
        way = ["--direction-deg", str(90 * (number % 2))]
        assert main(["record", str(path), "step begun", "--job", JOB, "--sheet", sheet, *way]) == 0
        told = ["--minutes", str(minutes), "--sheets-used", "1"]
        assert main(["record", str(path), "step ended", "--job", JOB, "--sheet", sheet, *told]) == 0
    return str(path)


def test_what_is_recorded_is_read(journal, capsys):
    capsys.readouterr()
    assert main(["journal", journal, "--json"]) == 0
    entries = json.loads(capsys.readouterr().out)
    assert [e["kind"] for e in entries] == ["step begun", "step ended"] * 3
    assert entries[1]["minutes"] == 320 and entries[2]["direction_deg"] == 90
    assert main(["journal", journal]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert len(lines) == 6 and 'step ended, sheet "a-p400", minutes 320' in lines[1]


def test_a_torn_line_is_told(journal, capsys):
    with open(journal, "a") as file:
        file.write('{"format": "levigate.jour')
    assert main(["journal", journal]) == 0
    assert "line 7" in capsys.readouterr().err


@pytest.mark.parametrize(
    "arguments, message",
    [
        (["step ended", "--job", JOB, "--sheet", "a-p400"], "minutes"),
        (["film read", "--job", JOB, "--zone", "top", "--readings-um", "1e9"], "readings_um"),
        (
            ["mark found", "--job", JOB, "--mark", "scratch", "--zone", "top", "--seen", "loupe"],
            "width_um",
        ),
    ],
)
def test_a_bad_entry_is_refused_and_not_written(journal, capsys, arguments, message):
    before = Path(journal).read_bytes()
    assert main(["record", journal, *arguments]) == 2
    assert message in capsys.readouterr().err and Path(journal).read_bytes() == before


def test_going_back_from_sheets_and_from_a_journal(files, journal, capsys):
    mark = ["--zone", "top", "--seen", "loupe", "--width-um", "6", "--direction-deg", "88"]
    assert (
        main(
            [
                "go-back",
                *files,
                "--done",
                "a-p400@0",
                "a-p800@90",
                "a-p1500@0",
                "--mark",
                "cluster",
                *mark,
            ]
        )
        == 0
    )
    given = capsys.readouterr().out
    assert "Most likely cause: a-p800, step 2 in this zone" in given and "First: take " in given
    assert main(["record", journal, "mark found", "--job", JOB, "--mark", "cluster", *mark]) == 0
    capsys.readouterr()
    assert main(["go-back", *files, "--journal", journal]) == 0
    by_journal = capsys.readouterr().out
    assert by_journal.split("Where to go back to")[0] == given.split("Where to go back to")[0]
    job, stack = levigate.Job.load(files[0]), levigate.Stack.load(files[1])
    lines = levigate.Journal(journal).read()
    shop = levigate.learn(levigate.Bench(job, stack, None, lines)).shop  # as plan --after takes it
    assert by_journal == levigate.go_back(levigate.Bench(job, stack, shop, lines)).card() != given
    assert main(["go-back", *files, "--journal", journal, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["format"] == "levigate.way_back/1"
    assert (
        main(["go-back", *files, "--done", *SHEETS, "--mark", "witness line", "--zone", "top"]) == 1
    )
    assert "No way back" in capsys.readouterr().out


def test_plan_after_learns_from_its_own_journal(files, journal, capsys):
    """The rest of the day at the pace of its steps so far: that of a shop that learned from the journal."""
    capsys.readouterr()
    assert main(["plan", *files, "--after", journal, "--explain"]) == 0
    shown = capsys.readouterr()
    job, stack = levigate.Job.load(files[0]), levigate.Stack.load(files[1])
    entries = levigate.Journal(journal).read()
    shop = levigate.learn(levigate.Bench(job, stack, journal=entries)).shop
    bench = levigate.Bench(job, stack, shop, entries)
    plan = levigate.plan(bench)
    simulation = levigate.simulate(bench, plan)
    assert (shown.out, shown.err) == (plan.card(simulation), "")
    assert "Minutes rest on the pace that journals showed." in " ".join(shown.out.split())
    relied = {(one.subject, one.quantity): one for one in plan.relies_on}
    pace = relied["backing foam-backed", "learned_pace"]
    assert pace.low < pace.value < 0.7 and pace.minutes_low > 10  # at half the pace of the profiles
    assert relied["block foam pad", "duty"].minutes_low == 0
    untaught = levigate.Bench(job, stack, journal=entries)
    before = levigate.simulate(untaught, levigate.plan(untaught)).minutes
    assert simulation.minutes.p50 > 2 * before.p50


@pytest.mark.parametrize(
    "arguments, message",
    [
        (["--done", "a-p400"], "no mark"),
        (["--done", "a-p400", "--mark", "hase", "--zone", "top"], "nearest is 'haze'"),
        (["--mark", "haze", "--zone", "top"], "give either --journal or --done"),
        (["--done", "a-p400@north", "--mark", "haze", "--zone", "top"], "a-p400@north"),
        (["--done", "a-p40", "--mark", "haze", "--zone", "top"], "a-p40"),
        (["--done", "a-p400", "--mark", "haze", "--zone", "tap"], "'top'"),
    ],
)
def test_bad_questions_are_named(files, capsys, arguments, message):
    assert main(["go-back", *files, *arguments]) == 2
    assert message in capsys.readouterr().err


def test_the_rest_of_a_job(files, journal, capsys):
    assert main(["plan", *files, "--after", journal, "--json", "--draws", "0"]) == 0
    plan = json.loads(capsys.readouterr().out)
    assert [step["sheet"] for step in plan["steps"]] == ["b-pad"]
    readings = ["--readings-um", "60", "61", "59", "62"]
    assert main(["record", journal, "film read", "--job", JOB, "--zone", "top", *readings]) == 0
    capsys.readouterr()
    assert main(["plan", *files, "--after", journal, "--json", "--draws", "0"]) == 0
    again = json.loads(capsys.readouterr().out)
    top = [step["zones"][0] for step in (plan["steps"][-1], again["steps"][-1])]
    assert top[1]["film_left_um"] < top[0]["film_left_um"]


def test_a_gauge_reads_the_rounds_below_too(files, journal, tmp_path, capsys):
    data = json.loads(Path(files[0]).read_text())
    coats = [(30, 0), (30, 4), (35, 48), (40, 52)]
    data["zones"][0]["film"] = {
        "coats": [{"dry_um": dry_um, "applied_h": hours} for dry_um, hours in coats],
        "recoat_window_h": 24,
        "sd_um": 4,
    }
    job = tmp_path / "two_rounds.json"
    job.write_text(json.dumps(data))
    readings = [119, 120, 120, 121, 121, 122]
    told = ["--zone", "top", "--readings-um", *map(str, readings)]
    assert main(["record", journal, "film read", "--job", JOB, *told]) == 0
    capsys.readouterr()
    question = ["plan", str(job), files[1], "--after", journal, "--json", "--draws", "0"]
    assert main(question) == 0
    plan = json.loads(capsys.readouterr().out)
    top = plan["steps"][0]["zones"][0]
    film_um = sum(readings) / len(readings) - 60  # of the last round
    assert top["film_left_um"] + top["depth_um"] == pytest.approx(film_um, abs=1e-9)
    told[-6:] = ["55", "57", "58", "58", "59", "61"]
    assert main(["record", journal, "step ended", "--job", JOB, "--sheet", "b-pad",
                 "--minutes", "30"]) == 0
    assert main(["record", journal, "film read", "--job", JOB, *told]) == 0
    assert main(question) == 2
    assert "The rounds below the last hold 60 um" in capsys.readouterr().err


def test_learning_changes_the_next_plan(files, journal, tmp_path, capsys):
    shop = str(tmp_path / "shop.json")
    assert main(["plan", *files, "--json", "--draws", "0"]) == 0
    before = json.loads(capsys.readouterr().out)["total"]["minutes"]
    assert main(["learn", *files, journal, "--shop", shop]) == 0
    assert "slower" in capsys.readouterr().out
    assert main(["plan", *files, "--json", "--draws", "0", "--shop", shop]) == 0
    assert json.loads(capsys.readouterr().out)["total"]["minutes"] > 1.5 * before
    learned = Path(shop).read_bytes()
    assert levigate.Shop.load(shop).person.factor < 0.8
    capsys.readouterr()
    assert main(["learn", *files, journal, "--shop", shop]) == 0
    assert "The shop already knew 6 lines of this journal." in capsys.readouterr().out
    assert Path(shop).read_bytes() == learned
    haze = ["--done", *SHEETS, "--mark", "haze", "--zone", "top", "--json"]
    minutes = []
    for known in ([], ["--shop", shop]):
        assert main(["go-back", *files, *haze, *known]) == 0
        minutes.append(json.loads(capsys.readouterr().out)["tries"][0]["minutes"])
    assert minutes[1] > minutes[0]


def commands_of(card, name):
    """The words after the module's name of each command of that name on a card."""
    lines = card.replace("\\\n", " ").splitlines()
    words = [shlex.split(line) for line in lines if line.strip().startswith(f"levigate {name} ")]
    return [one[1:] for one in words]


def test_calibrate_prints_what_the_library_ranks(files, journal, tmp_path, capsys):
    job, stack = levigate.Job.load(files[0]), levigate.Stack.load(files[1])
    first = tmp_path / "first.jsonl"
    first.write_text("".join(Path(journal).read_text().splitlines(keepends=True)[:2]))
    entries = levigate.Journal(first).read()
    shop = levigate.learn(levigate.Bench(job, stack, journal=entries)).shop
    path = str(tmp_path / "known.json")
    shop.save(path)
    capsys.readouterr()
    for more, bench in (
        ([], levigate.Bench(job, stack)),
        (["--shop", path], levigate.Bench(job, stack, shop)),
        (["--after", str(first)], levigate.Bench(job, stack, shop, entries)),
    ):
        ranked = levigate.calibrate(bench, levigate.plan(bench))
        assert main(["calibrate", *files, *more]) == 0
        assert capsys.readouterr().out == ranked.card()
        assert main(["calibrate", *files, *more, "--json"]) == 0
        assert capsys.readouterr().out == ranked.to_json()
        assert {"patch gauged", "first step"} <= {one.kind for one in ranked.measurements}
    # The pad alone is left. In 5 minutes it takes off too little to be read.
    assert main(["calibrate", *files, "--after", journal, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["measurements"] == []


def test_calibrate_without_a_plan(files, tmp_path, capsys):
    job = tmp_path / "job.json"
    job.write_text(json.dumps({**json.loads(Path(files[0]).read_text()), "target": {"size_um": 0.01}}))
    assert main(["calibrate", str(job), files[1]]) == 1
    shown = capsys.readouterr()
    why = levigate.plan(levigate.Job.load(job), levigate.Stack.load(files[1])).why.message
    assert shown.out == "" and why in shown.err


def test_the_best_patch_narrows_the_day_as_told(files, tmp_path, capsys):
    """Rank, work the patch at the expected pace, record it by the printed line, learn and plan."""
    assert main(["calibrate", *files]) == 0
    card = capsys.readouterr().out
    job, stack = levigate.Job.load(files[0]), levigate.Stack.load(files[1])
    plan = levigate.plan(job, stack)
    ranked = levigate.calibrate(job, plan).measurements
    best = max(
        (one for one in ranked if one.kind.startswith("patch")), key=lambda one: one.fold_before / one.fold_after
    )
    assert best.kind == "patch gauged" and best.fold_after < 0.7 * best.fold_before
    before = [90.0 + spot % 3 for spot in range(10)]
    filled = {
        "JOURNAL": [str(tmp_path / "journal.jsonl")],
        "SHOP": [str(tmp_path / "shop.json")],
        "JOB": files[:1],
        "STACK": files[1:],
        "MINUTES": [str(best.sanding_minutes)],
        "BEFORE": [str(um) for um in before],
        "AFTER": [str(um - best.removal_um) for um in before],
        "...": [],
    }
    record = commands_of(card, "record")[[one.kind for one in ranked].index(best.kind)]
    told = [commands_of(card, name)[0] for name in ("learn", "plan")]
    for words in (record, *told):
        arguments = [filling for word in words for filling in filled.get(word, [word])]
        if words[0] == "plan":
            arguments += ["--out", str(tmp_path / "out")]
        assert main(arguments) == 0
    after = json.loads((tmp_path / "out" / "simulation.json").read_text())["minutes"]
    shop = levigate.Shop.load(tmp_path / "shop.json")
    (rate,) = [one for one in shop.rates if one.backing]
    assert rate.observations == 1
    # The plan may change with the pace. The same plan is what the ranking is of.
    same = levigate.simulate(job, plan, shop=shop).minutes
    assert same.p90 / same.p10 == pytest.approx(best.fold_after, rel=0.1)
    assert after["p90"] / after["p10"] < 0.8 * best.fold_before


def test_each_printed_line_is_recorded(files, tmp_path, capsys):
    assert main(["calibrate", *files]) == 0
    records = commands_of(capsys.readouterr().out, "record")
    path = str(tmp_path / "journal.jsonl")
    filled = {"JOURNAL": path, "MINUTES": "5", "BEFORE": "90", "AFTER": "80", "ZONE": "top", "WIDTH": "9"}
    for words in records:
        assert main([filled.get(word, word) for word in words if word != "..."]) == 0
    capsys.readouterr()
    assert main(["learn", *files, path, "--shop", str(tmp_path / "shop.json")]) == 0
    assert len(records) == 5 and "Not used" not in capsys.readouterr().out


@pytest.mark.parametrize("command", ["plan", "go-back", "learn"])
def test_a_journal_of_other_jobs_alone_is_refused(command, files, tmp_path, capsys):
    other = tmp_path / "other.jsonl"
    levigate.Journal(other).append(kind="note", job="Walnut clock", text="a slip in the name")
    words = {
        "plan": ["--after", str(other)],
        "go-back": ["--journal", str(other)],
        "learn": [str(other), "--shop", str(tmp_path / "shop.json")],
    }
    assert main([command, *files, *words[command]]) == 2
    assert "its lines are of 'Walnut clock'" in capsys.readouterr().err
