"""Where they stand: the season's sap, the syrup in it, and what each kind adds up to."""

from __future__ import annotations

from datetime import date, datetime

from bot.figures import BRIX_PER_F_NEAR_FINISH
from bot.tally import Tally
from bot.units import factor
from bot.wording import amounts
from bot.wording.compose import sentence
from bot.wording.days import day
from bot.wording.gsm import plain
from bot.wording.style import Style


def season(tally: Tally, style: Style) -> str:
    """The season's sap and what it should make."""
    if not tally.sap_records:
        return "No sap in the tally yet this season."
    return f"Season {amounts.volume(tally.sap_gallons, style)}, {expected(tally, style)}."


def expected(tally: Tally, style: Style) -> str:
    """ "about 1.4 gal syrup", and the Brix if that is only assumed."""
    said = f"{amounts.about_syrup(tally.expected_syrup_gallons, style)} syrup"
    if tally.brix_is_assumed:
        return f"{said} if it tests {amounts.brix(tally.expected_brix)}"
    return said


def just_this(tally: Tally, style: Style) -> str:
    """What a season makes whose only sap was just told."""
    said = f"{amounts.about_syrup(tally.expected_syrup_gallons, style)} of syrup"
    if tally.brix_is_assumed:
        said += f" if it tests {amounts.brix(tally.expected_brix)}"
    return f"That should make {said}."


def short(tally: Tally, style: Style) -> str:
    """The shortest word on where they stand."""
    if tally.sap_records:
        return f"Season {amounts.volume(tally.sap_gallons, style)}."
    if tally.syrup_records:
        return f"Season {amounts.syrup(tally.syrup_gallons, style)} of syrup."
    return "No sap in the tally yet this season."


def drawn(tally: Tally, just_told: int, style: Style) -> str:
    """Syrup drawn this season, if there is more than the draws just told, against what the sap
    should give."""
    said = []
    if tally.syrup_records > just_told:
        said.append(f"Season {amounts.syrup(tally.syrup_gallons, style)} drawn.")
    if tally.sap_records:
        gallons = amounts.volume(tally.sap_gallons, style)
        said.append(f"{gallons} of sap should make {_about(tally, style)}.")
    return " ".join(said)


def drawn_too_much(tally: Tally, style: Style) -> str:
    """More syrup than the sap in the tally could give: a remark, not a refusal."""
    gallons = amounts.volume(tally.sap_gallons, style)
    return (
        f"Season {amounts.syrup(tally.syrup_gallons, style)} drawn, more than {gallons} of sap"
        f" should make ({_about(tally, style)}): some sap may be missing here."
    )


def _about(tally: Tally, style: Style) -> str:
    return amounts.about_syrup(tally.expected_syrup_gallons, style)


def jars(tally: Tally, style: Style) -> str:
    """What is in jars this season."""
    return f"Season {amounts.volume(tally.jars_gallons, style)} in jars."


def jars_too_many(tally: Tally, style: Style) -> str:
    """More in jars than was drawn: a remark."""
    return (
        f"Season {amounts.volume(tally.jars_gallons, style)} in jars, more than the"
        f" {amounts.syrup(tally.syrup_gallons, style)} drawn in this tally."
    )


def spent(tally: Tally) -> str:
    """Money spent this season."""
    return f"Season {amounts.dollars(tally.cost_dollars)}."


def burned(tally: Tally, style: Style) -> str:
    """Fuel burned this season."""
    told = []
    if tally.cords:
        told.append(amounts.cords(tally.cords))
    if tally.propane_lb:
        told.append(amounts.propane(tally.propane_lb, style))
    return f"Season {' and '.join(told)}." if told else ""


def boiled(hours: float) -> str:
    """Hours boiled this season."""
    return f"Season {amounts.hours(hours)} of boiling."


def taps_hanging(count: int) -> str:
    """Taps that hang now."""
    return f"{amounts.plural(count, 'tap')} in all."


def taps_left(count: int) -> str:
    """Taps that still hang after some were pulled."""
    return f"{count} left in."


def law(name: str, min_brix: float) -> str:
    """The density that the law wants where the trees are."""
    return f"Syrup in {plain(name)} is {min_brix:g} Brix or denser by law."


def sap_for_a_gallon(gallons: float, style: Style) -> str:
    """How much sap of this sugar makes a gallon, or a litre, of syrup."""
    if style.is_metric:
        return f"About {amounts.number(gallons, 0)} L of that makes 1 L of syrup."
    return f"About {amounts.number(gallons, 0)} gal of that makes 1 gal of syrup."


def waits(gallons: float, style: Style) -> str:
    """Sap that waits to be boiled."""
    return sentence(f"{amounts.rough(gallons, style)} waits")


def keep_cold(cold_f: float, boil_by: date, style: Style) -> str:
    """The one next step while sap waits, by a rule of thumb."""
    cold = amounts.cold_limit(cold_f, style)
    if boil_by <= style.today:
        return f"Keep it under {cold} and boil today."
    return f"Keep it under {cold} and boil by {day(boil_by, style.today)}."


def boil_by(by: date, style: Style) -> str:
    """The day that stored sap should be boiled by, as a rule of thumb."""
    if by <= style.today:
        return "As a rule of thumb, boil it today."
    return f"As a rule of thumb, boil it by {day(by, style.today)}."


def keeps(days: int) -> str:
    """How long sap keeps at the temperature just told."""
    if days == 0:
        return "As a rule of thumb that sap is boiled the day it is gathered."
    return f"As a rule of thumb sap keeps {amounts.plural(days, 'day')} at that."


def sap_test(true: float, read: float, at_f: float, stem_f: float, style: Style) -> str:
    """What a sap hydrometer really says, when the sap is not as warm as its stem is made for."""
    true_said = f"{true:.1f}"
    said = (
        f"At {amounts.temperature(at_f, style)} with a {amounts.temperature(stem_f, style)} stem"
        f" that is really {true_said}."
    )
    if true_said == f"{read:.1f}":
        return said
    return f'{said} Text "make that {true_said}" to keep it so.'


def draw_at(finish_f: float, syrup_brix: float, style: Style) -> str:
    """The temperature to draw at."""
    return f"Draw at {amounts.temperature(finish_f, style)} for {syrup_brix:g} Brix."


def confirm(style: Style) -> str:
    """A thermometer's limit."""
    if style.is_metric:
        brix = BRIX_PER_F_NEAR_FINISH * factor("delta_degC", "delta_degF")
        return f"Check with a hydrometer: 1C is {amounts.number(brix)} Brix."
    return f"Check with a hydrometer: 1F is {BRIX_PER_F_NEAR_FINISH:g} Brix."


def pan_on_its_way(pan_brix: float, left_f: float, finish_f: float, style: Style) -> str:
    """How far a pan has come."""
    return (
        f"About {amounts.number(pan_brix, 0)} Brix, {amounts.degrees(left_f, style)} to go:"
        f" draw at {amounts.temperature(finish_f, style)}."
    )


def pan_done(finish_f: float, style: Style) -> str:
    """A pan that has reached the draw."""
    return (
        f"That is at or past the draw, {amounts.temperature(finish_f, style)}:"
        " check with a hydrometer now. Hot syrup clings and burns: gloves, no children near."
    )


def pan_below_boiling(water_f: float, style: Style) -> str:
    """A pan cooler than boiling water."""
    return f"That is under {amounts.temperature(water_f, style)}, where water boils for you."


def water_needed(style: Style) -> str:
    """Without the boiling point of water nothing can be told of a pan."""
    return (
        "To tell how far that is: boil plain water with the same thermometer and text"
        f' me, like "water boils at {"99.1C" if style.is_metric else "210.4"}".'
    )


def water_is_old(on: date, style: Style) -> str:
    """The boiling point was measured on another day."""
    return f"(Water measured {day(on, style.today)}; it moves with the weather.)"


WATER_BY_FORECAST = "(By the forecast's air; boil plain water to be sure.)"


def fire_burns(began_at: datetime, style: Style) -> str:
    """A fire that was lit already."""
    return sentence(f"It burns since {amounts.clock(began_at.time())} in my book")


SIGNS = {
    "buds": "The season is near its end: taste for an off, buddy flavor before you boil.",
    "cloudy_sap": "Boil it at once; the syrup will be darker. Sour or ropy sap: pour it out.",
    "yellow_sap": "Boil it at once; the syrup will be darker. It comes late in the season.",
    "off_smell": "Sour, ropy or smelly sap is poured out, and the barrel washed with hot water.",
    "moths": "Strain them out; they come when the season is late.",
}
