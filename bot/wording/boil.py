"""Answers to "how long will it boil", "when do I light the fire", "how much wood"."""

from __future__ import annotations

from datetime import datetime, time

from bot.figures import CUBIC_FEET_PER_CORD, FACE_CORDS_PER_CORD
from bot.wording import amounts
from bot.wording.days import day
from bot.wording.gsm import plain
from bot.wording.style import Style

CAUTION = "Never leave it alone."
OUTDOORS = (
    "Boil outdoors or where the steam gets out, on clear ground, water at hand. No charcoal or"
    " propane in a closed place: carbon monoxide. Mind your local burn rules."
)
RULE = (
    "My rule of thumb is 1 gal of water an hour for each sq ft of pan at a full boil, 0.6 to 1.5"
    " by the fire. Text how each boil went, like: boiled 40 gal in 7 hours, and after three I go"
    " by yours."
)
ASK_PAN = "What size is your pan, like 2x3 ft?"
ASK_PAN_METRIC = "What size is your pan, like 60x90 cm?"
ASK_SAP = "How much sap will you boil?"


def rate_so_far(gallons_an_hour: float, boils: int, style: Style) -> str:
    """What the boils of the season took an hour."""
    rate = amounts.volume(round(gallons_an_hour, 1), style)
    return f"Your own rate is {rate} an hour over {amounts.plural(boils, 'boil')} this season."


def sap(gallons: float, brix: float | None, style: Style) -> str:
    """ "40 gal at 2.2"; no Brix where none was told."""
    said = amounts.volume(gallons, style)
    return said if brix is None else f"{said} at {amounts.brix(round(brix, 1))}"


def takes(
    what: str,
    hours: float,
    least: float,
    most: float,
    *,
    pan: str | None,
    own: str | None,
) -> str:
    """How long a boil takes, by one's own boils or by the pan."""
    about = amounts.about_hours(hours)
    span = f"{amounts.half_hours(least)} to {amounts.half_hours(most)}"
    if own is not None:
        said = f"{what}: about {about} at {own}"
        return f"{said}, {span} as your boils go." if most - least >= _SPAN_SAID else f"{said}."
    where = "" if pan is None else f" in your {plain(pan)} pan"
    return f"{what}: about {about}{where} by rule of thumb, {span} by the fire."


# A span of hours narrower than this is not worth saying.
_SPAN_SAID = 0.5


def own_rate(gallons_per_hour: float, style: Style) -> str:
    """ "your own 8 gal an hour"."""
    return f"your own {amounts.volume(round(gallons_per_hour, 1), style)} an hour"


def light_by(start: datetime, finish: datetime, style: Style, *, dark: bool) -> str:
    """When to light the fire to be done in time."""
    end = f"before dark ({amounts.clock(finish.time())})" if dark else _by(finish, style)
    when = amounts.clock(start.time())
    if start.date() != style.today:
        when += f" {day(start.date(), style.today)}"
    return f"To end {end} light by {when}."


def too_late(finish: datetime, end: datetime, style: Style, *, dark: bool) -> str:
    """Lit now it would burn beyond the time wanted."""
    limit = f"dark ({amounts.clock(finish.time())})" if dark else amounts.clock(finish.time())
    ends = amounts.clock(end.time())
    if end.date() != style.today:
        ends += f" {day(end.date(), style.today)}"
    return f"Lit now it would end near {ends}, past {limit}."


def tomorrow(start: datetime, style: Style) -> str:
    """The same boil a day later."""
    return f"Tomorrow light by {amounts.clock(start.time())}."


def no_sun() -> str:
    """Without a place nobody can tell when it gets dark."""
    return "Where are your trees, ZIP or town? Then I can tell when it gets dark."


def _by(finish: datetime, style: Style) -> str:
    said = f"by {amounts.clock(finish.time())}"
    return said if finish.date() == style.today else f"{said} {day(finish.date(), style.today)}"


def underway(lit_at: datetime, hours_gone: float, style: Style) -> str:
    """An open boil."""
    lit = amounts.clock(lit_at.time())
    if lit_at.date() != style.today:
        lit += f" {day(lit_at.date(), style.today)}"
    return f"Lit {lit}, {amounts.about_hours(hours_gone)} ago."


def along(
    what: str, gone_gallons: float, hours_left: float, over_hours: float, basis: str, style: Style
) -> str:
    """How far it should be."""
    if over_hours > 0:
        return f"By {basis} {what} should be done: watch the pan."
    gone = amounts.rough(gone_gallons, style)
    left = amounts.about_hours(hours_left)
    return f"Of {what} {gone} should be gone, about {left} to go by {basis}."


def pan_was(pan_f: float, at: time, brix: float, left_f: float, style: Style) -> str:
    """What the pan's thermometer last told."""
    return (
        f"Pan {amounts.temperature(pan_f, style)} at {amounts.clock(at)}: about"
        f" {amounts.number(brix, 0)} Brix, {amounts.degrees(left_f, style)} to go."
    )


ASK_THERMOMETER = "The pan's heat tells more: text it, like pan at 214."
ASK_THERMOMETER_METRIC = "The pan's heat tells more: text it, like pan at 101C."


def wood(
    what: str,
    evaporator: tuple[float, float],
    arch: tuple[float, float],
) -> str:
    """Dry wood for a boil, cords low to high, in an evaporator and on a block arch."""
    small = arch[1] < _CORDS_FROM
    unit = "cu ft" if small else "cord"
    factor = CUBIC_FEET_PER_CORD if small else 1.0
    face = (
        f"A face cord is {CUBIC_FEET_PER_CORD / FACE_CORDS_PER_CORD:.0f} cu ft."
        if small
        else f"In face cords {_range(evaporator, 3)} or {_range(arch, 3)}."
    )
    return (
        f"{what}: about {_range(evaporator, factor)} {unit} of dry stacked hard maple in an"
        f" evaporator, {_range(arch, factor)} on a bare block arch. Green takes far more. {face}"
    )


# From this on wood is told in cords, below it in cubic feet.
_CORDS_FROM = 0.25


def own_wood(what: str, cords: float, burned: float, boiled_gallons: float, style: Style) -> str:
    """Wood by what was burned so far."""
    return (
        f"{what}: about {_wood(cords)}, as you burned {amounts.cords(burned)} for"
        f" {amounts.volume(boiled_gallons, style)} so far."
    )


def propane(what: str, pounds: tuple[float, float], style: Style) -> str:
    """Propane for a boil, pounds low to high."""
    low, high = pounds
    said = (
        f"{amounts.two_figures(low * 0.45359237)} to {amounts.two_figures(high * 0.45359237)} kg"
        if style.is_metric
        else f"{amounts.two_figures(low)} to {amounts.two_figures(high)} lb"
    )
    return (
        f"{what}: about {said} of propane, {_range((low / 20, high / 20), 1)} of the 20 lb"
        " cylinders. Outdoors only: carbon monoxide."
    )


def own_propane(what: str, pounds: float, style: Style) -> str:
    """Propane by what was burned so far."""
    return f"{what}: about {amounts.propane(round(pounds), style)}, by what you burned so far."


def syrup_from(
    fuel: str, low_gallons: float, high_gallons: float, brix: float, style: Style
) -> str:
    """What so much fuel boils down."""
    return (
        f"{fuel} boils down about {amounts.rough_range(low_gallons, high_gallons, style)} of syrup"
        f" from sap at {amounts.brix(round(brix, 1))}, dry wood, by how well the fire is kept."
    )


def _wood(cords: float) -> str:
    if cords < _CORDS_FROM:
        return f"{amounts.two_figures(cords * CUBIC_FEET_PER_CORD)} cu ft stacked"
    return f"{amounts.two_figures(cords)} cord"


def _range(span: tuple[float, float], factor: float) -> str:
    low, high = (amounts.two_figures(value * factor) for value in span)
    return low if low == high else f"{low} to {high}"
