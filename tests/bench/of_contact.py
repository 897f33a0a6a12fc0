"""Contact: many states of one sheet at once, and each alone."""

import levigate
import numpy as np
import test_contact_scipy as peer
from measure import compare

STATE = dict(size_um=18.3, log_spread=0.28, tip_spread=0.15, modulus_mpa=20.0, hardness_mpa=150.0)


def rows():
    many = np.full(1000, 1.7)
    tips = peer.Tips(flank_deg=20.0, packing=0.5, **STATE)
    yield compare(
        "contact, all outputs of one state, of 1000 at once",
        "scipy quad and brentq",
        lambda: levigate.contact(pressure_kpa=many, **STATE),
        lambda: tips.plane(1.7e-3),
        goal=500,
        ours_of=many.size,
    )
