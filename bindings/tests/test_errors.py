"""The exceptions of the module: one root under ValueError, a stable code each."""

import levigate
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


def test_bad_input_not_from_a_file_has_an_empty_place():
    error = levigate.BadInput("two sheets share an id")
    assert (error.pointer, error.line) == ("", 0)
