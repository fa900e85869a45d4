"""The morning's alert, sentence by sentence. Every unasked text says from whom it is."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime

from bot.wording import amounts, weather
from bot.wording.compose import Part, fit
from bot.wording.days import day as day_words
from bot.wording.style import Style

SENDER = "Pailtext:"
# What the reminder looks for, so that it does not say again what the alert has said.
BOIL_TODAY = "boil today"
CHANGE_HOUR = 'Text "text me at 8" for another hour.'
OUT_OF_REACH = "The forecast ends before the afternoon, so I can't tell if it runs."


def alert(lead: str, parts: Sequence[Part]) -> str:
    """The alert in one segment: what matters least is left out."""
    return fit([Part(f"{SENDER} {lead}"), *parts], 1)


def temperatures(low: str, high: str, on: date, style: Style) -> str:
    """ "24F at dawn, 43F by 2 pm."; the day before it where it is not today."""
    which = "" if on == style.today else f"{day_words(on, style.today)} "
    return f"{which}{low}, {high}."


def gather(by_local: datetime, freezes: bool, pail_gallons: float | None, style: Style) -> str:
    """By when to make the round; with a pail size when the fullest could run over."""
    by = weather.hour(by_local)
    if pail_gallons is not None:
        return f"Your {amounts.volume(pail_gallons, style)} pails could fill: gather by {by}."
    return f"Gather by {by}, before it freezes." if freezes else f"Gather by {by}."


def gather_short(by_local: datetime) -> str:
    """The same in few words."""
    return f"Gather by {weather.hour(by_local)}."


def expected(low_gallons: float, high_gallons: float, style: Style) -> str:
    """What their own gatherings say of such a day: eight in ten are within."""
    low, high = (
        amounts.rough(gallons, style).removeprefix("about ")
        for gallons in (low_gallons, high_gallons)
    )
    unit = low.rpartition(" ")[2]
    return f"Likely {low.removesuffix(f' {unit}')} to {high}."


def waits(gallons: float, boil_by: date, style: Style) -> str:
    """Sap that waits, and by when it should be boiled."""
    much = amounts.rough(gallons, style).removeprefix("about ")
    if boil_by < style.today:
        return f"{much} is past its day: {BOIL_TODAY} if it smells sweet."
    when = BOIL_TODAY if boil_by == style.today else f"boil by {day_words(boil_by, style.today)}"
    return f"{much} waits, {when}."


def stretch(begins: date, run_days: int, of_days: int, low: str, high: str, style: Style) -> str:
    """The first real stretch of the season, to somebody who has not tapped."""
    when = "today" if begins == style.today else day_words(begins, style.today)
    return (
        f"first real stretch from {when}: {run_days} of {of_days} days should run,"
        f" {low} to {high}. Time to tap; text me how many, like 12 taps."
    )


def hour_note(at: str) -> str:
    """At the end of setting up: when the alert comes, and how to have it otherwise."""
    return f'I text on run mornings at {at}; "text me at 8" changes it.'
