"""Answers to "will it run?": days, nights, the week, and why there is no forecast."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime, timedelta

from bot.wording import weather
from bot.wording.days import day as weekday
from bot.wording.style import Style

NO_SOURCE = (
    "I have no forecast here, so I will not guess. Rule of thumb: it runs when a night in the 20s"
    " is followed by a day over 40F."
)
NO_SOURCE_METRIC = (
    "I have no forecast here, so I will not guess. Rule of thumb: it runs when a night of -7 to"
    " -2C is followed by a day over 4C."
)
NO_PLACE = (
    "I have no forecast until I know where your trees are. Text me a ZIP, postal code or town,"
    " like Orwell VT."
)
NO_ANSWER = "I can get no forecast just now, so I will not guess. Ask again in a while."
NO_RUN_AHEAD = "No run in sight as far as the forecast goes."
_GRADES = {"none": "no run", "possible": "possible", "likely": "likely", "big": "big"}


def name(on: date, style: Style) -> str:
    """ "Today", "Tomorrow", or the weekday."""
    ahead = (on - style.today).days
    return {0: "Today", 1: "Tomorrow"}.get(ahead, weekday(on, style.today))


def one(on: date, low: str, high: str, runs: str, style: Style) -> str:
    """A day: its low and high, and whether it runs."""
    return f"{name(on, style)} {low}, {high}. {runs}"


def several(days: Sequence[tuple[date, str, float, float]], style: Style) -> str:
    """Some days in short, each (day, grade, low F, high F): "Thu likely 24/43F, Fri big 26/47F"."""
    said = []
    for on, grade, low_f, high_f in days:
        low = weather.heat(low_f, style)[:-1]
        said.append(
            f"{weekday(on, style.today)} {_GRADES[grade]} {low}/{weather.heat(high_f, style)}"
        )
    return f"Run outlook: {', '.join(said)}."


def unknown(on: date, ends_local: datetime, style: Style) -> str:
    """A day past the end of the forecast, or on which it ends."""
    # A day's end is said by the day that ends.
    last = (ends_local - timedelta(minutes=1)).date()
    end = f"{weekday(last, style.today)} {weather.hour(ends_local)}"
    which = name(on, style)
    which = which.lower() if which in ("Today", "Tomorrow") else which
    return f"The forecast ends {end}, so I can't tell of {which}."


def freezes(
    night: str, low_f: float, low_local: datetime, from_local: datetime, hours: int, style: Style
) -> str:
    """A night in which sap freezes."""
    return (
        f"It freezes {night}: {weather.heat(low_f, style)} at {weather.hour(low_local)},"
        f" freezing from {weather.hour(from_local)}, {hours} h."
    )


def no_freeze(night: str, low_f: float, low_local: datetime, style: Style) -> str:
    """A night that stays above."""
    return (
        f"No freeze {night}: {weather.heat(low_f, style)} at the coldest,"
        f" {weather.hour(low_local)}."
    )


def night(evening: date, style: Style) -> str:
    """ "tonight", "tomorrow night", "Sat night"."""
    ahead = (evening - style.today).days
    return {0: "tonight", 1: "tomorrow night", -1: "this night"}.get(
        ahead, f"{weekday(evening, style.today)} night"
    )


BURSTS = "Sap in jars or full pails can burst."


def gather(by_local: datetime) -> str:
    """By when to make the round."""
    return f"Gather by {weather.hour(by_local)}."


def credit(attribution: str) -> str:
    """What the licence of the weather asks to be said."""
    return f"({attribution})"
