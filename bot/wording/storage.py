"""Answers to "is my sap still good". A rule of thumb: the nose overrules it."""

from __future__ import annotations

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
