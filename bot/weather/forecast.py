"""A place, and the hours foretold for it: what every weather source gives."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from math import isfinite
from typing import Protocol
from zoneinfo import ZoneInfo

from bot.reckoning.hourly import Hour as LocalHour
from bot.reckoning.outlook_figures import COLDEST_CREDIBLE_F, HOTTEST_CREDIBLE_F
from bot.units import fahrenheit

ONE_HOUR = timedelta(hours=1)


@dataclass(frozen=True, slots=True)
class Place:
    """Where the trees are. Degrees north and east (so American longitudes are negative), metres
    above the sea or None, an IANA zone or None. Raises ValueError for what is not on earth."""

    latitude: float
    longitude: float
    elevation_m: float | None = None
    zone: str | None = None

    def __post_init__(self) -> None:
        if not (isfinite(self.latitude) and -90 <= self.latitude <= 90):
            raise ValueError(f"latitude is {self.latitude}, wanted -90 to 90 degrees north")
        if not (isfinite(self.longitude) and -180 <= self.longitude <= 180):
            raise ValueError(f"longitude is {self.longitude}, wanted -180 to 180 degrees east")
        if self.elevation_m is not None and not -500 <= self.elevation_m <= 9000:
            raise ValueError(f"elevation_m is {self.elevation_m}, wanted -500 to 9000 m")

    @property
    def key(self) -> str:
        """Names the place to four decimals, some 10 m: what the services accept at most."""
        height = "" if self.elevation_m is None else f",{self.elevation_m:.0f}"
        return f"{self.latitude:.4f},{self.longitude:.4f}{height}"


@dataclass(frozen=True, slots=True)
class Hour:
    """One hour. start_utc: aware, UTC; temp_f: F; sea_level_inhg: air pressure reduced to sea
    level, inHg, or None: never the pressure in the pan room.

    Raises ValueError for a time that is not UTC and a temperature no place on earth has.
    """

    start_utc: datetime
    temp_f: float
    sea_level_inhg: float | None = None

    def __post_init__(self) -> None:
        if self.start_utc.utcoffset() != timedelta(0):
            raise ValueError(f"start_utc is {self.start_utc.isoformat()}, wanted UTC")
        if not COLDEST_CREDIBLE_F <= self.temp_f <= HOTTEST_CREDIBLE_F:
            raise ValueError(
                f"temp_f is {self.temp_f} at {self.start_utc.isoformat()}, wanted "
                f"{COLDEST_CREDIBLE_F:g} to {HOTTEST_CREDIBLE_F:g} F"
            )


@dataclass(frozen=True, slots=True)
class Cell:
    """The piece of land that a source gives one forecast for. key: unique within the source;
    zone: its IANA zone where the source tells it."""

    key: str
    zone: str | None = None


@dataclass(frozen=True, slots=True)
class Forecast:
    """What a source foretold. issued_utc: when the forecast was made, not when it was fetched;
    hours: in order, may have gaps; elevation_m: of the ground it is for; attribution: what the
    licence asks to be said."""

    source: str
    cell: Cell
    issued_utc: datetime
    hours: tuple[Hour, ...]
    elevation_m: float | None
    attribution: str

    @property
    def ends_utc(self) -> datetime:
        """The end of the last hour foretold. Raises IndexError for a forecast of no hours."""
        return self.hours[-1].start_utc + ONE_HOUR


class Source(Protocol):
    """A weather service, or what stands for one.

    keep_for: how long a fetched forecast is used before asking again. asks_where: whether to
    locate takes a request, so that what was found is noted. The two methods raise
    WeatherErrors only.
    """

    @property
    def name(self) -> str: ...

    @property
    def attribution(self) -> str: ...

    @property
    def keep_for(self) -> timedelta: ...

    @property
    def asks_where(self) -> bool: ...

    def locate(self, place: Place) -> Cell:
        """The cell that a place lies in. Places in one cell share a forecast."""

    def forecast(self, place: Place, cell: Cell, now_utc: datetime) -> Forecast:
        """The forecast for a cell, for the place's height where the source can.

        Raises StaleError for one made too long before `now_utc`.
        """


def local_hours(hours: Iterable[Hour], zone: str) -> list[LocalHour]:
    """The hours on the wall clock of `zone`, for the reckoning. The hour that November has twice
    comes twice."""
    there = ZoneInfo(zone)
    return [
        LocalHour(hour.start_utc.astimezone(there).replace(tzinfo=None, fold=0), hour.temp_f)
        for hour in hours
    ]


def pressure_at(hours: Sequence[Hour], at_utc: datetime) -> float | None:
    """The sea-level pressure, inHg, of the hour that `at_utc` lies in, if it is known."""
    for hour in hours:
        if hour.start_utc <= at_utc < hour.start_utc + ONE_HOUR:
            return hour.sea_level_inhg
    return None


def temp_f_of(celsius: float) -> float:
    """C in F, to a hundredth: 0 C is 32 F and no hair under it, since 32 decides a freeze."""
    return round(fahrenheit(celsius), 2)


def utc(text: str) -> datetime:
    """An ISO 8601 time with an offset or Z, as UTC. Raises ValueError without one."""
    moment = datetime.fromisoformat(text)
    if moment.tzinfo is None:
        raise ValueError(f"the time {text!r} has no offset")
    return moment.astimezone(UTC)
