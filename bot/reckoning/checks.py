"""Refuse a number that cannot be, in one clear sentence."""

from __future__ import annotations

import math


def within(thing: str, value: float, least: float, most: float, unit: str) -> float:
    """The value itself, if it lies from `least` to `most`, both allowed.

    Raises ValueError naming the thing, the value found and the values wanted; "not a number"
    and infinities are refused too.
    """
    if not math.isfinite(value) or not least <= value <= most:
        raise ValueError(
            f"{thing} is {_said(value)} {unit}, but should be"
            f" {_said(least)} to {_said(most)} {unit}"
        )
    return value


def not_negative(thing: str, value: float, unit: str) -> float:
    """The value itself, if it is zero or more and finite. Raises ValueError otherwise."""
    if not math.isfinite(value) or value < 0:
        raise ValueError(f"{thing} is {_said(value)} {unit}, but should be 0 or more")
    return value


def positive(thing: str, value: float, unit: str) -> float:
    """The value itself, if it is more than zero and finite. Raises ValueError otherwise."""
    if not math.isfinite(value) or value <= 0:
        raise ValueError(f"{thing} is {_said(value)} {unit}, but should be more than 0")
    return value


def _said(value: float) -> str:
    return f"{value:.6g}"
