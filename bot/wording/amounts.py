"""Numbers as people say them: 57.5 gal, about 1.4 gal, 2 1/2 pints, 7 h 15 min, $12."""

from __future__ import annotations

import math
from datetime import time

from bot import units as convert
from bot.figures import FL_OZ_PER_GALLON, PINTS_PER_GALLON
from bot.wording.style import Style

# A volume this near to a round figure is said as that figure: 11.9999 gal is 12 gal.
_NEAR = 0.002
_HALVES = {0: "", 1: "1/2"}


def number(value: float, places: int = 1) -> str:
    """A number with at most so many decimals, and none that are zero."""
    text = f"{value:.{places}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def two_figures(value: float) -> str:
    """A number in two figures: 0.092, 0.3, 1.4, 2, 14, 140."""
    if value <= 0:
        return "0"
    places = 1 - math.floor(math.log10(value))
    rounded = round(value, places)
    # Rounding can carry into another place: 0.996 is 1.0.
    places = 1 - math.floor(math.log10(rounded))
    return number(rounded, max(places, 0))


def volume(gallons: float, style: Style) -> str:
    """A measured volume of sap: 12 gal, 57.5 gal, 5 pints, 45 L."""
    if style.is_metric:
        litres = convert.litres(gallons)
        if 0 < litres < 1:
            return f"{number(litres * 1000, 0)} mL"
        return f"{_amount(litres)} L"
    if 0 < gallons < 1 and round(gallons * PINTS_PER_GALLON) % 2:
        # 5 pints, where 0.625 gal would be said; 1/4, 1/2 and 3/4 gal are gallons to anybody.
        return _quarts_and_pints(gallons) or f"{_amount(gallons)} gal"
    return f"{_amount(gallons)} gal"


def rough(gallons: float, style: Style) -> str:
    """A volume that is only reckoned, as of sap that is left: about 19 gal, about 3.9 gal."""
    amount = convert.litres(gallons) if style.is_metric else gallons
    said = number(amount, 0 if amount >= _ROUND_FROM else 1)
    return f"about {said} {'L' if style.is_metric else 'gal'}"


# Reckoned amounts from this on are said without decimals.
_ROUND_FROM = 10


def syrup(gallons: float, style: Style) -> str:
    """A measured volume of syrup: quarts and pints under a gallon, if it comes out even."""
    if style.is_metric or gallons == 0:
        return volume(gallons, style)
    return _quarts_and_pints(gallons) or volume(gallons, style)


def in_pints(gallons: float, style: Style) -> str:
    """A measured volume in jars: 1/2 pint, 5 pints, from two gallons on 2.5 gal."""
    halves = round(gallons * PINTS_PER_GALLON * 2)
    even = abs(gallons * PINTS_PER_GALLON * 2 - halves) <= _NEAR * max(halves, 1)
    if style.is_metric or not halves or not even or gallons >= _LEAST_NOT_IN_PINTS:
        return volume(gallons, style)
    return "1/2 pint" if halves == 1 else pints(gallons)


# Jars that hold less than this are counted in pints.
_LEAST_NOT_IN_PINTS = 2.0


def about_syrup(gallons: float, style: Style) -> str:
    """Expected syrup in short: "about 1.4 gal", "about 2 1/2 pints", "about 5.3 L"."""
    if style.is_metric:
        return f"about {_metric_two_figures(gallons)}"
    if gallons >= _SAID_IN_GALLONS:
        return f"about {two_figures(gallons)} gal"
    return f"about {pints(gallons)}"


def about_syrup_full(gallons: float, style: Style) -> str:
    """Expected syrup in two measures: "about 1.4 gal (11 pints)"."""
    if style.is_metric:
        return f"about {_metric_two_figures(gallons)}"
    said = f"about {two_figures(gallons)} gal"
    return said if gallons > _MOST_IN_PINTS else f"{said} ({pints(gallons)})"


# Less than this is said in fluid ounces, pints.
_SAID_IN_PINTS = 0.9
# What would be said as 8 pints is a gallon.
_SAID_IN_GALLONS = 0.97
# Beyond this, pints say nothing that gallons do not.
_MOST_IN_PINTS = 6.0


def pints(gallons: float) -> str:
    """A volume in pints to the nearest half, or in fluid ounces under one pint."""
    amount = gallons * PINTS_PER_GALLON
    if amount < _SAID_IN_PINTS:
        return f"{two_figures(gallons * FL_OZ_PER_GALLON)} fl oz"
    halves = round(amount * 2)
    whole, half = divmod(halves, 2)
    said = " ".join(part for part in (str(whole), _HALVES[half]) if part)
    return f"{said} {'pint' if halves == 2 else 'pints'}"


def jar_size(gallons: float, style: Style) -> str:
    """The size of a jar as it is called: pint, half pint, quart, 12 oz, 500 mL."""
    if style.is_metric:
        return volume(gallons, style)
    for size, name in (
        (0.5, "half gallon"),
        (0.25, "quart"),
        (0.125, "pint"),
        (0.0625, "half pint"),
    ):
        if math.isclose(gallons, size, rel_tol=_NEAR):
            return name
    if math.isclose(gallons, 1, rel_tol=_NEAR):
        return "gallon"
    return f"{number(gallons * FL_OZ_PER_GALLON)} oz jar"


def plural(count: float, noun: str) -> str:
    """ "1 pint", "4 pints", "2 boxes" is not needed here."""
    return f"{number(count)} {noun}" if count == 1 else f"{number(count)} {noun}s"


def brix(value: float) -> str:
    """Brix as read: 2.2, 1.85, 2."""
    return number(value, 2)


def mean_brix(value: float) -> str:
    """A mean Brix, to the tenth that a hydrometer can tell."""
    return f"{value:.1f}"


def temperature(fahrenheit: float, style: Style) -> str:
    """41F, 210.4F, or 5C."""
    if style.is_metric:
        return f"{number(convert.celsius(fahrenheit))}C"
    return f"{number(fahrenheit)}F"


def cold_limit(fahrenheit: float, style: Style) -> str:
    """A temperature to stay under, in whole degrees, on the safe side: 38F, 3C."""
    if style.is_metric:
        return f"{math.floor(convert.celsius(fahrenheit))}C"
    return f"{math.floor(fahrenheit)}F"


def degrees(difference_f: float, style: Style) -> str:
    """A difference of temperature: 3.2F, 1.8C."""
    if style.is_metric:
        return f"{number(difference_f * convert.factor('delta_degF', 'delta_degC'))}C"
    return f"{number(difference_f)}F"


def hours(value: float) -> str:
    """7 h, 7 h 15 min, 40 min."""
    minutes = round(value * 60)
    whole, rest = divmod(minutes, 60)
    if not whole:
        return f"{rest} min"
    return f"{whole} h {rest} min" if rest else f"{whole} h"


def about_hours(value: float) -> str:
    """Hours that are only reckoned: "40 min", "6 1/2 h", "11 h"."""
    if value < 1:
        return f"{max(5, round(value * 12) * 5)} min"
    return f"{half_hours(value)} h"


def half_hours(value: float) -> str:
    """A number of hours to the nearest half, from ten on to the whole: "6 1/2"."""
    if value >= _ROUND_FROM:
        return f"{value:.0f}"
    whole, half = divmod(round(value * 2), 2)
    return " ".join(part for part in (str(whole) if whole else "", _HALVES[half]) if part) or "0"


def length(inches: float, style: Style) -> str:
    """16 in, 41 cm."""
    if style.is_metric:
        return f"{number(inches * convert.factor('inch', 'cm'), 0)} cm"
    return f"{number(inches)} in"


def height(feet: float, style: Style) -> str:
    """A height above the sea: 1200 ft, 366 m."""
    if style.is_metric:
        return f"{number(feet * convert.factor('foot', 'meter'), 0)} m"
    return f"{number(feet, 0)} ft"


def surface(ft2: float, style: Style) -> str:
    """6 sq ft, 0.56 sq m."""
    if style.is_metric:
        return f"{number(ft2 * convert.factor('foot', 'meter') ** 2, 2)} sq m"
    return f"{number(ft2)} sq ft"


def rough_range(low_gallons: float, high_gallons: float, style: Style) -> str:
    """A range that is only reckoned: "40 to 120 gal", "1.1 to 3.4 gal"."""
    unit = "L" if style.is_metric else "gal"
    low, high = (
        (convert.litres(low_gallons), convert.litres(high_gallons))
        if style.is_metric
        else (low_gallons, high_gallons)
    )
    said = two_figures(low), two_figures(high)
    return f"{said[0]} {unit}" if said[0] == said[1] else f"{said[0]} to {said[1]} {unit}"


def fluid(gallons: float, style: Style) -> str:
    """Water by the cup: 8 fl oz, 2 1/4 cups, 240 mL."""
    if style.is_metric:
        return f"{two_figures(convert.litres(gallons) * 1000)} mL"
    ounces = gallons * FL_OZ_PER_GALLON
    if ounces < _CUPS_FROM_FL_OZ:
        return f"{two_figures(ounces)} fl oz"
    quarters = round(ounces / 2)
    whole, rest = divmod(quarters, 4)
    part = ("", "1/4", "1/2", "3/4")[rest]
    cups = " ".join(one for one in (str(whole) if whole else "", part) if one)
    return f"{cups} cups"


# From this on water is measured in cups of 8 fl oz.
_CUPS_FROM_FL_OZ = 16.0


def clock(at: time) -> str:
    """2 pm, 2:30 pm, 12 noon is 12 pm."""
    hour = at.hour % 12 or 12
    half = "am" if at.hour < 12 else "pm"
    return f"{hour}:{at.minute:02d} {half}" if at.minute else f"{hour} {half}"


def dollars(value: float) -> str:
    """$12, $7.49."""
    return f"${value:.0f}" if abs(value - round(value)) < 0.005 else f"${value:.2f}"


def cords(value: float) -> str:
    """1/4 cord, 1/2 cord, 1.5 cords."""
    for size, name in ((0.25, "1/4"), (1 / 3, "1/3"), (0.5, "1/2"), (2 / 3, "2/3"), (0.75, "3/4")):
        if math.isclose(value, size, rel_tol=0.01):
            return f"{name} cord"
    return f"{number(value, 2)} {'cord' if value <= 1 else 'cords'}"


def propane(pounds: float, style: Style) -> str:
    """20 lb propane, 9.1 kg propane."""
    if style.is_metric:
        return f"{number(pounds * 0.45359237)} kg propane"
    return f"{number(pounds)} lb propane"


def _amount(value: float) -> str:
    """Exact where a quarter was meant, or under ten an eighth; else to the tenth, or the
    hundredth under ten."""
    eighths = round(value * 8)
    exact = eighths and abs(value * 8 - eighths) <= _NEAR * 8
    if exact and (value < _ROUND_FROM or eighths % 2 == 0):
        return number(eighths / 8, 3)
    return number(value, 2 if value < 10 else 1)


def _quarts_and_pints(gallons: float) -> str | None:
    halves = round(gallons * PINTS_PER_GALLON * 2)
    if gallons >= 1 or not halves or abs(gallons * PINTS_PER_GALLON * 2 - halves) > _NEAR * halves:
        return None
    if halves == 1:
        return "1/2 pint"
    if halves % 4 == 0:
        return f"{halves // 4} qt"
    return pints(gallons)


def _metric_two_figures(gallons: float) -> str:
    litres = convert.litres(gallons)
    return f"{two_figures(litres)} L" if litres >= 1 else f"{two_figures(litres * 1000)} mL"
