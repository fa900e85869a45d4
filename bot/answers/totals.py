"""How much so far: the season, week by week in a mail, or the part of it that is asked for."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import date, timedelta

from bot.answers import storage
from bot.answers.answer import Answer
from bot.answers.asked import Asked
from bot.answers.period import Period, months_named, months_of, period_of
from bot.standing import Boil, boil_sums
from bot.tally import Tally
from bot.wording import totals as wording


def answer(asked: Asked) -> Answer:
    """The amount that the words ask for; without any, the season's sap and syrup."""
    if asked.says("last") and asked.says("season", "year", "spring"):
        return Answer(wording.last_season(asked.tally_of(asked.season - 1), asked.style))
    if asks_per_tap(asked):
        return Answer(per_tap(asked))
    if _EACH_DAY.search(asked.plain):
        return Answer(wording.each_day(_days(asked), asked.style))
    if _RATIO.search(asked.plain):
        return Answer(wording.ratio(asked.tally, asked.style))
    if _EACH_WEEK.search(asked.plain):
        return Answer(wording.weeks(_weeks(asked), asked.style), table=lambda: _by_week(asked))
    if _EACH_MONTH.search(asked.plain):
        return Answer(_by_month(asked))
    period = period_of(asked)
    one = _one_amount(asked, period)
    if one is not None:
        return Answer(one)
    months = months_named(asked)
    if len(months) > 1:
        return Answer(_of_months(asked, months))
    if period is not None:
        return Answer(wording.days(period.name, part_of(asked, period), asked.style))
    of = wording.syrup if asked.says("syrup") else wording.season
    return Answer(of(asked.tally, asked.style), table=lambda: _by_week(asked))


def asks_per_tap(asked: Asked) -> bool:
    """True where the words ask what a tap has given, and something can be told."""
    has_taps = asked.known.taps is not None and asked.known.taps.count > 0
    return has_taps and asked.tally.sap_records > 0 and bool(_PER_TAP.search(asked.plain))


def per_tap(asked: Asked) -> str:
    """What the taps that hang have given, one with another."""
    assert asked.known.taps is not None
    return wording.per_tap(asked.tally, asked.known.taps.count, asked.style)


def part_of(asked: Asked, period: Period) -> Tally:
    """Some days in numbers."""
    return asked.part(period.season, period.first, period.last)


def _one_amount(asked: Asked, period: Period | None) -> str | None:
    """Anything but the sap and the syrup of all of the sugarbush."""
    style = asked.style
    lots = lots_named(asked)
    if asked.says("taps", "spiles", "tapped", "spouts"):
        by_lot = None if asked.known.taps is None else dict(asked.known.taps.by_lot)
        return wording.taps_of(lots, by_lot or {}) if lots else wording.taps(by_lot)
    if lots and asked.says("brix", "sugar", "sweetness", "sweet", "sweetest"):
        return " ".join(_sugar_of_lot(asked, lot) for lot in lots)
    if lots:
        return " ".join(_of_lot(asked, lot, period) for lot in lots)
    if asked.says("day") and asked.says(*_BEST):
        return _best_day(asked)
    if asked.says("week") and asked.says(*_BEST):
        return _best_week(asked)
    name = None if period is None else period.name
    tally = asked.tally if period is None else part_of(asked, period)
    if asked.says("brix", "sugar", "sweetness", "sweet"):
        return wording.mean_brix(tally, style, name)
    in_jars = asked.says("pints", "quarts") and asked.tally.jars_gallons > 0
    if in_jars or asked.says("jars", "jar", "bottled", "bottle", "bottles", "canned"):
        return wording.jars(tally, style, name)
    if asked.says("waiting", "waits", "left", "remaining", "hand", "unboiled"):
        return storage.answer(asked).text
    if asked.says(*_POURED):
        return wording.poured_out(tally, style, name)
    if asked.says("hours", "boiled", "boiling", "boil", "boils"):
        sums = boil_sums(_boils(asked, period))
        burning = asked.known.boil
        if burning is None or burning.began_at is None:
            return wording.boiled(sums.boils, sums.hours, sums.gallons, style, name)
        hours = (asked.sent - burning.began_at) / timedelta(hours=1)
        said = wording.burns(burning.began_at, hours, style)
        if not sums.boils:
            return said
        return f"{said} {wording.boiled(sums.boils, sums.hours, sums.gallons, style, name)}"
    if asked.says("wood", "cord", "cords", "propane", "fuel"):
        return wording.burned(tally, style, name)
    return None


def _best_day(asked: Asked) -> str:
    """The day of the season that gave most sap."""
    days = asked.book.sums.by_day(asked.sugarbush_id, asked.season)
    sap = [(one.gallons, one.on) for one in days if one.kind == "sap" and one.gallons]
    if not sap:
        return wording.season(asked.tally, asked.style)
    gallons, on = max(sap)
    return wording.best_day(on, gallons, asked.style)


def _of_months(asked: Asked, months: Sequence[Period]) -> str:
    """What each month came to, one behind the other."""
    return " ".join(wording.days(one.name, part_of(asked, one), asked.style) for one in months)


def _by_month(asked: Asked) -> str:
    """The months of the season in which something was gathered or drawn."""
    by_day = asked.book.sums.by_day(asked.sugarbush_id, asked.season)
    with_something = {one.on.month for one in by_day if one.gallons}
    if not with_something:
        return wording.season(asked.tally, asked.style)
    return _of_months(asked, months_of(asked.season, with_something))


def _best_week(asked: Asked) -> str:
    """The week of the season that gave most sap."""
    weeks = [week for week in _weeks(asked) if week.sap_gallons > 0]
    if not weeks:
        return wording.season(asked.tally, asked.style)
    best = max(weeks, key=lambda week: week.sap_gallons)
    return wording.best_week(best, asked.style)


_BEST = ("best", "most", "biggest", "which")
_PER_TAP = re.compile(r"\b(?:per|each|every|a|1) (?:tap|spile|spout|hole)\b")
_EACH_WEEK = re.compile(r"\b(?:(?:each|every|per|by|by the) week|week by week|weekly)\b")
_EACH_MONTH = re.compile(r"\b(?:(?:each|every|per|by|by the) month|month by month|monthly)\b")
_EACH_DAY = re.compile(r"\b(?:(?:each|every|per|by|by the) day|day by day)\b")
_RATIO = re.compile(r"\bratio\b")
# So many days fit a text.
_DAYS_TOLD = 7
_POURED = (
    *("dump", "dumped", "pour", "poured", "spill", "spilled", "lose", "lost"),
    *("waste", "wasted", "throw", "threw", "thrown"),
)


def _boils(asked: Asked, period: Period | None) -> list[Boil]:
    """The boils of the season, or those that ended within the days asked about."""
    if period is None:
        return asked.boils
    return [
        boil
        for boil in asked.boils
        if boil.ended_at is not None and period.first <= boil.ended_at.date() <= period.last
    ]


def closing(asked: Asked) -> Answer:
    """The season is told as over: what it came to, and what is left to do."""
    hang = asked.known.taps is not None and asked.known.taps.count > 0
    said = wording.season(asked.tally, asked.style)
    closed = wording.closing(said, taps_hang=hang)
    return Answer(closed, table=lambda: _by_week(asked), ends_season=True)


def _days(asked: Asked) -> list[tuple[date, float]]:
    """The last days that brought sap, with their gallons."""
    by_day = asked.book.sums.by_day(asked.sugarbush_id, asked.season)
    sap = sorted((one.on, one.gallons) for one in by_day if one.kind == "sap" and one.gallons)
    return sap[-_DAYS_TOLD:]


def _by_week(asked: Asked) -> str:
    """The season's weeks, a line each."""
    return wording.by_week(_weeks(asked), asked.style)


def _weeks(asked: Asked) -> list[wording.Week]:
    """The season's sap, its sugar and the syrup by weeks, which begin on Mondays."""
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
    return list(weeks.values())


def lots_named(asked: Asked) -> list[str]:
    """The lots whose names are in the question."""
    spoken = f" {asked.text.casefold()} ".replace("?", " ").replace(",", " ")
    return [lot for lot in asked.known.lots if f" {lot.casefold()} " in spoken]


def _sugar_of_lot(asked: Asked, lot: str) -> str:
    """The mean sugar of one lot's sap this season, else that of its tests."""
    sums, bush = asked.book.sums, asked.sugarbush_id
    sap = next((one for one in sums.sap_by(bush, asked.season, "lot") if one.name == lot), None)
    tests = next((one for one in sums.sugar_by(bush, asked.season, "lot") if one.name == lot), None)
    if sap is not None and sap.brix is not None:
        return wording.sugar_of_place(lot, sap.brix)
    return wording.sugar_of_place(lot, None if tests is None else tests.mean_brix)


def _of_lot(asked: Asked, lot: str, period: Period | None) -> str:
    """The sap of one lot, of all the season or of the days asked about."""
    season = asked.season if period is None else period.season
    first, last = (None, None) if period is None else (period.first, period.last)
    sums = asked.book.sums.season(asked.sugarbush_id, season, first=first, last=last, lot=lot)
    gallons = sum(one.gallons or 0.0 for one in sums if one.kind == "sap")
    return wording.one_place(lot, gallons, asked.style, None if period is None else period.name)
