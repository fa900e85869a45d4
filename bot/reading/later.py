"""What is said to be still to come."""

from __future__ import annotations

from bot.reading.items import Item


def speaks_of_later(item: Item) -> bool:
    """`tomorrow`, `next week`: said as later, where a date in figures may be a slip."""
    return (
        item.sort == "date"
        and item.ahead
        and (item.on is None or not any(c.isdigit() for c in item.text))
    )
