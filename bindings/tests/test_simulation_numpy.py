"""A plan simulated with numpy, all draws at once: written from the description of simulate(), not from its code.

It knows what the tests and tests/bench need: a sprayed coat, paper on blocks, no defects, no wheels. Bands come from levigate.source(), scratches
and levelling from the elementwise functions, which have peers of their own.
"""

import json
from pathlib import Path

import levigate
import numpy as np
import pytest
from scipy.special import chdtri, ndtri

REFERENCE = Path(__file__).resolve().parents[2] / "data" / "reference"
MULTIPLIERS = {32: (0xD2511F53, 0xCD9E8D57), 64: (0xD2E7470EE14C6C93, 0xCA5A826395121157)}
WEYL = {32: (0x9E3779B9, 0xBB67AE85), 64: (0x9E3779B97F4A7C15, 0xBB67AE8584CAA73B)}


def philox(counter, key, bits):
    """Philox 4 x bits with ten rounds, on whole numbers or, at 32 bits, arrays of uint64."""
    mask = (1 << bits) - 1
    c0, c1, c2, c3 = counter
    k0, k1 = key
    for _ in range(10):
        a, b = MULTIPLIERS[bits][0] * c0, MULTIPLIERS[bits][1] * c2
        c0, c1, c2, c3 = (b >> bits) ^ c1 ^ k0, b & mask, (a >> bits) ^ c3 ^ k1, a & mask
        k0, k1 = (k0 + WEYL[bits][0]) & mask, (k1 + WEYL[bits][1]) & mask
    return c0, c1, c2, c3


def fnv(name):
    value = 0xCBF29CE484222325
    for byte in name.encode():
        value = (value ^ byte) * 0x100000001B3 % 2**64
    return value


class CountedNumbers:
    """The numbers that simulate() uses."""

    def __init__(self, seed, draws):
        self.key = (seed % 2**32, seed >> 32)
        self.draws = draws

    def pair(self, name, places=1):
        """Two uniforms for each draw and place."""
        stream = fnv(name)
        shape = (self.draws, places)
        counter = (
            np.broadcast_to(np.arange(places, dtype=np.uint64), shape),
            np.broadcast_to(np.arange(self.draws, dtype=np.uint64)[:, None], shape),
            np.full(shape, stream % 2**32, np.uint64),
            np.full(shape, stream >> 32, np.uint64),
        )
        words = philox(counter, self.key, 32)
        twelve = np.uint64(12)

        def unit(high, low):
            return ((high << np.uint64(32) | low) >> twelve).astype(float) * 2.0**-52 + 2.0**-53

        return unit(*words[:2]), unit(*words[2:])

    def uniform(self, name):
        return self.pair(name)[0][:, 0]

    def normals(self, name, places):
        return [ndtri(u) for u in self.pair(name, places)]


class NumpyNumbers:
    """numpy's own, for speed."""

    def __init__(self, seed, draws):
        self.random = np.random.Generator(np.random.Philox(seed))
        self.draws = draws

    def pair(self, _name):
        return self.random.random((2, self.draws, 1))

    def uniform(self, _name):
        return self.random.random(self.draws)

    def normals(self, _name, places):
        return self.random.standard_normal((2, self.draws, places))


def drawn(value, low, high, uniform):
    """Median at the value, each side even in the logarithm."""
    end = np.where(uniform > 0.5, high, low)
    return value * (end / value) ** np.abs(2 * uniform - 1)


class Inputs:
    """Every input over its band, each drawn once by its name."""

    def __init__(self, numbers):
        self.numbers = numbers

    def profile(self, subject, name, quantity):
        if quantity in ("force_n", "speed_m_s", "duty"):
            subject = "hand"  # the same person's on every block
        band = levigate.source(name, quantity)
        uniform = self.numbers.uniform(f"{subject}, {quantity}".strip())
        return drawn(band.value, band.low, band.high, uniform)

    def grade(self, grade):
        size, spread = grade.median_um, grade.log_spread
        subject, half = f"grade {grade.label}", grade.tolerance_um
        if half is None:
            half = size * (0.12 if grade.basis == "extrapolated" else 0.03)
        return (
            drawn(size, size - half, size + half, self.numbers.uniform(f"{subject}, median_um")),
            drawn(spread, 0.75 * spread, 1.25 * spread, self.numbers.uniform(f"{subject}, log_spread")),
        )


def simulate(job, plan, numbers):
    """Minutes, sheets, and by zone the film left, the thinnest spot: arrays of one number a draw."""
    inputs = Inputs(numbers)
    sheets = {sheet.id: sheet for sheet in plan.stack.sheets}
    coating = job.coating.name
    hardness_mpa = inputs.profile(f"coating {coating}", coating, "hardness_mpa")
    efficiency = inputs.profile(f"coating {coating}", coating, "cutting_efficiency")
    flank_deg, packing, exponent, saturation_um = (
        inputs.profile("model", "model", q)
        for q in ("flank_deg", "packing", "size_exponent", "saturation_um")
    )
    wear = 2 / np.pi * efficiency * np.tan(np.radians(flank_deg))
    overcut = 1 / (1 + ndtri(job.rules.short_share) * job.rules.removed_cv)
    change_minutes = inputs.profile("rule", "rule", "change_minutes")

    profiles = {}

    def profile(kind, name, quantity):
        key = (kind, name, quantity)
        if key not in profiles:
            profiles[key] = inputs.profile(f"{kind} {name}", name, quantity)
        return profiles[key]

    def step(sheet, grade, zone):
        """Scratch depth and removal rate of a sheet in a zone."""
        block = (sheet.block or zone.block).name
        backing = sheet.backing.name
        pressure_kpa = 10 * profile("block", block, "force_n") / profile("block", block, "area_cm2")
        size_um, log_spread = grade
        scratch_um = levigate.contact(
            size_um=size_um,
            log_spread=log_spread,
            tip_spread=profile("backing", backing, "tip_spread"),
            modulus_mpa=profile("backing", backing, "modulus_mpa"),
            pressure_kpa=pressure_kpa,
            hardness_mpa=hardness_mpa,
            flank_deg=flank_deg,
            packing=packing,
        ).depth_um(job.rules.scratch_quantile)
        floor = profile("backing", backing, "floor")
        x = profile("backing", backing, "clean_every_m") / profile("backing", backing, "fade_m")
        fresh = wear * np.minimum(1, (size_um / saturation_um) ** exponent) * pressure_kpa / hardness_mpa * 1e3
        return scratch_um, fresh * (floor + (1 - floor) * (1 - np.exp(-x)) / x), pressure_kpa, block

    minutes = np.zeros(numbers.draws)
    used = np.zeros(numbers.draws)
    depth_um = {zone.name: 0.0 for zone in job.zones}
    left_um = {}
    for first, planned in [(i == 0, s) for i, s in enumerate(plan.steps)]:
        sheet = sheets[planned.sheet]
        grade = inputs.grade(levigate.grade(planned.label))
        minutes += change_minutes
        for zone in job.zones:
            scratch_um, rate_um_per_m, pressure_kpa, block = step(sheet, grade, zone)
            if not first:
                removal_um = left_um[zone.name] * overcut * planned.overcut / plan.overcut
            elif zone.levelled:
                removal_um = levigate.levelling_removal_um(
                    peel_um=zone.peel_um
                    * levigate.source(zone.peel_how, "factor").value ** ndtri(numbers.uniform(f"peel of {zone.name}")),
                    wavelength_mm=zone.peel_wavelength_mm,
                    modulus_mpa=profile("block", block, "modulus_mpa"),
                    pressure_kpa=pressure_kpa,
                    residual_um=job.rules.residual_peel_um,
                )
            else:
                removal_um, scratch_um = 0.0, 0.0
            area_cm2 = profile("block", block, "area_cm2")
            travel_m = removal_um / rate_um_per_m * zone.area_cm2 / area_cm2
            speed_m_s, duty = profile("block", block, "speed_m_s"), profile("block", block, "duty")
            minutes += travel_m / speed_m_s / duty / 60
            life_m = profile("backing", sheet.backing.name, "life_m")
            paper_cm2 = travel_m / life_m * area_cm2 * profile("block", block, "wrap")
            used += paper_cm2 / (sheet.width_mm * sheet.height_mm / 100)
            depth_um[zone.name] += removal_um
            left_um[zone.name] = scratch_um

    film_left_um, thinnest_um = {}, {}
    for zone in job.zones:
        name, film = zone.name, zone.film
        first, second = (u[:, 0] for u in numbers.pair(f"film of {name}"))
        sd_um, mean_se_um = np.full(numbers.draws, film.sd_um), film.mean_se_um
        if film.sd_se_um > 0:  # the spread from a chi-square number, and the mean's error goes with it
            scale_um = max(film.sd_um, 2**0.5 * film.sd_se_um)
            df = max(1, scale_um**2 / (2 * film.sd_se_um**2))
            sd_um = scale_um * np.sqrt(df / chdtri(df, 1 - second))
            if film.readings:
                sampled_um = min(film.mean_se_um, scale_um / film.readings**0.5)
                other2 = film.mean_se_um**2 - sampled_um**2
                mean_se_um = np.sqrt(other2 + (sampled_um * sd_um / scale_um) ** 2)
        mean_um = film.mean_um + mean_se_um * ndtri(first)
        depth = depth_um[name] + left_um[name]
        film_z, hand_z = numbers.normals(f"spots of {name}", round(zone.area_cm2))
        by_spot = mean_um[:, None] + sd_um[:, None] * film_z
        by_spot -= depth[:, None] * (1 + job.rules.removed_cv * hand_z)
        film_left_um[name], thinnest_um[name] = mean_um - depth, by_spot.min(axis=1)
    return minutes, used, film_left_um, thinnest_um


def test_philox_of_64_bits_is_numpys():
    """The definition in the peer, at the word size that numpy has."""
    random = np.random.default_rng(1)
    for _ in range(200):
        counter = [int(word) for word in random.integers(0, 2**64, 4, np.uint64)]
        counter[0] = min(counter[0], 2**64 - 3)
        key = [int(word) for word in random.integers(0, 2**64, 2, np.uint64)]
        raw = np.random.Philox(counter=np.array(counter, np.uint64), key=np.array(key, np.uint64))
        words = [int(word) for word in raw.random_raw(8)]
        for block in (0, 1):  # numpy counts up before it makes a block
            counter[0] += 1
            assert philox(counter, key, 64) == tuple(words[4 * block : 4 * block + 4])


def test_philox_of_32_bits_is_ours():
    random = np.random.default_rng(2)
    for _ in range(500):
        counter = random.integers(0, 2**32, 4).tolist()
        key = random.integers(0, 2**32, 2).tolist()
        assert tuple(levigate.philox4x32(counter, key)) == philox(counter, key, 32)


def test_philox_gives_the_known_answers():
    file = json.loads((REFERENCE / "philox.json").read_text(encoding="utf-8"))
    for vector in file["vectors"]:
        counter, key, words = ([int(w, 16) for w in vector[k]] for k in ("counter", "key", "words"))
        assert levigate.philox4x32(counter, key) == words
        assert list(philox(counter, key, 32)) == words


def interval(values):
    return [*np.quantile(values, [0.1, 0.5, 0.9], method="inverted_cdf"), np.mean(values)]


def assert_interval(ours, values):
    np.testing.assert_allclose([ours.p10, ours.p50, ours.p90, ours.mean], interval(values), rtol=1e-9)


@pytest.mark.parametrize("seed", [1, 2**40 + 17])
def test_draw_by_draw_as_numpy_has_it(wide, seed):
    cuts = assert_as_numpy_has_it(*wide, seed)
    assert any(0 < cut < 700 for cut in cuts)


def test_the_demo_as_numpy_has_it(demo):
    assert_as_numpy_has_it(demo[0], levigate.plan(*demo), 1)


def assert_as_numpy_has_it(job, plan, seed):
    """Returns how often each zone was cut through."""
    ours = levigate.simulate(job, plan, 700, seed)
    minutes, used, film_left_um, thinnest_um = simulate(job, plan, CountedNumbers(seed, 700))
    assert_interval(ours.minutes, minutes)
    assert_interval(ours.sheets, used)
    cuts = []
    for name, zone in ours.zones.items():
        assert_interval(zone.film_left_um, film_left_um[name])
        assert_interval(zone.thinnest_um, thinnest_um[name])
        cuts.append(int(np.sum(thinnest_um[name] < job.rules.reserve_um)))
        assert zone.cut_through.share == cuts[-1] / 700
    return cuts
