"""The figures in a question, with their units: "40 gal at 2.2 in a 2x3 ft pan"."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime

from bot import units
from bot.reading import items, tidy, tokens
from bot.reading.understanding import Profile

_ANY_TIME = datetime(2000, 1, 1)  # noqa: DTZ001 - figures do not depend on the day


@dataclass(frozen=True, slots=True)
class Amount:
    """One figure. sort: volume (gallons), brix, temp (F), length (inches), hours, cords, mass
    (pounds), money (dollars) or number (no unit). value: in that unit. low, high: ends of a
    range, else None. bare_degrees: a temperature whose scale was not told."""

    sort: str
    value: float
    low: float | None = None
    high: float | None = None
    bare_degrees: bool = False


_WANTED = {"length": "inch", "hours": "hour", "cords": "cord", "mass": "pound"}
_SORTS = frozenset(("volume", "brix", "temp", "money", "number", *_WANTED))


def days(plain: str, sent: datetime, profile: Profile) -> tuple[date, ...]:
    """The local days that a tidied text names, each once, in its order; `sent` is local."""
    found = items.items(tokens.tokens(plain), sent, profile)
    named = [item.on for item in found if item.sort == "date" and item.on is not None]
    return tuple(dict.fromkeys(named))


def amounts(text: str, profile: Profile | None = None) -> tuple[Amount, ...]:
    """Every figure of a text in order, in the units that Amount names. Never raises."""
    run = tokens.tokens(tidy.tidy(text[: tidy.LONGEST]))
    found = items.items(run, _ANY_TIME, profile if profile is not None else Profile())
    return tuple(
        _amount(item)
        for item in found
        if item.sort in _SORTS and not (item.article and not item.unit)
    )


def _amount(item: items.Item) -> Amount:
    value = item.value
    if item.sort == "volume":
        value = item.gallons
    elif item.sort == "temp" and item.unit == "degC":
        value = units.fahrenheit(item.value)
    elif item.sort in _WANTED:
        value = item.value * units.factor(item.unit, _WANTED[item.sort])
    if item.negative:
        value = -abs(value)
    return Amount(item.sort, value, item.low, item.high, item.sort == "temp" and not item.unit)
