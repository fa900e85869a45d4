"""What the season has cost."""

from __future__ import annotations

from bot.answers import totals
from bot.answers.asked import Asked
from bot.wording import costs as wording

# Without costs in the tally, a question that names no money ("what's the total") is about sap.
_MONEY = (
    *("cost", "costs", "spent", "spend", "money", "dollars", "bucks", "paid", "expenses"),
    *("expense", "budget", "price", "worth"),
)


def answer(asked: Asked) -> str:
    """The sum, its largest items, and the cost of a gallon of syrup once some is drawn."""
    costs = asked.book.sums.costs(asked.sugarbush_id, asked.season)
    if not costs and not asked.says(*_MONEY):
        return totals.answer(asked)
    items = [(item or wording.OTHER, dollars) for item, dollars in costs]
    return wording.spent(asked.tally, items, asked.style)
