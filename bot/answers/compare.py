"""This season against another, up to the same day."""

from __future__ import annotations

import re

from bot.answers.answer import Answer
from bot.answers.asked import Asked
from bot.clock import same_day_in
from bot.wording import compare as wording

_YEAR = re.compile(r"\b(20\d\d)\b")
_OLDEST = 2000


def answer(asked: Asked) -> Answer:
    """Sap and syrup to the same day of both seasons, and what the other came to in all."""
    other = _season_named(asked)
    same_day = same_day_in(other, asked.today)
    gallons = asked.book.sums.to_a_day(asked.sugarbush_id, other, same_day)
    sap, syrup = gallons.get("sap"), gallons.get("syrup")
    past = None
    if sap is not None:
        past = wording.LastSeason(
            season=other,
            same_day=same_day,
            sap_to_day=sap.to_day,
            sap=sap.whole,
            syrup_to_day=0.0 if syrup is None else syrup.to_day,
            syrup=0.0 if syrup is None else syrup.whole,
        )
    name = "last season" if other == asked.season - 1 else f"season {other}"
    return Answer(
        wording.compared(
            asked.tally.sap_gallons, asked.tally.syrup_gallons, past, name, asked.style
        ),
        table=lambda: wording.side_by_side(asked.tally, past, asked.style),
    )


def _season_named(asked: Asked) -> int:
    """The season that the question names by its year, else the last."""
    years = [int(year) for year in _YEAR.findall(asked.plain)]
    earlier = [year for year in years if _OLDEST <= year < asked.season]
    return earlier[0] if earlier else asked.season - 1
