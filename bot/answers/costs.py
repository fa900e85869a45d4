"""What the season has cost."""

from __future__ import annotations

from bot.answers.asked import Asked
from bot.wording import costs as wording


def answer(asked: Asked) -> str:
    """The sum, its largest items, and the cost of a gallon of syrup once some is drawn."""
    costs = asked.book.sums.costs(asked.sugarbush_id, asked.season)
    items = [(item or wording.OTHER, dollars) for item, dollars in costs]
    return wording.spent(asked.tally, items, asked.style)
