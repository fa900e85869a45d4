"""What a morning's forecast asks of the sugarer: when to gather, pails that will run over, a
freeze that bursts jars, warmth that spoils stored sap.

Hours are wall clock, naive. Every answer is None where the known hours do not show it: past their
end nothing is invented.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from statistics import fmean

from bot.reckoning.checks import not_negative, positive, within
from bot.reckoning.hourly import ONE_HOUR, Hour
from bot.reckoning.outlook_figures import (
    AFTERNOON_HOURS,
    BURSTING_HOURS,
    BURSTING_LOW_F,
    DUSK_HOUR,
    FREEZING_F,
    GATHER_HOURS,
    LEAST_FLOW_HOURS,
    NIGHT_ENDS_HOUR,
    NIGHT_HOURS_NEEDED,
    SAP_FREEZES_F,
    UNEVEN_PAILS,
    WARM_STORE_HIGH_F,
    WARM_STORE_MEAN_F,
)
from bot.reckoning.recharge import Drip


@dataclass(frozen=True, slots=True)
class Gather:
    """When to make the round. freezes: whether `by_local` is where it freezes again (else dusk)."""

    from_local: datetime
    by_local: datetime
    freezes: bool


@dataclass(frozen=True, slots=True)
class NightFreeze:
    """A freezing night. low_f: its coldest hour; frozen_hours: how long sap would freeze;
    bursts: whether jars and pails of sap may burst."""

    from_local: datetime
    low_f: float
    low_local: datetime
    frozen_hours: int
    bursts: bool


@dataclass(frozen=True, slots=True)
class WarmSpell:
    """The first day too warm for stored sap without ice. mean_f and high_f are that day's, F;
    fast: whether sap spoils fast (over 50 F), not only sooner than it should."""

    day: date
    mean_f: float
    high_f: float
    fast: bool


def best_hours_to_gather(todays: Sequence[Drip]) -> Gather | None:
    """The last three hours before the day's sap stops or it is dark, whichever is first.

    todays: the drips of one local day. Until then the most sap has come, and it is neither
    frozen in the pails nor gathered in the dark. None on a day that hardly runs, or whose
    afternoon is not known.
    """
    if not _afternoon_known(todays) or sum(drip.flow for drip in todays) < LEAST_FLOW_HOURS:
        return None
    dusk = datetime.combine(todays[0].at_local.date(), time(DUSK_HOUR))
    warmest = max(
        (drip for drip in todays if drip.at_local < dusk), key=lambda drip: drip.temp_f
    ).at_local
    refreezes = next(
        (d.at_local for d in todays if warmest < d.at_local < dusk and d.temp_f <= FREEZING_F),
        None,
    )
    by_local = dusk if refreezes is None else refreezes
    return Gather(by_local - GATHER_HOURS * ONE_HOUR, by_local, refreezes is not None)


def pails_full_at(
    todays: Sequence[Drip],
    gallons_today: float,
    pails: float,
    pail_gallons: float,
    held_gallons: float = 0.0,
) -> datetime | None:
    """The hour in which the fullest pails run over before the day's end, or None.

    todays: the drips of one local day; gallons_today: what the whole day is expected to bring all
    pails together (the high end of `expected_gallons` to be careful, the middle to be likely);
    held_gallons: what already hangs in all of them. Trees differ, so the fullest pails are taken
    to fill 1.5 times as fast as the mean one. Raises ValueError for negative gallons, no pails or
    pails of no size.
    """
    not_negative("Sap expected", gallons_today, "gal")
    not_negative("Sap in the pails", held_gallons, "gal")
    positive("Pails", pails, "pails")
    within("A pail", pail_gallons, 0.1, 100, "gal")
    day_flow = sum(drip.flow for drip in todays)
    if day_flow <= 0:
        return None
    come = 0.0
    for drip in todays:
        come += drip.flow
        in_all = held_gallons + gallons_today * come / day_flow
        if UNEVEN_PAILS * in_all / pails > pail_gallons:
            return drip.at_local
    return None


def freeze_tonight(hours: Sequence[Hour], evening: date) -> NightFreeze | None:
    """The freeze of the night that begins on `evening`, from dusk until 11 next morning.

    hours: whole hours. None if sap does not freeze or the night is not known.
    """
    dusk = datetime.combine(evening, time(DUSK_HOUR))
    morning = datetime.combine(evening + timedelta(days=1), time(NIGHT_ENDS_HOUR))
    night = [hour for hour in hours if dusk <= hour.at_local < morning]
    frozen = [hour for hour in night if hour.temp_f < SAP_FREEZES_F]
    if len(night) < NIGHT_HOURS_NEEDED or not frozen:
        return None
    coldest = min(frozen, key=lambda hour: hour.temp_f)
    return NightFreeze(
        from_local=frozen[0].at_local,
        low_f=coldest.temp_f,
        low_local=coldest.at_local,
        frozen_hours=len(frozen),
        bursts=coldest.temp_f <= BURSTING_LOW_F and len(frozen) >= BURSTING_HOURS,
    )


def first_warm_day(hours: Sequence[Hour], from_day: date) -> WarmSpell | None:
    """The first known day, `from_day` included, on which stored sap will not stay cold by itself:
    a mean over 40 F, or a high over 50. Days whose afternoon is not known are passed over."""
    by_day: dict[date, list[Hour]] = defaultdict(list)
    for hour in hours:
        if hour.at_local.date() >= from_day:
            by_day[hour.at_local.date()].append(hour)
    for day, known in sorted(by_day.items()):
        if not _afternoon_known(known):
            continue
        mean_f = fmean(hour.temp_f for hour in known)
        high_f = max(hour.temp_f for hour in known)
        if mean_f > WARM_STORE_MEAN_F or high_f > WARM_STORE_HIGH_F:
            return WarmSpell(day, mean_f, high_f, fast=high_f > WARM_STORE_HIGH_F)
    return None


def _afternoon_known(of_day: Sequence[Drip] | Sequence[Hour]) -> bool:
    return {each.at_local.hour for each in of_day}.issuperset(AFTERNOON_HOURS)
