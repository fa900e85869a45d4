"""Weather from a file of hours: what a replay, a test or a demonstration lives in.

At each moment the file's next seven days are the forecast; its hours before are known as past.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from bot.reckoning.hourly import Hour as LocalHour
from bot.reckoning.hours_csv import read_hours
from bot.weather.errors import NotCoveredError
from bot.weather.forecast import ONE_HOUR, Cell, Forecast, Hour, Place

AHEAD = timedelta(days=7)
BEHIND = timedelta(days=120)
"""Past hours are given back to the season's start, for what the trees remember and the buds."""


class FileWeather:
    """Hours of a file on the wall clock of whoever asks."""

    name = "file"
    attribution = "Weather from a file"
    keep_for = timedelta(0)
    asks_where = False

    def __init__(self, lines: Iterable[str], zone: str = "America/New_York") -> None:
        """lines: CSV, `time_local,temp_f`; zone: IANA, for places that have none.

        Raises UnreadableHoursError for lines that cannot be read.
        """
        self._hours = list(read_hours(lines))
        self._zone = zone
        self._in_zone: dict[str, tuple[Hour, ...]] = {}

    def locate(self, place: Place) -> Cell:
        """One cell for each zone: the wall clock's hours lie elsewhere in each."""
        zone = place.zone or self._zone
        return Cell(zone, zone)

    def forecast(self, place: Place, cell: Cell, now_utc: datetime) -> Forecast:
        """The file's hours until seven days from now. Raises NotCoveredError past its end."""
        del place  # the same weather everywhere
        if cell.key not in self._in_zone:
            self._in_zone[cell.key] = hours_in_zone(self._hours, cell.key)
        hours = tuple(
            hour
            for hour in self._in_zone[cell.key]
            if now_utc - BEHIND <= hour.start_utc < now_utc + AHEAD
        )
        if not hours or hours[-1].start_utc + ONE_HOUR <= now_utc:
            raise NotCoveredError(f"file: it has no hours from {now_utc:%Y-%m-%d %H:%M} UTC on")
        return Forecast(self.name, cell, now_utc, hours, None, self.attribution)


def hours_in_zone(hours: Sequence[LocalHour], zone: str) -> tuple[Hour, ...]:
    """Wall clock hours as UTC, in order. The hour that November has twice is the first of the two
    when it comes first in the file, the second when it comes again; an hour that March leaves out
    is the one after it."""
    there = ZoneInfo(zone)
    by_start: dict[datetime, Hour] = {}
    for hour in hours:
        start = hour.at_local.replace(tzinfo=there, fold=0).astimezone(UTC)
        if start in by_start:
            start = hour.at_local.replace(tzinfo=there, fold=1).astimezone(UTC)
        by_start[start] = Hour(start, hour.temp_f)
    return tuple(by_start[start] for start in sorted(by_start))
