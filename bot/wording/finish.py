"""Answers to "when is it syrup": the temperature to draw at, and what an instrument showed."""

from __future__ import annotations

from datetime import date

from bot.figures import HOT_TEST_BRIX_DOUBT
from bot.wording import amounts
from bot.wording.days import day
from bot.wording.standing import confirm
from bot.wording.style import Style

HOT_SYRUP = "Hot syrup clings and burns: gloves, no children near."
NO_PROMISE = "I promise no legal certainty: ask the agriculture department of your state."
NO_PROMISE_METRIC = "I promise no legal certainty: ask your province's agriculture department."


def measured(
    water_f: float, measured_on: date, draw_f: float, syrup_brix: float, style: Style
) -> str:
    """The draw by where water boiled for them."""
    said = (
        f"Water boiled at {amounts.temperature(water_f, style)} for you on"
        f" {day(measured_on, style.today)}, so draw at {amounts.temperature(draw_f, style)}"
        f" for {syrup_brix:g} Brix."
    )
    if measured_on != style.today:
        said += " Boil water again today, it moves with the weather."
    return f"{said} {confirm(style)}"


def reckoned(water_f: float, draw_f: float, syrup_brix: float, style: Style, *, basis: str) -> str:
    """The draw from the height and the air's pressure, when water was not boiled today. basis:
    where they came from, as `standing.water` names it."""
    weather = ", a degree either way by the weather" if basis in ("height", "ground") else ""
    return (
        f"{_BASES[basis]} water boils near {amounts.temperature(water_f, style)}, so draw near"
        f" {amounts.temperature(draw_f, style)} for {syrup_brix:g} Brix{weather}."
        f" Better: boil plain water today with your own thermometer. {confirm(style)}"
    )


_BASES = {
    "barometer": "By your height and barometer",
    "forecast": "By the forecast's air pressure",
    "height": "By your height",
    "ground": "By the forecast's height",
}


def by_rule(rise_f: float, syrup_brix: float, style: Style) -> str:
    """The draw as a rise above boiling water, when none was measured."""
    sea_level = amounts.temperature(212.0 + rise_f, style)
    example = "99.1C" if style.is_metric else "210.4"
    return (
        f"Boil plain water with your thermometer and draw {amounts.degrees(rise_f, style)} above"
        f" that for {syrup_brix:g} Brix: near {sea_level} at sea level, less higher up."
        f' Text me "water boils at {example}" and I tell you yours.'
    )


ASK_HOW_HOT = "How hot was the syrup, in F? A hydrometer reads low in hot syrup."
ASK_HOW_HOT_METRIC = "How hot was the syrup, in C? A hydrometer reads low in hot syrup."


def syrup_test(shown: str, at_f: float, true_brix: float, verdict: str, style: Style) -> str:
    """What a syrup hydrometer really says, and how it stands to the law."""
    return (
        f"{shown} at {amounts.temperature(at_f, style)} is about {true_brix:.1f} Brix. {verdict}"
        f" A hot test is good to {HOT_TEST_BRIX_DOUBT:g} Brix, so test it again cooled."
    )


def done(name: str, least: float) -> str:
    """Dense enough."""
    return f"Syrup: {_line(name, least)}."


def thin(name: str, least: float, short: float) -> str:
    """Not dense enough."""
    return f"Boil on, {short:.1f} short: {_line(name, least)}."


def thick(name: str, most: float) -> str:
    """Denser than the law allows."""
    return f"Too thick: {name} has {most:g} at most, and over 68 it may set crystals. Thin it."


def heavy(name: str, least: float) -> str:
    """Within the law, but so thick that crystals may come."""
    return f"Syrup, on the thick side: {_line(name, least)}, over 67 to 68 crystals may come."


def _line(name: str, least: float) -> str:
    return f"{name} has {least:g} at least"


def brix_told(brix: float, verdict: str, style: Style) -> str:
    """A density that was told without an instrument to correct."""
    no_promise = NO_PROMISE_METRIC if style.is_metric else NO_PROMISE
    return f"{amounts.brix(brix)} Brix, measured at room heat. {verdict} {no_promise}"


def pan_at(
    pan_f: float, brix: float, left_f: float, draw_f: float, style: Style, *, sure: bool
) -> str:
    """What sugar a boiling pan has."""
    water = "" if sure else " if water boils at 212F there"
    if style.is_metric and not sure:
        water = " if water boils at 100C there"
    said = f"A pan at {amounts.temperature(pan_f, style)} is about {amounts.number(brix, 0)} Brix"
    if left_f <= 0:
        return (
            f"{said}{water}: at or past the draw, {amounts.temperature(draw_f, style)}. Check with"
            f" a hydrometer now. {HOT_SYRUP}"
        )
    return (
        f"{said}{water}, {amounts.degrees(left_f, style)} to go: draw at"
        f" {amounts.temperature(draw_f, style)}. {confirm(style)}"
    )


def pan_cold(pan_f: float, water_f: float, style: Style) -> str:
    """A pan cooler than boiling water: nothing can be told of it."""
    return (
        f"A pan at {amounts.temperature(pan_f, style)} is not boiling yet: water boils near"
        f" {amounts.temperature(water_f, style)} for you."
    )
