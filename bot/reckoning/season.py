"""Seasons: which one a day belongs to, what it came to, and how it compares.

A season runs from 1 July to 30 June and is named by its spring's year, so that a December run
counts with the spring after it.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from bot import figures
from bot.reckoning.balance import mixed_brix
from bot.reckoning.checks import not_negative


@dataclass(frozen=True, slots=True)
class SapDay:
    """Sap gathered on a local day: gallons, and its sugar or None where nobody tested it."""

    on: date
    gallons: float
    brix: float | None = None


@dataclass(frozen=True, slots=True)
class SyrupDay:
    """Syrup drawn on a local day, in gallons."""

    on: date
    gallons: float


@dataclass(frozen=True, slots=True)
class SeasonSum:
    """A season up to a day. `brix` is that of all tested sap mixed, None when none was tested;
    the days are those with sap in them, None when there was none."""

    season: int
    up_to: date
    sap_gallons: float
    brix: float | None
    syrup_gallons: float
    gatherings: int
    first_sap: date | None
    last_sap: date | None


@dataclass(frozen=True, slots=True)
class Comparison:
    """Two seasons to the same date, and how much more (or, negative, less) the later one has.

    `sap_ratio` and `syrup_ratio` are later over earlier, None where the earlier had none.
    """

    earlier: SeasonSum
    later: SeasonSum
    sap_more: float
    syrup_more: float
    sap_ratio: float | None
    syrup_ratio: float | None


def season_of(on: date) -> int:
    """The season that a local day belongs to, named by its spring's year."""
    begins = date(on.year, *figures.SEASON_BEGINS)
    return on.year + 1 if on >= begins else on.year


def season_days(season: int) -> tuple[date, date]:
    """The first and the last local day of a season."""
    first = date(season - 1, *figures.SEASON_BEGINS)
    return first, date(season, *figures.SEASON_BEGINS) - timedelta(days=1)


def same_day(on: date, season: int) -> date:
    """The same day of the year in another season; 29 February becomes the 28th where it must."""
    year = season - 1 if season_of(on) == on.year + 1 else season
    try:
        return on.replace(year=year)
    except ValueError:
        return date(year, 2, 28)


def season_sum(
    season: int,
    sap: Iterable[SapDay],
    syrup: Iterable[SyrupDay] = (),
    up_to: date | None = None,
) -> SeasonSum:
    """What a season came to, up to and with a day (its own last day when None is given).

    Days of other seasons are passed over. Raises ValueError for an amount below zero.
    """
    first, last = season_days(season)
    end = last if up_to is None else min(last, up_to)
    days = [day for day in sap if first <= day.on <= end]
    gallons = sum(not_negative("Sap", day.gallons, "gal") for day in days)
    tested = [(day.gallons, day.brix) for day in days if day.brix is not None and day.gallons > 0]
    ran = [day.on for day in days if day.gallons > 0]
    return SeasonSum(
        season=season,
        up_to=end,
        sap_gallons=gallons,
        brix=mixed_brix(tested) if tested else None,
        syrup_gallons=sum(
            not_negative("Syrup", day.gallons, "gal") for day in syrup if first <= day.on <= end
        ),
        gatherings=len(ran),
        first_sap=min(ran, default=None),
        last_sap=max(ran, default=None),
    )


def compare(
    today: date,
    sap: Iterable[SapDay],
    syrup: Iterable[SyrupDay] = (),
    against: int | None = None,
) -> Comparison:
    """This season to today against another one to the same date, last season by default."""
    season = season_of(today)
    other = season - 1 if against is None else against
    sap, syrup = tuple(sap), tuple(syrup)
    later = season_sum(season, sap, syrup, today)
    earlier = season_sum(other, sap, syrup, same_day(today, other))
    return Comparison(
        earlier=earlier,
        later=later,
        sap_more=later.sap_gallons - earlier.sap_gallons,
        syrup_more=later.syrup_gallons - earlier.syrup_gallons,
        sap_ratio=_ratio(later.sap_gallons, earlier.sap_gallons),
        syrup_ratio=_ratio(later.syrup_gallons, earlier.syrup_gallons),
    )


def _ratio(later: float, earlier: float) -> float | None:
    return later / earlier if earlier > 0 else None
