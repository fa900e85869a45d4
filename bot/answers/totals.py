"""How much so far: the season, week by week in a mail, or the part of it that is asked for."""

from __future__ import annotations

from datetime import date, timedelta

from bot.answers import storage
from bot.answers.answer import Answer
from bot.answers.asked import Asked
from bot.clock import season_of
from bot.standing import boil_sums
from bot.wording import totals as wording
from bot.wording.days import day


def answer(asked: Asked) -> Answer:
    """The amount that the words ask for; without any, the season's sap and syrup."""
    one = _one_amount(asked)
    if one is not None:
        return Answer(one)
    part = _part(asked)
    if part is not None:
        return Answer(part)
    of = wording.syrup if asked.says("syrup") else wording.season
    return Answer(of(asked.tally, asked.style), table=lambda: _by_week(asked))


def _one_amount(asked: Asked) -> str | None:
    """Anything but the sap and the syrup of all of the sugarbush."""
    style = asked.style
    named = _named(asked)
    if named is not None:
        return named
    if asked.says("taps", "spiles", "tapped", "spouts"):
        by_lot = None if asked.known.taps is None else dict(asked.known.taps.by_lot)
        return wording.taps(by_lot)
    if asked.says("brix", "sugar", "sweetness", "sweet"):
        return wording.mean_brix(asked.tally, style)
    if asked.says("waiting", "waits", "left", "remaining", "hand", "unboiled"):
        return storage.answer(asked).text
    in_jars = asked.says("pints", "quarts") and asked.tally.jars_gallons > 0
    if in_jars or asked.says("jars", "jar", "bottled", "bottles", "canned"):
        return wording.jars(asked.tally, style)
    if asked.says("dumped", "poured", "spilled", "lost", "wasted", "thrown"):
        return wording.poured_out(asked.tally, style)
    if asked.says("hours", "boiled", "boiling"):
        sums = boil_sums(asked.boils)
        return wording.boiled(sums.boils, sums.hours, sums.gallons, style)
    if asked.says("wood", "cord", "cords", "propane", "fuel"):
        return wording.burned(asked.tally, style)
    return None


def _part(asked: Asked) -> str | None:
    """Today, yesterday, the week, or last season."""
    if asked.says("last") and asked.says("season", "year", "spring"):
        return wording.last_season(asked.tally_of(asked.season - 1), asked.style)
    if asked.says("week"):
        days = 14 if asked.says("last") else 7
        first = asked.today - timedelta(days=days - 1)
        last = asked.today - timedelta(days=days - 7)
        name = "The week before" if asked.says("last") else "Last 7 days"
        return wording.days(name, asked.part(asked.season, first, last), asked.style)
    if asked.says("yesterday"):
        on = asked.today - timedelta(days=1)
        return wording.days("Yesterday", asked.part(asked.season, on, on), asked.style)
    if asked.says("today"):
        tally = asked.part(asked.season, asked.today, asked.today)
        return wording.days("Today", tally, asked.style)
    if len(asked.days_named) == 1:
        on = asked.days_named[0]
        return wording.days(day(on, asked.today), asked.part(season_of(on), on, on), asked.style)
    return None


def closing(asked: Asked) -> Answer:
    """The season is told as over: what it came to, and what is left to do."""
    hang = asked.known.taps is not None and asked.known.taps.count > 0
    said = wording.season(asked.tally, asked.style)
    return Answer(wording.closing(said, taps_hang=hang), table=lambda: _by_week(asked))


def _by_week(asked: Asked) -> str:
    """The season's sap, its sugar and the syrup, a line a week, weeks beginning on Mondays."""
    weeks: dict[date, wording.Week] = {}
    for one in asked.book.sums.by_day(asked.sugarbush_id, asked.season):
        monday = one.on - timedelta(days=one.on.weekday())
        week = weeks.setdefault(monday, wording.Week(monday))
        if one.kind == "syrup":
            week.syrup_gallons += one.gallons
        else:
            week.sap_gallons += one.gallons
            week.tested_gallons += one.tested_gallons
            week.sugar += one.sugar
    return wording.by_week(list(weeks.values()), asked.style)


def _named(asked: Asked) -> str | None:
    """The lots whose names are in the question."""
    spoken = f" {asked.text.casefold()} ".replace("?", " ").replace(",", " ")
    said = []
    for lot in asked.known.lots:
        if f" {lot.casefold()} " in spoken:
            sums = asked.book.sums.season(asked.sugarbush_id, asked.season, lot=lot)
            gallons = sum(one.gallons or 0.0 for one in sums if one.kind == "sap")
            said.append(wording.one_place(lot, gallons, asked.style))
    return " ".join(said) or None
