"""The weather over a sugarbush on its own wall clock: what is known, how old, and from whom."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from operator import attrgetter
from threading import Thread
from typing import Literal, Protocol

from bot import units
from bot.clock import local_time, season_of
from bot.entry import Entry
from bot.reckoning.hourly import Hour, whole_hours
from bot.reckoning.mornings import NightFreeze, WarmSpell, first_warm_day, freeze_tonight
from bot.reckoning.outlook import Outlook, outlook_by_day
from bot.reckoning.outlook_figures import (
    AFTERNOON_HOURS,
    NEARLY_THE_HIGH_F,
    NIGHT_BEGINS_HOUR,
    NIGHT_ENDS_HOUR,
    STILL_MORNING_HOUR,
)
from bot.reckoning.recharge import Drip, drips
from bot.reckoning.season_end import DayTemps
from bot.standing.water import NO_AIR, Air
from bot.weather import Known, Place, local_hours, pressure_at

# From this age on a forecast says how old it is: the services issue anew at least every 12 hours
# (our own).
OLD_NEWS = timedelta(hours=12)
# Hours before today's midnight that are kept: last night.
_KEPT_BEHIND = timedelta(days=1)
# How long before January days are read again: the south taps in late December (our own).
_KEPT_BEFORE_JANUARY = timedelta(days=31)
# As many hours as a tree may remember, and a week ahead: a freeze is forgotten within days.
_LATELY_HOURS = 24 * 24
# F by which hours of a night are told apart (our own: a forecast is no finer).
_AS_COLD_F = 0.5


class Weather(Protocol):
    """Whoever knows the weather: `weather.Latest`."""

    def known(self, place: Place, now_utc: datetime) -> Known | None: ...

    def area(self, place: Place, now_utc: datetime) -> str:
        """Names what has one weather with the place: the cell that it lies in."""


@dataclass(frozen=True, slots=True)
class DayKept:
    """A local day as it was judged last. score: 0 to 1, as in `Outlook`; low_f and high_f: its
    lowest and highest hour, the night before included, F."""

    date: date
    score: float
    low_f: float
    high_f: float


class Days(Protocol):
    """Where the days of each area are kept, longer than the hours of the forecasts."""

    def of(self, area: str, since: date) -> list[DayKept]:
        """The kept days of an area from one on, in order."""

    def keep(self, area: str, days: Sequence[DayKept]) -> None:
        """Keep days, each in place of what was kept of it."""


@dataclass(frozen=True, slots=True)
class Swing:
    """How a day's temperature goes, F, by its wall clock. low: the coldest hour of the night
    before and the morning; high: the warmest hour, and when it is nearly reached; evening_f: on
    a day that only falls, where it has fallen to, else None."""

    low_f: float
    low_local: datetime
    high_f: float
    high_local: datetime
    evening_f: float | None


@dataclass(frozen=True, slots=True)
class Outdoors:
    """The weather over one place, as known at a moment.

    now_local: that moment by the place's wall clock (naive). days: every known day, gone by and
    to come. hours: one for each known hour from yesterday on, with the sap that it lets flow.
    ends_local: the end of the last known hour. age: since the forecast was issued. source: its
    name; attribution: what its licence asks to be said. elevation_ft: of the ground it is for;
    sea_level_inhg: the air's pressure now, reduced to sea level; both None where not told.
    kept: days of this winter before the first known one, as they were judged in their time.
    """

    now_local: datetime
    days: tuple[Outlook, ...]
    hours: tuple[Drip, ...]
    ends_local: datetime
    age: timedelta
    source: str
    attribution: str
    elevation_ft: float | None
    sea_level_inhg: float | None
    kept: tuple[DayKept, ...] = ()

    @property
    def today(self) -> date:
        """The local day."""
        return self.now_local.date()

    @property
    def is_invented(self) -> bool:
        """True for weather out of thin air."""
        return self.source == "invented"

    @property
    def is_old(self) -> bool:
        """True when its age has to be said."""
        return self.age >= OLD_NEWS

    @property
    def knows_ahead(self) -> bool:
        """False where all known hours are over."""
        return self.ends_local > self.now_local

    def day(self, on: date) -> Outlook | None:
        """The outlook of a local day, None past what is known."""
        return next((day for day in self.days if day.date == on), None)

    def ahead(self) -> list[Outlook]:
        """Today and the days after it, as far as they are known."""
        return [day for day in self.days if day.date >= self.today]

    def hours_of(self, on: date) -> list[Drip]:
        """The known hours of a local day, yesterday or later."""
        return self._between(datetime.combine(on, time()), datetime.combine(on + _DAY, time()))

    def swing(self, on: date) -> Swing | None:
        """How a day's temperature goes, today or later; None where none of its hours is known."""
        todays = self.hours_of(on)
        day = self.day(on)
        if not todays or day is None:
            return None
        night_begins = datetime.combine(on - timedelta(days=1), time(NIGHT_BEGINS_HOUR))
        morning_ends = datetime.combine(on, time(NIGHT_ENDS_HOUR))
        night = self._between(night_begins, morning_ends)
        low_f = min(hour.temp_f for hour in night or todays)
        # Of hours as cold as one another the last: a night is coldest at its end.
        coldest = [hour for hour in night or todays if hour.temp_f <= low_f + _AS_COLD_F][-1]
        warmest = max(todays, key=lambda hour: hour.temp_f)
        evening = next((h for h in todays if h.at_local.hour >= max(AFTERNOON_HOURS)), None)
        falls = warmest.at_local.hour < STILL_MORNING_HOUR and evening is not None
        reached = next(
            hour
            for hour in todays
            if hour.temp_f >= warmest.temp_f - NEARLY_THE_HIGH_F
            and hour.at_local.hour >= min(STILL_MORNING_HOUR, warmest.at_local.hour)
        )
        return Swing(
            low_f=min(low_f, day.low_f),
            low_local=coldest.at_local,
            high_f=warmest.temp_f,
            high_local=warmest.at_local if falls else reached.at_local,
            evening_f=evening.temp_f if falls and evening is not None else None,
        )

    def freeze(self, evening: date) -> NightFreeze | None:
        """The freeze of the night that begins on an evening, None if none or not known."""
        return freeze_tonight(self._temperatures(), evening)

    def night_low(self, evening: date) -> tuple[float, datetime] | None:
        """The coldest hour, F and when, of the night that begins on an evening; None where the
        night is not known to its end."""
        dusk = datetime.combine(evening, _DUSK)
        dawn = datetime.combine(evening + timedelta(days=1), _DAWN)
        night = [hour for hour in self.hours if dusk <= hour.at_local <= dawn]
        if not night or night[-1].at_local < dawn:
            return None
        coldest = min(night, key=lambda hour: hour.temp_f)
        return coldest.temp_f, coldest.at_local

    def warm_spell(self) -> WarmSpell | None:
        """The first day from today on that is too warm for stored sap without ice."""
        return first_warm_day(self._temperatures(), self.today)

    def day_temperatures(self) -> list[DayTemps]:
        """Each known day's low and high, for the signs of the season's end; a day that the
        forecast breaks off in is left out."""
        return [DayTemps(day.date, day.low_f, day.high_f) for day in (*self.kept, *self.judged())]

    def scores(self) -> dict[date, float]:
        """Each day's score, of those kept and of those known; what is known now goes first."""
        kept = {day.date: day.score for day in self.kept}
        return kept | {day.date: day.score for day in self.days}

    def judged(self) -> list[DayKept]:
        """The known days as they are worth keeping: not one that the forecast breaks off in."""
        return [
            DayKept(day.date, day.score, min(day.low_f, day.high_f), day.high_f)
            for day in self.days
            if day.complete
        ]

    def _between(self, first: datetime, end: datetime) -> list[Drip]:
        """The hours from one wall-clock time until before another; they come in order, and a round
        of everybody asks for some so often that it may not look at each."""
        begins = bisect_left(self.hours, first, key=_at_local)
        return list(self.hours[begins : bisect_left(self.hours, end, begins, key=_at_local)])

    def _temperatures(self) -> list[Hour]:
        return [Hour(hour.at_local, hour.temp_f) for hour in self.hours]


_DUSK, _DAWN, _DAY = time(18), time(8), timedelta(days=1)
_at_local = attrgetter("at_local")


def outdoors(known: Known, zone: str, now_utc: datetime) -> Outdoors | None:
    """What is known of a place's weather, on the wall clock of `zone`; None for no hours."""
    hours = whole_hours(local_hours(known.hours, zone))
    if not hours:
        return None
    now_local = local_time(now_utc, zone)
    since = datetime.combine(now_local.date(), time()) - _KEPT_BEHIND
    height_m = known.forecast.elevation_m
    return Outdoors(
        now_local=now_local,
        days=tuple(outlook_by_day(hours)),
        hours=tuple(drip for drip in drips(hours[-_LATELY_HOURS:]) if drip.at_local >= since),
        ends_local=hours[-1].at_local + timedelta(hours=1),
        age=known.age,
        source=known.forecast.source,
        attribution=known.forecast.attribution,
        elevation_ft=None if height_m is None else height_m * units.factor("meter", "foot"),
        sea_level_inhg=pressure_at(known.hours, now_utc),
    )


def weather_place(place: Entry | None, zone: str) -> Place | None:
    """Where to ask the weather for: None where the place is not told, or only its province."""
    if place is None:
        return None
    latitude, longitude = place.detail.get("latitude"), place.detail.get("longitude")
    if latitude is None or longitude is None:
        return None
    return Place(float(latitude), float(longitude), zone=zone)


def _with_days(out: Outdoors, days: Days, area: str) -> Outdoors:
    """The same with the days of this winter that are kept; and keep those that may have changed.

    Of days before yesterday nothing new is learned, and with every hour that is forgotten less is
    known of what came before them: they stay as they were judged.
    """
    kept = days.of(area, date(season_of(out.today), 1, 1) - _KEPT_BEFORE_JANUARY)
    stands = set(kept)
    since = out.today - _KEPT_BEHIND
    if new := [day for day in out.judged() if day.date >= since and day not in stands]:
        days.keep(area, new)
    first = min((day.date for day in out.days), default=out.today)
    return replace(out, kept=tuple(day for day in kept if day.date < first))


# Why no weather is known: no source is set, the place is not told or not on the map, or no source
# answers now.
NoWeather = Literal["no source", "no place", "no answer"]


class WeatherWantedError(Exception):
    """An answer needs the weather, which may not be asked for within a transaction: leave it, ask
    (`Skies.look`), and begin again with what was found."""

    def __init__(self, place: Place, zone: str, now_utc: datetime) -> None:
        super().__init__(f"the weather over {place.key} is wanted")
        self.place, self.zone, self.now_utc = place, zone, now_utc


@dataclass(frozen=True, slots=True)
class Looked:
    """What was found when the weather was asked for: over which place and wall clock."""

    place_key: str
    zone: str
    found: Outdoors | None


@dataclass(frozen=True, slots=True)
class Skies:
    """The weather over sugarbushes.

    anywhere: where to ask for those whose place is not on the map, since the weather of a file
    is the same everywhere; None to have no weather for them. patience: how long somebody who
    waits for an answer is kept waiting; None for as long as it takes. days: where the days that
    are judged are kept; None for weather that knows its past itself.
    """

    weather: Weather
    anywhere: Place | None = None
    patience: timedelta | None = None
    days: Days | None = None

    def place(self, place: Entry | None, zone: str) -> Place | None:
        """Where to ask the weather of a sugarbush for, None where nobody can."""
        found = weather_place(place, zone)
        if found is None and self.anywhere is not None:
            return Place(self.anywhere.latitude, self.anywhere.longitude, zone=zone)
        return found

    def over(self, place: Place, zone: str, now_utc: datetime) -> Outdoors | None:
        """The weather over a place, None where no source has any. May ask over the network: never
        within a transaction."""
        known = self.weather.known(place, now_utc)
        found = None if known is None else outdoors(known, zone, now_utc)
        if found is None or self.days is None:
            return found
        return _with_days(found, self.days, self.area(place, now_utc))

    def area(self, place: Place, now_utc: datetime) -> str:
        """Names what has one weather with the place. May ask over the network, as `over`."""
        return self.weather.area(place, now_utc)

    def look(self, wanted: WeatherWantedError) -> Looked:
        """The weather that an answer waits for, as far as patience goes. What comes later is kept
        by the source for the next one who asks."""
        found: list[Outdoors | None] = []

        def ask() -> None:
            found.append(self.over(wanted.place, wanted.zone, wanted.now_utc))

        if self.patience is None:
            ask()
        else:
            asking = Thread(target=ask, name="weather", daemon=True)
            asking.start()
            asking.join(self.patience.total_seconds())
        return Looked(wanted.place.key, wanted.zone, found[0] if found else None)


def air_of(weather: Outdoors | NoWeather) -> Air:
    """What the weather says of the air that water boils in; nothing where it is invented."""
    if not isinstance(weather, Outdoors) or weather.is_invented:
        return NO_AIR
    return Air(weather.elevation_ft, weather.sea_level_inhg)


def weather_for(
    skies: Skies | None,
    place: Entry | None,
    zone: str,
    now_utc: datetime,
    looked: Looked | None,
) -> Outdoors | NoWeather:
    """The weather for somebody who asks within a transaction, out of what was looked up before.

    Raises WeatherWantedError where nothing was looked up for this place yet.
    """
    if skies is None:
        return "no source"
    where = skies.place(place, zone)
    if where is None:
        return "no place"
    if looked is None or (looked.place_key, looked.zone) != (where.key, zone):
        raise WeatherWantedError(where, zone, now_utc)
    found = looked.found
    return found if found is not None and found.knows_ahead else "no answer"
