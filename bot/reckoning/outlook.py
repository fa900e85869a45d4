"""Will it run? Each local day's outlook from hourly temperatures, and why, in plain words.

The grade is honest about what it is: a ranking of days by physics and few blunt parameters, never
a promise of gallons. Days of 35 to 40 F are called possible at least: many real runs are theirs.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from itertools import groupby
from math import exp
from typing import Literal

from bot.reckoning.hourly import Hour, whole_hours
from bot.reckoning.outlook_figures import (
    AFTERNOON_HOURS,
    BIG_SCORE,
    FADE_BASE_F,
    FADE_FLOOR,
    FADE_HALF_F_DAYS,
    FADE_PER_F_DAY,
    FADING_NIGHTS,
    FREEZING_F,
    FULL_DAY_FLOW_HOURS,
    HARD_FREEZE_F,
    LEAST_POSSIBLE_SCORE,
    LIKELY_SCORE,
    NEAR_FREEZE_F,
    NEARLY_THE_HIGH_F,
    NIGHT_BEGINS_HOUR,
    NIGHT_ENDS_HOUR,
    NIGHT_HOURS_NEEDED,
    NO_THAW_HIGH_F,
    SEASON_TELLING,
    SPENT_SCORE,
    STALE_FREEZE_HOURS,
    STILL_MORNING_HOUR,
    TRUNK_COLD_SHARE,
)
from bot.reckoning.recharge import Drip, drips

Grade = Literal["none", "possible", "likely", "big"]

ONE_DAY = timedelta(days=1)
_NUMBER_WORDS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")


@dataclass(frozen=True, slots=True)
class Outlook:
    """One local day. outlook: none, possible, likely or big; score: 0 to 1, ranks days by how
    surely sap runs; why: plain words with the numbers judged from. low_f: the lowest hour of the
    night before and the morning, high_f: the day's highest, both F, hourly means; nights_unfrozen:
    nights in a row, the last one included, known to have stayed above freezing; complete: whether
    the day's afternoon is known."""

    date: date
    outlook: Grade
    score: float
    why: str
    low_f: float
    high_f: float
    nights_unfrozen: int
    complete: bool


def outlook_by_day(hours: Iterable[Hour]) -> list[Outlook]:
    """The outlook of every local day of which an hour is known, in order.

    The hours may be in any order, have gaps, be six-hourly, begin in mid-season; see
    `whole_hours`. Each day is judged from itself and all hours before it, so give as many of
    those as are known: ten days are plenty, the season since 1 January lets it fade.
    """
    every = drips(whole_hours(hours))
    night_lows = _night_lows(every)
    out: list[Outlook] = []
    warmth_f_days = 0.0
    ends = 0
    for day, of_day in groupby(every, key=lambda drip: drip.at_local.date()):
        todays = list(of_day)
        ends += len(todays)
        if out and day.year != out[-1].date.year:
            warmth_f_days = 0.0
        last_hours = every[max(0, ends - STALE_FREEZE_HOURS) : ends]
        out.append(_judged(day, todays, night_lows, last_hours, _fade(warmth_f_days)))
        warmth_f_days += sum(max(0.0, drip.temp_f - FADE_BASE_F) for drip in todays) / 24
    return out


def _judged(
    day: date,
    todays: Sequence[Drip],
    nights: Mapping[date, float],
    last_hours: Sequence[Drip],
    fade: float,
) -> Outlook:
    unfrozen = _nights_unfrozen(day, nights)
    low_f = nights[day] if day in nights else min(drip.temp_f for drip in todays)
    high_f = max(drip.temp_f for drip in todays)
    known = {drip.at_local.hour for drip in todays}
    complete = known.issuperset(AFTERNOON_HOURS)
    flow_hours = fade * sum(drip.flow for drip in todays)
    score = round(min(1.0, flow_hours / FULL_DAY_FLOW_HOURS), 3)
    grade = _grade(score, high_f, complete, last_hours)
    if grade == "none":
        score = min(score, LEAST_POSSIBLE_SCORE / 2)
    elif grade == "possible":
        score = max(score, LEAST_POSSIBLE_SCORE)
    why = _why(todays, low_f, day in nights, unfrozen, grade, fade)
    if not complete:
        why += f"; known only {_known_hours(todays)}"
    return Outlook(day, grade, score, why, low_f, high_f, unfrozen, complete)


def _grade(score: float, high_f: float, complete: bool, last_hours: Sequence[Drip]) -> Grade:
    spent = score < SPENT_SCORE and _freeze_is_stale(last_hours)
    if complete and (high_f < NO_THAW_HIGH_F or spent):
        return "none"
    if score >= BIG_SCORE:
        return "big"
    return "likely" if score >= LIKELY_SCORE else "possible"


def _freeze_is_stale(last_hours: Sequence[Drip]) -> bool:
    """Whether none of the last hours came near freezing, as far back as they are known."""
    return all(drip.temp_f > NEAR_FREEZE_F for drip in last_hours)


def _fade(warmth_f_days: float) -> float:
    """1 while the season is young, falling to a floor as warmth adds up (Houle et al. 2015)."""
    left = 1 / (1 + exp((warmth_f_days - FADE_HALF_F_DAYS) * FADE_PER_F_DAY))
    return FADE_FLOOR + (1 - FADE_FLOOR) * left


def _night_lows(every: Sequence[Drip]) -> Mapping[date, float]:
    """F, the lowest hour of each sufficiently known night, by the date on which it ends."""
    temps: dict[date, list[float]] = defaultdict(list)
    for drip in every:
        if drip.at_local.hour >= NIGHT_BEGINS_HOUR:
            temps[drip.at_local.date() + ONE_DAY].append(drip.temp_f)
        elif drip.at_local.hour < NIGHT_ENDS_HOUR:
            temps[drip.at_local.date()].append(drip.temp_f)
    return {
        ends: min(of_night)
        for ends, of_night in temps.items()
        if len(of_night) >= NIGHT_HOURS_NEEDED
    }


def _nights_unfrozen(day: date, night_lows: Mapping[date, float]) -> int:
    count = 0
    while (low_f := night_lows.get(day - count * ONE_DAY)) is not None and low_f > FREEZING_F:
        count += 1
    return count


def _why(
    todays: Sequence[Drip],
    low_f: float,
    night_known: bool,
    unfrozen: int,
    grade: Grade,
    fade: float,
) -> str:
    high_f = max(drip.temp_f for drip in todays)
    parts = [_night_words(low_f, night_known, unfrozen), _day_words(todays, high_f)]
    why = ", ".join(parts)
    if unfrozen >= FADING_NIGHTS:
        why += ": fading" if grade != "none" else ": nothing left to run"
    elif high_f > FREEZING_F and _warmest(todays).trunk_frost >= TRUNK_COLD_SHARE:
        why += "; trunks still cold, may lag"
    if fade < SEASON_TELLING and grade != "none":
        why += "; late in the season"
    return why


def _night_words(low_f: float, night_known: bool, unfrozen: int) -> str:
    low = _said(low_f)
    if not night_known:
        return f"night not known, lowest {low}"
    if low_f <= HARD_FREEZE_F:
        return f"froze hard to {low}"
    if low_f <= FREEZING_F:
        return f"froze to {low}"
    if unfrozen <= 1:
        return f"no freeze last night, low {low}"
    return f"no freeze for {_counted(unfrozen)} nights, low {low}"


def _day_words(todays: Sequence[Drip], high_f: float) -> str:
    if high_f <= FREEZING_F:
        how = "stays frozen" if high_f < NO_THAW_HIGH_F else "hardly thaws"
        return f"{how}, {_said(high_f)} at best"
    warmest = _warmest(todays)
    evening = next((drip for drip in todays if drip.at_local.hour >= max(AFTERNOON_HOURS)), None)
    if warmest.at_local.hour < STILL_MORNING_HOUR and evening is not None:
        return (
            f"{_said(high_f)} at {clock_words(warmest.at_local)}, "
            f"falling to {_said(evening.temp_f)} by evening"
        )
    reached = next(
        drip
        for drip in todays
        if drip.temp_f >= high_f - NEARLY_THE_HIGH_F
        and drip.at_local.hour >= min(STILL_MORNING_HOUR, warmest.at_local.hour)
    )
    return f"{_said(high_f)} by {clock_words(reached.at_local)}"


def _warmest(todays: Sequence[Drip]) -> Drip:
    return max(todays, key=lambda drip: drip.temp_f)


def _known_hours(todays: Sequence[Drip]) -> str:
    first, last = todays[0].at_local, todays[-1].at_local
    return f"from {clock_words(first)} to {clock_words(last)}"


def clock_words(at_local: datetime) -> str:
    """The hour as it is said: "2 pm", "noon", "midnight"."""
    if at_local.hour == 0:
        return "midnight"
    if at_local.hour == 12:
        return "noon"
    return f"{at_local.hour % 12 or 12} {'am' if at_local.hour < 12 else 'pm'}"


def _counted(number: int) -> str:
    return _NUMBER_WORDS[number] if number < len(_NUMBER_WORDS) else str(number)


def _said(temp_f: float) -> str:
    """Whole degrees, and tenths about freezing, where rounding would turn a thaw into a freeze."""
    if round(temp_f) == round(FREEZING_F):
        return f"{temp_f:.1f}".removesuffix(".0")
    return f"{temp_f:.0f}"
