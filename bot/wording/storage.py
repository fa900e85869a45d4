"""Answers to "is my sap still good". A rule of thumb: the nose overrules it."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from bot.wording import amounts
from bot.wording.compose import sentence
from bot.wording.days import day
from bot.wording.style import Style

_NOSE = "Sour, ropy or smelly: pour it out."


def nothing_waits(cold_f: float, style: Style) -> str:
    """No sap on hand by the tally."""
    cold = amounts.cold_limit(cold_f, style)
    return (
        f"By my tally no sap waits. Rule of thumb: under {cold} it keeps a few days,"
        f" warm sap is boiled the same day. {_NOSE}"
    )


def _example(style: Style) -> str:
    return "2C" if style.is_metric else "36F"


def waiting(
    gallons: float,
    oldest: date,
    boil_by: date,
    warmest_f: float | None,
    overdue_gallons: float,
    style: Style,
) -> str:
    """How much waits and by when to boil it."""
    about = sentence(amounts.rough(gallons, style)).rstrip(".")
    said = f"{about} waits, the oldest from {day(oldest, style.today)}"
    if warmest_f is not None:
        said += f", stored at {amounts.temperature(warmest_f, style)}"
    if overdue_gallons > 0:
        late = amounts.rough(overdue_gallons, style)
        return (
            f"{said}. By rule of thumb {late} of it is past its day: smell it, boil it today."
            f" {_NOSE}"
        )
    by = "today" if boil_by <= style.today else f"by {day(boil_by, style.today)}"
    ask = (
        ""
        if warmest_f is not None
        else f" Tell me how cold it is kept, like: sap at {_example(style)}."
    )
    return f"{said}. By rule of thumb boil it {by}. {_NOSE}{ask}"


# More lots than this are not listed.
_MOST_LOTS = 6


def in_order(lots: Sequence[tuple[float, date, date]], style: Style) -> str:
    """Lots as (gallons, gathered on, boil by), the first to boil first."""
    said = []
    for gallons, gathered_on, by in lots[:_MOST_LOTS]:
        when = "today" if by <= style.today else f"by {day(by, style.today)}"
        rough = amounts.rough(gallons, style).removeprefix("about ")
        said.append(f"{rough} of {day(gathered_on, style.today)} {when}")
    left = len(lots) - len(said)
    more = f" and {left} more" if left else ""
    return f"Boil in this order: {', '.join(said)}{more}. Don't pour fresh sap on old."


def keeps_at(sap_f: float, days: int, days_old: int | None, style: Style) -> str:
    """How long sap of a temperature keeps, and whether some that is so old still does."""
    heat = amounts.temperature(sap_f, style)
    rule = (
        f"Sap at {heat} is boiled the day it is gathered"
        if days == 0
        else f"Sap at {heat} keeps about {amounts.plural(days, 'day')}"
    )
    if days_old is None:
        return f"{rule}, by rule of thumb. Clear and cold: keep it. Cloudy: boil at once. {_NOSE}"
    left = days - days_old
    if left < 0:
        verdict = (
            f"At {amounts.plural(days_old, 'day')} old it is past that: smell it, boil it now."
        )
    elif left == 0:
        verdict = "Boil it today."
    else:
        verdict = f"Boil it within {amounts.plural(left, 'day')}."
    return f"{rule}, by rule of thumb. {verdict} Cloudy: at once. {_NOSE}"
