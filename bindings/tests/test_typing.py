"""What a type checker makes of right and wrong calls."""

import ast
import re
import subprocess
import sys
from pathlib import Path

from levigate import _core

ROOT = Path(__file__).resolve().parents[2]
EXAMPLES = sorted((ROOT / "examples" / "python").glob("*.py"))

RIGHT = """
from typing import Any

import levigate
import numpy as np
import numpy.typing as npt

gloss: float = levigate.gloss_gu(refractive_index=1.5, angle_deg=60, rq_um=0.05)
many: npt.NDArray[np.float64] = levigate.gloss_gu(refractive_index=1.5, angle_deg=60, rq_um=[0.1])
grid = levigate.gloss_gu(refractive_index=1.5, angle_deg=[[20], [60]], rq_um=np.linspace(0, 1))
one: levigate.Contact = levigate.contact(size_um=18.3, log_spread=0.28, tip_spread=0.15,
    modulus_mpa=20, pressure_kpa=1.7, hardness_mpa=150)
depth: float = one.depth_um(0.99)
depths: npt.NDArray[np.float64] = one.depth_um([0.5, 0.99])
grade: levigate.Grade = levigate.grade("P800")
limit: float | None = grade.coarse_limit_um
source: str = grade.sources["median_um"]["citation"]
plan = levigate.plan(levigate.Job.load("job.json"), levigate.Stack.load("stack.json"))
left: float | None = plan.steps[0].zones["top"].film_left_um
why: str = plan.why.message if plan.why is not None else ""
findings = levigate.check(plan.stack, {"max_ratio": 1.5})
findings = levigate.check(plan.stack, levigate.Rules(max_ratio=1.5))
odds = levigate.simulate(plan.job, plan, 100, seed=2, progress=lambda done, of: done < of)
bench = levigate.Bench(plan.job, plan.stack, levigate.Shop(), levigate.Journal("j").read())
odds = levigate.simulate(bench, levigate.plan(bench), seed=2)
back: float = levigate.go_back(bench).expected_minutes
shop: levigate.Shop = levigate.learn(plan.bench).shop
late: float = odds.minutes.p90 + odds.zones["top"].cut_through.high
card: str = plan.card(odds)
symbols: str = levigate.source("contact").formula
number: float = levigate.source("rule", "max_ratio").value
share: float = levigate.edge_share(radius_mm=2)
wheel = levigate.Wheel("felt", rpm=700)
speed: str = levigate.speed_finding(wheel, "metal").verdict
run = levigate.Defect(kind="run", height_um=150, width_mm=4, length_mm=40)
wide: float = plan.plot("film", odds).get_figwidth()
rows: list[dict[str, Any]] = plan.to_records() + odds.to_records()
unit: str = levigate.unit_of("film_left_um")
"""

# Each line is wrong.
WRONG = """
levigate.gloss_gu(1.5, 60, 0.05)
levigate.gloss_gu(refractive_index="1.5", angle_deg=60, rq_um=0.05)
levigate.gloss_gu(refractive_index=None, angle_deg=60, rq_um=0.05)
levigate.gloss_gu(refractive_index=1.5, angle_deg=60)
levigate.gloss_gu(refractive_index=1.5, angle_deg=60, rq_mm=0.05)
levigate.grade(800)
levigate.grade("P800").size_um
levigate.grade("P800").median_um = 3
levigate.grade("P800").tolerance_um + 1
levigate.convert("P800", 3)
levigate.sizes_um([800])
levigate.Rules(max_ration=2)
levigate.Stack.load(3)
levigate.plan("job.json", "stack.json")
levigate.plan(levigate.Job.load("a"), levigate.Stack.load("b")).plot("films")
levigate.plan(levigate.Job.load("a"))
levigate.Bench(levigate.Job.load("a"), levigate.Stack.load("b"), journal="c")
levigate.check([])
levigate.simulate(levigate.Job.load("a"), "plan.json")
levigate.plan(levigate.Job.load("a"), levigate.Stack.load("b")).card(1000)
levigate.evaluate(levigate.Job.load("a"), levigate.Stack.load("b"), [1])
levigate.plan(levigate.Job.load("a"), levigate.Stack.load("b")).plot("picture.png")
"""


def mypy(*files, tmp_path):
    cache = ROOT / ".build" / "mypy"
    command = [sys.executable, "-m", "mypy", "--strict", "--cache-dir", cache, *files]
    done = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, check=False)
    return done.stdout + done.stderr


def test_the_stub_names_everything():
    """Every public name of the module, and every attribute of its classes, and nothing else."""
    stub = ast.parse((ROOT / "bindings" / "levigate" / "_core.pyi").read_text())

    def names(body):
        found = {node.name for node in body if isinstance(node, (ast.ClassDef, ast.FunctionDef))}
        found |= {n.target.id for n in body if isinstance(n, ast.AnnAssign)}
        return {name for name in found if not name.startswith("_")}

    def public(namespace):
        return {name for name in vars(namespace) if not name.startswith("_")}

    assert names(stub.body) == public(_core)
    for node in stub.body:
        value = getattr(_core, getattr(node, "name", ""), None)
        if isinstance(node, ast.ClassDef) and value and not issubclass(value, Exception):
            assert names(node.body) == public(value), node.name


def test_the_stub_is_written_of_the_module():
    command = [sys.executable, ROOT / "bindings" / "stubs.py", "--check"]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert (done.returncode, done.stderr) == (0, "")


def test_right_calls_and_examples_pass(tmp_path):
    (tmp_path / "right.py").write_text(RIGHT)
    assert "Success" in (said := mypy("right.py", *EXAMPLES, tmp_path=tmp_path)), said


def test_every_wrong_call_is_seen(tmp_path):
    (tmp_path / "wrong.py").write_text("import levigate" + WRONG)
    said = mypy("wrong.py", tmp_path=tmp_path)
    seen = {int(line) for line in re.findall(r"^wrong.py:(\d+): error", said, re.MULTILINE)}
    lines = ("import levigate" + WRONG).splitlines()
    assert [text for number, text in enumerate(lines, start=1) if number not in seen] == lines[:1]
