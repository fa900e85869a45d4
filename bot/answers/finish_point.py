"""When is it syrup: the temperature to draw at."""

from __future__ import annotations

from bot.answers.asked import Asked
from bot.reckoning.finish import finish_f
from bot.wording import finish as wording


def answer(asked: Asked) -> str:
    """From where water boils for them, this season's latest; else how to find that out."""
    law = asked.known.law
    water = asked.book.records.latest(asked.sugarbush_id, "water_boils", not_after=asked.sent)
    if water is None or water.fahrenheit is None or water.season != asked.season:
        rise_f = finish_f(_SEA_LEVEL_F, law.min_brix) - _SEA_LEVEL_F
        return wording.by_rule(rise_f, law.min_brix, asked.style)
    draw_f = finish_f(water.fahrenheit, law.min_brix)
    return wording.measured(water.fahrenheit, water.on, draw_f, law.min_brix, asked.style)


# The rise hardly depends on where water boils; any figure within reach gives it.
_SEA_LEVEL_F = 212.0
