"""Grit progressions for clear coats: from a drawer of mixed abrasive paper to a plan that fits the film."""

from ._core import (
    AmbiguousLabel,
    BadInput,
    Error,
    NoPlan,
    OutOfRange,
    UnknownGrade,
    __version__,
)

__all__ = [
    "AmbiguousLabel",
    "BadInput",
    "Error",
    "NoPlan",
    "OutOfRange",
    "UnknownGrade",
    "__version__",
]
