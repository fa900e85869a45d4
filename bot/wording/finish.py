"""Answers to "when is it syrup"."""

from __future__ import annotations

from datetime import date

from bot.wording import amounts
from bot.wording.days import day
from bot.wording.standing import confirm
from bot.wording.style import Style


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


def by_rule(rise_f: float, syrup_brix: float, style: Style) -> str:
    """The draw as a rise above boiling water, when none was measured."""
    sea_level = amounts.temperature(212.0 + rise_f, style)
    return (
        f"Boil plain water with your thermometer and draw {amounts.degrees(rise_f, style)} above"
        f" that for {syrup_brix:g} Brix: near {sea_level} at sea level, less higher up."
        ' Text me "water boils at 210.4" and I tell you yours.'
    )
