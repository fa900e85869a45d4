"""Will it run? Today, tomorrow, a night's freeze, the next run, or the days ahead."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta

from bot.answers.asked import Asked
from bot.outdoors import NoWeather, Outdoors
from bot.reckoning.mornings import best_hours_to_gather
from bot.reckoning.outlook_figures import TRUNK_COLD_SHARE
from bot.wording import forecasts as wording
from bot.wording import weather
from bot.wording.compose import Part, fit
from bot.wording.style import Style

_ONE_DAY = timedelta(days=1)
DAYS_AHEAD = 5
# Asked before dawn, "tonight" is the night that is (our own); asked this late, "will it run" is
# about tomorrow (our own).
_DAWN_H, _LATE_H = 5, 15
_WEEKDAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
_FREEZING = ("freeze", "freezes", "freezing", "frost", "frozen", "cold", "colder", "coldest")
_WEEK = (
    *("week", "days", "outlook", "weekend", "coming", "ahead", "upcoming", "extended", "stretch"),
    "forecast",
)
_NEXT = ("when", "next", "first", "soon")
_CREDIT = 6


def answer(asked: Asked) -> str:
    """From the weather as it is known now; without it, why not and what to do."""
    out = asked.weather()
    if not isinstance(out, Outdoors):
        return _none(out, asked.style)
    said = _which(asked)(asked, out)
    if out.is_old:
        said.append(Part(weather.age(out.age)))
    if out.is_invented:
        said.append(Part(weather.INVENTED))
    elif out.source != "file":
        said.append(Part(wording.credit(out.attribution), _CREDIT))
    return fit(said, 1)


def _none(why: NoWeather, style: Style) -> str:
    if why == "no source":
        return wording.NO_SOURCE_METRIC if style.is_metric else wording.NO_SOURCE
    return wording.NO_PLACE if why == "no place" else wording.NO_ANSWER


def _which(asked: Asked) -> Callable[[Asked, Outdoors], list[Part]]:
    """The sort of answer that the words ask for."""
    night = asked.says("tonight", "night", "overnight")
    if asked.says(*_FREEZING) or night:
        return _night
    if _days_named(asked):
        return _days
    if asked.says(*_WEEK):
        return _week
    return _next if asked.says(*_NEXT) else _soon


def _night(asked: Asked, out: Outdoors) -> list[Part]:
    evening = _evening(asked)
    low = out.night_low(evening)
    if low is None:
        return [Part(wording.unknown(evening + _ONE_DAY, out.ends_local, asked.style))]
    night = wording.night(evening, asked.style)
    frozen = out.freeze(evening)
    if frozen is None:
        said = [Part(wording.no_freeze(night, *low, asked.style))]
    else:
        said = [
            Part(
                wording.freezes(
                    night,
                    frozen.low_f,
                    frozen.low_local,
                    frozen.from_local,
                    frozen.frozen_hours,
                    asked.style,
                )
            )
        ]
        if frozen.bursts:
            said.append(Part(wording.BURSTS, 3))
    return [*said, *(Part(part.text, 2) for part in _one(asked, out, evening + _ONE_DAY)[:1])]


def _evening(asked: Asked) -> date:
    """The evening on which the night begins that is asked of."""
    named = _days_named(asked)
    if named:
        return named[0]
    return asked.today - _ONE_DAY if asked.sent.hour < _DAWN_H else asked.today


def _days(asked: Asked, out: Outdoors) -> list[Part]:
    days = _days_named(asked)
    if len(days) == 1:
        return _one(asked, out, days[0])
    return _several(asked, out, days)


def _week(asked: Asked, out: Outdoors) -> list[Part]:
    if asked.says("weekend"):
        saturday = asked.today + timedelta(days=(5 - asked.today.weekday()) % 7)
        return _several(asked, out, [saturday, saturday + _ONE_DAY])
    first = asked.today if asked.sent.hour < _LATE_H else asked.today + _ONE_DAY
    return _several(asked, out, [first + n * _ONE_DAY for n in range(DAYS_AHEAD)])


def _next(asked: Asked, out: Outdoors) -> list[Part]:
    """The next day that is likely to run, else the days ahead."""
    for day in out.ahead():
        is_over = day.date == asked.today and asked.sent.hour >= _LATE_H
        if day.complete and day.outlook in ("likely", "big") and not is_over:
            return _one(asked, out, day.date)
    return [Part(wording.NO_RUN_AHEAD), *(Part(part.text, 2) for part in _week(asked, out))]


def _soon(asked: Asked, out: Outdoors) -> list[Part]:
    """Today and tomorrow; late in the day tomorrow, and the days after it in short."""
    if asked.sent.hour >= _LATE_H:
        tomorrow = asked.today + _ONE_DAY
        after = _several(asked, out, [tomorrow + _ONE_DAY, tomorrow + 2 * _ONE_DAY])
        return [*_one(asked, out, tomorrow), *(Part(part.text, 4) for part in after)]
    today = _one(asked, out, asked.today)
    tomorrow_too = _one(asked, out, asked.today + _ONE_DAY)[:1]
    return [*today, *(Part(part.text, 2) for part in tomorrow_too)]


def _one(asked: Asked, out: Outdoors, on: date) -> list[Part]:
    """A day: low, high and grade; then why it may lag, and when to gather."""
    day, swing = out.day(on), out.swing(on)
    if day is None or swing is None or not day.complete or on < asked.today:
        return [Part(wording.unknown(on, out.ends_local, asked.style))]
    style = asked.style
    said = [
        Part(
            wording.one(
                on,
                weather.low(swing.low_f, swing.low_local, style),
                weather.high(swing.high_f, swing.high_local, swing.evening_f, style),
                weather.runs(day.outlook, day.high_f),
                style,
            )
        )
    ]
    if day.outlook == "none":
        return said
    hours = out.hours_of(on)
    warmest = max(hours, key=lambda hour: hour.temp_f)
    if day.nights_unfrozen:
        said.append(Part(weather.no_freeze(day.nights_unfrozen), 3))
    elif warmest.trunk_frost >= TRUNK_COLD_SHARE:
        said.append(Part(weather.LAGS, 3))
    gather = best_hours_to_gather(hours)
    if gather is not None and gather.by_local > asked.sent:
        said.append(Part(wording.gather(gather.by_local), 5))
    return said


def _several(asked: Asked, out: Outdoors, days: list[date]) -> list[Part]:
    """Days in short, as far as they are known to their afternoon."""
    known = [day for on in days if (day := out.day(on)) is not None and day.complete]
    said = []
    if known:
        told = [(day.date, day.outlook, day.low_f, day.high_f) for day in known]
        said.append(Part(wording.several(told, asked.style)))
    unknown = [on for on in days if on not in {day.date for day in known}]
    if unknown:
        said.append(Part(wording.unknown(unknown[0], out.ends_local, asked.style)))
    return said


def _days_named(asked: Asked) -> list[date]:
    """The days that the words name, today or later, in their order."""
    found: list[date] = []
    for word in "".join(c if c.isalpha() else " " for c in asked.plain).split():
        if word == "today":
            found.append(asked.today)
        elif word in ("tomorrow", "tmrw", "tomorow", "tommorow", "tommorrow", "tomorro"):
            found.append(asked.today + _ONE_DAY)
        elif word[:3] in _WEEKDAYS and word in _DAY_WORDS:
            ahead = (_WEEKDAYS.index(word[:3]) - asked.today.weekday()) % 7
            found.append(asked.today + ahead * _ONE_DAY)
    return list(dict.fromkeys(found))


_DAY_WORDS = frozenset(
    (
        "mon monday tue tues tuesday wed weds wednesday thu thur thurs thursday fri friday"
        " sat saturday sun sunday"
    ).split()
)
