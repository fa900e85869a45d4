"""The class that a measured light transmission belongs to.

A grade cannot be told from a text, nor from a colour seen through a jar: only a comparison kit
or a colorimeter tells it, and none is claimed here for anyone's syrup.
"""

from __future__ import annotations

from typing import NamedTuple

from bot import figures
from bot.reckoning.checks import within


class GradeClass(NamedTuple):
    """A Grade A colour class and the taste that goes by it."""

    colour: str
    taste: str


def grade_class(transmission_percent: float) -> GradeClass:
    """The Grade A colour class for a light transmission in percent.

    Measured at 560 nm through 10 mm, glycerol as 100 (USDA AMS 2015). Processing Grade is not
    told by light. Raises ValueError outside 0 to 100.
    """
    within("Light transmission", transmission_percent, 0.0, 100.0, "%")
    for least, colour, taste in figures.GRADE_A_CLASSES:
        if transmission_percent >= least:
            return GradeClass(colour, taste)
    raise AssertionError("unreachable: the last class begins at 0")
