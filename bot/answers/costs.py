"""What the season has cost."""

from __future__ import annotations

from collections import defaultdict

from bot.answers.asked import Asked
from bot.wording import costs as wording

_OTHER = "other"


def answer(asked: Asked) -> str:
    """The sum, its largest items, and the cost of a gallon of syrup once some is drawn."""
    spent: dict[str, float] = defaultdict(float)
    for entry in asked.book.records.of_kinds(asked.sugarbush_id, ("cost",), asked.season):
        spent[str(entry.detail.get("item") or _OTHER)] += entry.dollars or 0.0
    items = sorted(spent.items(), key=lambda item: (-item[1], item[0]))
    return wording.spent(asked.tally, items, asked.style)
