"""Where water boils for this person: measured, or worked out from the height and the barometer."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from typing import Literal

from bot import figures
from bot.clock import season_of
from bot.ledger import Book
from bot.reckoning.finish import station_inhg, water_boils_f
from bot.standing.gear import Kit

Basis = Literal["measured", "barometer", "height"]


@dataclass(frozen=True, slots=True)
class Water:
    """Where plain water boils, degrees F, from what that is known, and for which local day."""

    fahrenheit: float
    basis: Basis
    on: date


def water_here(
    book: Book,
    sugarbush_id: int,
    now_local: datetime,
    kit: Kit,
    *,
    height_ft: float | None = None,
    barometer_inhg: float | None = None,
) -> Water | None:
    """The best that is known at a naive local time: measured that day; else the height with the
    day's barometer; else what was measured this season; else the height on a day of standard
    pressure; else None.

    A height that is given (`height_ft`) is asked about, and goes before what was measured; a
    barometer that is given goes before the one that was told. Raises ValueError for a height or
    barometer that cannot be.
    """
    today = now_local.date()
    told = book.records.latest(sugarbush_id, "water_boils", not_after=now_local)
    measured = None
    if told is not None and told.fahrenheit is not None and told.season == season_of(today):
        measured = Water(told.fahrenheit, "measured", told.on)
    if measured is not None and measured.on == today and height_ft is None:
        return measured
    height = kit.elevation_ft if height_ft is None else height_ft
    barometer = kit.barometer_inhg if barometer_inhg is None else barometer_inhg
    if height is not None and barometer is not None:
        return Water(water_boils_f(station_inhg(barometer, height)), "barometer", today)
    if measured is not None and height_ft is None:
        return measured
    if height is None:
        return None
    standard = water_boils_f(station_inhg(figures.STANDARD_INHG, height))
    return Water(standard, "height", today)
