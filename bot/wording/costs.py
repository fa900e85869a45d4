"""Answers to "what did it cost"."""

from __future__ import annotations

from collections.abc import Sequence

from bot.tally import Tally
from bot.units import litres
from bot.wording import amounts, tables
from bot.wording.compose import sentence
from bot.wording.gsm import plain
from bot.wording.style import Style

_MOST_ITEMS = 3
OTHER = "other"


def spent(
    tally: Tally,
    items: Sequence[tuple[str, float]],
    each: tuple[float, float] | None,
    style: Style,
) -> str:
    """The season's sum, its largest items, and what the syrup came to: `each`, dollars for a
    gallon and a pint of it, None while none is drawn."""
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
    return said if each is None else f"{said} {_cost_said(tally, each, style)}"


def spent_on(items: Sequence[tuple[str, float]]) -> str:
    """What some things have cost this season."""
    said = [f"{plain(name, 20)} {amounts.dollars(dollars)}" for name, dollars in items]
    return sentence(f"This season: {', '.join(said)}")


def spent_in(when: str, dollars: float) -> str:
    """What was spent in the days called `when`."""
    return f"{when}: {amounts.dollars(dollars) if dollars else 'nothing'} spent."


def by_item(tally: Tally, items: Sequence[tuple[str, float]]) -> str:
    """A table of all items, the dearest first, and their sum; "" for one item or none."""
    if len(items) < 2:
        return ""
    rows = [(plain(name), amounts.dollars(cost)) for name, cost in items]
    return tables.lines(("Cost", "Dollars"), [*rows, ("all", amounts.dollars(tally.cost_dollars))])


def _cost_said(tally: Tally, each: tuple[float, float], style: Style) -> str:
    gallon, pint = each
    made = amounts.syrup(tally.syrup_gallons, style)
    if style.is_metric:
        return f"{amounts.dollars(gallon * gallon_per_litre())} a L of syrup, {made} drawn."
    return (
        f"{amounts.dollars(gallon)} a gal of syrup, {amounts.dollars(pint)} a pint, {made} drawn."
    )


def worth(
    gallons: float,
    price: float,
    dollars: float,
    spent_dollars: float,
    style: Style,
    *,
    expected: bool,
) -> str:
    """What the season's syrup is worth at a price for a gallon, and what is left of it."""
    made = (
        f"{amounts.about_syrup(gallons, style)} expected"
        if expected
        else f"{amounts.syrup(gallons, style)} made"
    )
    at = (
        f"{amounts.dollars(price * gallon_per_litre())} a L"
        if style.is_metric
        else f"{amounts.dollars(price)} a gal"
    )
    said = f"{made[0].upper()}{made[1:]}, at {at} that is {amounts.dollars(round(dollars))}."
    if spent_dollars > 0:
        left = round(dollars - spent_dollars)
        rest = f"{amounts.dollars(abs(left))} {'over' if left >= 0 else 'short'}"
        said += f" With {amounts.dollars(spent_dollars)} spent, {rest}."
    return f"{said} Rules for selling differ: ask your state's agriculture department."


def gallon_per_litre() -> float:
    """US gallons in a litre."""
    return 1 / litres(1.0)


ASK_PRICE = "What would a gallon sell at, in dollars?"
ASK_PRICE_METRIC = "What would a litre sell at, in dollars?"
NOTHING_TO_SELL = "No syrup and no sap in the tally yet this season, so nothing to price."
