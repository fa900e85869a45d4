"""The part of a season that a question asks about: a day, some days, a month."""

from __future__ import annotations

import calendar
import re
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from bot.answers.asked import Asked
from bot.clock import season_of
from bot.wording.days import day

_DAYS_BACK = re.compile(
    r"\b(?:last|past) (?P<days>\d{1,2}|two|three|four|five|six|seven|ten) days\b"
)
_SPOKEN = {"two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "ten": 10}
_MONTHS = {
    name.casefold(): number
    for names in (calendar.month_name, calendar.month_abbr)
    for number, name in enumerate(names)
    if name
} | {"sept": 9}
# "may" and "mar" are months only behind a word that says so.
_MONTH = re.compile(
    rf"\b(?:in|for|during|of|since|through) (?P<named>{'|'.join(_MONTHS)})\b"
    r"|\b(?P<bare>january|february|march|april|november|december)\b"
)
_LAST_MONTH = re.compile(r"\blast month\b")
_THIS_MONTH = re.compile(r"\bthis month\b")


@dataclass(frozen=True, slots=True)
class Period:
    """Days of one season, local, both included, and what to call them: "Yesterday"."""

    name: str
    season: int
    first: date
    last: date


def period_of(asked: Asked) -> Period | None:
    """The days that the words ask about, None for the whole season."""
    today = asked.today
    back = _DAYS_BACK.search(asked.plain)
    if back is not None:
        days = _SPOKEN.get(back["days"]) or int(back["days"])
        return _days(f"Last {days} days", today - timedelta(days=max(days, 1) - 1), today)
    if asked.says("week", "weekend"):
        return _week(asked)
    if asked.says("yesterday"):
        on = today - timedelta(days=1)
        both = asked.says("today")
        return _days("Yesterday and today" if both else "Yesterday", on, today if both else on)
    if asked.says("today"):
        return _days("Today", today, today)
    if len(asked.days_named) == 1:
        on = asked.days_named[0]
        name = day(on, today)
        since = asked.says("since") and on <= today
        return _days(f"Since {name}", on, today) if since else _days(name, on, on)
    if len(asked.days_named) == 2 and asked.says("between", "from", "to", "through"):
        first, last = sorted(asked.days_named)
        return _days(f"{day(first, today)} to {day(last, today)}", first, last)
    return _month(asked)


def _week(asked: Asked) -> Period:
    """Weeks begin on Mondays; a week of which nobody says which is the last seven days."""
    today = asked.today
    monday = today - timedelta(days=today.weekday())
    if asked.says("weekend"):
        # The one that has begun last: this one from its Saturday on.
        saturday = monday + timedelta(days=5)
        saturday -= timedelta(days=7 if saturday > today else 0)
        return _days(f"Weekend of {day(saturday, today)}", saturday, saturday + timedelta(days=1))
    if asked.says("last"):
        first = monday - timedelta(days=7)
        last = first + timedelta(days=6)
        return _days(f"Last week ({day(first, today)} to {day(last, today)})", first, last)
    if asked.says("this"):
        return _days("This week", monday, today)
    return _days("Last 7 days", today - timedelta(days=6), today)


def _month(asked: Asked) -> Period | None:
    """`in february`, `this month`: of the season of the question."""
    today = asked.today
    named = _MONTH.search(asked.plain)
    if named is not None:
        month = _whole_month(asked.season, _MONTHS[named["named"] or named["bare"]])
    elif _THIS_MONTH.search(asked.plain):
        month = _whole_month(season_of(today), today.month)
    elif _LAST_MONTH.search(asked.plain):
        before = today.replace(day=1) - timedelta(days=1)
        month = _whole_month(season_of(before), before.month)
    else:
        return None
    if asked.says("since") and month.first <= today:
        return _days(f"Since {month.name}", month.first, today)
    return month


def months_named(asked: Asked) -> list[Period]:
    """`february and march`: every month that is named."""
    named = {_MONTHS[hit["named"] or hit["bare"]] for hit in _MONTH.finditer(asked.plain)}
    return months_of(asked.season, named)


def months_of(season: int, months: Iterable[int]) -> list[Period]:
    """Months of a season, given as 1 to 12, in the season's order."""
    return [
        _whole_month(season, month)
        for month in sorted(months, key=lambda month: (month <= _LAST_OF_A_SEASON, month))
    ]


def _whole_month(season: int, month: int) -> Period:
    year = season if month <= _LAST_OF_A_SEASON else season - 1
    days = calendar.monthrange(year, month)[1]
    return _days(calendar.month_name[month], date(year, month, 1), date(year, month, days))


_LAST_OF_A_SEASON = 6
"""June: a season runs from July to June and is named by the spring's year."""


def _days(name: str, first: date, last: date) -> Period:
    return Period(name, season_of(last), first, last)
