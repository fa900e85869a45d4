"""Where water boils for this person: measured, or worked out from the height and the barometer."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal

from bot import figures
from bot.answers.asked import Asked
from bot.reckoning.finish import station_inhg, water_boils_f

Basis = Literal["measured", "barometer", "height"]


@dataclass(frozen=True, slots=True)
class Water:
    """Where plain water boils, degrees F, from what that is known, and for which local day."""

    fahrenheit: float
    basis: Basis
    on: date


def water_here(asked: Asked) -> Water | None:
    """The best that is known: measured today; else the height with today's barometer; else what
    was measured this season; else the height on a day of standard pressure; else None.

    A height or barometer in the question itself goes before all but a measured one of today.
    """
    told = asked.book.records.latest(asked.sugarbush_id, "water_boils", not_after=asked.sent)
    measured = None
    if told is not None and told.fahrenheit is not None and told.season == asked.season:
        measured = Water(told.fahrenheit, "measured", told.on)
    height = _height_named(asked)
    named = height is not None
    if measured is not None and measured.on == asked.today and not named:
        return measured
    if height is None:
        height = asked.kit.elevation_ft
    barometer = asked.mentioned.barometer_inhg
    if barometer is None:
        barometer = asked.kit.barometer_inhg
    if height is not None and barometer is not None:
        return Water(water_boils_f(station_inhg(barometer, height)), "barometer", asked.today)
    if measured is not None and not named:
        return measured
    if height is None:
        return None
    standard = water_boils_f(station_inhg(figures.STANDARD_INHG, height))
    return Water(standard, "height", asked.today)


def _height_named(asked: Asked) -> float | None:
    """A height above the sea in the question, in feet: named as one, or too long for a tree."""
    if asked.mentioned.elevation_ft is not None:
        return asked.mentioned.elevation_ft
    lengths = asked.values("length", _LEAST_HEIGHT_FT * _INCHES_PER_FOOT)
    return lengths[0] / _INCHES_PER_FOOT if lengths else None


_LEAST_HEIGHT_FT = 50.0
_INCHES_PER_FOOT = 12.0
