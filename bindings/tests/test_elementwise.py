"""Functions of numbers: what they take, what they give, how they refuse."""

import threading
import time

import levigate
import numpy as np
import pytest

GLOSS = dict(refractive_index=1.5, angle_deg=60.0, rq_um=0.05)
CONTACT = dict(
    size_um=18.3,
    log_spread=0.28,
    tip_spread=0.15,
    modulus_mpa=20,
    pressure_kpa=1.7,
    hardness_mpa=150,
)
# Every function of this kind, with arguments it can work with.
FUNCTIONS = {
    "clogging_share": dict(clean_every_m=10, fade_m=30, floor=0.4),
    "critical_amplitude_um": dict(wavelength_mm=3, modulus_mpa=15, pressure_kpa=1.7),
    "cut_through": dict(depth_um=38, mean_um=105, sd_um=9, removed_cv=0.1, reserve_um=10, spots=9),
    "depth_budget_um": dict(
        mean_um=105, sd_um=9, removed_cv=0.1, reserve_um=10, spots=9, cut_through_limit=0.01
    ),
    "dry_film_um": dict(wet_um=100, volume_solids=0.4, thinner=0.2),
    "edge_share": dict(radius_mm=2.0),
    "strokes_within": dict(depth_um=5.0, rate_um_per_m=2.0, stroke_mm=100.0, pad_mm=50.0),
    "dwell_limit_s": dict(
        effusivity=600,
        friction=0.4,
        pressure_kpa=10,
        speed_m_s=12,
        share=0.5,
        temperature_rise_k=40,
    ),
    "fresnel_reflectance": dict(refractive_index=1.5, angle_deg=60),
    "gloss_gu": GLOSS,
    "levelling_removal_um": dict(
        peel_um=12, wavelength_mm=3, modulus_mpa=3, pressure_kpa=1.7, residual_um=0.2
    ),
    "pad_speed_m_s": dict(pad_mm=150, pad_rpm=200, orbit_mm=3, rpm=9000),
    "removal_rate_um_per_m": dict(
        wear_coefficient=0.02, size_um=18.3, pressure_kpa=1.7, hardness_mpa=150
    ),
    "size_effect": dict(size_um=18.3),
    "size_overlap": dict(median_1_um=18, log_spread_1=0.3, median_2_um=16, log_spread_2=0.2),
    "surface_speed_m_s": dict(diameter_mm=305, rpm=800),
    "temperature_rise_k": dict(
        effusivity=600, friction=0.4, pressure_kpa=10, speed_m_s=12, share=0.5, dwell_s=1
    ),
    "wet_film_um": dict(dry_um=30, volume_solids=0.4, thinner=0.2),
}
EACH = pytest.mark.parametrize("name", FUNCTIONS)


@EACH
@pytest.mark.parametrize("kind", [float, np.float64, np.float32, np.array])
def test_number_in_float_out(name, kind):
    given = {key: kind(value) for key, value in FUNCTIONS[name].items()}
    assert type(getattr(levigate, name)(**given)) is float


@EACH
def test_arrays_give_what_numbers_give(name):
    function, given = getattr(levigate, name), FUNCTIONS[name]
    for key, value in given.items():
        values = np.array([[0.7 * value], [0.8 * value], [0.9 * value]])
        result = function(**{**given, key: values})
        assert result.dtype == np.float64 and result.shape == (3, 1)
        one_by_one = [function(**{**given, key: float(v)}) for v in values[:, 0]]
        assert result[:, 0].tolist() == one_by_one


@EACH
def test_nan_in_nan_out(name):
    function, given = getattr(levigate, name), FUNCTIONS[name]
    for key, value in given.items():
        assert np.isnan(function(**{**given, key: np.nan}))
        result = function(**{**given, key: [value, np.nan]})
        assert np.isnan(result).tolist() == [False, True]


@EACH
def test_names_only(name):
    with pytest.raises(TypeError):
        getattr(levigate, name)(*FUNCTIONS[name].values())


@EACH
@pytest.mark.parametrize(
    "wrong",
    [
        None,
        "1.5",
        b"1.5",
        True,
        [True],
        ["1.5"],
        [1.5, None],
        1.5j,
        {},
        object(),
        np.array(["1.5"]),
    ],
    ids=lambda wrong: type(wrong).__name__,
)
def test_only_numbers(name, wrong):
    function, given = getattr(levigate, name), FUNCTIONS[name]
    for key in given:
        with pytest.raises(TypeError, match=f"{key} must be a number"):
            function(**{**given, key: wrong})


def test_broadcasting():
    rq_um = np.linspace(0, 0.2, 4)
    result = levigate.gloss_gu(refractive_index=1.5, angle_deg=[[20], [60], [85]], rq_um=rq_um)
    assert result.shape == (3, 4)
    assert result[1, 2] == levigate.gloss_gu(refractive_index=1.5, angle_deg=60, rq_um=rq_um[2])
    with pytest.raises(ValueError, match="shape"):
        levigate.gloss_gu(refractive_index=[1.5, 1.6], angle_deg=60, rq_um=[0.1, 0.2, 0.3])


def test_layouts_and_types_of_arrays():
    rq_um = np.arange(12, dtype=np.int32).reshape(3, 4) % 3
    plain = levigate.gloss_gu(**{**GLOSS, "rq_um": rq_um.astype(float)})
    for same in (rq_um, rq_um.astype(np.uint8), rq_um.astype(np.float16), np.asfortranarray(rq_um)):
        assert (levigate.gloss_gu(**{**GLOSS, "rq_um": same}) == plain).all()
    assert (levigate.gloss_gu(**{**GLOSS, "rq_um": rq_um[::-1, ::2]}) == plain[::-1, ::2]).all()
    swapped = rq_um.astype(float).astype(">f8")
    assert (levigate.gloss_gu(**{**GLOSS, "rq_um": swapped}) == plain).all()
    assert levigate.gloss_gu(**{**GLOSS, "rq_um": np.zeros((0, 3))}).shape == (0, 3)
    assert type(levigate.gloss_gu(**{**GLOSS, "rq_um": np.array(0.05)})) is float


def test_the_first_bad_element_is_named():
    rq_um = np.full((2, 3), 0.05)
    rq_um[1, 0], rq_um[1, 2] = -1, -2
    with pytest.raises(levigate.OutOfRange, match=r"rq_um = -1 um .* at index \[1, 0\]"):
        levigate.gloss_gu(**{**GLOSS, "rq_um": rq_um})
    with pytest.raises(levigate.OutOfRange) as caught:
        levigate.gloss_gu(**{**GLOSS, "rq_um": -1})
    assert "at index" not in str(caught.value)


ATTRIBUTES = (
    "active_per_mm2", "active_share", "mean_depth_um", "plane_height_um", "load_residual", "ra_um",
    "rq_um",
)  # fmt: skip


def test_contacts_of_arrays():
    sizes = np.array([[18.3, 9.0, 3.0]])
    moduli = np.array([[20.0], [np.inf]])
    many = levigate.contact(**{**CONTACT, "size_um": sizes, "modulus_mpa": moduli})
    assert isinstance(many, levigate.Contacts) and many.shape == (2, 3)
    for row, column in np.ndindex(2, 3):
        state = {**CONTACT, "size_um": sizes[0, column], "modulus_mpa": moduli[row, 0]}
        one = levigate.contact(**state)
        for name in ATTRIBUTES:
            assert getattr(many, name)[row, column] == getattr(one, name)
        assert many.depth_um(0.99)[row, column] == one.depth_um(0.99)
        assert many.exceedance(0.5)[row, column] == one.exceedance(0.5)
    assert many.depth_um([[[0.5]], [[0.99]]]).shape == (2, 2, 3)
    assert one.depth_um(np.array([0.5, 0.99])).tolist() == [one.depth_um(0.5), one.depth_um(0.99)]


def test_contact_refuses_and_passes_nan():
    assert np.isnan(levigate.contact(**{**CONTACT, "pressure_kpa": np.nan}).mean_depth_um)
    many = levigate.contact(**{**CONTACT, "pressure_kpa": [1.7, np.nan]})
    assert np.isnan(many.ra_um).tolist() == [False, True]
    with pytest.raises(levigate.OutOfRange, match=r"size_um = 0 um .* at index \[1\]"):
        levigate.contact(**{**CONTACT, "size_um": [1, 0]})
    with pytest.raises(TypeError, match="hardness_mpa must be a number"):
        levigate.contact(**{**CONTACT, "hardness_mpa": None})
    with pytest.raises(levigate.OutOfRange, match="q = 1.5"):
        many.depth_um(1.5)


def test_other_threads_run_meanwhile():
    """A long call lets another Python thread count, which needs the interpreter's lock."""
    counted = 0
    done = threading.Event()

    def count():
        nonlocal counted
        while not done.is_set():
            counted += 1
            time.sleep(0)

    counter = threading.Thread(target=count)
    counter.start()
    before = counted
    levigate.contact(**{**CONTACT, "pressure_kpa": np.linspace(1, 2, 40_000)})
    during = counted - before
    done.set()
    counter.join()
    assert during > 100
