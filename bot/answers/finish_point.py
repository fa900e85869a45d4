"""When is it syrup: the temperature to draw at, and what a pan or an instrument showed."""

from __future__ import annotations

import re

from bot import figures
from bot.answers import know_how
from bot.answers.answer import Answer, asking
from bot.answers.asked import Asked
from bot.answers.legal import law_of, verdict
from bot.reading.instruments import SyrupTest, shown
from bot.reckoning.finish import finish_f, pan_brix
from bot.reckoning.instruments import syrup_brix, syrup_brix_from_baume
from bot.units import fahrenheit
from bot.wording import amounts as say
from bot.wording import finish as wording

# Bare figures of a question about a pan, degrees F, and of syrup, Brix (our own).
_PAN_F = (195.0, 245.0)
_PAN_C = (90.0, 118.0)
_SYRUP_BRIX = (55.0, 84.0)
# Asked of the signs of syrup rather than of its heat.
_BY_EYE = re.compile(
    r"\b(?:hydro\w*|float\w*|apron\w*|sheet\w*|spoon|scoop|bubbles?|refracto\w*)\b"
)
# The rise hardly depends on where water boils; any figure within reach gives it.
_SEA_LEVEL_F = 212.0


def answer(asked: Asked) -> Answer:
    """By the figures in the question: a hydrometer, a density, a pan; else the draw for them."""
    test = shown(asked.text, asked.profile)
    if isinstance(test, SyrupTest):
        return _syrup_test(asked, test)
    pan_f = _pan_named(asked)
    if pan_f is not None:
        return _pan(asked, pan_f)
    brix = _brix_named(asked)
    if brix is not None:
        return Answer(wording.brix_told(brix, verdict(law_of(asked), brix), asked.style))
    if _BY_EYE.search(asked.plain):
        return know_how.told(asked, "finishing")
    return Answer(_draw(asked))


def _syrup_test(asked: Asked, test: SyrupTest) -> Answer:
    unit = " Baume" if test.is_baume else " Brix"
    name = f"{say.number(test.reading)}{unit}"
    at_f = test.at_f
    if at_f is None and test.is_hot:
        at_f = figures.HOT_TEST_F_MOST
    if at_f is None:
        metric = asked.style.is_metric
        question = wording.ASK_HOW_HOT_METRIC if metric else wording.ASK_HOW_HOT
        fill = (
            f"hydrometer {say.number(test.reading)}{unit.lower()} at {{}} {'C' if metric else 'F'}"
        )
        return asking(question, "", fill)
    correct = syrup_brix_from_baume if test.is_baume else syrup_brix
    true = correct(test.reading, at_f)
    law = law_of(asked)
    return Answer(wording.syrup_test(name, at_f, true, verdict(law, round(true, 1)), asked.style))


def _pan_named(asked: Asked) -> float | None:
    """A pan's temperature in the question, degrees F."""
    told = [entry.fahrenheit for entry in asked.told if entry.kind == "pan_temp"]
    if told:
        # Its receipt says it already.
        return None
    for one in asked.figures:
        if one.sort == "temp" and not one.bare_degrees and _PAN_F[0] <= one.value <= _PAN_F[1]:
            return one.value
        if one.sort in ("number", "temp") and _PAN_F[0] <= one.value <= _PAN_F[1]:
            return one.value
        metric = asked.style.is_metric and one.sort in ("number", "temp")
        if metric and _PAN_C[0] <= one.value <= _PAN_C[1]:
            return fahrenheit(one.value)
    return None


def _brix_named(asked: Asked) -> float | None:
    for one in asked.figures:
        if one.sort in ("brix", "number") and _SYRUP_BRIX[0] <= one.value <= _SYRUP_BRIX[1]:
            return one.value
    return None


def _pan(asked: Asked, pan_f: float) -> Answer:
    water = asked.water
    water_f = _SEA_LEVEL_F if water is None else water.fahrenheit
    if pan_f < water_f:
        return Answer(wording.pan_cold(pan_f, water_f, asked.style))
    draw_f = finish_f(water_f, law_of(asked).min_brix)
    reached = pan_brix(pan_f, water_f)
    return Answer(
        wording.pan_at(pan_f, reached, draw_f - pan_f, draw_f, asked.style, sure=water is not None)
    )


def _draw(asked: Asked) -> str:
    law = law_of(asked)
    water = asked.water
    if water is None:
        rise_f = finish_f(_SEA_LEVEL_F, law.min_brix) - _SEA_LEVEL_F
        return wording.by_rule(rise_f, law.min_brix, asked.style)
    draw_f = finish_f(water.fahrenheit, law.min_brix)
    if water.basis == "measured":
        return wording.measured(water.fahrenheit, water.on, draw_f, law.min_brix, asked.style)
    return wording.reckoned(
        water.fahrenheit,
        draw_f,
        law.min_brix,
        asked.style,
        basis=water.basis,
    )
