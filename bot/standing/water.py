"""Where water boils for this person: measured, or worked out from the height and the air's
pressure, as told or as the forecast has them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, datetime
from typing import Literal

from bot import figures
from bot.clock import season_of
from bot.ledger import Book
from bot.reading.kinds import Gear
from bot.reckoning.finish import station_inhg, water_boils_f

# "forecast": the air's pressure came from there, "ground": the height of the ground it is for.
Basis = Literal["measured", "barometer", "forecast", "height", "ground"]


@dataclass(frozen=True, slots=True)
class Air:
    """What a forecast says beside the weather. ground_ft: the height of the ground it is for;
    sea_level_inhg: the air's pressure now, reduced to sea level; None where it does not tell."""

    ground_ft: float | None
    sea_level_inhg: float | None


NO_AIR = Air(None, None)


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
    gear: Gear,
    *,
    height_ft: float | None = None,
    barometer_inhg: float | None = None,
    air: Callable[[], Air] = lambda: NO_AIR,
) -> Water | None:
    """The best that is known at a naive local time: measured that day; else the height with the
    day's barometer or the forecast's pressure; else what was measured this season; else the
    height on a day of standard pressure; else None.

    A height that is given (`height_ft`) is asked about, and goes before what was measured; a
    barometer that is given goes before the one that was told, and a height that was told before
    that of the forecast's ground. air: looks at the forecast, asked only where it may help.
    Raises ValueError for a height or barometer that cannot be.
    """
    today = now_local.date()
    told = book.records.latest(sugarbush_id, "water_boils", not_after=now_local)
    measured = None
    if told is not None and told.fahrenheit is not None and told.season == season_of(today):
        measured = Water(told.fahrenheit, "measured", told.on)
    if measured is not None and measured.on == today and height_ft is None:
        return measured
    height = gear.elevation_ft if height_ft is None else height_ft
    barometer = gear.barometer_inhg if barometer_inhg is None else barometer_inhg
    if height is not None and barometer is not None:
        return Water(water_boils_f(station_inhg(barometer, height)), "barometer", today)
    foretold = air()
    is_told = height is not None
    height = foretold.ground_ft if height is None else height
    pressure = foretold.sea_level_inhg if barometer is None else barometer
    if height is not None and pressure is not None:
        return Water(water_boils_f(station_inhg(pressure, height)), "forecast", today)
    if measured is not None and height_ft is None:
        return measured
    if height is None:
        return None
    standard = water_boils_f(station_inhg(figures.STANDARD_INHG, height))
    return Water(standard, "height" if is_told else "ground", today)
