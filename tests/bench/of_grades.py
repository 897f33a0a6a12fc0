"""Nearest grades of ten million sizes, and a copy of them; labels, as people write them."""

import levigate
import numpy as np
from measure import compare


def rows():
    medians = np.array([grade.median_um for grade in levigate.grades("FEPA P")])
    sizes = np.exp(np.random.default_rng(1).uniform(np.log(2), np.log(500), 10**7))
    partings = np.sqrt(medians[:-1] * medians[1:])[::-1].copy()

    def searched():
        return len(medians) - 1 - np.searchsorted(partings, sizes, side="right")

    ours = levigate.nearest(sizes, "FEPA P")
    assert np.array_equal(ours, searched())
    yield compare("nearest grade of 1e7 sizes", "numpy.searchsorted", lambda: levigate.nearest(sizes, "FEPA P"),
                  searched, goal=5, turns=5)
    yield compare("nearest grade of 1e7 sizes", "a copy of the sizes", lambda: levigate.nearest(sizes, "FEPA P"),
                  lambda: sizes.copy(), goal=1 / 3, turns=5)
