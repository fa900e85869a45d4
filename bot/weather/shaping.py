"""Hours from what services give instead: coarse steps, and a low and high for some hours."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from itertools import pairwise
from math import cos, pi

from bot.weather.forecast import ONE_HOUR, Hour

LONGEST_STEP_HOURS = 6


@dataclass(frozen=True, slots=True)
class Step:
    """An instant, and the low and high (F) of the six hours that it begins, where told."""

    hour: Hour
    low_f: float | None = None
    high_f: float | None = None


def hours_of_steps(steps: Sequence[Step]) -> list[Hour]:
    """One hour after another through steps of up to six hours; longer gaps stay open.

    Between two instants the curve turns at the step's low and high: read from six-hourly
    instants alone, a night's low is 1.4 to 1.9 F too warm and a day's high 1.0 to 1.1 F too cold.
    """
    hours: list[Hour] = []
    for step, following in pairwise(steps):
        hours.append(step.hour)
        gap = round((following.hour.start_utc - step.hour.start_utc) / ONE_HOUR)
        if 1 < gap <= LONGEST_STEP_HOURS:
            hours.extend(_between(step, following.hour, gap))
    hours.extend(step.hour for step in steps[-1:])
    return hours


def reaching(
    hours: Sequence[Hour],
    start_utc: datetime,
    end_utc: datetime,
    *,
    low_f: float | None = None,
    high_f: float | None = None,
) -> list[Hour]:
    """The hours with the coldest lowered to `low_f` and the warmest raised to `high_f`, among
    those from `start_utc` until `end_utc`.

    Only where all of these are known and they do not get there by themselves: the extreme of a
    part of the time may lie in the other part.
    """
    span = round((end_utc - start_utc) / ONE_HOUR)
    inside = [n for n, hour in enumerate(hours) if start_utc <= hour.start_utc < end_utc]
    reached = list(hours)
    if not inside or len(inside) < span:
        return reached
    coldest = min(inside, key=lambda n: hours[n].temp_f)
    warmest = max(inside, key=lambda n: hours[n].temp_f)
    if low_f is not None and low_f < hours[coldest].temp_f:
        reached[coldest] = replace(hours[coldest], temp_f=low_f)
    if high_f is not None and high_f > hours[warmest].temp_f:
        reached[warmest] = replace(hours[warmest], temp_f=high_f)
    return reached


def _between(step: Step, end: Hour, gap: int) -> list[Hour]:
    """The hours strictly between an instant and the next, `gap` hours later."""
    turns = [(0, step.hour.temp_f), *_turns(step, end, gap), (gap, end.temp_f)]
    hours = []
    for (at, from_f), (until, to_f) in pairwise(turns):
        for n in range(at + 1, until + 1):
            share = (1 - cos(pi * (n - at) / (until - at))) / 2
            hours.append(
                Hour(
                    step.hour.start_utc + n * ONE_HOUR,
                    from_f + (to_f - from_f) * share,
                    _part_way(step.hour.sea_level_inhg, end.sea_level_inhg, n / gap),
                )
            )
    return hours[:-1]


def _turns(step: Step, end: Hour, gap: int) -> list[tuple[int, float]]:
    """Where the curve turns between the two instants: (hour, F). The low and the high count only
    where they lie outside what the instants themselves span."""
    if gap != LONGEST_STEP_HOURS:
        return []
    ends = (step.hour.temp_f, end.temp_f)
    low_f = step.low_f if step.low_f is not None and step.low_f < min(ends) else None
    high_f = step.high_f if step.high_f is not None and step.high_f > max(ends) else None
    early, late = gap // 3, gap - gap // 3
    if low_f is not None and high_f is not None:
        low_first = abs(ends[0] - low_f) + abs(high_f - ends[1])
        high_first = abs(ends[0] - high_f) + abs(low_f - ends[1])
        if low_first <= high_first:
            return [(early, low_f), (late, high_f)]
        return [(early, high_f), (late, low_f)]
    if low_f is not None:
        return [(early if ends[0] <= ends[1] else late, low_f)]
    if high_f is not None:
        return [(early if ends[0] >= ends[1] else late, high_f)]
    return []


def _part_way(first: float | None, second: float | None, share: float) -> float | None:
    if first is None or second is None:
        return None
    return first + (second - first) * share
