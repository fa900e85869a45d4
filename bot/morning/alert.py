"""Should an alert go this morning, and in what words? A decision of facts, no more."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, timedelta

from bot.clock import FIRST_MONTH_OF_SEASON, season_of
from bot.morning.bush import Bush
from bot.morning.gallons import coming
from bot.outdoors import Outdoors, Swing
from bot.reckoning.first_stretch import first_stretch
from bot.reckoning.mornings import best_hours_to_gather
from bot.reckoning.outlook import Outlook
from bot.reckoning.outlook_figures import FADING_NIGHTS, TRUNK_COLD_SHARE
from bot.standing.wishes import EVERY, NEVER, USUAL_ALERT_AT, Wishes
from bot.wording import mornings, weather
from bot.wording.compose import Part
from bot.wording.style import Style

MORNING, STRETCH = "morning", "first_stretch"

# From this hour on an alert speaks of tomorrow (our own).
_NOON_H = 12
# Tapping is not spoken of before these days, since a hole runs little over 30 days (Ohio State
# University Extension); where the south starts in late December (common practice, no source),
# from there. After April it is over nearly everywhere (common practice, no source).
_TAPPING_FROM, _TAPPING_FROM_SOUTH, _TAPPING_UNTIL = (1, 10), (12, 15), (4, 30)
_SOUTH = frozenset({"VA", "KY", "MO", "TN"})
# What is left out first where one segment is short.
_WAITS, _RANGE, _GATHER, _LAGS, _HOUR = 1, 2, 3, 4, 5


@dataclass(frozen=True, slots=True)
class Alert:
    """What is owed: for what, the day of the matter, and the words."""

    key: str
    local_date: date
    text: str


def alert(
    bush: Bush,
    out: Outdoors,
    wishes: Wishes,
    style: Style,
    *,
    knows_hour: bool,
    knows_what_waits: bool = False,
) -> Alert | None:
    """The alert of one morning, None where there is nothing to say.

    1. Taps pulled, nothing wanted, or nothing known of the day: silence.
    2. No taps set: the first real stretch is told, once a season; never a lone warm day.
    3. Taps in: a run day is told, and a possible one that may be more than drips; any morning to
       those who want it.

    knows_hour: whether an earlier alert has come, so that its hour need not be explained; nor need
    it to those who chose one.
    knows_what_waits: whether a reminder has told today of the sap that waits.
    """
    if wishes.mornings == NEVER or bush.is_over:
        return None
    later = wishes.alert_at.hour >= _NOON_H
    on = out.today + timedelta(days=1 if later else 0)
    if not bush.is_tapped:
        stretch = _stretch(bush, out, style)
        if stretch is not None or wishes.mornings != EVERY:
            return stretch
    day = out.day(on)
    if day is None or not (wishes.mornings == EVERY or _worth_telling(day)):
        return None
    swing = out.swing(on)
    if swing is None:
        return None
    parts = _said(bush, out, day, style)
    fresh = bush.fresh(out.today)
    if fresh.boil_by is not None and not knows_what_waits:
        parts.append(Part(mornings.waits(fresh.gallons, fresh.boil_by, style), _WAITS))
    if out.is_old:
        parts.append(Part(weather.age(out.age)))
    if not knows_hour and wishes.alert_at == USUAL_ALERT_AT:
        parts.append(Part(mornings.CHANGE_HOUR, _HOUR))
    return Alert(MORNING, out.today, mornings.alert(_lead(swing, on, style), parts))


def once_a_season(on: date) -> date:
    """The day that stands for a season in what is owed once in it."""
    return date(season_of(on), 1, 1)


def _worth_telling(day: Outlook) -> bool:
    if not day.complete:
        return False
    if day.outlook == "possible":
        return day.high_f >= weather.POSSIBLE_FROM_HIGH_F and day.nights_unfrozen < FADING_NIGHTS
    return day.outlook != "none"


def _lead(swing: Swing, on: date, style: Style) -> str:
    """The low and the high that the outlook is judged from."""
    return mornings.temperatures(
        weather.low(swing.low_f, swing.low_local, style),
        weather.high(swing.high_f, swing.high_local, swing.evening_f, style),
        on,
        style,
    )


def _said(bush: Bush, out: Outdoors, day: Outlook, style: Style) -> list[Part]:
    """Whether it runs, why not as one would think, and when to gather."""
    if not day.complete:
        return [Part(mornings.OUT_OF_REACH)]
    parts = [Part(weather.runs(day.outlook, day.high_f)), *_why(out, day)]
    if bush.is_tapped and day.outlook != "none":
        parts += _round(bush, out, day, style)
    return parts


def _why(out: Outdoors, day: Outlook) -> list[Part]:
    if day.outlook == "none":
        return []
    if day.nights_unfrozen:
        return [Part(weather.no_freeze(day.nights_unfrozen), _LAGS)]
    warmest = max(out.hours_of(day.date), key=lambda hour: hour.temp_f)
    return [Part(weather.LAGS, _LAGS)] if warmest.trunk_frost >= TRUNK_COLD_SHARE else []


def _round(bush: Bush, out: Outdoors, day: Outlook, style: Style) -> list[Part]:
    """When to gather, and how much may come."""
    ahead = coming(bush, out, day.date)
    parts: list[Part] = []
    if ahead.range is not None:
        parts.append(Part(mornings.expected(ahead.range.low, ahead.range.high, style), _RANGE))
    gather = best_hours_to_gather(out.hours_of(day.date))
    if gather is None:
        return parts
    by, pails = gather.by_local, None
    if ahead.full_at is not None and ahead.full_at < by:
        # The hour in which they run over; never a round before the sap has come.
        by, pails = max(ahead.full_at, _earliest_round(day.date)), bush.bucket_gallons
    words = mornings.gather(by, gather.freezes, pails, style)
    return [*parts, Part(words, _GATHER, mornings.gather_short(by), stays=True)]


def _earliest_round(on: date) -> datetime:
    return datetime(on.year, on.month, on.day, _NOON_H)  # noqa: DTZ001  (a wall clock has no zone)


def _stretch(bush: Bush, out: Outdoors, style: Style) -> Alert | None:
    """The first real stretch, within the months in which holes are drilled."""
    if not _may_tap(out.today, bush.region):
        return None
    days = out.ahead()
    found = first_stretch(days)
    if found is None:
        return None
    of_stretch = [
        day for day in days if 0 <= (day.date - found.begins).days < found.of_days and day.complete
    ]
    text = mornings.alert(
        mornings.stretch(
            found.begins,
            found.run_days,
            found.of_days,
            weather.heat(min(day.low_f for day in of_stretch), style),
            weather.heat(max(day.high_f for day in of_stretch), style),
            style,
        ),
        [Part(weather.age(out.age))] if out.is_old else [],
    )
    return Alert(STRETCH, once_a_season(out.today), text)


def _may_tap(on: date, region: str | None) -> bool:
    first = _TAPPING_FROM_SOUTH if region in _SOUTH else _TAPPING_FROM
    month_and_day = (on.month, on.day)
    if first[0] >= FIRST_MONTH_OF_SEASON:
        return month_and_day >= first or month_and_day <= _TAPPING_UNTIL
    return first <= month_and_day <= _TAPPING_UNTIL
