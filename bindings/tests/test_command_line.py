"""The commands before the work: answers, exit codes, JSON, files, bad input in one line."""

import json
import os
import re
import subprocess
import sys

import levigate
import pytest
from levigate import plots

SHEETS = ["sheet.html", "sheet.txt"]


@pytest.fixture
def levigate_command(demo_dir, tmp_path):
    """Runs the command line in an empty folder; JOB and STACK stand for the demo."""

    def run(*arguments, **environment):
        files = {"JOB": demo_dir / "job.json", "STACK": demo_dir / "stack.json"}
        return subprocess.run(
            [sys.executable, "-m", "levigate", *(str(files.get(a, a)) for a in arguments)],
            cwd=tmp_path,
            env={**os.environ, **environment},
            capture_output=True,
            text=True,
            check=False,
        )

    return run


def test_plan(levigate_command, demo):
    plan = levigate.plan(*demo)
    done = levigate_command("plan", "JOB", "STACK", "--explain")
    card = plan.card(levigate.simulate(demo[0], plan))
    assert (done.returncode, done.stdout, done.stderr) == (0, card, "")
    done = levigate_command("plan", "JOB", "STACK", "--json")
    assert done.returncode == 0 and json.loads(done.stdout) == plan.to_dict()


def test_plan_prints_and_writes_the_sheet(levigate_command, demo, tmp_path):
    plan = levigate.plan(*demo)
    simulation = levigate.simulate(demo[0], plan)
    assert levigate_command("plan", "JOB", "STACK").stdout == plan.bench_sheet(simulation, "metric")
    sheet, page = plan.bench_sheet(simulation, "us"), plan.bench_sheet_html(simulation, "us")
    done = levigate_command("plan", "JOB", "STACK", "--units", "US", "--page", "sheet.html", "--out", "out")
    assert (done.returncode, done.stdout, done.stderr) == (0, sheet, "")
    assert (tmp_path / "out" / "sheet.txt").read_text() == sheet != plan.bench_sheet(simulation, "metric")
    assert (tmp_path / "sheet.html").read_text() == (tmp_path / "out" / "sheet.html").read_text() == page
    assert levigate_command("plan", "JOB", "STACK", "--page", "no/where.html").returncode == 2


def test_plan_out(levigate_command, demo, tmp_path):
    folder = tmp_path / "deep" / "out"
    for _ in range(2):  # the second time over what is there
        done = levigate_command("plan", "JOB", "STACK", "--out", folder)
        assert (done.returncode, done.stderr) == (0, "")
    names = ["card.txt", "plan.json", "simulation.json", *SHEETS, *(f"{name}.png" for name in plots.PICTURES)]
    assert sorted(p.name for p in folder.iterdir()) == sorted(names)
    plan = levigate.plan(*demo)
    simulation = levigate.simulate(demo[0], plan)
    assert (folder / "card.txt").read_text() == plan.card(simulation)
    assert json.loads((folder / "simulation.json").read_text()) == simulation.to_dict()
    assert json.loads((folder / "plan.json").read_text()) == plan.to_dict()
    for picture in folder.glob("*.png"):
        assert picture.read_bytes().startswith(b"\x89PNG") and picture.stat().st_size > 20_000


def test_plan_out_without_matplotlib(levigate_command, tmp_path):
    hidden = tmp_path / "hidden" / "matplotlib"
    hidden.mkdir(parents=True)
    (hidden / "__init__.py").write_text("raise ImportError('hidden')")
    done = levigate_command("plan", "JOB", "STACK", "--out", "out", PYTHONPATH=str(hidden.parent))
    assert done.returncode == 0
    assert done.stderr.count("\n") == 1 and "pip install 'levigate[plot]'" in done.stderr
    names = ["card.txt", "plan.json", *SHEETS, "simulation.json"]
    assert sorted(p.name for p in (tmp_path / "out").iterdir()) == names


def test_draws_and_seed_are_the_librarys(levigate_command):
    help_text = " ".join(levigate_command("plan", "--help").stdout.split())
    assert f"(default: {levigate.DRAWS}; 0 for none)" in help_text
    assert f"(default: {levigate.SEED})" in help_text
    for given, name in ((levigate.DRAWS, "draws"), (levigate.SEED, "seed")):
        assert re.search(rf"\b{name}: [^,]+ = {given},", levigate.simulate.__doc__)


def test_plan_draws(levigate_command, demo):
    plan = levigate.plan(*demo)
    assert levigate_command("plan", "JOB", "STACK", "--explain", "--draws", "0").stdout == plan.card()
    done = levigate_command("plan", "JOB", "STACK", "--explain", "--draws", "50", "--seed", "7")
    assert done.stdout == plan.card(levigate.simulate(demo[0], plan, 50, 7))


def test_no_plan_ends_with_1(levigate_command, demo, tmp_path):
    data = {**demo[0].to_dict(), "target": {"size_um": 0.1}}
    (tmp_path / "fine.json").write_text(json.dumps(data))
    done = levigate_command("plan", "fine.json", "STACK", "--out", "out")
    assert done.returncode == 1 and "No plan" in done.stdout
    assert len(list((tmp_path / "out").iterdir())) == 2 + len(SHEETS) + len(plots.PICTURES)


def test_evaluate(levigate_command, demo):
    ids = ["a-p400", "a-p800", "a-p1500", "b-pad"]
    done = levigate_command("evaluate", "JOB", "STACK", *ids)
    assert (done.returncode, done.stdout) == (0, levigate.compare(*demo, ids).card())
    done = levigate_command("evaluate", "JOB", "STACK", "a-p320", "b-pad", "--json")
    kinds = {f["kind"] for f in json.loads(done.stdout)["taken"]["findings"]}
    assert done.returncode == 1 and "step_too_long" in kinds


def test_evaluate_takes_labels_and_a_shop(levigate_command, demo, tmp_path):
    labels = ["P600", "P1200", "P2000", "P3000"]
    ids = ["a-p600", "a-p1200", "a-p2000", "b-pad"]
    by_label = levigate_command("evaluate", "JOB", "STACK", *labels)
    assert by_label.stdout == levigate_command("evaluate", "JOB", "STACK", *ids).stdout
    refused = levigate_command("evaluate", "JOB", "STACK", "400", "P3000")
    assert refused.returncode == 2 and "a-p400 and b-400" in refused.stderr
    person = {"duty_factor": 0.5, "low": 0.4, "high": 0.6, "observations": 9}
    shop = levigate.Shop.from_dict({"person": person})
    shop.save(tmp_path / "shop.json")
    done = levigate_command("evaluate", "JOB", "STACK", *ids, "--shop", "shop.json")
    assert done.stdout == levigate.compare(levigate.Bench(*demo, shop), ids).card()


def test_buy(levigate_command, demo):
    done = levigate_command("buy", "JOB", "STACK", "--sold", "CAMI 1200")
    assert (done.returncode, done.stdout) == (0, levigate.buy(*demo, labels=["CAMI 1200"]).card())
    done = levigate_command("buy", "JOB", "STACK", "--sold", "CAMI 1200", "--json")
    assert json.loads(done.stdout)["format"] == "levigate.buy/1"


def test_check(levigate_command, demo, tmp_path):
    job, stack = demo
    done = levigate_command("check", "STACK")
    assert (done.returncode, done.stdout) == (0, levigate.findings_text(levigate.check(stack)))
    done = levigate_command("check", "STACK", "--json")
    assert json.loads(done.stdout) == [f.to_dict() for f in levigate.check(stack)]

    rules = {"max_ratio": 1.3}
    (tmp_path / "strict.json").write_text(json.dumps({**job.to_dict(), "rules": rules}))
    done = levigate_command("check", "STACK", "--json", "--job", "strict.json")
    assert json.loads(done.stdout) == [f.to_dict() for f in levigate.check(stack, rules)]

    sheets = [{**s.to_dict(), "label": "600"} for s in stack.sheets[:1]]
    (tmp_path / "bare.json").write_text(
        json.dumps({"format": "levigate.stack/1", "sheets": sheets})
    )
    assert levigate_command("check", "bare.json").returncode == 1


def test_convert(levigate_command):
    done = levigate_command("convert", "P800", "--to", "CAMI")
    given = levigate.grade("P800")
    text = levigate.equivalent_text(given, levigate.convert(given, "CAMI"))
    assert (done.returncode, done.stdout) == (0, text)
    done = levigate_command("convert", "600", "--bare", "CAMI", "--to", "JIS", "--json")
    found = levigate.convert(levigate.grade("600", bare="CAMI"), "JIS")
    (label,) = json.loads(done.stdout)
    assert (label["label"], label["ambiguous"], label["bare_number"]) == ("600", False, "CAMI")
    assert [one["nearest"] for one in label["meanings"]] == [[found.to_dict()]]


def test_convert_answers_for_each_system_that_a_label_may_be_of(levigate_command):
    labels = ["P600", "400", "#800"]
    done = levigate_command("convert", *labels)
    assert (done.returncode, done.stdout) == (0, levigate.meanings_text([levigate.meanings(one) for one in labels]))
    rows = [line.split() for line in done.stdout.splitlines()[2:7]]
    assert rows[1] == ["400", "P400", "35.0", "-", "320", "(36.0)", "#360", "(35.0)", "40", "um"]
    assert [row[0] for row in rows[2:4]] == ["CAMI", "JIS"]
    assert "400 may be P400, CAMI 400 or JIS #400" in done.stdout and "#800 is read as JIS #800." in done.stdout
    found = json.loads(levigate_command("convert", *labels, "--json").stdout)
    assert [one["ambiguous"] for one in found] == [False, True, False]
    bare = [one["grade"]["label"] for one in found[1]["meanings"]]
    assert bare == [grade.label for grade in levigate.read_label("400").candidates] == ["P400", "CAMI 400", "JIS #400"]
    for meaning in found[1]["meanings"]:
        given = levigate.grade(meaning["grade"]["label"])
        assert meaning["nearest"] == [levigate.convert(given, system).to_dict() for system in levigate.COATED_SYSTEMS]


@pytest.mark.parametrize(
    "arguments, said",
    [
        (["convert", "P650"], "nearest"),
        (["convert", ""], "empty"),
        (["convert", "P800", "--to", "Mars"], "system 'Mars'"),
        (["convert", "600", "--bare", "Mars"], "system 'Mars'"),
        (["plan", "none.json", "STACK"], "none.json"),
        (["plan", ".", "STACK"], "directory"),
        (["plan", "STACK", "STACK"], "format"),
        (["plan", "JOB", "STACK", "--out", "cut.json"], "cut.json"),
        (["plan", "JOB"], "STACK"),
        (["plan", "JOB", "STACK", "--draws", "9"], "draws = 9"),
        (["plan", "JOB", "STACK", "--draws", "-1"], "--draws"),
        (["plan", "JOB", "STACK", "--seed", "x"], "--seed"),
        (["plan", "JOB", "cut.json"], "line 1"),
        (["evaluate", "JOB", "STACK", "a-p401"], "a-p400"),
        (["check", "wrong.json"], "/sheets"),
        (["check", "STACK", "--jsn"], "--jsn"),
        (["polish"], "polish"),
    ],
)
def test_bad_input_is_told_in_one_line(levigate_command, tmp_path, arguments, said):
    (tmp_path / "cut.json").write_text('{"format": "levigate.stack/1", "she')
    (tmp_path / "wrong.json").write_text('{"format": "levigate.stack/1", "sheets": {}}')
    before = sorted(tmp_path.iterdir())
    done = levigate_command(*arguments)
    assert done.returncode == 2
    assert said in done.stderr and done.stderr.count("\n") == 1
    assert "Traceback" not in done.stderr
    assert sorted(tmp_path.iterdir()) == before


def test_version(levigate_command):
    assert levigate_command("--version").stdout == levigate.__version__ + "\n"


def test_a_reader_that_has_seen_enough(demo_dir):
    command = [
        sys.executable,
        "-m",
        "levigate",
        "plan",
        demo_dir / "job.json",
        demo_dir / "stack.json",
    ]
    process = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    process.stdout.close()
    _, said = process.communicate()
    assert said == b""
