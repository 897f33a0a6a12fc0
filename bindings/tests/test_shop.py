"""A shop in Python: its file, its numbers, its sentences."""

import pickle

import levigate
import pytest

HAND_WRITTEN = {
    "person": {"duty_factor": 0.5, "low": 0.4, "high": 0.625, "observations": 35},
    "rates": [{"coating": "shellac", "backing": "film", "factor": 2, "low": 1, "high": 4}],
    "scratches": [{"coating": "shellac", "backing": "film", "factor": 1.5, "low": 1, "high": 2}],
    "films": [{"coating": "shellac", "offset_um": -4, "low_um": -7, "high_um": -1}],
    "jobs": [{"job": "clock case", "lines": 12}],
}


def test_before_any_journal_it_is_the_profiles_bands():
    shop = levigate.Shop()
    assert shop.person.factor == 1
    assert shop.person.low * shop.person.high == pytest.approx(1, rel=1e-14)
    assert (shop.minutes_noise.log_sd, shop.minutes_noise.weight) == (0.3, 4)
    assert shop.rates == [] and shop.report[0].observations == 0


def test_a_file_reads_back_equal(tmp_path):
    shop = levigate.Shop.from_dict(HAND_WRITTEN)
    path = tmp_path / "shop.json"
    shop.save(path)
    assert levigate.Shop.load(path) == shop
    assert pickle.loads(pickle.dumps(shop)) == shop
    assert levigate.Shop.from_dict(shop.to_dict()) == shop


def test_its_sentences():
    report = levigate.Shop.from_dict(HAND_WRITTEN).report
    assert [line.quantity for line in report] == ["minutes", "minutes", "scratches", "film_um"]
    assert report[0].sentence == (
        "Over all papers you are 2.0 times slower than the profiles say. The range is 1.6 to 2.5, "
        "from 35 steps."
    )


def test_a_contradiction_names_its_place(tmp_path):
    shop = {**HAND_WRITTEN, "person": {"duty_factor": 0.3, "low": 0.4, "high": 0.625}}
    with pytest.raises(levigate.BadInput, match="not between low = 0.4 and high = 0.625") as error:
        levigate.Shop.from_dict(shop)
    assert error.value.pointer == "/person/duty_factor"
