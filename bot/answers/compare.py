"""This season against the last, up to the same day."""

from __future__ import annotations

from bot.answers.asked import Asked
from bot.clock import same_day_in
from bot.wording import compare as wording


def answer(asked: Asked) -> str:
    """Sap to the same day of both seasons, and what the last one came to in all."""
    before = asked.season - 1
    same_day = same_day_in(before, asked.today)
    gallons = asked.book.sums.to_a_day(asked.sugarbush_id, before, same_day)
    sap = gallons.get("sap")
    return wording.compared(
        asked.tally.sap_gallons,
        None
        if sap is None
        else wording.LastSeason(
            season=before,
            same_day=same_day,
            sap_to_day=sap.to_day,
            sap=sap.whole,
            syrup=gallons["syrup"].whole if "syrup" in gallons else 0.0,
        ),
        asked.style,
    )
