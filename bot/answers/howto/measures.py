"""Measures as they are said to this person: US or metric, rounded as people say them.

Every function takes American measures and the person's units, and returns number and unit as
text, in characters of the GSM-7 alphabet. A pair (low, high) is said as a range.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from fractions import Fraction
from typing import Final

from bot.units import celsius, factor, litres
from bot.wording.amounts import number, two_figures
from bot.wording.style import Units

# Tape measures and drill bits are marked so (common practice, no source).
_INCH_PARTS: Final = 64


def heat(degrees_f: float, units: Units) -> str:
    """A temperature, to the nearest degree: "185F" or "85C"."""
    return _heat(degrees_f, units, _nearest)


def heat_at_least(degrees_f: float, units: Units) -> str:
    """A temperature that must be reached: rounded up, so that what is said is never too low."""
    return _heat(degrees_f, units, math.ceil)


def heat_at_most(degrees_f: float, units: Units) -> str:
    """A temperature that must not be passed: rounded down."""
    return _heat(degrees_f, units, math.floor)


def heats(degrees_f: tuple[float, float], units: Units) -> str:
    """A range of temperatures: "185 to 190F" or "85 to 88C"."""
    low, high = degrees_f
    return f"{_heat(low, units, _nearest)[:-1]} to {_heat(high, units, _nearest)}"


def heat_to_a_tenth(degrees_f: float, units: Units) -> str:
    """A temperature as a good thermometer shows it: "217.9F" or "103.3C"."""
    if units == "metric":
        return f"{number(celsius(degrees_f))}C"
    return f"{number(degrees_f)}F"


def degrees(rise_f: float, units: Units) -> str:
    """A difference of temperature: "7.5F" or "4.2C"."""
    if units == "metric":
        return f"{number(celsius(32 + rise_f))}C"
    return f"{number(rise_f)}F"


def length(inches: float, units: Units) -> str:
    """A length or a depth: "1 1/2 in" or "4 cm"; under half an inch "6 mm"."""
    if units == "us":
        return f"{_inches(inches)} in"
    if inches < 0.5:
        return f"{_nearest(inches * factor('inch', 'mm'))} mm"
    return f"{_centimetres(inches)} cm"


def lengths(inches: tuple[float, float], units: Units) -> str:
    """A range of lengths: "6 to 12 in" or "15 to 30 cm"."""
    low, high = inches
    if units == "us":
        return f"{_inches(low)} to {_inches(high)} in"
    return f"{_centimetres(low)} to {_centimetres(high)} cm"


def heights(inches: tuple[float, float], units: Units) -> str:
    """A range of heights above the ground: "2 to 4 ft" or "60 to 120 cm"."""
    if units == "metric":
        return lengths(inches, units)
    low, high = (part / factor("foot", "inch") for part in inches)
    return f"{low:g} to {high:g} ft"


def bit(inches: float, units: Units) -> str:
    """A drill bit by its size: "5/16 in", or "8 mm (5/16 in)", since the shops of Canada have
    both."""
    said = f"{_inches(inches)} in"
    return said if units == "us" else f"{_nearest(inches * factor('inch', 'mm'))} mm ({said})"


def volume(gallons: float, units: Units) -> str:
    """An amount of sap or syrup, in two figures: "59 gal" or "220 L"."""
    if units == "metric":
        return f"{two_figures(litres(gallons))} L"
    return f"{_whole_or_two(gallons)} gal"


def weight(pounds: float, units: Units) -> str:
    """A weight, to the whole pound or kilogram."""
    if units == "metric":
        return f"{_nearest(pounds * factor('pound', 'kilogram'))} kg"
    return f"{_nearest(pounds)} lb"


def _heat(degrees_f: float, units: Units, whole: Callable[[float], int]) -> str:
    if units == "metric":
        # A millionth of a degree is the conversion's own error, not heat.
        return f"{whole(round(celsius(degrees_f), 6))}C"
    return f"{whole(degrees_f)}F"


def _nearest(number: float) -> int:
    return math.floor(number + 0.5)


def _inches(inches: float) -> str:
    whole, part = divmod(Fraction(round(inches * _INCH_PARTS), _INCH_PARTS), 1)
    if not part:
        return f"{whole}"
    return f"{whole} {part}" if whole else f"{part}"


def _centimetres(inches: float) -> str:
    """To the half centimetre, from 20 cm on to five."""
    centimetres = inches * factor("inch", "cm")
    step = 0.5 if centimetres < 20 else 5.0
    return number(step * _nearest(centimetres / step))


def _whole_or_two(gallons: float) -> str:
    """Whole gallons as they are, since 2.0 gal is nobody's word."""
    return f"{gallons:.0f}" if gallons == round(gallons) else two_figures(gallons)
