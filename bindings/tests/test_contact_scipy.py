"""The contact solver against another solution of the same equations, with scipy."""

import math

import levigate
import numpy as np
import pytest
from scipy.integrate import quad
from scipy.optimize import brentq
from scipy.stats import norm

CUT = 8.0  # heights end there, in standard deviations


class Tips:
    """Gaussian tips on springs. Lengths in um, stresses in MPa, forces in MPa um2."""

    def __init__(
        self, size_um, log_spread, tip_spread, modulus_mpa, hardness_mpa, flank_deg, packing
    ):
        self.spread = size_um * math.sqrt(tip_spread**2 + (log_spread / 2) ** 2)
        self.per_area = packing / size_um**2
        self.cone = math.pi * hardness_mpa / (2 * math.tan(math.radians(flank_deg)) ** 2)
        self.give = self.cone / (modulus_mpa * size_um)  # A / k, zero on a rigid backing

    def depth(self, gap):
        return 2 * gap / (1 + math.sqrt(1 + 4 * self.give * gap))

    def gap(self, depth):
        return depth + self.give * depth**2

    def integral(self, plane, f):
        """Integral of f(depth) over the heights above the plane."""

        def density(height):
            x = height / self.spread
            return math.exp(-x * x / 2) / (math.sqrt(2 * math.pi) * self.spread)

        top = CUT * self.spread
        if plane < -10 * self.spread:  # every tip touches; the depth is smooth over all heights
            ends = np.linspace(-10 * self.spread, top, 10)

            def integrand(h):
                return f(self.depth(h - plane)) * density(h)

        else:  # over the depth, as depth(gap) bends sharply where the gap opens
            ends = np.linspace(0, self.depth(top - plane), 10)

            def integrand(t):
                return f(t) * density(plane + self.gap(t)) * (1 + 2 * self.give * t)

        return sum(
            quad(integrand, a, b, epsabs=0, epsrel=1e-11, limit=200)[0]
            for a, b in zip(ends, ends[1:])
        )

    def plane(self, pressure_mpa):
        """The height at which the tips carry the pressure."""
        alone = math.sqrt(pressure_mpa / (self.per_area * self.cone))
        low = -self.gap(alone) - 10 * self.spread

        def missing(plane):
            load = self.per_area * self.cone * self.integral(plane, lambda t: t * t)
            return math.log(load / pressure_mpa)

        return brentq(missing, low, 7.99 * self.spread, xtol=1e-14 * self.spread, rtol=1e-15)

    def solve(self, pressure_mpa):
        """Active tips per mm2, mean depth, and the depth at a quantile."""
        plane = self.plane(pressure_mpa)
        beyond = norm.sf(CUT)
        share = norm.sf(plane / self.spread) - beyond
        mean = self.integral(plane, lambda t: t) / share

        def depth(q):
            height = self.spread * norm.isf((1 - q) * share + beyond)
            return self.depth(height - plane)

        return 1e6 * self.per_area * share, mean, depth


def random_states(count):
    random = np.random.default_rng(20240)
    ends = dict(
        size_um=(0.1, 2000),
        modulus_mpa=(0.01, 1e5),
        pressure_kpa=(0.01, 1000),
        hardness_mpa=(1, 1e5),
    )
    for index in range(count):
        state = {k: float(np.exp(random.uniform(*np.log(v)))) for k, v in ends.items()}
        if index % 5 == 0:
            state["modulus_mpa"] = math.inf
        state["log_spread"] = random.uniform(0.05, 0.6)
        state["tip_spread"] = random.uniform(0.02, 0.4)
        state["flank_deg"] = random.uniform(5, 60)
        state["packing"] = random.uniform(0.1, 1)
        yield state


@pytest.mark.filterwarnings("ignore::scipy.integrate.IntegrationWarning")  # of panels that are nil
def test_against_scipy_on_200_states():
    for state in random_states(200):
        contact = levigate.contact(**state)
        pressure_mpa = state.pop("pressure_kpa") / 1000
        active, mean, depth = Tips(**state).solve(pressure_mpa)
        assert contact.active_per_mm2 == pytest.approx(active, rel=1e-8), state
        assert contact.mean_depth_um == pytest.approx(mean, rel=1e-8), state
        for q in (0.05, 0.5, 0.99):
            assert contact.depth_um(q) == pytest.approx(depth(q), rel=1e-8), (state, q)
