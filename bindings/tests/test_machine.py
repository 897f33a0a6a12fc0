"""Hand-held machines: profiles and own numbers, the mean speed by arithmetic, and a plan with one."""

import copy

import numpy as np
import pytest

import levigate

NUMBERS = (
    "pad_mm orbit_mm rpm free_rpm rated_rpm force_n feed_m_s modulus_mpa friction heat_share duty keep_off_mm"
).split()


def discs(*labels, machine="random-orbit sander"):
    return levigate.Stack(
        [
            dict(id=f"disc-{label}", label=label, backing="latex paper", width_mm=150, height_mm=150, machine=machine)
            for label in labels
        ]
    )


def big(job):
    """The demo's job with a top that holds a pad of 150 mm."""
    data = copy.deepcopy(job.to_dict())
    data["zones"][0]["area_cm2"] = 6000
    return levigate.Job.from_dict(data)


def test_a_profile_by_name_and_one_with_other_numbers():
    sander = levigate.Machine("random-orbit sander")
    assert (sander.orbit_mm, sander.rpm, sander.square) == (3, 9000, False)
    assert levigate.Machine("finishing sander").square
    wider = levigate.Machine("random-orbit sander", orbit_mm=5)
    assert wider.orbit_mm == 5 and wider.pad_mm == sander.pad_mm
    mine = levigate.Machine("mine", **{name: getattr(sander, name) for name in NUMBERS})
    assert mine.name == "mine" and mine.speed_m_s == sander.speed_m_s
    assert sander.area_cm2 == pytest.approx(np.pi / 4 * 225)
    assert sander.pressure_kpa == pytest.approx(10 * 25 / sander.area_cm2)


def test_machines_that_cannot_be():
    for name, numbers in (
        ("random-orbit sanders", {}),
        ("random-orbit sander", dict(orbit=3)),
        ("random-orbit sander", dict(square=True)),
        ("rotary polisher", dict(free_rpm=100)),
        ("finishing sander", dict(friction=0.4)),
    ):
        with pytest.raises(levigate.BadInput):
            levigate.Machine(name, **numbers)
    with pytest.raises(levigate.OutOfRange, match="rated_rpm"):
        levigate.Machine("rotary polisher", rpm=2500)
    with pytest.raises(levigate.BadInput, match="takes no paper"):
        discs("P400", machine="rotary polisher")


@pytest.mark.parametrize("pad_rpm", [0, 200, 1145.0, 4000])
def test_the_mean_speed_is_the_mean(pad_rpm):
    pad_mm, orbit_mm, rpm = 150, 15, 4000
    orbit = np.pi * orbit_mm * rpm / 60e3
    ring = np.sqrt((np.arange(2000) + 0.5) / 2000)[:, None]
    phi = 2 * np.pi * (np.arange(720) + 0.5) / 720
    rim = np.pi * pad_mm * pad_rpm / 60e3
    mean = np.mean(np.abs(orbit + rim * ring * np.exp(1j * phi)))
    ours = levigate.pad_speed_m_s(pad_mm=pad_mm, pad_rpm=pad_rpm, orbit_mm=orbit_mm, rpm=rpm)
    assert ours == pytest.approx(mean, rel=1e-6)


def test_a_plan_with_a_machine_tells_of_it(demo):
    job, _ = demo
    plan = levigate.evaluate(big(job), discs("P400", "P600", "P800"), ["disc-P400", "disc-P600", "disc-P800"])
    step = plan.steps[1]
    assert step.machine.name == "random-orbit sander" and step.way == "curls"
    assert step.zones["top"].tool == "random-orbit sander"
    kinds = {finding.kind for finding in plan.findings}
    assert {"machine_by_hand", "machine_strip"} <= kinds
    assert plan.to_dict()["steps"][1]["machine"]["orbit_mm"] == 3


def test_a_plan_without_one_has_no_word_of_it(demo):
    job, stack = demo
    plan = levigate.plan(job, stack)
    assert all(step.machine is None for step in plan.steps)
    assert "machine" not in plan.to_json()


def test_a_sheet_tells_its_machine():
    stack = discs("P400")
    block = stack.sheets[0].block
    assert block.machine == levigate.Machine("random-orbit sander") and block.wheel is None
    assert block.speed_m_s == pytest.approx(block.machine.speed_m_s)
    assert levigate.Stack.from_json(stack.to_json()) == stack


def test_a_piece_that_is_too_heavy_for_a_wheel(demo):
    job, _ = demo
    heavy = levigate.Job.from_dict(job.to_dict() | {"weight_kg": 30})
    assert heavy.weight_kg == 30 and job.weight_kg is None
    wheel = dict(id="fine", label="fine", compound="fine", wheel="loose muslin")
    findings = levigate.plan(heavy, levigate.Stack([wheel])).findings
    assert [f.severity for f in findings if f.kind == "piece_too_heavy"] == ["error"]
    assert levigate.source("two hands", "most_kg").basis == "assumption"
    assert levigate.source("random-orbit sander", "orbit_mm").basis == "common practice"
