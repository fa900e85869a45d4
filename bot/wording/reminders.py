"""Reminders: each one segment that says from whom it is, what is the matter, and what to do."""

from __future__ import annotations

from datetime import date, datetime

from bot.tally import Tally
from bot.wording import amounts, weather
from bot.wording.compose import Part, fit
from bot.wording.days import day
from bot.wording.mornings import SENDER
from bot.wording.standing import expected
from bot.wording.style import Style


def _said(words: str, *spare: str) -> str:
    """One segment; of the sentences after the first the last goes first."""
    parts = [Part(f"{SENDER} {words}")]
    parts += [Part(more, rank) for rank, more in enumerate(spare, 1) if more]
    return fit(parts, 1)


def boil_by(gallons: float, gathered_on: date, boil_by: date, style: Style) -> str:
    """Sap has reached its day, or is past it."""
    much = amounts.rough(gallons, style).removeprefix("about ")
    since = day(gathered_on, style.today)
    if boil_by < style.today:
        return _said(
            f"{much} of sap from {since} is past its day. Smell it: clear and sweet, boil now;"
            " sour or ropy, pour it out.",
            "A rule of thumb.",
        )
    return _said(
        f"{much} of sap from {since} should be boiled today.",
        "A rule of thumb, your nose knows better.",
        f'Done already? Text it, like "boiled {"80 L" if style.is_metric else "20 gal"}".',
    )


def warm_spell(gallons: float, on: date, high_f: float, *, fast: bool, style: Style) -> str:
    """Warmth that spoils stored sap."""
    much = amounts.rough(gallons, style).removeprefix("about ")
    is_today = on == style.today
    when = "today" if is_today else day(on, style.today)
    how = "fast" if fast else "sooner"
    return _said(
        f"{weather.heat(high_f, style)} {when}. The {much} that waits will spoil {how}: boil it"
        f" {'today' if is_today else 'before'}, or pack it in snow or ice."
    )


def freeze(
    low_f: float,
    low_local: datetime,
    *,
    pails: bool,
    gallons: float,
    bursts: bool,
    style: Style,
) -> str:
    """A freezing night: sap in the pails, sap in jars and glass."""
    tonight = f"{weather.heat(low_f, style)} tonight."
    todo = []
    if pails:
        todo.append("Gather before dark: full pails freeze and can split.")
    if bursts and gallons > 0:
        much = amounts.rough(gallons, style).removeprefix("about ")
        todo.append(f"Of the {much} that waits, what is in glass or jars can burst: bring it in.")
    return _said(" ".join([tonight, *todo[:1]]), *todo[1:])


def fire_lit(lit_at: datetime, style: Style) -> str:
    """A fire that was lit long ago and never told out."""
    when = amounts.clock(lit_at.time())
    if lit_at.date() != style.today:
        when = f"{when} {day(lit_at.date(), style.today)}"
    return _said(
        f"your fire was lit at {when}, and I have no word that it is out.",
        'Is it? Text it, like "fire out, boiled 7 hours".',
    )


def week(week_gallons: float, week_syrup: float, tally: Tally, style: Style) -> str:
    """The weekly total."""
    told = [f"{amounts.volume(week_gallons, style)} of sap" if week_gallons else "no sap"]
    if week_syrup:
        told.append(f"{amounts.syrup(week_syrup, style)} of syrup drawn")
    season = f"Season {amounts.volume(tally.sap_gallons, style)}, {expected(tally, style)}."
    return _said(
        f"this week {' and '.join(told)}.",
        season if tally.sap_records else "",
        f"Drawn so far {amounts.syrup(tally.syrup_gallons, style)}." if tally.syrup_gallons else "",
    )


def season_end(no_freeze_from: date, buds: str | None, style: Style) -> str:
    """The season seems to be near its end: a nudge, never a verdict."""
    since = day(no_freeze_from, style.today)
    is_past = no_freeze_from < style.today
    because = f"no freeze since {since}" if is_past else f"no freeze from {since} on"
    if buds is not None:
        because += f", {buds} maple should bloom"
    return _said(
        f"the season may be near its end: {because}.",
        "Taste sap before you boil it.",
        "When you quit, pull every spile.",
    )
