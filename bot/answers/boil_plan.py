"""How long a boil takes, when to light the fire, how much fuel, and how far an open boil is."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, time, timedelta

from bot import figures
from bot.answers import totals
from bot.answers.answer import Answer, asking
from bot.answers.asked import Asked
from bot.clock import local_time
from bot.reckoning.balance import syrup_gallons
from bot.reckoning.boil import BoilTime, boil_time, own_rate, progress, start_by
from bot.reckoning.checks import positive, within
from bot.reckoning.daylight import sunset_utc
from bot.reckoning.finish import finish_f, pan_brix
from bot.reckoning.fuel import heat_btu, propane_for, syrup_from_propane, syrup_from_wood, wood_for
from bot.standing import Boil, boil_sums, season_boils
from bot.wording import amounts as say
from bot.wording import boil as wording

_ABOUT_PROGRESS = (
    *("longer", "left", "done", "along", "far", "nearly", "almost", "progress", "remaining"),
    *("still", "finished", "close"),
)
_ABOUT_FUEL = (
    *("wood", "firewood", "cord", "cords", "propane", "fuel", "gas", "lp", "cylinder", "tank"),
    *("face", "logs", "slabwood"),
)
_ABOUT_START = (
    *("start", "light", "begin", "dark", "sundown", "sunset", "by", "finish", "when", "early"),
    *("time", "tonight", "dinner", "supper", "bed"),
)
_BY_CLOCK = re.compile(
    r"\b(?:by|before|until|till|done at)\s+(?P<hour>\d{1,2})(?::(?P<minute>\d{2}))?"
    r"\s*(?P<half>am|pm|a\.m|p\.m|o'?clock)?(?!\s*(?:gal|brix|%|\d))\b"
)
_NAMED_HOURS = {"noon": time(12), "supper": time(18), "dinner": time(18), "midnight": time(23, 59)}
# An hour without am or pm up to this one is in the afternoon: nobody ends a boil at 6 am.
_AFTERNOON_UP_TO = 11
_QUARTER = timedelta(minutes=15)


@dataclass(frozen=True, slots=True)
class _Load:
    """What is to be boiled: gallons, the Brix reckoned with, and how it is said."""

    gallons: float
    brix: float
    said: str


def answer(asked: Asked) -> Answer:
    """Hours by one's own boils or the pan, with what else was asked: fuel, start, progress."""
    if asked.known.boil is not None and asked.says(*_ABOUT_PROGRESS) and not asked.sap_named:
        return _progress(asked)
    if _USED.search(asked.plain) and asked.sap_named is None:
        return totals.answer(asked)
    own = _told_whole(asked.boils)
    if own and _RATE.search(asked.plain) and asked.sap_named is None:
        sap, hours = (sum(each) for each in zip(*own, strict=True))
        return Answer(wording.rate_so_far(sap / hours, len(own), asked.style))
    fuel = from_fuel(asked)
    if fuel is not None:
        return fuel
    load = _load(asked)
    if load is None:
        return asking(wording.ASK_SAP, asked.text, "if i have {} gal of sap")
    if asked.says(*_ABOUT_FUEL):
        return _fuel(asked, load)
    return _hours(asked, load)


# "what's my rate", "gallons per hour".
_RATE = re.compile(r"\brate\b|\bgph\b|\b(?:gal\w*|lit\w*) (?:per|an|a) h(?:ou)?r\b")
# "how much wood have we burned", "cords so far": what was, and no plan.
_USED = re.compile(
    r"\b(?:have|did) (?:we|i|you)\b.*\b(?:burn\w*|used?|boil\w*|go through|gone through)\b"
    r"|\b(?:burned|burnt|used|boiled)\b.*\b(?:so far|season|week|month|today|yesterday|year)\b"
    r"|\b(?:wood|cords?|propane|fuel)\b.*\b(?:so far|this season|this year|to date)\b"
)


def _load(asked: Asked) -> _Load | None:
    """The sap named, else that of this text, else all that waits."""
    named = asked.sap_named
    if named is None:
        told = [one for one in asked.told if one.kind == "sap" and one.gallons]
        if told:
            gallons = sum(one.gallons or 0.0 for one in told)
            return _loaded(asked, gallons, told[-1].brix)
        if asked.store.gallons <= 0:
            return None
        brix = asked.tally.expected_brix
        said = wording.sap(round(asked.store.gallons, 1), None, asked.style)
        return _Load(asked.store.gallons, brix, f"The {said} that waits")
    return _loaded(asked, named.gallons, named.brix)


def _loaded(asked: Asked, gallons: float, brix: float | None) -> _Load:
    positive("Sap", gallons, "gal")
    usual = asked.tally.expected_brix if brix is None else brix
    within("Sap sugar", usual, *figures.SAP_BRIX, "Brix")
    return _Load(gallons, usual, wording.sap(gallons, brix, asked.style))


def _time(asked: Asked, load: _Load) -> BoilTime | None:
    syrup = syrup_gallons(load.gallons, load.brix, asked.tally.syrup_brix)
    return boil_time(load.gallons, syrup, _pan_ft2(asked), _own_boils(asked))


def _pan_ft2(asked: Asked) -> float | None:
    named = asked.mentioned.pan_ft2
    return asked.gear.pan_ft2 if named is None else named


def _own_boils(asked: Asked) -> list[tuple[float, float]]:
    """Sap and hours of the boils of this season, with those of the last while they are too few;
    none where the question names another pan."""
    if asked.rate_named:
        return [(asked.rate_named, 1.0)] * figures.BOILS_ENOUGH
    named = asked.mentioned.pan_ft2
    if named is not None and named != asked.gear.pan_ft2:
        return []
    own = _told_whole(asked.boils)
    if len(own) < figures.BOILS_ENOUGH:
        own = _told_whole(season_boils(asked.book, asked.sugarbush_id, asked.season - 1)) + own
    return own


def _told_whole(boils: Sequence[Boil]) -> list[tuple[float, float]]:
    return [
        (boil.gallons, boil.hours)
        for boil in boils
        if boil.gallons and boil.hours and not boil.is_open
    ]


def _ask_pan(asked: Asked) -> Answer:
    question = wording.ASK_PAN_METRIC if asked.style.is_metric else wording.ASK_PAN
    return asking(question, asked.text, "my pan is {}", number_only=False)


def _hours(asked: Asked, load: _Load) -> Answer:
    took = _time(asked, load)
    if took is None:
        return _ask_pan(asked)
    said = wording.takes(
        load.said,
        took.hours,
        took.shortest_hours,
        took.longest_hours,
        pan=asked.mentioned.pan or asked.gear.pan,
        own=_own_said(asked) if took.basis == "own boils" else None,
    )
    when = _start(asked, took)
    text = " ".join(part for part in (said, when, wording.CAUTION) if part)
    more = (wording.OUTDOORS,) if took.basis == "own boils" else (wording.RULE, wording.OUTDOORS)
    return Answer(text, more)


def _own_said(asked: Asked) -> str | None:
    rate = own_rate(_own_boils(asked))
    return None if rate is None else wording.own_rate(rate.gallons_per_hour, asked.style)


def _start(asked: Asked, took: BoilTime) -> str:
    """When to light for the time named, or before dark; nothing where neither is asked or the
    fire burns already."""
    by_clock = _finish_named(asked)
    if by_clock is None and not asked.says(*_ABOUT_START):
        return ""
    dark = by_clock is None
    finish = _sunset(asked, 0) if by_clock is None else datetime.combine(asked.today, by_clock)
    if finish is None:
        return wording.no_sun()
    length = timedelta(hours=took.hours)
    start = _quarter_before(start_by(finish, took.hours))
    if start >= asked.sent:
        return wording.light_by(start, finish, asked.style, dark=dark)
    late = wording.too_late(finish, _quarter_before(asked.sent + length), asked.style, dark=dark)
    again = _sunset(asked, 1) if dark else finish + timedelta(days=1)
    if again is None:
        return late
    following = _quarter_before(start_by(again, took.hours))
    if following.date() != again.date():
        return late
    return f"{late} {wording.tomorrow(following, asked.style)}"


def _finish_named(asked: Asked) -> time | None:
    found = _BY_CLOCK.search(asked.plain)
    if found is not None and int(found["hour"]) < 24:
        hour, half = int(found["hour"]), (found["half"] or "").replace(".", "")
        if half == "pm" or (half != "am" and 1 <= hour <= _AFTERNOON_UP_TO):
            hour = hour % 12 + 12
        elif half == "am":
            hour %= 12
        return time(hour, int(found["minute"] or 0) % 60)
    return next((at for word, at in _NAMED_HOURS.items() if asked.says(word)), None)


def _sunset(asked: Asked, days_on: int) -> datetime | None:
    """Sunset by the wall clock of the sugarbush, None while its place is not known."""
    place = None if asked.known.place is None else asked.known.place.detail
    if place is None or place.get("latitude") is None or place.get("zone") is None:
        return None
    on = asked.today + timedelta(days=days_on)
    moment = sunset_utc(on, float(place["latitude"]), float(place["longitude"]))
    return (
        None
        if moment is None
        else local_time(moment, str(place["zone"])).replace(second=0, microsecond=0)
    )


def _quarter_before(at: datetime) -> datetime:
    """The full quarter of an hour at or before."""
    return at - (at - datetime.combine(at.date(), time(0))) % _QUARTER


# --- an open boil ----------------------------------------------------------------------------


def _progress(asked: Asked) -> Answer:
    boil = asked.known.boil
    assert boil is not None
    if boil.began_at is None:
        return Answer(_thermometer(asked))
    gone = max((asked.sent - boil.began_at) / timedelta(hours=1), 0.0)
    said = [wording.underway(boil.began_at, gone, asked.style)]
    pan = _pan_told(asked, boil.began_at)
    gallons = asked.store.gallons
    if gallons > 0:
        load = _Load(gallons, asked.tally.expected_brix, "")
        took = _time(asked, load)
        if took is None and pan is None:
            return _ask_pan(asked)
        if took is not None:
            syrup = syrup_gallons(gallons, load.brix, asked.tally.syrup_brix)
            along = progress(gallons, syrup, took.hours, gone)
            basis = "your own rate" if took.basis == "own boils" else "rule of thumb"
            what = wording.sap(round(gallons, 1), None, asked.style)
            said.append(
                wording.along(
                    what,
                    along.water_gone_gallons,
                    along.hours_left,
                    along.over_hours,
                    basis,
                    asked.style,
                )
            )
    said.append(_thermometer(asked) if pan is None else pan)
    return Answer(" ".join(said))


def _thermometer(asked: Asked) -> str:
    return wording.ASK_THERMOMETER_METRIC if asked.style.is_metric else wording.ASK_THERMOMETER


def _pan_told(asked: Asked, since: datetime) -> str | None:
    """What the pan last told in this boil, None where it told nothing that can be judged."""
    pan = asked.book.records.latest(asked.sugarbush_id, "pan_temp", not_after=asked.sent)
    if pan is None or pan.fahrenheit is None or pan.at_local < since:
        return None
    water = asked.water
    if water is None or pan.fahrenheit < water.fahrenheit:
        return None
    left_f = max(finish_f(water.fahrenheit, asked.tally.syrup_brix) - pan.fahrenheit, 0.0)
    reached = pan_brix(pan.fahrenheit, water.fahrenheit)
    return wording.pan_was(pan.fahrenheit, pan.at_local.time(), reached, left_f, asked.style)


# --- fuel ------------------------------------------------------------------------------------


def _fuel(asked: Asked, load: _Load) -> Answer:
    heat = heat_btu(load.gallons, load.brix, asked.tally.syrup_brix)
    said = []
    fires = _fires(asked)
    boiled = boil_sums(asked.boils).gallons
    if "wood" in fires:
        if asked.tally.cords > 0 and boiled > 0:
            cords = asked.tally.cords * load.gallons / boiled
            said.append(wording.own_wood(load.said, cords, asked.tally.cords, boiled, asked.style))
        else:
            said.append(
                wording.wood(
                    load.said,
                    _cords(heat, figures.EVAPORATOR_EFFICIENCY),
                    _cords(heat, figures.BLOCK_ARCH_EFFICIENCY),
                )
            )
    if "propane" in fires:
        if asked.tally.propane_lb > 0 and boiled > 0:
            pounds = asked.tally.propane_lb * load.gallons / boiled
            said.append(wording.own_propane(load.said, pounds, asked.style))
        else:
            low, high = figures.PROPANE_EFFICIENCY
            span = propane_for(heat, high).pounds, propane_for(heat, low).pounds
            said.append(wording.propane(load.said, span, asked.style))
    return Answer(said[0], (*said[1:], wording.OUTDOORS))


def _fires(asked: Asked) -> tuple[str, ...]:
    """What they burn: as the question names it, else as told, else both."""
    if asked.says("propane", "gas", "lp", "cylinder", "tank"):
        return ("propane",)
    if asked.says("wood", "firewood", "cord", "cords", "face", "logs", "slabwood"):
        return ("wood",)
    return ("wood", "propane") if asked.gear.fire is None else (asked.gear.fire,)


def _cords(heat: float, efficiencies: tuple[float, float]) -> tuple[float, float]:
    low, high = efficiencies
    return wood_for(heat, high).cords, wood_for(heat, low).cords


def from_fuel(asked: Asked) -> Answer | None:
    """What a named amount of fuel boils down, None where none is named."""
    if asked.sap_named is not None:
        return None
    brix, target = asked.tally.expected_brix, asked.tally.syrup_brix
    cords = asked.values("cords", 0.001)
    if cords:
        low = syrup_from_wood(cords[0], figures.BLOCK_ARCH_EFFICIENCY[0], brix, target)
        high = syrup_from_wood(cords[0], figures.EVAPORATOR_EFFICIENCY[1], brix, target)
        named = say.cords(cords[0])
        return Answer(wording.syrup_from(named, low, high, brix, asked.style))
    pounds = asked.values("mass", 0.1)
    if pounds and asked.says("propane", "gas", "lp", "cylinder", "tank"):
        low, high = (
            syrup_from_propane(pounds[0], efficiency, brix, target)
            for efficiency in figures.PROPANE_EFFICIENCY
        )
        named = say.propane(pounds[0], asked.style)
        return Answer(wording.syrup_from(named, low, high, brix, asked.style))
    return None
