"""Hours of temperature made whole: in order, one for each hour, short gaps bridged."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from math import isfinite
from statistics import fmean

from bot.reckoning.outlook_figures import (
    BRIDGED_GAP_HOURS,
    COLDEST_CREDIBLE_F,
    CURVE_OVERSHOOT_F,
    HOTTEST_CREDIBLE_F,
)

ONE_HOUR = timedelta(hours=1)


@dataclass(frozen=True, slots=True)
class Hour:
    """One hour's temperature. at_local: wall clock, naive; temp_f: F, the hour's mean.

    Raises ValueError for an aware time and for a temperature no place on earth has.
    """

    at_local: datetime
    temp_f: float

    def __post_init__(self) -> None:
        if self.at_local.tzinfo is not None:
            raise ValueError(f"at_local must be a wall clock time, not {self.at_local.isoformat()}")
        if not (isfinite(self.temp_f) and COLDEST_CREDIBLE_F <= self.temp_f <= HOTTEST_CREDIBLE_F):
            raise ValueError(
                f"temp_f is {self.temp_f} at {self.at_local.isoformat()}, wanted "
                f"{COLDEST_CREDIBLE_F:g} to {HOTTEST_CREDIBLE_F:g} F"
            )


def whole_hours(hours: Iterable[Hour]) -> list[Hour]:
    """The hours in order, one for each clock hour, gaps of up to seven hours bridged by a curve.

    Several readings of one hour are averaged: ten-minute files, and the hour that the November
    change of clocks has twice. The hour that March leaves out is bridged like any other gap. A
    longer gap is left open: nothing is invented for it.
    """
    by_hour: dict[datetime, list[float]] = defaultdict(list)
    for hour in hours:
        by_hour[hour.at_local.replace(minute=0, second=0, microsecond=0)].append(hour.temp_f)
    known = [Hour(at, fmean(by_hour[at])) for at in sorted(by_hour)]
    whole: list[Hour] = []
    for index, hour in enumerate(known):
        whole.append(hour)
        if index + 1 < len(known):
            whole.extend(_bridge(known, index))
    return whole


def _bridge(known: Sequence[Hour], index: int) -> list[Hour]:
    """The hours missing between known[index] and the next: a cubic curve that leaves each end in
    the direction its neighbours show, so that a low between two readings is not cut off."""
    start, end = known[index], known[index + 1]
    gap = _hours_between(start, end)
    if not 1 < gap <= BRIDGED_GAP_HOURS:
        return []
    leaving = _slope(known, index) * gap
    arriving = _slope(known, index + 1) * gap
    floor = min(start.temp_f, end.temp_f) - CURVE_OVERSHOOT_F
    ceiling = max(start.temp_f, end.temp_f) + CURVE_OVERSHOOT_F
    bridge = []
    for step in range(1, gap):
        x = step / gap
        curve = (
            (2 * x**3 - 3 * x**2 + 1) * start.temp_f
            + (x**3 - 2 * x**2 + x) * leaving
            + (3 * x**2 - 2 * x**3) * end.temp_f
            + (x**3 - x**2) * arriving
        )
        bridge.append(Hour(start.at_local + step * ONE_HOUR, min(max(curve, floor), ceiling)))
    return bridge


def _slope(known: Sequence[Hour], index: int) -> float:
    """F an hour at known[index], from its neighbours on both sides where they are near enough."""
    before = known[index - 1] if index > 0 else known[index]
    after = known[index + 1] if index + 1 < len(known) else known[index]
    if _hours_between(before, known[index]) > BRIDGED_GAP_HOURS:
        before = known[index]
    if _hours_between(known[index], after) > BRIDGED_GAP_HOURS:
        after = known[index]
    span = _hours_between(before, after)
    return (after.temp_f - before.temp_f) / span if span else 0.0


def _hours_between(first: Hour, second: Hour) -> int:
    return round((second.at_local - first.at_local) / ONE_HOUR)
