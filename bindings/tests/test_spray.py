"""How much to spray, from Python and from the command line."""

import json
import subprocess
import sys
from pathlib import Path

import jsonschema
import levigate
import pytest

ROOT = Path(__file__).resolve().parents[2]
JOB, STACK = ROOT / "data/demo/job.json", ROOT / "data/demo/stack.json"


@pytest.fixture(scope="module")
def bench():
    return levigate.Bench(levigate.Job.load(JOB), levigate.Stack.load(STACK))


def test_millilitres_by_hand(bench):
    told = levigate.how_much_to_spray(bench, volume_solids=0.42, thinner=0.1, dry_um_per_coat=30)
    total = 0
    for zone in told.zones:
        dry_cm3 = zone.area_cm2 * zone.coats * 30e-4
        paint_on_the_work = dry_cm3 / 0.42
        sprayed = paint_on_the_work * 1.1 / 0.60
        total += sprayed / 0.90
        assert zone.mix_ml == pytest.approx(sprayed / 0.90, rel=1e-12)
    assert told.mix_ml == pytest.approx(total, rel=1e-12)
    assert told.wet_um_per_coat == pytest.approx(30 * 1.1 / 0.42, rel=1e-12)


def test_an_edge_has_the_coats_of_its_flat_and_less_film(bench):
    told = {zone.zone: zone for zone in levigate.how_much_to_spray(bench).zones}
    top, edges = told["top"], told["edges"]
    assert edges.edge_of == "top" and edges.coats == top.coats
    assert edges.film_um == pytest.approx(0.5 * top.film_um)  # no radius: taken for sharp


def run(*arguments):
    return subprocess.run(
        [sys.executable, "-m", "levigate", "spray", str(JOB), str(STACK), *arguments],
        capture_output=True, text=True, check=False,
    )  # fmt: skip


def test_command(bench):
    text = run("--way-back", "--volume-solids", "0.5")
    assert text.returncode == 0, text.stderr
    told = levigate.how_much_to_spray(bench, way_back=True, volume_solids=0.5)
    assert text.stdout == told.card()
    data = json.loads(run("--way-back", "--volume-solids", "0.5", "--json").stdout)
    assert data == told.to_dict() and data["format"] == "levigate.spray/1"
    schema = json.loads((ROOT / "data/schema/spray.schema.json").read_text())
    jsonschema.validate(data, schema)
    wrong = run("--gun", "brush")
    assert wrong.returncode == 2 and "'brush' is not known" in wrong.stderr
