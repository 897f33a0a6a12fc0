"""The check values of the model, to their printed digits, each with its formula's source."""

import levigate
import pytest


def printed(value, text):
    """Whether a value, rounded to the digits of the text, is the text."""
    mantissa, _, exponent = text.partition("e")
    digits = len(mantissa.partition(".")[2])
    shown = f"{value:.{digits}e}" if exponent else f"{value:.{digits}f}"
    return float(shown) == float(text)


def test_log_spread_of_p1000():
    """Log-normal distribution through the limits 33.7 / 18.3 / 12.4 um of P1000 (95 %)."""
    grade = levigate.grade("P1000")
    assert (grade.coarse_limit_um, grade.median_um, grade.fine_limit_um) == (33.7, 18.3, 12.4)
    assert printed(grade.log_spread, "0.280634")


def test_contact_of_p1000_latex_paper():
    """Force balance of Gaussian tips on springs (Xi & Zhou 2005; cone: Rabinowicz)."""
    contact = levigate.contact(
        size_um=18.3,
        log_spread=levigate.grade("P1000").log_spread,
        tip_spread=0.15,
        modulus_mpa=20,
        pressure_kpa=1.7,
        hardness_mpa=150,
        flank_deg=20,
    )
    assert printed(contact.active_per_mm2, "5.737992")
    assert printed(contact.mean_depth_um, "0.350422")
    assert printed(contact.depth_um(0.5), "0.326974")
    assert printed(contact.depth_um(0.99), "0.900687")
    # Published Ra of metals and plastics: 0.004 to 0.02 of the grain size. Rq / Ra of a groove
    # profile lies between those of a square wave and of sparse peaks.
    assert 0.004 < contact.ra_um / 18.3 < 0.02
    assert 1 < contact.rq_um / contact.ra_um < 1.5


def test_clogging():
    """Exponential decay to a floor between two cleanings (Ockajova et al. 2016)."""
    share = levigate.clogging_share(clean_every_m=7, fade_m=7, floor=0.4)
    assert printed(share, "0.779272")


def test_removal_rate():
    """Archard and Preston with the size effect."""
    rate = levigate.removal_rate_um_per_m(
        wear_coefficient=0.02, size_um=18.3, pressure_kpa=1.7, hardness_mpa=150
    )
    assert printed(rate, "0.0969646")


@pytest.mark.parametrize(
    "modulus_mpa, text", [(1000, "5.9000"), (15, "5.9003"), (3, "6.3726"), (0.2, "33.2334")]
)
def test_levelling(modulus_mpa, text):
    """Crests, then full contact after Westergaard (Johnson, Contact Mechanics)."""
    removal_um = levigate.levelling_removal_um(
        peel_um=12, wavelength_mm=3, modulus_mpa=modulus_mpa, pressure_kpa=1.7, residual_um=0.2
    )
    assert printed(removal_um, text)


def test_cut_through():
    """Normal film and depth at independent spots."""
    chance = levigate.cut_through(
        depth_um=38, mean_um=105, sd_um=9, removed_cv=0.15, reserve_um=10, spots=1200
    )
    assert printed(chance, "5.26195e-5")


@pytest.mark.parametrize("limit", [1e-6, 0.01, 0.4])
def test_budget_is_the_depth_at_the_limit(limit):
    film = dict(mean_um=105, sd_um=9, removed_cv=0.15, reserve_um=10, spots=1200)
    depth_um = levigate.depth_budget_um(**film, cut_through_limit=limit)
    assert levigate.cut_through(depth_um=depth_um, **film) == pytest.approx(limit, rel=1e-10)


@pytest.mark.parametrize("angle_deg, text", [(60, "64.3221"), (20, "25.9161")])
def test_gloss(angle_deg, text):
    """Fresnel against glass of 1.567 (ISO 2813), roughness after Bennett & Porteus 1961."""
    gloss = levigate.gloss_gu(refractive_index=1.5, angle_deg=angle_deg, rq_um=0.05)
    assert printed(gloss, text)


def test_wheel():
    """Geometry; constant flux into a semi-infinite body (Carslaw & Jaeger)."""
    assert printed(levigate.surface_speed_m_s(diameter_mm=305, rpm=800), "12.7758")
    heat = dict(
        effusivity=600,
        friction=0.4,
        pressure_kpa=10,
        speed_m_s=12.776,  # as the model rounds it
        share=0.5,
    )
    dwell_s = levigate.dwell_limit_s(**heat, temperature_rise_k=40)
    assert printed(dwell_s, "0.692887")
    assert levigate.temperature_rise_k(**heat, dwell_s=dwell_s) == pytest.approx(40, rel=1e-14)


def test_true_sizes_of_three_systems():
    """P600, CAMI 600 and JIS #800 are ordered by size, not by number (data/standards)."""
    assert levigate.sizes_um(["P600", "CAMI 600", "JIS #800"]).tolist() == [25.8, 16.0, 14.0]


def test_film():
    """DFT = WFT VS / (1 + R); readings: normal sampling theory."""
    assert levigate.dry_film_um(wet_um=100, volume_solids=0.4, thinner=0.25) == 32
    assert levigate.wet_film_um(dry_um=32, volume_solids=0.4, thinner=0.25) == 100
    film = levigate.film_from_readings([90, 100, 110])
    assert (film.mean_um, film.sd_um, film.readings) == (100, 10, 3)
    assert film.mean_se_um == pytest.approx(10 / 3**0.5, rel=1e-15)
    assert film.sd_se_um == pytest.approx(5, rel=1e-15)
    assert film.spot_sd_um == pytest.approx((100 + 100 / 3 + 25) ** 0.5, rel=1e-15)
    assert levigate.film_from_coats(coats=3, dry_um_per_coat=28, sd_um=7).mean_um == 84
