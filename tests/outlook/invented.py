"""Invented hours for the outlook's tests: nights and days drawn as smooth curves."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime, time, timedelta
from itertools import pairwise
from math import cos, pi

from bot.reckoning.hourly import Hour
from bot.reckoning.outlook import Outlook, outlook_by_day

FIRST_DAY = date(2027, 3, 1)
LOW_AT = 6
HIGH_AT = 15


def hours_of(days: Sequence[tuple[float, float]], first_day: date = FIRST_DAY) -> list[Hour]:
    """Hours from midnight of the first day to midnight after the last, each day with its low (F)
    at 6 in the morning and its high (F) at 3 in the afternoon."""
    midnight = datetime.combine(first_day, time())
    turns = [(midnight - timedelta(hours=9), days[0][1])]
    for number, (low_f, high_f) in enumerate(days):
        turns.append((midnight + timedelta(days=number, hours=LOW_AT), low_f))
        turns.append((midnight + timedelta(days=number, hours=HIGH_AT), high_f))
    turns.append((midnight + timedelta(days=len(days), hours=LOW_AT), days[-1][0]))
    hours: list[Hour] = []
    for (start, start_f), (end, end_f) in pairwise(turns):
        span = round((end - start) / timedelta(hours=1))
        hours.extend(
            Hour(
                start + timedelta(hours=step),
                start_f + (end_f - start_f) * (1 - cos(pi * step / span)) / 2,
            )
            for step in range(span)
        )
    last = midnight + timedelta(days=len(days))
    return [hour for hour in hours if midnight <= hour.at_local < last]


def outlooks_of(days: Sequence[tuple[float, float]]) -> list[Outlook]:
    return outlook_by_day(hours_of(days))


def last_day_of(days: Sequence[tuple[float, float]]) -> Outlook:
    return outlooks_of(days)[-1]
