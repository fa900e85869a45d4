"""Which reminders are owed to a sugarbush's records at a moment? Decisions of facts, no more.

Nothing nags: one matter makes one text, the graver one goes where two meet, and what was told is
told again only when it is another matter.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from typing import Final

from bot.ledger import Told
from bot.morning.alert import MORNING, once_a_season
from bot.morning.bush import Bush
from bot.morning.gallons import ONE_DAY
from bot.outdoors import Outdoors
from bot.reckoning.mornings import NightFreeze
from bot.reckoning.season_end import SeasonEnd, known_since_january, season_end
from bot.wording import mornings, reminders
from bot.wording.style import Style

BOIL_BY, WARM_SPELL, SEASON_END = "boil_by", "warm_spell", "season_end"
FREEZE, FIRE, WEEK = "freeze", "fire", "week"

# By the wall clock: when sap that waits and the season are looked at, when the coming night is,
# and when the week is summed (our own).
FORENOON_ROUND, AFTERNOON_ROUND, WEEK_ROUND = time(8), time(15), time(19)
SUNDAY = 6
# Until when each is of use that day (our own).
BOIL_UNTIL, GATHER_UNTIL, WEEK_UNTIL = time(17), time(19), time(21)
# A fire that burns this long is asked after, until it counts as forgotten (our own).
FIRE_AFTER, FIRE_UNTIL = timedelta(hours=10), timedelta(hours=20)
_LAST_CALL = time(20, 45)
# Reminders come from 8 to 21 (`consent.HOURS`).
OPENS, CLOSES = time(8), time(21)
# The same sort of weather is not spoken of again within so many days (our own).
_FREEZE_TOLD_DAYS, _WARM_TOLD_DAYS = 3, 4
# A warm day further off is not urgent: the forecast may change (our own).
_WARM_WITHIN = ONE_DAY
# Days that ran since the last gathering, in sums of scores, that leave sap in the pails (our own).
_SAP_IN_PAILS_SCORE = 0.25
# Where the winter is not known, warm nights say nothing of an end before then (our own).
_END_UNKNOWN_FROM = (3, 15)


@dataclass(frozen=True, slots=True)
class Reminder:
    """What is owed: for what, the day of the matter, the words, and until when it is of use, by
    the wall clock."""

    key: str
    local_date: date
    text: str
    until_local: datetime


def forenoon(
    bush: Bush, out: Outdoors | None, told: Sequence[Told], style: Style
) -> Reminder | None:
    """At 8: sap that is due, warmth that will spoil it, else the season's end; the first of
    these that has not been told. out: None where no weather is known."""
    return (
        boil_due(bush, told, style)
        or (None if out is None else _warm(bush, out, told, style))
        or (None if out is None else _end(bush, out, style))
    )


def boil_due(bush: Bush, told: Sequence[Told], style: Style) -> Reminder | None:
    """Sap that has to be boiled today, or was not yesterday; not where this morning's alert said
    so, and not where a fire was lit since, out or not."""
    today = style.today
    stored = bush.fresh(today)
    if stored.boil_by is None or stored.boil_by > today:
        return None
    if bush.never_out is not None and bush.never_out.date() >= stored.lots[0].lot.gathered_on:
        return None
    if _alert_said(told, today, mornings.BOIL_TODAY):
        return None
    if any(one.key == WARM_SPELL and one.local_date >= today - ONE_DAY for one in told):
        return None
    # A lot that was due yesterday and told of then is not told of as overdue.
    if any(one.key == BOIL_BY and one.local_date == stored.boil_by for one in told):
        return None
    due = [lot.lot for lot in stored.lots if lot.boil_by == stored.boil_by]
    text = reminders.boil_by(
        sum(lot.gallons for lot in due), due[0].gathered_on, stored.boil_by, style
    )
    return Reminder(BOIL_BY, stored.boil_by, text, _at(today, BOIL_UNTIL))


def _warm(bush: Bush, out: Outdoors, told: Sequence[Told], style: Style) -> Reminder | None:
    """Warmth today or tomorrow that spoils what is stored, once a spell."""
    stored = bush.fresh(out.today)
    spell = out.warm_spell()
    if stored.boil_by is None or bush.fire_lit is not None or spell is None:
        return None
    if spell.day > out.today + _WARM_WITHIN or stored.boil_by <= out.today:
        return None
    if _told_since(told, WARM_SPELL, out.today - timedelta(days=_WARM_TOLD_DAYS)):
        return None
    text = reminders.warm_spell(
        stored.gallons, spell.day, spell.high_f, fast=spell.fast, style=style
    )
    return Reminder(WARM_SPELL, out.today, text, _at(out.today, BOIL_UNTIL))


def _end(bush: Bush, out: Outdoors, style: Style) -> Reminder | None:
    """The season's end, once a season, while taps hang."""
    if not bush.is_tapped:
        return None
    signs, signs_end = end_signs(out)
    if not signs.nearly_over:
        return None
    if signs.bud_f_days is None and (out.today.month, out.today.day) < _END_UNKNOWN_FROM:
        return None
    buds = signs.buds[-1].partition(" ")[0] if signs.buds else None
    first = signs_end - timedelta(days=signs.warm_nights - 1)
    text = reminders.season_end(first, buds, style)
    return Reminder(SEASON_END, once_a_season(out.today), text, _at(out.today, CLOSES))


def end_signs(out: Outdoors) -> tuple[SeasonEnd, date]:
    """The signs of the season's end in all known days of this year, and the last of those."""
    days = out.day_temperatures()
    known = known_since_january(days)
    return season_end(days if known is None else known), days[-1].date if days else out.today


def afternoon(bush: Bush, out: Outdoors, told: Sequence[Told], style: Style) -> Reminder | None:
    """At 15: a hard freeze tonight, with sap in the pails or in store."""
    tonight = out.freeze(out.today)
    if tonight is None or not tonight.bursts or bush.is_over:
        return None
    pails = _sap_in_pails(bush, out, tonight)
    gallons = bush.fresh(out.today).gallons
    told_lately = _told_since(told, FREEZE, out.today - timedelta(days=_FREEZE_TOLD_DAYS))
    if told_lately or not (pails or gallons > 0):
        return None
    # The morning's alert has said when to gather before it freezes.
    if pails and gallons == 0 and _alert_said(told, out.today, "before it freezes"):
        return None
    text = reminders.freeze(
        tonight.low_f,
        tonight.low_local,
        pails=pails,
        gallons=gallons,
        bursts=tonight.bursts,
        style=style,
    )
    return Reminder(FREEZE, out.today, text, _at(out.today, GATHER_UNTIL))


def _sap_in_pails(bush: Bush, out: Outdoors, tonight: NightFreeze) -> bool:
    """Whether the days since the last gathering, today included, brought sap worth a round that
    is not frozen yet."""
    if not bush.is_tapped or tonight.from_local <= out.now_local:
        return False
    last = bush.last_gathered
    if last == out.today:
        return False
    since = out.today - timedelta(days=_FREEZE_TOLD_DAYS) if last is None else last + ONE_DAY
    come = sum(day.score for day in out.days if since <= day.date <= out.today)
    return come >= _SAP_IN_PAILS_SCORE


def fire(bush: Bush, told: Sequence[Told], style: Style) -> Reminder | None:
    """A fire that was lit ten hours ago and never told out."""
    lit_at = bush.fire_lit
    if lit_at is None:
        return None
    if any(one.key == FIRE and one.local_date == lit_at.date() for one in told):
        return None
    return Reminder(FIRE, lit_at.date(), reminders.fire_lit(lit_at, style), lit_at + FIRE_UNTIL)


def fire_at(lit_at: datetime) -> datetime:
    """When a fire is asked after, by the wall clock: ten hours on, or at 8 after a night; before
    the night where it would be forgotten by then."""
    at = lit_at + FIRE_AFTER
    if OPENS <= at.time() < CLOSES:
        return at
    morning = _at(at.date() + (ONE_DAY if at.time() >= CLOSES else timedelta()), OPENS)
    return morning if morning < lit_at + FIRE_UNTIL else _at(lit_at.date(), _LAST_CALL)


def _alert_said(told: Sequence[Told], on: date, words: str) -> bool:
    return any(one.key == MORNING and one.local_date == on and words in one.body for one in told)


def _told_since(told: Sequence[Told], key: str, since: date) -> bool:
    return any(one.key == key and one.local_date > since for one in told)


def _at(on: date, clock: time) -> datetime:
    return datetime.combine(on, clock)


TOLD_FOR_DAYS: Final = 30
"""How many days back the outbox is asked what was told."""
