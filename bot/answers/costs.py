"""What the season has cost, a gallon and a pint of it, and what it is worth."""

from __future__ import annotations

from bot.answers import totals
from bot.answers.answer import Answer, asking
from bot.answers.asked import Asked
from bot.answers.period import period_of
from bot.reckoning.bottling import cost_of, worth_dollars
from bot.wording import costs as wording

# Without costs in the tally, a question that names no money ("what's the total") is about sap.
_MONEY = (
    *("cost", "costs", "spent", "spend", "money", "dollars", "bucks", "paid", "expenses"),
    *("expense", "budget", "price", "worth", "profit", "value"),
)
_WORTH = ("worth", "value", "sell", "sold", "profit", "make", "earn", "revenue", "clear")


def answer(asked: Asked) -> Answer:
    """What the syrup is worth where that is asked or a price told; else what was spent."""
    if asked.mentioned.price is not None or (asked.says(*_WORTH) and not asked.says("spent")):
        return _worth(asked)
    period = period_of(asked)
    costs = asked.book.sums.costs(asked.sugarbush_id, asked.season)
    named = [(item, dollars) for item, dollars in costs if item and _says(asked, item)]
    if period is not None and asked.says(*_MONEY) and not named:
        spent = totals.part_of(asked, period).cost_dollars
        return Answer(wording.spent_in(period.name, spent))
    if not costs and not asked.says(*_MONEY):
        return totals.answer(asked)
    if named:
        return Answer(wording.spent_on(named))
    items = [(item or wording.OTHER, dollars) for item, dollars in costs]
    cost = cost_of(asked.tally.cost_dollars, asked.tally.syrup_gallons)
    each = None if cost is None else (cost.per_gallon, cost.per_pint)
    return Answer(
        wording.spent(asked.tally, items, each, asked.style),
        table=lambda: wording.by_item(asked.tally, items),
    )


def _says(asked: Asked, item: str) -> bool:
    """Whether the question names what the money went on: "what did the lids cost"."""
    words = {word for word in item.casefold().split() if len(word) >= _LEAST_LETTERS}
    return asked.says(*words) if words else False


_LEAST_LETTERS = 4


def _worth(asked: Asked) -> Answer:
    """At the price in the question, else the one told before, else it asks for one."""
    tally = asked.tally
    made = tally.syrup_gallons or tally.jars_gallons
    expected = not made
    gallons = tally.expected_syrup_gallons if expected else made
    if gallons <= 0:
        return Answer(wording.NOTHING_TO_SELL)
    price = asked.mentioned.price
    if price is None and "$" not in asked.text:
        price = asked.gear.price
    if price is None:
        metric = asked.style.is_metric
        unit = "litre" if metric else "gallon"
        question = wording.ASK_PRICE_METRIC if metric else wording.ASK_PRICE
        return asking(question, asked.text, f"price is ${{}} a {unit}")
    dollars = worth_dollars(gallons, price)
    return Answer(
        wording.worth(gallons, price, dollars, tally.cost_dollars, asked.style, expected=expected)
    )
