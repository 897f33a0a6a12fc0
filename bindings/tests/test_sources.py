"""Any number and any formula, with what it rests on."""

import levigate
import pytest


def test_every_formula_names_a_function_basis_and_citation():
    found = levigate.formulas()
    assert len({f.function for f in found}) == len(found) > 10
    for formula in found:
        assert formula.formula and formula.basis and formula.citation
        assert levigate.source(formula.function) == formula


@pytest.mark.parametrize(
    "name, field",
    [
        ("two-part urethane", "hardness_mpa"),
        ("two-part urethane", "hard_cure_h"),
        ("latex paper", "life_m"),
        ("hard block", "force_n"),
        ("rule", "max_ratio"),
        ("model", "flank_deg"),
        ("felt", "friction"),
        ("fine", "size_um"),
        ("two-part urethane", "rise_k"),
    ],
)
def test_a_number_has_a_band_a_basis_and_a_citation(name, field):
    number = levigate.source(name, field)
    assert number.low <= number.value <= number.high
    assert number.basis and number.citation


def test_the_number_is_the_one_in_use(job):
    used = job()
    urethane = levigate.source("two-part urethane", "hardness_mpa")
    assert urethane.value == used.coating.hardness_mpa
    assert urethane.basis == "from memory"
    assert levigate.source("hard block", "force_n").value == used.zones[0].block.force_n
    assert levigate.source("rule", "max_ratio").value == used.rules.max_ratio


@pytest.mark.parametrize(
    "arguments, nearest",
    [
        (["gloss_gl"], "'gloss_gu'"),
        (["latex papr", "life_m"], "'latex paper'"),
        (["rule", "max_ration"], "'max_ratio'"),
    ],
)
def test_the_nearest_name_is_told(arguments, nearest):
    with pytest.raises(levigate.BadInput, match=f"the nearest is {nearest}"):
        levigate.source(*arguments)
