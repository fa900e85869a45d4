"""Answers to "what did it cost"."""

from __future__ import annotations

from collections.abc import Sequence

from bot.tally import Tally
from bot.units import litres
from bot.wording import amounts
from bot.wording.gsm import plain
from bot.wording.style import Style

_MOST_ITEMS = 3
OTHER = "other"


def spent(tally: Tally, items: Sequence[tuple[str, float]], style: Style) -> str:
    """The season's sum, its largest items, and what a gallon of syrup came to."""
    if not items:
        return "No costs in the tally this season. Text it like: $12 for lids."
    said = f"Spent {amounts.dollars(tally.cost_dollars)} this season"
    if len(items) > 1:
        named = [f"{plain(name, 20)} {amounts.dollars(cost)}" for name, cost in items[:_MOST_ITEMS]]
        more = "" if len(items) <= _MOST_ITEMS else f" and {len(items) - _MOST_ITEMS} more"
        said += f": {', '.join(named)}{more}"
    elif items[0][0] != OTHER:
        said += f", all for {plain(items[0][0], 20)}"
    said += "."
    if tally.syrup_gallons > 0:
        each = tally.cost_dollars / (
            litres(tally.syrup_gallons) if style.is_metric else tally.syrup_gallons
        )
        unit = "L" if style.is_metric else "gal"
        made = amounts.syrup(tally.syrup_gallons, style)
        said += f" {amounts.dollars(each)} a {unit} of syrup, {made} drawn."
    return said
