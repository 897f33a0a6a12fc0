#!/usr/bin/env python3
"""Write data/reference/high_precision.json: the formulas evaluated with mpmath in 30 digits, straight from their
statement (integrals by quadrature, roots by bisection), sharing nothing with the headers.

    python3 tests/reference/high_precision.py            write the file
    python3 tests/reference/high_precision.py --check    exit 1 where the file is stale
"""

import json
import sys
from pathlib import Path

from mpmath import asin, cos, erfc, exp, expm1, findroot, inf, log, log1p, mp, mpf, npdf, pi, quad, radians, sin, sqrt, tan

mp.dps = 30
PATH = Path(__file__).resolve().parents[2] / "data" / "reference" / "high_precision.json"
ULP = 2.220446049250313e-16


def text(value):
    return mp.nstr(value, 20, min_fixed=-5, max_fixed=17)


def tail(x):
    return erfc(x / sqrt(2)) / 2


def quantile(chance):
    """The x with tail(x) = chance."""
    guess = sqrt(-2 * log(chance)) if chance < mpf("0.1") else mpf(0)
    return findroot(lambda x: log(tail(x)) - log(chance), (guess, guess + mpf("0.1")), tol=mpf(10) ** -26)


def contact(size, log_spread, tip_spread, modulus, pressure_kpa, hardness, flank_deg, packing):
    """Active tips per mm2, mean depth, and depths of 50 and 99 %, from the balance of forces as it is stated."""
    s = size * sqrt(tip_spread**2 + (log_spread / 2) ** 2)
    a = pi * hardness / (2 * tan(radians(flank_deg)) ** 2)
    k = modulus * size
    per_um2 = packing / size**2
    top = 8 * s

    def depth(gap):
        return gap if k == inf else 2 * gap * k / (k + sqrt(k * k + 4 * a * k * gap))

    def over_heights(f, plane):
        low = max(plane, -20 * s)
        points = [low + (top - low) * i / 8 for i in range(9)]
        return quad(lambda h: f(depth(h - plane)) * npdf(h, 0, s), points)

    def log_load(plane):
        return log(per_um2 * a * over_heights(lambda d: d * d, plane)) - log(pressure_kpa / 1000)

    low, high = -50 * s, mpf("7.9") * s
    while log_load(low) < 0:
        low *= 10
    plane = findroot(log_load, (low, high), solver="anderson", tol=mpf(10) ** -26, maxsteps=200)
    active = tail(plane / s) - tail(8)
    mean = over_heights(lambda d: d, plane) / active

    def exceeded_by(share):
        chance = share * active + tail(8)
        height = quantile(chance) if chance <= mpf("0.5") else -quantile(1 - chance)
        return depth(height * s - plane)

    return 1000**2 * per_um2 * active, mean, exceeded_by(mpf("0.5")), exceeded_by(mpf("0.01"))


def overlap(median_1, spread_1, median_2, spread_2):
    """Area under the lower of two normal densities of ln(size); the densities cross at most twice."""
    m1, m2, s1, s2 = log(median_1), log(median_2), spread_1, spread_2
    a = 1 / s2**2 - 1 / s1**2
    b = 2 * (m1 / s1**2 - m2 / s2**2)
    c = m2**2 / s2**2 - m1**2 / s1**2 + 2 * log(s2 / s1)
    if a == 0:
        crossings = [-c / b] if b else []
    else:
        root = sqrt(b * b - 4 * a * c)
        crossings = [(-b - root) / (2 * a), (-b + root) / (2 * a)]
    far = 40 * max(s1, s2)
    ends = sorted([min(m1, m2) - far, *crossings, m1, m2, max(m1, m2) + far])
    return quad(lambda x: min(npdf(x, m1, s1), npdf(x, m2, s2)), ends)


def fresnel(index, angle_deg):
    """From the angle of refraction, which the header does not use."""
    i = radians(angle_deg)
    t = asin(sin(i) / index)
    r_s = (cos(i) - index * cos(t)) / (cos(i) + index * cos(t))
    r_p = (index * cos(i) - cos(t)) / (index * cos(i) + cos(t))
    return (r_s**2 + r_p**2) / 2


def gloss(index, angle_deg, rq_um):
    phase = 4 * pi * rq_um * cos(radians(angle_deg)) / mpf("0.55")
    return 100 * fresnel(index, angle_deg) / fresnel(mpf("1.567"), angle_deg) * exp(-phase * phase)


def cut_through(depth, mean, sd, cv, reserve, spots):
    spot = tail((mean - reserve - depth) / sqrt(sd**2 + (cv * depth) ** 2))
    return -expm1(spots * log1p(-spot))


def levelling(peel, wavelength_mm, modulus, pressure_kpa, residual):
    """Full contact: the integral of dR = -(a_c / a) da; crests: the amplitude itself."""
    critical = wavelength_mm * pressure_kpa / (pi * modulus)
    start, end = peel / 2, residual / 2
    if start <= end:
        return mpf(0)
    crests = max(mpf(0), start - max(critical, end))
    return crests if critical <= end else crests + quad(lambda a: critical / a, [end, min(start, critical)])


def given(number):
    """The double that a reader of the file gets, exactly."""
    return inf if number == "inf" else mpf(float(number))


def group(what, function, columns, rows, f, tolerance, reason, where=()):
    return {
        "what": what,
        "kind": "computed",
        "function": function,
        "given": dict(where),
        "columns": columns,
        "source": "mpmath",
        "tolerance": {**tolerance, "reason": reason},
        "rows": [[*row, text(f(*map(given, row)))] for row in rows],
    }


def normal_groups():
    points = [round(-8 + (i + 0.37) * 0.45, 3) for i in range(100)]
    made = group("upper tail of the normal distribution", "normal_tail", ["x"], [], None, {"exact": "as printed"},
                 "the band is the accuracy that the header states, 4 + x^2 ulp")
    for x in points:
        bound = (4 + x * x) * ULP
        made["rows"].append([x, [text(tail(given(x)) * (1 - bound)), text(tail(given(x)) * (1 + bound))]])
    yield made
    tails = [1e-300, 1e-250, 1e-200, 1e-150, 1e-100, 1e-70, 1e-50, 1e-30, 1e-20, 1e-16, 1e-12, 1e-9, 1e-7, 1e-5, 1e-4,
             0.001, 0.01, 0.03, 0.05, 0.06, 0.1, 0.15]
    reason = "the accuracy that the header states, 4 ulp of max(1, |x|)"
    yield group("quantile of the normal distribution, |x| above 1", "normal_quantile", ["tail"],
                [[p] for p in tails] + [[0.9], [0.99], [0.9999]],
                lambda p: quantile(p) if p < mpf("0.5") else -quantile(1 - p), {"relative": f"{4 * ULP:.3g}"}, reason)
    yield group("quantile of the normal distribution, |x| below 1", "normal_quantile", ["tail"],
                [[p] for p in (0.16, 0.2, 0.25, 0.3, 0.4, 0.45, 0.49, 0.499, 0.4999999, 0.51, 0.6, 0.75, 0.84)],
                quantile, {"absolute": f"{4 * ULP:.3g}"}, reason)


def contact_groups():
    columns = ["size_um", "log_spread", "tip_spread", "modulus_mpa", "pressure_kpa", "hardness_mpa", "flank_deg",
               "packing"]
    states = [
        [18.3, 0.280634, 0.15, 20, 1.7, 150, 20, 0.5],  # P1000 latex paper by hand on a coat
        [58.5, 0.177, 0.15, 20, 1.7, 150, 20, 0.5],
        [269, 0.15, 0.2, 30, 3.8, 30, 20, 0.5],
        [8.4, 0.354, 0.08, 60, 1.7, 220, 20, 0.5],
        [9, 0.2, 0.08, "inf", 1.7, 150, 20, 0.5],
        [5, 0.3, 0.12, 4, 2.5, 70, 20, 0.5],
        [18.3, 0.28, 0.15, 20, 0.01, 100000, 20, 0.5],  # hardly any tip touches
        [18.3, 0.28, 0.15, 0.01, 1000, 150, 20, 0.5],  # all tips touch
        [100, 0, 0.001, "inf", 1000, 200, 11.309932474020213, 1],  # all tips at one height
        [0.1, 1, 1, 5, 100, 1, 60, 0.01],
    ]
    solved = {tuple(state): contact(*map(given, state)) for state in states}
    for at, (function, what) in enumerate([
        ("contact_active_per_mm2", "active tips"), ("contact_mean_depth_um", "mean depth"),
        ("contact_median_depth_um", "median depth"), ("contact_depth_99_um", "depth that 99 % do not exceed"),
    ]):
        made = group(f"contact of a sheet: {what}", function, columns, [], None, {"relative": "1e-11"},
                     "the accuracy that the header states")
        made["rows"] = [[*state, text(solved[tuple(state)][at])] for state in states]
        yield made


def other_groups():
    yield group("share of grain that two grades have in common", "size_overlap",
                ["median_1_um", "log_spread_1", "median_2_um", "log_spread_2"],
                [[25.8, 0.29, 21.8, 0.31], [16, 0.3, 15.3, 0.36], [18.3, 0.28, 18.3, 0.15], [53.5, 0.3, 8.4, 0.354],
                 [100, 0.15, 82, 0.15], [5, 0.01, 5.1, 2], [300, 0.15, 0.3, 0.2]],
                overlap, {"absolute": "1e-14"}, "the accuracy that the header states")
    yield group("reflectance by the angle of refraction", "fresnel_reflectance", ["refractive_index", "angle_deg"],
                [[n, angle] for n in (1.01, 1.3, 1.49, 1.5, 1.567, 2.4, 4) for angle in (0, 20, 45, 60, 85, 89.9)],
                fresnel, {"absolute": "1e-14"}, "the accuracy that the header states")
    yield group("gloss of a rough film", "gloss_gu", ["refractive_index", "angle_deg", "rq_um"],
                [[1.5, 60, 0.05], [1.5, 20, 0.05], [1.5, 85, 0.05], [1.49, 60, 0.01], [1.55, 20, 0.1], [1.52, 85, 0.5],
                 [1.5, 60, 0.2]],
                gloss, {"relative": "1e-12"}, "the accuracy that the header states")
    yield group("chance of cutting through", "cut_through",
                ["depth_um", "mean_um", "sd_um", "removed_cv", "reserve_um", "spots"],
                [[38, 105, 9, 0.15, 10, 1200], [20, 60, 5, 0.15, 10, 500], [80, 105, 9, 0.15, 10, 1], [0, 100, 3, 0, 10, 100],
                 [95, 105, 9, 0.3, 10, 1], [50, 55, 4, 0.2, 10, 2000], [1, 500, 15, 0.1, 5, 1e6], [10, 45, 1, 0.01, 0, 3]],
                cut_through, {"relative": "1e-12"}, "the accuracy that the header states")
    yield group("film removed in levelling", "levelling_removal_um",
                ["peel_um", "wavelength_mm", "modulus_mpa", "pressure_kpa", "residual_um"],
                [[12, 3, 1000, 1.7, 0.2], [12, 3, 15, 1.7, 0.2], [12, 3, 3, 1.7, 0.2], [12, 3, 0.2, 1.7, 0.2],
                 [40, 8, 0.05, 3, 0.5], [0.1, 3, 3, 1.7, 0.2]],
                levelling, {"relative": "1e-14"}, "the accuracy that the header states")
    yield group("mean share of the rate between two cleanings, by integration", "clogging_share",
                ["clean_every_m", "fade_m", "floor"],
                [[1, 1, 0.4], [10, 30, 0.4], [20, 10, 0.5], [1e-6, 30, 0], [500, 30, 0.1]],
                lambda x, fade, floor: quad(lambda s: floor + (1 - floor) * exp(-s / fade), [0, x / 9, x / 3, x]) / x,
                {"relative": f"{4 * ULP:.3g}"}, "the accuracy that the header states, 4 ulp")
    heat = ["effusivity", "friction", "pressure_kpa", "speed_m_s", "share"]
    wheels = [[600, 0.4, 10, 12.775810124999417, 0.5], [550, 0.3, 5, 15, 0.7], [1500, 0.6, 30, 20, 0.25]]
    yield group("warming under a wheel: the heat kernel integrated over the dwell", "temperature_rise_k",
                [*heat, "dwell_s"], [[*wheel, dwell] for wheel in wheels for dwell in (0.05, 0.7, 3)],
                lambda e, mu, p, v, share, t: share * mu * 1000 * p * v / (e * sqrt(pi)) *
                quad(lambda before: 1 / sqrt(before), [0, t]),
                {"relative": f"{4 * ULP:.3g}"}, "the accuracy that the header states, 4 ulp")


def content():
    return {
        "format": "levigate.reference/1",
        "area": "high precision",
        "sources": {
            "mpmath": {
                "kind": "computed",
                "basis": "computed",
                "citation": "30-digit arithmetic, tests/reference/high_precision.py",
            }
        },
        "groups": [*normal_groups(), *contact_groups(), *other_groups()],
    }


def written(data):
    """JSON with one row a line."""
    rows = {}

    def hide(value):
        if isinstance(value, dict):
            return {key: hide_rows(v) if key == "rows" else hide(v) for key, v in value.items()}
        return [hide(v) for v in value] if isinstance(value, list) else value

    def hide_rows(value):
        mark = f"@{len(rows)}@"
        rows[mark] = "[\n" + ",\n".join("    " + json.dumps(row) for row in value) + "\n   ]"
        return mark

    whole = json.dumps(hide(data), indent=1)
    for mark, lines in rows.items():
        whole = whole.replace(f'"{mark}"', lines)
    return whole + "\n"


def main(arguments):
    text_now = written(content())
    if arguments == ["--check"]:
        return int(PATH.read_text() != text_now)
    PATH.write_text(text_now)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
