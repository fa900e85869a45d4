"""Local days, seasons and clocks. Times of the wall are naive, moments are aware UTC."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from functools import lru_cache
from typing import Protocol
from zoneinfo import ZoneInfo

# A season runs from July to June and is named by its spring's year (our own: taps that are put
# in before Christmas belong with the spring that follows).
FIRST_MONTH_OF_SEASON = 7

# People whose place is not known yet are taken to live by this clock (our own: most who
# sugar do).
DEFAULT_ZONE = "America/New_York"


def season_of(on: date) -> int:
    """The season a local day belongs to: 2027 is July 2026 to June 2027."""
    return on.year + 1 if on.month >= FIRST_MONTH_OF_SEASON else on.year


def first_day_of(season: int) -> date:
    """The local day on which a season begins."""
    return date(season - 1, FIRST_MONTH_OF_SEASON, 1)


def same_day_in(season: int, on: date) -> date:
    """The local day of another season that stands where `on` does in its own.

    29 February becomes the 28th where that year has none.
    """
    year = season - 1 if on.month >= FIRST_MONTH_OF_SEASON else season
    try:
        return on.replace(year=year)
    except ValueError:
        return on.replace(year=year, day=28)


@lru_cache(maxsize=64)
def _zone(name: str) -> ZoneInfo:
    return ZoneInfo(name)


def local_time(moment_utc: datetime, zone: str) -> datetime:
    """What the wall clock shows in `zone` at an aware moment, as a naive datetime."""
    return moment_utc.astimezone(_zone(zone)).replace(tzinfo=None)


def utc_time(wall: datetime, zone: str) -> datetime:
    """The aware UTC moment at which the wall clock of `zone` shows the naive `wall`.

    An hour that happens twice is taken the first time; one that is skipped, as if it were not.
    """
    return wall.replace(tzinfo=_zone(zone)).astimezone(UTC)


class Clock(Protocol):
    """Tells the time."""

    def now_utc(self) -> datetime:
        """This moment, aware, in UTC."""
        ...


class SystemClock:
    """The machine's clock."""

    def now_utc(self) -> datetime:
        """This moment, aware, in UTC."""
        return datetime.now(UTC)


@dataclass
class HandClock:
    """A clock that is moved by hand, for replays and tests. `moment_utc` is aware, UTC."""

    moment_utc: datetime

    def now_utc(self) -> datetime:
        """The moment it was set to."""
        return self.moment_utc

    def set(self, moment_utc: datetime) -> None:
        """Set it to an aware UTC moment."""
        self.moment_utc = moment_utc

    def advance(self, by: timedelta) -> None:
        """Move it on."""
        self.moment_utc += by
