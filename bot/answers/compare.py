"""This season against the last, up to the same day."""

from __future__ import annotations

from bot.answers.asked import Asked
from bot.clock import same_day_in
from bot.wording import compare as wording


def answer(asked: Asked) -> str:
    """Sap to the same day of both seasons, and what the last one came to in all."""
    before = asked.season - 1
    same_day = same_day_in(before, asked.today)
    to_date = asked.part(before, None, same_day)
    return wording.compared(asked.tally, to_date, asked.tally_of(before), same_day, asked.style)
