"""The published values of data/reference through the Python module: the rows that the C++ test runs."""

import json
import math
from pathlib import Path

import levigate
import numpy as np
import pytest

FOLDER = Path(__file__).resolve().parents[2] / "data" / "reference"
LATEX = dict(tip_spread=0.15, modulus_mpa=20.0, pressure_kpa=1.7, hardness_mpa=150.0)

# What the module does not hold: constants of headers and functions behind the public ones.
IN_CPP_ONLY = {
    "um_from_mil",
    "um_from_inch",
    "mm_from_inch",
    "m_s_from_ft_min",
    "kpa_from_n_per_cm2",
    "wet_film_mil",
    "normal_tail",
    "normal_quantile",
    "coating_hardness_low_mpa",
    "coating_hardness_high_mpa",
}


def size_um(label):
    return levigate.grade(label).median_um


def by_hand(grade):
    """Latex paper of a grade under the pressure of a hand on a coat."""
    return levigate.contact(size_um=grade.median_um, log_spread=grade.log_spread, **LATEX)


def ra_exponent(label_1, label_2):
    ra = [by_hand(levigate.grade(label)).ra_um for label in (label_1, label_2)]
    return math.log(ra[0] / ra[1]) / math.log(size_um(label_1) / size_um(label_2))


def size_effect_exponent(size_1_um, size_2_um):
    effects = levigate.size_effect(size_um=np.array([size_1_um, size_2_um]))
    return math.log(effects[0] / effects[1]) / math.log(size_1_um / size_2_um)


def reading_by_hand_gu(label):
    """The mean of both lays after such paper on two-part urethane, at 60 degrees."""
    rq_um = by_hand(levigate.grade(label)).rq_um
    return levigate.mean_reading_gu(refractive_index=1.52, angle_deg=60, rq_um=rq_um, flank_deg=11)


def reading_r_squared(coarsest):
    """Of a straight line through that reading against Ra, from a last grade to P3000."""
    stages = ["P600", "P800", "P1000", "P1200", "P1500", "P2000", "P3000"]
    stages = stages[stages.index(coarsest) :]
    ra = [by_hand(levigate.grade(label)).ra_um for label in stages]
    return np.corrcoef(ra, [reading_by_hand_gu(label) for label in stages])[0, 1] ** 2


def relative_gloss(refractive_index, angle_deg, rq_nm):
    gloss = levigate.gloss_gu(
        refractive_index=refractive_index, angle_deg=angle_deg, rq_um=np.array([rq_nm / 1000, 0])
    )
    return gloss[0] / gloss[1]


def job(coating, **zone):
    zones = [dict(name="top", area_cm2=100, peel_microns=1, peel_wavelength_mm=3, **zone)]
    return levigate.Job.from_dict(dict(name="panel", coating=coating, zones=zones, target={"size_um": 9}))


def block_of(name):
    return job("acrylic sheet", block=name).zones[0].block


def coating_of(name):
    film = {} if name == "acrylic sheet" else {"film": {"mean_um": 100, "sd_um": 5}}
    return job(name, block="hard block", **film).coating


def hours_by_sheet(sheets, coating, block, **zone):
    """Hours on one zone of a panel, sheet by sheet, with latex papers named as "P600 P800"."""
    labels = sheets.split()
    size = dict(width_mm=230, height_mm=280)
    papers = [dict(id=label, label=label, backing="latex paper", **size) for label in labels]
    zones = [dict(name="top", block=block, film={"mean_um": 200, "sd_um": 6}, **zone)]
    target = {"size_um": size_um(labels[-1])}
    panel = levigate.Job.from_dict(dict(name="panel", coating=coating, zones=zones, target=target))
    plan = levigate.evaluate(panel, levigate.Stack.from_dict(dict(sheets=papers)), labels)
    return [step.zones["top"].minutes / 60 for step in plan.steps]


def speed_of_inches(diameter_inch, rpm):
    return levigate.surface_speed_m_s(diameter_mm=25.4 * diameter_inch, rpm=rpm)


def removal_per_min(speed_m_s, **rest):
    return 60 * speed_m_s * levigate.removal_rate_um_per_m(**rest)


def ratio(f):
    return lambda label_1, label_2: f(label_1) / f(label_2)


FUNCTIONS = {
    "median_um": lambda label: size_um(label),
    "highest_median_um": lambda label: size_um(label) + levigate.grade(label).tolerance_um,
    "lowest_median_um": lambda label: size_um(label) - levigate.grade(label).tolerance_um,
    "canonical_label": lambda label: levigate.grade(label).label,
    "nearest_label": lambda label, system: levigate.convert(levigate.grade(label), system).grade.label,
    "size_ratio": ratio(size_um),
    "log_spread": lambda label: levigate.grade(label).log_spread,
    "surface_speed_of_inches_m_s": speed_of_inches,
    "surface_speed_ft_min": lambda **given: speed_of_inches(**given) / 0.00508,
    "relative_gloss": relative_gloss,
    "reading_by_hand_gu": reading_by_hand_gu,
    "reading_r_squared": reading_r_squared,
    "levelling_hours": lambda **given: hours_by_sheet(**given)[0],
    "later_hours": lambda **given: sum(hours_by_sheet(**given)[1:]),
    "ra_by_hand_um": lambda label: by_hand(levigate.grade(label)).ra_um,
    "ra_of_size_by_hand_um": lambda size_um: by_hand(levigate.sized_grade("paste", size_um=size_um)).ra_um,
    "ra_per_size": lambda label: by_hand(levigate.grade(label)).ra_um / size_um(label),
    "ra_exponent": ra_exponent,
    "scratch_by_hand_um": lambda label: by_hand(levigate.grade(label)).depth_um(0.99),
    "depth_99_per_ra": lambda label: by_hand(levigate.grade(label)).depth_um(0.99)
    / by_hand(levigate.grade(label)).ra_um,
    "size_effect_exponent": size_effect_exponent,
    "size_effect_ratio": ratio(lambda label: levigate.size_effect(size_um=size_um(label))),
    "removal_rate_um_per_min": removal_per_min,
    "contact_active_per_mm2": lambda **given: levigate.contact(**given).active_per_mm2,
    "contact_mean_depth_um": lambda **given: levigate.contact(**given).mean_depth_um,
    "contact_median_depth_um": lambda **given: levigate.contact(**given).depth_um(0.5),
    "contact_depth_99_um": lambda **given: levigate.contact(**given).depth_um(0.99),
    "coating_hardness_mpa": lambda coating: coating_of(coating).hardness_mpa,
    "block_pressure_kpa": lambda block: block_of(block).pressure_kpa,
    "block_speed_m_s": lambda block: block_of(block).speed_m_s,
    "default_max_ratio": lambda: levigate.Rules().max_ratio,
    "default_min_ratio": lambda: levigate.Rules().min_ratio,
}


def function_of(name):
    """One of those above, or the module's own of that name."""
    return FUNCTIONS.get(name) or getattr(levigate, name)


def groups():
    for file in sorted(FOLDER.glob("*.json")):
        content = json.loads(file.read_text())
        if content["format"] == "levigate.reference/1":
            yield from ((content["area"], group) for group in content["groups"])


def computed():
    return [
        pytest.param(group, id=f"{area}: {group['what']}")
        for area, group in groups()
        if "function" in group and group["function"] not in IN_CPP_ONLY
    ]


def number(value):
    return math.inf if value == "inf" else value


def agrees(tolerance, printed, ours):
    if isinstance(ours, str):
        return ours == printed
    low, high = map(float, printed if isinstance(printed, list) else (printed, printed))
    if "factor" in tolerance:
        factor = float(tolerance["factor"])
        return low / factor <= ours <= high * factor
    absolute, relative = (float(tolerance.get(kind, 0)) for kind in ("absolute", "relative"))
    return low - absolute - relative * abs(low) <= ours <= high + absolute + relative * abs(high)


@pytest.mark.parametrize("group", computed())
def test_rows_agree_or_differ_as_they_say(group):
    function = function_of(group["function"])
    for *inputs, printed in group["rows"]:
        given = {**group["given"], **dict(zip(group["columns"], inputs))}
        ours = function(**{name: number(value) for name, value in given.items()})
        assert agrees(group["tolerance"], printed, ours) != ("disagrees" in group), (given, printed, ours)


def test_what_runs_in_cpp_only_is_what_the_module_lacks():
    named = {group["function"] for _, group in groups() if "function" in group}
    assert IN_CPP_ONLY <= named
    assert not any(hasattr(levigate, name) for name in IN_CPP_ONLY)


def test_belt_exponents_follow_from_what_is_printed():
    printed = {
        group["what"]: [float(value) for _, value in group["rows"]]
        for _, group in groups()
        if group["what"].startswith("seconds to sand")
    }
    softwood, over_softwood = map(np.array, printed.values())
    span = math.log(size_um("P60") / size_um("P180"))
    for seconds, exponent in [(softwood, 0.649), (softwood * over_softwood, 0.406)]:
        assert math.log(seconds[-1] / seconds[0]) / span == pytest.approx(exponent, abs=0.0006)


def test_slopes_of_roughness_follow_from_what_is_printed():
    for source, slope in [("tube", 0.94), ("belts", 1.20)]:
        rows = [
            row
            for area, group in groups()
            if area == "roughness" and group["source"] == source
            for row in group["rows"]
        ]
        size, ra = np.log([[size_um(label), float(printed)] for label, printed in rows]).T
        assert np.polyfit(size, ra, 1)[0] == pytest.approx(slope, abs=0.005)
