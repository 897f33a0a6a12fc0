"""Labels and grades from Python."""

import copy
import pickle

import levigate
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

ALL = [grade for system in levigate.SYSTEMS for grade in levigate.grades(system)]


def test_systems_by_name():
    assert levigate.SYSTEMS[:5] == ("FEPA P", "CAMI", "JIS", "FEPA F", "micron")
    with pytest.raises(levigate.BadInput, match="nearest is 'FEPA P'"):
        levigate.grades("FEPA PP")
    assert levigate.grades("fepa-p") == levigate.grades("FEPA P")
    assert levigate.grade("600", bare="Fepa P") == levigate.grade("P600")


@pytest.mark.parametrize("system", levigate.SYSTEMS)
def test_grades_fall_and_state_their_sources(system):
    grades = levigate.grades(system)
    sizes = [grade.median_um for grade in grades]
    assert sizes == sorted(set(sizes), reverse=True) and {g.system for g in grades} == {system}
    for grade in grades:
        held = {"median_um", "log_spread"} | {
            name
            for name in ("tolerance_um", "coarse_limit_um", "fine_limit_um")
            if getattr(grade, name) is not None
        }
        assert set(grade.sources) == held
        assert grade.sources["median_um"]["basis"] == grade.basis
        assert all(set(source) == {"basis", "citation"} for source in grade.sources.values())


@pytest.mark.parametrize("grade", ALL, ids=lambda grade: grade.label)
def test_its_label_reads_back_and_it_copies(grade):
    assert levigate.grade(grade.label) == grade
    assert pickle.loads(pickle.dumps(grade)) == grade
    assert copy.copy(grade) == grade and copy.deepcopy(grade) == grade


def test_a_size_of_ones_own():
    grade = levigate.sized_grade("P3000", size_um=6.0)
    assert (grade.system, grade.median_um, grade.basis) == ("FEPA P", 6.0, "user")
    assert pickle.loads(pickle.dumps(grade)) == grade
    assert levigate.sized_grade("my stone", size_um=2).system == "micron"
    with pytest.raises(levigate.OutOfRange, match="size_um"):
        levigate.sized_grade("P3000", size_um=float("nan"))


def test_a_bare_number_is_asked_about():
    reading = levigate.read_label("600")
    assert reading.ambiguous
    assert [g.label for g in reading.candidates][:3] == ["P600", "CAMI 600", "JIS #600"]
    with pytest.raises(levigate.AmbiguousLabel, match="CAMI 600"):
        levigate.grade("600")
    assert levigate.grade("600", bare="CAMI").median_um == 16.0


@pytest.mark.parametrize("label", ["P650", "P-600x", "FEPA Q 80"])
def test_unknown_labels(label):
    with pytest.raises(levigate.UnknownGrade):
        levigate.grade(label)


@pytest.mark.parametrize("label", ["", "  ", "P6\x0000"])
def test_what_is_no_label(label):
    with pytest.raises(levigate.BadInput):
        levigate.grade(label)


def test_convert():
    found = levigate.convert("P800", "CAMI")
    assert found == levigate.convert(levigate.grade("P800"), "CAMI")
    assert found.grade.system == "CAMI"
    assert found.size_ratio == pytest.approx(found.grade.median_um / 21.8, rel=1e-15)
    assert found.coarser.median_um > found.grade.median_um > found.finer.median_um
    assert found.to_dict()["grade"]["label"] == found.grade.label
    text = " ".join(levigate.equivalent_text(levigate.grade("P800"), found).split())
    assert found.verdict in text
    coarsest = levigate.convert(levigate.grades("FEPA P")[0], "FEPA P")
    assert coarsest.coarser is None and coarsest.size_ratio == 1


def test_sizes_and_nearest():
    labels = ["P600", "CAMI 600", "JIS #800", "9 um"]
    sizes_um = levigate.sizes_um(labels)
    assert sizes_um.dtype == np.float64
    assert sizes_um.tolist() == [levigate.grade(label).median_um for label in labels]
    assert levigate.sizes_um(np.array(["600", "800"]), bare="CAMI").shape == (2,)
    with pytest.raises(TypeError):
        levigate.sizes_um("P600")

    medians = np.array([grade.median_um for grade in levigate.grades("FEPA P")])
    asked = np.exp(np.linspace(np.log(2), np.log(3000), 60)).reshape(3, 20)
    indices = levigate.nearest(asked, "FEPA P")
    assert indices.dtype == np.int64 and indices.shape == asked.shape
    distance = np.abs(np.log(asked[..., None] / medians))
    assert (indices == distance.argmin(axis=-1)).all()
    with pytest.raises(levigate.OutOfRange, match=r"sizes_um\[1\]"):
        levigate.nearest([1.0, np.nan], "FEPA P")


def test_bridge():
    ratios = dict(min_ratio=1.15, max_ratio=1.75)
    way = levigate.bridge(coarse_um=35, fine_um=12.6, system="FEPA P", **ratios)
    sizes = [35, *(grade.median_um for grade in way), 12.6]
    assert all(1.15 <= a / b <= 1.75 for a, b in zip(sizes, sizes[1:]))
    assert levigate.bridge(coarse_um=20, fine_um=15, system="FEPA P", **ratios) == []
    assert levigate.bridge(coarse_um=2.0, fine_um=0.5, system="FEPA P", **ratios) is None


@given(st.text(max_size=30))
@settings(max_examples=500, deadline=None)
def test_any_text_reads_or_is_refused(text):
    try:
        reading = levigate.read_label(text)
    except levigate.Error as error:
        assert str(error)
        return
    assert reading.candidates
    assert all(grade.median_um > 0 for grade in reading.candidates)


@given(
    st.sampled_from([g for g in ALL if g.system in ("FEPA P", "FEPA F")]),
    st.sampled_from(["", " ", "  ", "\t"]),
    st.booleans(),
    st.sampled_from(["", " ", "\n"]),
)
@settings(deadline=None)
def test_case_and_spacing_are_free(grade, between, lower, around):
    written = grade.label[0] + between + grade.label[1:]
    written = around + (written.lower() if lower else written) + around
    assert levigate.grade(written) == grade
