"""Refuse a number that cannot be, in one clear sentence."""

from __future__ import annotations

import math


class ImpossibleError(ValueError):
    """A figure that cannot be. Says which thing it was told of, the value and its unit, and what
    it should have been."""

    def __init__(self, thing: str, value: float, unit: str, wanted: str) -> None:
        super().__init__(f"{thing} is {_said(value)} {unit}, but should be {wanted}")
        self.thing, self.value, self.unit, self.wanted = thing, value, unit, wanted


def within(thing: str, value: float, least: float, most: float, unit: str) -> float:
    """The value itself, if it lies from `least` to `most`, both allowed.

    Raises ImpossibleError naming the thing, the value found and the values wanted; "not a number"
    and infinities are refused too.
    """
    if not math.isfinite(value) or not least <= value <= most:
        raise ImpossibleError(thing, value, unit, f"{_said(least)} to {_said(most)} {unit}")
    return value


def not_negative(thing: str, value: float, unit: str) -> float:
    """The value itself, if it is zero or more and finite. Raises ImpossibleError otherwise."""
    if not math.isfinite(value) or value < 0:
        raise ImpossibleError(thing, value, unit, "0 or more")
    return value


def positive(thing: str, value: float, unit: str) -> float:
    """The value itself, if it is more than zero and finite. Raises ImpossibleError otherwise."""
    if not math.isfinite(value) or value <= 0:
        raise ImpossibleError(thing, value, unit, "more than 0")
    return value


def _said(value: float) -> str:
    return f"{value:.6g}"
