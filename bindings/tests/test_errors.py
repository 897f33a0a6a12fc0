"""The exceptions of the module: one root under ValueError, a stable code each."""

import pickle

import levigate
import numpy as np
import pytest

CODES = {
    "UnknownGrade": 101,
    "AmbiguousLabel": 102,
    "OutOfRange": 201,
    "BadInput": 301,
    "NoPlan": 401,
}


@pytest.mark.parametrize("name, code", CODES.items())
def test_each_leaf_has_its_code_and_root(name, code):
    leaf = getattr(levigate, name)
    assert issubclass(leaf, levigate.Error) and issubclass(leaf, ValueError)
    assert leaf.code == code
    assert leaf.__module__ == "levigate" and leaf.__doc__


MEMBERS = "quantity value unit low high pointer line".split()


def members(of):
    return tuple(getattr(of, name) for name in MEMBERS)


def test_a_fault_of_a_file_has_an_example():
    data = {"name": "box", "coating": "shellac", "zones": [], "target": {"grade": "P2000"}}
    with pytest.raises(levigate.BadInput) as raised:
        levigate.Job.from_dict(data)
    (fault,) = raised.value.faults
    assert fault.example.startswith('"zones": [{"name": "top", "area_cm2": 540')
    assert fault.message.endswith("For example " + fault.example)
    assert pickle.loads(pickle.dumps(fault)) == fault


def test_bad_input_not_from_a_file_has_an_empty_place():
    error = levigate.BadInput("two sheets share an id")
    assert (error.pointer, error.line) == ("", 0)


@pytest.mark.parametrize("name", CODES)
def test_an_exception_made_by_hand_has_a_message_alone(name):
    error = getattr(levigate, name)("no more than this")
    assert str(error) == "no more than this"
    assert members(error) == ("", None, "", None, None, "", 0)
    assert error.faults == []


def test_a_number_outside_its_range_is_told_in_members():
    with pytest.raises(levigate.OutOfRange) as raised:
        levigate.gloss_gu(refractive_index=1.5, angle_deg=95, rq_um=0.05)
    error = raised.value
    assert members(error) == ("angle_deg", 95.0, "deg", 0.0, 89.999, "", 0)
    (fault,) = error.faults
    assert isinstance(fault, levigate.Fault)
    assert members(fault) == members(error)
    assert (fault.message, fault.code) == (str(error), error.code) and fault.code == 201


def test_a_fault_of_a_file_has_its_place(demo_dir, tmp_path):
    lines = (demo_dir / "job.json").read_text().splitlines()
    at = next(i for i, line in enumerate(lines) if '"area_cm2"' in line)
    lines[at] = '"area_cm2": "large",'
    (tmp_path / "job.json").write_text("\n".join(lines))
    with pytest.raises(levigate.BadInput) as raised:
        levigate.Job.load(tmp_path / "job.json")
    error = raised.value
    assert (error.pointer, error.line) == ("/zones/0/area_cm2", at + 1)
    assert [(f.pointer, f.line, f.message) for f in error.faults] == [
        (error.pointer, error.line, str(error))
    ]


def test_an_element_of_an_array_keeps_the_members_of_its_fault():
    given = dict(refractive_index=1.5, rq_um=0.05)
    with pytest.raises(levigate.OutOfRange) as alone:
        levigate.gloss_gu(angle_deg=95, **given)
    with pytest.raises(levigate.OutOfRange) as raised:
        levigate.gloss_gu(angle_deg=np.array([[20.0, 60.0], [95.0, 60.0]]), **given)
    assert members(raised.value) == members(alone.value)
    assert str(raised.value) == str(alone.value) + ", at index [1, 0]"
    assert [f.message for f in raised.value.faults] == [str(raised.value)]


def test_the_list_of_faults_is_a_copy():
    with pytest.raises(levigate.OutOfRange) as raised:
        levigate.Rules(overcut=-1)
    raised.value.faults.clear()
    assert len(raised.value.faults) == 1


def test_an_error_goes_to_another_process_whole():
    with pytest.raises(levigate.OutOfRange) as raised:
        levigate.Rules(overcut=-1)
    error = pickle.loads(pickle.dumps(raised.value))
    assert type(error) is levigate.OutOfRange and str(error) == str(raised.value)
    assert members(error) == members(raised.value)
    assert error.faults == raised.value.faults != []
