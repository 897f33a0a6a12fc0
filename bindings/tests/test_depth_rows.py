"""Whether flank and backing count one scatter twice: the depths that tables print, over ours, against the bands."""

import json
import math
from pathlib import Path

import levigate
import numpy as np
from scipy import optimize
from truths import Truth

ROWS = json.loads((Path(__file__).resolve().parents[2] / "data/reference/roughness.json").read_text())
FINE_UM = 40  # grain that the flank was fitted to
P1000 = levigate.grade("P1000")


def by_hand(grade, **changed):
    """Latex paper on two-part urethane, as the rows of the reference are compared."""
    usual = dict(tip_spread=0.15, modulus_mpa=20.0, pressure_kpa=1.7, hardness_mpa=150.0)
    return levigate.contact(size_um=grade.median_um, log_spread=grade.log_spread, **usual | changed)


def printed_over_ours():
    """Of each row for fine grain that the fit did not see: its middle over ours. Bands for belts, twice as high, are left out."""
    for group in ROWS["groups"]:
        ours = {"ra_by_hand_um": "ra", "scratch_by_hand_um": "depth"}.get(group.get("function"))
        if not ours or group["kind"] == "fitted" or group["source"] == "belt_bands":
            continue
        for label, printed in group["rows"]:
            grade = levigate.grade(label)
            if grade.median_um > FINE_UM:
                continue
            ends = [float(x) for x in (printed if isinstance(printed, list) else [printed])]
            touch = by_hand(grade)
            yield math.sqrt(ends[0] * ends[-1]) / (touch.ra_um if ours == "ra" else touch.depth_um(0.95))


def tangent(flank_deg):
    return math.tan(math.radians(flank_deg))


def flank_band():
    """What the band of the flank makes of a depth, over that of its value: a depth goes with the tangent."""
    flank = levigate.source("model", "flank_deg")
    return tangent(flank.low) / tangent(flank.value), tangent(flank.high) / tangent(flank.value)


def test_rows_apart_from_the_fit_scatter_beyond_its_band():
    found = np.array(list(printed_over_ours()))
    low, high = flank_band()
    assert len(found) >= 10
    assert np.mean((low <= found) & (found <= high)) < 0.5


def test_independent_draws_are_no_wider_than_the_rows():
    random = np.random.default_rng(20260901)
    usual = by_hand(P1000).ra_um
    drawn = []
    for _ in range(1000):
        truth = Truth(random)
        paper = {q: truth.band("latex paper", q, "backing") for q in ("tip_spread", "modulus_mpa")}
        model = {q: truth.band("model", q, "model") for q in ("flank_deg", "packing")}
        drawn.append(by_hand(P1000, **paper, **model).ra_um / usual)
    rows = np.array(list(printed_over_ours()))
    assert np.quantile(drawn, 0.9) < np.quantile(rows, 0.9)
    assert np.median(drawn) < np.median(rows)


def test_a_soft_paper_would_need_a_flank_beyond_its_band():
    soft_mpa = levigate.source("latex paper", "modulus_mpa").low
    usual = by_hand(P1000).ra_um
    flank_deg = optimize.brentq(lambda x: by_hand(P1000, modulus_mpa=soft_mpa, flank_deg=x).ra_um - usual, 5, 60)
    assert flank_deg > 1.2 * levigate.source("model", "flank_deg").high
