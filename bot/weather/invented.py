"""Invented weather, for the terminal chat without a source set. It says that it is invented.

The same place and day always have the same weather, so a conversation can be had again.
"""

from __future__ import annotations

from datetime import UTC, date, datetime, time, timedelta
from math import cos, pi
from random import Random

from bot.weather.forecast import ONE_HOUR, Cell, Forecast, Hour, Place

AHEAD_DAYS = 7
BEHIND_DAYS = 10

# All of these are invented, to look like a sugaring spring at 44 degrees north.
YEAR_MEAN_F = 45.0
YEAR_SWING_F = 25.0
COLDEST_DAY_OF_YEAR = 20
WARMER_A_DEGREE_SOUTH_F = 1.5
MIDDLE_LATITUDE = 44.0
DAY_SWING_F = 10.0
WARMEST_HOUR = 15
SPELL_F = 9.0
SPELL_DAYS = 4


class InventedWeather:
    """Weather out of thin air, as steady as a printed table."""

    name = "invented"
    attribution = "Invented weather, not a forecast"
    keep_for = timedelta(0)
    asks_where = False

    def locate(self, place: Place) -> Cell:
        """The place rounded to a degree: neighbours have the same weather."""
        return Cell(f"{place.latitude:.0f},{place.longitude:.0f}", place.zone)

    def forecast(self, place: Place, cell: Cell, now_utc: datetime) -> Forecast:
        """Hours from ten days back, as if they had been known, to seven days ahead."""
        first = datetime.combine(now_utc.date() - timedelta(days=BEHIND_DAYS), time(), UTC)
        hours = tuple(
            Hour(start, _temp_f(place, cell, start))
            for n in range((BEHIND_DAYS + AHEAD_DAYS + 1) * 24)
            if (start := first + n * ONE_HOUR) < now_utc + timedelta(days=AHEAD_DAYS)
        )
        return Forecast(self.name, cell, now_utc, hours, place.elevation_m, self.attribution)


def _temp_f(place: Place, cell: Cell, start_utc: datetime) -> float:
    """A yearly wave, a daily wave on sun time, and spells of warm and cold days."""
    sun_time = start_utc + timedelta(hours=place.longitude / 15)
    day_of_year = sun_time.timetuple().tm_yday
    season = YEAR_MEAN_F - YEAR_SWING_F * cos(2 * pi * (day_of_year - COLDEST_DAY_OF_YEAR) / 365)
    season += WARMER_A_DEGREE_SOUTH_F * (MIDDLE_LATITUDE - abs(place.latitude))
    hour = sun_time.hour + sun_time.minute / 60
    daily = DAY_SWING_F * cos(2 * pi * (hour - WARMEST_HOUR) / 24)
    return round(season + daily + _spell_f(cell, sun_time), 1)


def _spell_f(cell: Cell, sun_time: datetime) -> float:
    """Warm and cold by turns: a number drawn for every four days, and a smooth way between."""
    days = (sun_time.date() - date(2000, 1, 1)).days + sun_time.hour / 24
    number, into = divmod(days / SPELL_DAYS, 1)
    before, after = (
        Random(f"{cell.key} {int(number) + step}").uniform(-SPELL_F, SPELL_F) for step in (0, 1)
    )
    return before + (after - before) * (1 - cos(pi * into)) / 2
