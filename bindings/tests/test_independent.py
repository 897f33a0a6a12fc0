"""The formulas against implementations of others (mpmath, scipy, numpy, statistics, pint) over wide random grids.

Bounds are the accuracies that the headers state, unless the other side is the less accurate one.
"""

import json
import math
import statistics
from fractions import Fraction
from pathlib import Path

import levigate
import numpy as np
import pytest
from mpmath import mp, mpf
from scipy import integrate, optimize, stats

ULP = 2.0**-52
REFERENCE = Path(__file__).resolve().parents[2] / "data" / "reference"


@pytest.fixture
def random():
    return np.random.default_rng(20240229)


@pytest.fixture(autouse=True)
def digits():
    with mp.workdps(30):
        yield


def log_uniform(random, low, high, size=None):
    return low * (high / low) ** random.random(size)


def relative(ours, exact):
    return float(abs(mpf(ours) - exact) / abs(exact))


def tail(x):
    return mp.erfc(x / mp.sqrt(2)) / 2


def chance(depth_um, mean_um, sd_um, removed_cv, reserve_um, spots):
    """Of cutting through, in 30 digits."""
    depth, mean, sd, cv, reserve = map(mpf, (depth_um, mean_um, sd_um, removed_cv, reserve_um))
    spot = tail((mean - reserve - depth) / mp.sqrt(sd**2 + (cv * depth) ** 2))
    return -mp.expm1(spots * mp.log1p(-spot))


def films(random, size):
    mean = log_uniform(random, 1, 2e4, size)
    return dict(
        mean_um=mean,
        sd_um=mean * log_uniform(random, 1e-3, 0.5, size),
        removed_cv=random.uniform(0, 1, size),
        reserve_um=mean * random.uniform(0, 0.9, size),
        spots=np.floor(log_uniform(random, 1, 1e9, size)),
    )


def test_normal_tail_through_a_single_spot(random):
    even = dict(sd_um=1, removed_cv=0, reserve_um=0, spots=1)
    x = random.uniform(0, 37, 2000)
    upper = levigate.cut_through(depth_um=0, mean_um=x, **even)
    lower = levigate.cut_through(depth_um=x, mean_um=0, **even)
    errors = [relative(ours, tail(mpf(at))) / (8 + at * at) for ours, at in zip(upper, x)]
    errors += [relative(ours, tail(-mpf(at))) / 8 for ours, at in zip(lower, x)]
    assert max(errors) <= ULP


def test_normal_quantile_through_the_budget(random):
    even = dict(mean_um=50, sd_um=1, removed_cv=0, reserve_um=0, spots=1)
    limits = np.concatenate([log_uniform(random, 1e-100, 0.5, 800), random.uniform(0.5, 1 - 1e-9, 200)])
    depths = levigate.depth_budget_um(cut_through_limit=limits, **even)
    np.testing.assert_allclose(depths, 50 - stats.norm.isf(limits), rtol=0, atol=1e-13)


def test_cut_through(random):
    given = films(random, 1500)
    given["depth_um"] = given["mean_um"] * random.uniform(0, 1.5, 1500)
    ours = levigate.cut_through(**given)
    for i, found in enumerate(ours):
        exact = chance(**{name: values[i] for name, values in given.items()})
        if exact > mpf("1e-300"):
            assert relative(found, exact) <= 1e-12


def test_cut_through_by_scipy(random):
    given = films(random, 100_000)
    given["depth_um"] = given["mean_um"] * random.uniform(0, 1.5, 100_000)
    left = given["mean_um"] - given["reserve_um"] - given["depth_um"]
    spread = np.hypot(given["sd_um"], given["removed_cv"] * given["depth_um"])
    log_kept = stats.norm.logcdf(left / spread)
    exact = -np.expm1(given["spots"] * log_kept)
    seen = exact > 1e-290
    np.testing.assert_allclose(levigate.cut_through(**given)[seen], exact[seen], rtol=1e-10)


def test_depth_budget_by_root_finding(random):
    size = 300
    given = films(random, size)
    limits = log_uniform(random, 1e-12, 0.5, size)
    ours = levigate.depth_budget_um(cut_through_limit=limits, **given)
    compared = 0
    for i, depth_um in enumerate(ours):
        film = {name: values[i] for name, values in given.items()}

        def excess(depth, film=film, limit=limits[i]):
            left = film["mean_um"] - film["reserve_um"] - depth
            log_kept = stats.norm.logcdf(left / math.hypot(film["sd_um"], film["removed_cv"] * depth))
            return math.log(max(-math.expm1(film["spots"] * log_kept), 1e-300)) - math.log(limit)

        if depth_um == 0:
            assert excess(0) >= 0
        elif depth_um < film["mean_um"]:
            root = optimize.brentq(excess, 0, film["mean_um"], xtol=1e-13, rtol=1e-14)
            assert depth_um == pytest.approx(root, rel=1e-10, abs=1e-9)
            compared += 1
    assert compared > 100


def test_size_overlap(random):
    """The area under the lower density, integrated between its kinks."""
    for state in range(250):
        m_1, s_1, m_2, s_2 = (
            log_uniform(random, *ends) for ends in [(1, 100), (0.01, 2), (1, 100), (0.01, 2)]
        )
        ours = levigate.size_overlap(median_1_um=m_1, log_spread_1=s_1, median_2_um=m_2, log_spread_2=s_2)
        narrow, wide = sorted([(s_1, m_1), (s_2, m_2)])
        s, m = map(mpf, narrow)
        r, distance = mpf(wide[0]) / s, mp.log(mpf(wide[1]) / m) / s
        root = r * mp.sqrt(distance**2 + 2 * (r * r - 1) * mp.log(r))
        left, right = ((-distance - root) / (r * r - 1), (-distance + root) / (r * r - 1))
        outside = tail(-left) + tail(right)
        inside = tail((left - distance) / r) - tail((right - distance) / r)
        assert abs(ours - (outside + inside)) <= 1e-14
        if state < 40:  # and by plain quadrature
            points = sorted([float(left), float(right), 0, float(distance)])
            lower = lambda t, r=float(r), d=float(distance): min(stats.norm.pdf(t), stats.norm.pdf(t, d, r))
            ends = [points[0] - 60, *points, points[-1] + 60]
            area = sum(integrate.quad(lower, a, b, epsabs=1e-12)[0] for a, b in zip(ends, ends[1:]))
            assert ours == pytest.approx(area, abs=1e-9)


@pytest.mark.parametrize("label, system", [("P3000", "FEPA P"), ("P4000", "FEPA P"), ("P5000", "FEPA P"), ("CAMI 1200", "CAMI")])
def test_extrapolated_sizes(label, system):
    printed = [grade for grade in levigate.grades(system) if grade.basis != "extrapolated"][-6:]
    x = [mp.log(mpf(grade.number)) for grade in printed]
    y = [mp.log(mpf(grade.median_um)) for grade in printed]
    x_mean, y_mean = mp.fsum(x) / 6, mp.fsum(y) / 6
    slope = mp.fsum((a - x_mean) * (b - y_mean) for a, b in zip(x, y)) / mp.fsum((a - x_mean) ** 2 for a in x)
    ours = levigate.grade(label)
    exact = mpf(printed[-1].median_um) * (mpf(ours.number) / mpf(printed[-1].number)) ** slope
    assert relative(ours.median_um, exact) <= 4 * ULP
    fit = np.polyfit([float(a) for a in x], [float(b) for b in y], 1)[0]
    assert float(slope) == pytest.approx(fit, rel=1e-12)


def test_log_spread_and_coarse_tail_of_all_grades():
    compared = 0
    for system in levigate.SYSTEMS:
        for grade in levigate.grades(system):
            if grade.coarse_limit_um is None:
                spread = mpf(grade.log_spread)
                exact = grade.median_um * mp.exp(mp.sqrt(2) * mp.erfinv(mpf("0.94")) * spread)
                assert relative(grade.coarse_tail_um, exact) <= 4 * ULP
                continue
            sides = [mp.log(mpf(grade.coarse_limit_um) / grade.median_um) / (mp.sqrt(2) * mp.erfinv(mpf("0.94")))]
            if grade.fine_limit_um is not None:
                z = mp.sqrt(2) * mp.erfinv(2 * mpf(grade.fine_percent) / 100 - 1)
                sides.append(mp.log(grade.median_um / mpf(grade.fine_limit_um)) / z)
            assert relative(grade.log_spread, mp.fsum(sides) / len(sides)) <= 4 * ULP
            compared += 1
    assert compared > 60


def test_gloss_by_the_angle_of_refraction(random):
    """Fresnel's amplitudes from the angle of refraction."""
    index, angle_deg = random.uniform(1.05, 4, 50_000), random.uniform(0, 85, 50_000)
    rq_um = log_uniform(random, 1e-4, 0.3, 50_000)

    def reflectance(n):
        inside, outside = np.cos(np.arcsin(np.sin(np.radians(angle_deg)) / n)), np.cos(np.radians(angle_deg))
        s = (outside - n * inside) / (outside + n * inside)
        p = (inside - n * outside) / (inside + n * outside)
        return (s**2 + p**2) / 2

    np.testing.assert_allclose(
        levigate.fresnel_reflectance(refractive_index=index, angle_deg=angle_deg), reflectance(index), rtol=0, atol=1e-14
    )
    lost = (4 * np.pi * rq_um * np.cos(np.radians(angle_deg)) / 0.55) ** 2
    gloss = 100 * reflectance(index) / reflectance(1.567) * np.exp(-lost)
    seen = gloss > 1e-3
    ours = levigate.gloss_gu(refractive_index=index, angle_deg=angle_deg, rq_um=rq_um)
    np.testing.assert_allclose(ours[seen], gloss[seen], rtol=1e-11)


def test_levelling_by_integration(random):
    """The wear law da/dR = -min(1, a / a_c) integrated in R, without its closed form."""
    for _ in range(40):
        wavelength_mm, pressure_kpa = random.uniform(1, 10), random.uniform(1, 10)
        peel_um, residual_um = random.uniform(5, 40), random.uniform(0.1, 2)
        modulus_mpa = log_uniform(random, 0.1, 100)
        critical = wavelength_mm * pressure_kpa / (math.pi * modulus_mpa)
        slowness = lambda a, c=critical: max(1.0, c / a)
        ends = sorted({residual_um / 2, min(max(critical, residual_um / 2), peel_um / 2), peel_um / 2})
        spent = sum(integrate.quad(slowness, a, b, epsrel=1e-13)[0] for a, b in zip(ends, ends[1:]))
        ours = levigate.levelling_removal_um(
            peel_um=peel_um,
            wavelength_mm=wavelength_mm,
            modulus_mpa=modulus_mpa,
            pressure_kpa=pressure_kpa,
            residual_um=residual_um,
        )
        assert ours == pytest.approx(spent, rel=1e-11)


def test_clogging_by_integration(random):
    for _ in range(100):
        every, fade, floor = random.uniform(0.1, 50), random.uniform(1, 50), random.random()
        rate = lambda s, fade=fade, floor=floor: floor + (1 - floor) * math.exp(-s / fade)
        mean = integrate.quad(rate, 0, every, epsrel=1e-13)[0] / every
        ours = levigate.clogging_share(clean_every_m=every, fade_m=fade, floor=floor)
        assert ours == pytest.approx(mean, rel=1e-12)


def test_heat_by_finite_differences():
    """A column of the work under a constant flux, stepped in time; conductivity and heat capacity enter singly."""
    conductivity, capacity, flux = 0.2, 1.8e6, 25_000.0  # W/(m K), J/(m3 K), W/m2
    dx, steps = 5e-6, 4000
    dt = 0.4 * capacity * dx * dx / conductivity
    warm = np.zeros(400)
    for _ in range(steps):
        inward = np.concatenate([[flux], conductivity * (warm[:-1] - warm[1:]) / dx, [0.0]])
        warm += dt * (inward[:-1] - inward[1:]) / (capacity * dx)
    surface = warm[0] + flux * dx / 2 / conductivity  # cell centres lie half a cell inside
    ours = levigate.temperature_rise_k(
        effusivity=math.sqrt(conductivity * capacity),
        friction=0.5,
        pressure_kpa=10,
        speed_m_s=10,
        share=0.5,
        dwell_s=steps * dt,
    )
    assert ours == pytest.approx(surface, rel=1e-3)


def test_film_from_readings_by_exact_fractions(random):
    for count in (2, 3, 10, 200):
        readings = random.uniform(40, 160, count)
        exact = [Fraction(float(reading)) for reading in readings]
        film = levigate.film_from_readings(list(readings))
        assert film.mean_um == pytest.approx(float(statistics.mean(exact)), rel=1e-14)
        assert film.sd_um == pytest.approx(math.sqrt(statistics.variance(exact)), rel=1e-14)


def test_conversions_by_pint():
    """The C++ functions are held to these rows; the module does not have them."""
    pint = pytest.importorskip("pint")
    unit = pint.UnitRegistry()
    convert = {
        "um_from_mil": lambda mil: (mil * unit.thou).to("um"),
        "um_from_inch": lambda inch: (inch * unit.inch).to("um"),
        "mm_from_inch": lambda inch: (inch * unit.inch).to("mm"),
        "m_s_from_ft_min": lambda ft_min: (ft_min * unit.foot / unit.minute).to("m/s"),
        "kpa_from_n_per_cm2": lambda force, area: (force * unit.newton / (area * unit.cm**2)).to("kPa"),
    }
    groups = json.loads((REFERENCE / "units.json").read_text())["groups"]
    compared = 0
    for group in groups:
        if group["source"] not in ("inch", "newton"):
            continue
        for *inputs, printed in group["rows"]:
            assert convert[group["function"]](*inputs).magnitude == pytest.approx(float(printed), rel=1e-15)
            compared += 1
    assert compared >= 15


def test_wheel_speed_by_pint(random):
    pint = pytest.importorskip("pint")
    unit = pint.UnitRegistry()
    for _ in range(100):
        diameter, rpm = random.uniform(50, 600), random.uniform(100, 3000)
        turning = (rpm * unit.revolution / unit.minute).to("rad/s") * (diameter / 2 * unit.mm) / unit.rad
        ours = levigate.surface_speed_m_s(diameter_mm=diameter, rpm=rpm)
        assert ours == pytest.approx(turning.to("m/s").magnitude, rel=1e-14)
