"""Money spent."""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, ClassVar

from bot.reading.frames import FRAME_TAGS
from bot.reading.kinds.base import Reading
from bot.reading.signs import Sought
from bot.reading.volumes import is_rate

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Notes

NEEDS = ("money", "COSTV", "BUY")
CUES = {
    "COSTV": (
        "spent spend cost costs paid pay dropped_$ shelled_out bill ran_me ran_us set_me_back "
        "set_us_back coughed_up forked_over laid_out cost_me cost_us "
    ),
    "VAGUEMONEY": "bunch lots lot fortune arm_and_a_leg too_much some plenty a_few",
    "BUY": "bought buy buying purchased purchase ordered order picked_up_new",
    "EARN": (
        "won returned money_back refund sold earned made_$ charged got_paid refunded income "
        "took_in_$ deposit donation donations donated owe owes "
    ),
}

MOST_DOLLARS = 50_000.0
"""More than a sugarer of 300 taps spends at once: most likely a slip."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Cost(Reading):
    """Money spent."""

    kind: ClassVar[str] = "cost"

    dollars: float
    on: date
    item: str | None = None


def find(clause: Clause, notes: Notes) -> None:
    """Money spent, and on what."""
    given = clause.has("GIFT") and not (clause.free("money") and _COST & set(clause.words()))
    if given or clause.has("PRICE", "EARN") or clause.hypothetical:
        return
    if clause.has("OTHERS") and not pays_others(clause):
        return
    if clause.has("BOTTLE") and any(sold_at(clause, item) for item in clause.free("money")):
        return  # "bottled 8 pints at $15"
    if _SPENT_TIME.search(clause.text) and not clause.free("money"):
        return  # "spent the whole forenoon chasing it across two fields"
    if any((c.negated and c.has("BUY")) or c.has("EARN") for c in notes.sentence(clause)):
        return
    amounts = clause.free("money")
    said = [word for other in notes.sentence(clause) for word in other.words()]
    if amounts and not _OF_THE_HOUSE.isdisjoint(said):
        for item in amounts:
            item.used = True
        notes.ask("Was that for sugaring? If so, text what for, like: lids $6.")
        return
    if any(_taken_in(clause, item) for item in amounts):
        return
    told = clause.has("COSTV") or (
        clause.about("COSTV") and bool({"on", "for"} & set(clause.words()))
    )
    if not amounts and clause.has("BUY"):
        amounts = [item for item in clause.free("number") if _is_paid(clause, item)]
    if not amounts and told and not clause.free("hours", "volume", "cords"):
        amounts = [item for item in clause.free("number") if not _counts_things(clause, item)][:1]
        told_next = any(c.holds("money") for c in notes.clauses)
        if not amounts and clause.has("COSTV") and clause.has("VAGUEMONEY") and not told_next:
            notes.ask(
                "How much did it cost? Text like: $12 for lids.", fill="spent ${} " + _on(clause)
            )
            return
    if (
        clause.has("COSTV") and len(clause.free("number")) > 1 and not clause.free("money")
    ) or _two_part_price(clause):
        notes.ask(
            "How many dollars was it? Text it like: $4.50 for lids.",
            fill="spent ${} " + _on(clause),
        )
        return
    if (
        clause.has("GATHER")
        and not clause.has("WEAK", "COSTV", "BUY")
        and "for" not in clause.words()
    ):
        return
    if amounts and _one_more_cost(clause, amounts[-1]):
        for item in (*amounts, *clause.free("number")):
            item.used = True
        notes.ask("Text each cost by itself, like: lids $16.")
        return
    for item in amounts:
        bet = [each.text for each in clause.following(item, 1)] == ["says"]
        if bet or is_rate(clause, item) or _a_price(clause, item) or _of_a_thing(clause, item):
            item.used = True
            continue
        item.used = True
        if not 0 < item.value <= MOST_DOLLARS:
            notes.ask("How many dollars was it?", fill="spent ${} " + _on(clause))
            continue
        notes.add(
            Cost(dollars=item.value, on=notes.day(clause), item=_item(clause, item, notes)),
            item.start,
        )
        for number in clause.free("number"):
            number.used = True


_OF_THE_HOUSE = frozenset(
    "milk vet vets hay grain silage calf calves heifer cow cows groceries mortgage rent dentist "
    "doctor tuition haircut vitamins diapers insurance taxes internet".split()
)
"""What money goes on that is most likely not for sugaring (our own)."""
_COST = frozenset("were was cost ran came".split())
"""`gift boxes were $22` is a cost, and no gift."""


_SPENT_TIME = Sought(
    "spent",
    r"\bspent (?:\w+ ){0,3}(?:forenoon|afternoon|mornings?|days?|hours?|nights?|time|weekend"
    r"|evening"
    r"|weeks?|minutes?)\b",
)


def pays_others(clause: Clause) -> bool:
    """`paid the neighbor kid 20 to help`: a cost of ours."""
    paid, who = clause.first("COSTV"), clause.first("OTHERS")
    return paid is not None and who is not None and paid.text == "paid" and paid.start < who.start


def _taken_in(clause: Clause, item: Item) -> bool:
    """`got 20 bucks for 2 pints`, `got $10 back`: what a sale brought, and no cost."""
    behind = clause.following(item, 2)
    if behind and behind[0].text == "back":
        item.used = True
        return True
    before = [each.text for each in clause.preceding(item, 1)]
    sold = len(behind) > 1 and behind[0].text == "for" and behind[1].sort == "volume"
    if sold and before and before[0] in ("got", "made", "received", "took in"):
        behind[1].used = item.used = True
        return True
    return False


def _two_part_price(clause: Clause) -> bool:
    """`four bucks fifty`: dollars, and cents right behind them."""
    return any(
        a.sort == "money" and a.text[:1] != "$" and b.sort == "number"
        for a, b in zip(clause.items, clause.items[1:], strict=False)
    )


def _is_paid(clause: Clause, item: Item) -> bool:
    """`bought lids for 16.80`, and not a word more."""
    before = [each.text for each in clause.preceding(item, 1)]
    behind = clause.following(item, 1)
    ends = not behind or behind[0].sort in ("sign", "date")
    return before == ["for"] and ends and not (item.article or item.part)


def _counts_things(clause: Clause, item: Item) -> bool:
    after = clause.following(item, 1)
    return item.article or (
        bool(after)
        and (after[0].tags & {"TAPN", "BUCKET", "JARN"} != frozenset() or after[0].sort == "volume")
    )


def _one_more_cost(clause: Clause, amount: Item) -> bool:
    """`lids $12 filters 8`: what the eight is, it does not say."""
    last = clause.items[-1]
    if last.sort != "number" or last.article or last.start < amount.end:
        return False
    before = clause.preceding(last, 1)[0]
    named = _name([each for each in clause.items if each.start < amount.start])
    return bool(named) and before.sort == "word" and before.text not in _BEFORE_A_FIGURE


_BEFORE_A_FIGURE = frozenset("at by for of on in size no number to grade".split())


def _of_a_thing(clause: Clause, item: Item) -> bool:
    """`broke my $30 thermometer`: what it once cost."""
    before = [each.text for each in clause.preceding(item, 1)]
    mine = before in (["my"], ["our"], ["that"], ["his"], ["her"])
    return mine and not clause.has("COSTV", "BUY") and bool(clause.following(item, 1))


def sold_at(clause: Clause, money: Item) -> bool:
    """`bottled 8 pints at $15`: what one is sold for."""
    return [each.text for each in clause.preceding(money, 1)] in (["at"], ["@"], ["sell at"])


def _a_price(clause: Clause, item: Item) -> bool:
    """`$60 a gallon`, `$9 each`: a price, and no money spent."""
    after = clause.following(item, 2)
    if not after:
        return False
    if after[0].text in ("a", "an") and len(after) > 1 and after[1].text in _SOLD_BY:
        return True  # "$9 a plate"
    return (
        bool(after[0].tags & {"RATE"})
        or (after[0].sort == "volume" and after[0].article)
        or after[0].text == "per"
    )


_SOLD_BY = frozenset("box case plate person head ticket adult kid child family car".split())
_JOINS = frozenset(("on", "for", "in", "of", "worth of"))
_DROPPED = frozenset(
    "a an the some more my our me us it this that to total today yesterday".split()
)


_AFTER_THE_PRICE = frozenset(
    ("delivered", "shipped", "total", "today", "even", "all in", "in all", "all told", "altogether")
)


def _item(clause: Clause, amount: Item, notes: Notes) -> str | None:
    """What the money went on, in the words of the text."""
    behind = clause.preceding(amount, 1)
    following = notes.clause_after()
    headed = bool(behind) and behind[0].text in (":", "-") and clause.items[-1] is amount
    headed = headed and not clause.has("ITEMS")  # but "new thermometer: $31.50, sap at 36"
    if headed and following is not None and following.joint == "," and not following.free("money"):
        return _name(following.items) or None  # "receipt: $53.20, 48 half pint bottles"
    if behind and behind[0].text == "for":
        name = _name([each for each in clause.items if each.start < amount.start])
        if name:
            return name
    after = list(
        itertools.takewhile(
            lambda each: each.sort != "money",
            (each for each in clause.items if each.start > amount.start),
        )
    )
    if after and after[0].text in _AFTER_THE_PRICE:
        after = after[1:]
    if after and after[0].text in ("with", "including", "incl", "plus", "after", "before"):
        after = []  # "with tax"
    start = next((n for n, each in enumerate(after) if each.text in _JOINS), None)
    words = after[start + 1 :] if start is not None else after
    named = _name([each for each in clause.items if each.start < amount.start])
    if start is None and named and after and after[0].text in ("at", "from"):
        return named  # "jars were $27.80 at the farm store"
    name = _name(words) or named
    if name:
        return name
    number = notes.clause_number
    before = notes.clauses[number - 1] if number else None
    if (
        before is not None
        and before.sentence == clause.sentence
        and all(n.clause != number - 1 for n in notes.noted)
    ) and not before.has("BOIL"):
        of = next((n for n, each in enumerate(before.items) if each.text == "of"), None)
        if of is not None and before.free("volume"):
            return _name(before.items[of + 1 : of + 2]) or None  # "5 gal of gas in the generator"
        if before.free("volume", "hours", "brix"):
            return None
        name = _name([each for each in before.items if each.sort != "number"])
        if name:
            return _both(name, before, notes)
    if following is not None and following.joint in ("-", ":", "("):
        return _name(following.items) or None
    if following is not None and following.joint == "," and _only_names(following):
        return _name(following.items) or None  # "$112, stainless sheet"
    return None


def _both(name: str, clause: Clause, notes: Notes) -> str:
    """`ordered a hydrometer and cup, $31.75`: the two things that it bought."""
    number = notes.clauses.index(clause)
    if number == 0 or clause.joint not in ("and", "&"):
        return name
    first = notes.clauses[number - 1]
    told = (
        first.sentence != clause.sentence or first.free("money", "volume") or not first.has("BUY")
    )
    bought = "" if told else _name(first.items)
    return f"{bought} and {name}" if bought else name


def _only_names(clause: Clause) -> bool:
    return len(clause.items) <= _MOST_OF_A_NAME and all(
        (item.sort == "word" and not item.tags & FRAME_TAGS)
        or (item is clause.items[0] and item.sort == "number")
        for item in clause.items
    )


_MOST_OF_A_NAME = 6


def _name(items: list[Item]) -> str:
    kept = [
        each.text
        for each in items
        if each.sort in ("word", "number", "volume", "vessels")
        and each.text not in _DROPPED
        and not each.tags & {"COSTV", "IS", "BUY", "GATHER", "HAVE", "SMALLTALK", "NOT"}
        and each.text not in _JOINS
        and each.text not in ("gone", "poorer", "lighter")
        and each.text not in ("was", "were", "came", "ran", "i", "we", "and", "just", "at", "from")
    ]
    return " ".join(kept)


def _on(clause: Clause) -> str:
    name = _name(clause.items)
    return f"on {name}" if name else ""
