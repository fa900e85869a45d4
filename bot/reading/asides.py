"""Figures that are said beside what happened, and are no amount of their own: a sum told once
more, what is left, the hours still to come, what it was before. They are set aside before any
kind looks at its clause, and explain themselves."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from bot.reading.levels import is_a_sum
from bot.reading.signs import Sought

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Notes

_SAME = 0.02
"""By ratio: two measures in other units are one amount (40 L, 10.5 gal), as they are rounded."""


def set_aside(clause: Clause, notes: Notes) -> None:
    """Takes the figures of a clause out that only repeat, compare or look ahead."""
    figures = clause.free(*_FIGURES)
    if not figures:
        return
    beside_others = sum(item.sort in _FIGURES for each in notes.clauses for item in each.items) > 1
    for item in figures:
        item.used = (
            _is_still_to_come(clause, item)
            or _was_before(clause, item)
            or _is_of_the_season(clause, item)
            or _is_of_another_thing(clause, item)
            or (beside_others and _is_told_beside_others(clause, item, notes))
        )


_FIGURES = ("volume", "cords", "brix", "number", "hours", "money", "mass")


def _is_told_beside_others(clause: Clause, item: Item, notes: Notes) -> bool:
    """What only another figure of the text makes an aside."""
    return (
        _repeats(clause, item, notes)
        or _is_a_sum_beside_more(clause, item, notes)
        or _is_left(clause, item, notes)
        or _is_expected(clause, item, notes)
        or _is_in_store_already(clause, item, notes)
        or _is_known(item, notes)
        or _is_told_aside(clause, item, notes)
    )


def _before(notes: Notes, item: Item, sort: str) -> list[Item]:
    """The figures of a sort before one, in its text."""
    return [
        each
        for other in notes.clauses
        for each in other.items
        if each.sort == sort and each.start < item.start and not (each.article and sort == "number")
    ]


def _repeats(clause: Clause, item: Item, notes: Notes) -> bool:
    """`33 trees 1 gal each, so 33 gal`; `40 L (10.5 gal)`; `6.5 gal is 6.5 gal`."""
    if item.sort != "volume":
        return False
    told = _before(notes, item, "volume")
    if not told or clause.holds("lot", "tree"):
        return False
    last = told[-1]
    between = notes.text[last.end : item.start].strip(" ,;")
    same = abs(last.gallons - item.gallons) <= _SAME * max(last.gallons, item.gallons)
    if same and between in ("is", "=", "or", "so", "(", "i.e", "ie", "that's", "thats"):
        return True
    if same and between in _JARRED_IN:
        return True  # "1 gal of syrup in 8 pints"
    if clause.holds("date"):
        return False
    so = clause.joint in ("so", "=") or clause.items[0].text in _SO
    so = so or between.replace(",", " ").split()[-1:] in (["so"], ["that's"], ["makes"])
    sums = {sum(each.gallons for each in told), last.gallons * _times(notes, last)}
    return so and any(abs(whole - item.gallons) <= _SAME * item.gallons for whole in sums)


_JARRED_IN = frozenset(("of syrup in", "syrup in", "of syrup into", "syrup into", "of syrup as"))
_SO = frozenset(("so", "that's", "thats", "makes", "that makes", "which makes", "= ", "equals"))


def _times(notes: Notes, item: Item) -> float:
    """How often an amount counts that is told as "each": by the figure before it."""
    for clause in notes.clauses:
        if item in clause.items and any(e.text == "each" for e in clause.following(item, 1)):
            counts = [i for i in clause.of_sort("number") if i.start < item.start]
            return counts[-1].value if counts else 1.0
    return 1.0


def _is_a_sum_beside_more(clause: Clause, item: Item, notes: Notes) -> bool:
    """`drew off 3 qts, that makes 3.25 gal for the year`."""
    others = any(
        each.sort == "volume" and each is not item
        for other in notes.clauses
        for each in other.items
    )
    if item.sort == "volume" and others and is_a_sum(clause, item):
        return True
    taps = item.sort == "number" and clause.near("SETV", "PUTIN")
    summed = taps or item.sort in ("volume", "money", "cords", "mass")
    return summed and bool(_before(notes, item, item.sort)) and _is_the_sum(notes, item)


def _is_the_sum(notes: Notes, item: Item) -> bool:
    """`12 gal today, 140 gal so far`, `$14 bringing the total to $90`, `5 taps for 40 total`."""
    before, behind = notes.text[: item.start], notes.text[item.end :]
    if before.endswith("for ") and behind.startswith(" total"):
        return True
    return _SUM_BEFORE.search(before) is not None or _SUM_BEHIND.match(behind) is not None


_SUM_BEFORE = re.compile(
    r"\b(?:putting (?:us|me) at|bring(?:s|ing) (?:us|me|it|the total|total) (?:up )?to"
    r"|for a total of|total so far|that brings (?:us|me|it) to|so (?:we're|were|i'm|im) at)"
    r" (?:about )?$"
)
_SUM_BEHIND = re.compile(r" ?(?:of \w+ )?(?:so far|to date)\b| in the (?:tank|barrel) now\b")


def _is_left(clause: Clause, item: Item, notes: Notes) -> bool:
    """`burned half a cord, 1.5 cords left`."""
    behind = [each.text for each in clause.following(item, 2)]
    left = bool(behind) and behind[0] in ("left", "remaining")
    return left and item.sort == "cords" and bool(_before(notes, item, "cords"))


def _is_still_to_come(clause: Clause, item: Item) -> bool:
    """`3 more hrs at least`, `2 hours to go`."""
    if item.sort != "hours":
        return False
    behind = [each.text for each in clause.following(item, 2)]
    return (
        " more " in f" {item.text} "
        or behind in (["to", "go"], ["at", "least"])
        or behind[:1] in (["more"], ["left"])
    )


def _is_told_aside(clause: Clause, item: Item, notes: Notes) -> bool:
    """`half a gallon of syrup, 1 qt goes to mom`; `set 10 taps yesterday, 6 running today`."""
    behind = [each.text for each in clause.following(item, 2)]
    if item.sort == "volume" and clause.kept:
        return False  # "spilled 2 gal, 30 gal went into the tank"
    if item.sort == "volume":
        return bool(_before(notes, item, "volume")) and (
            behind in _GOES_TO or behind[:1] in (["goes"], ["went"])
        )
    runs = behind[:1] in (["running"], ["dripping"], ["flowing"])
    return item.sort == "number" and runs and bool(_before(notes, item, "number"))


_SAP_OR_SO = frozenset("it that the them this our my good some more mine ours really very".split())


def _is_of_another_thing(clause: Clause, item: Item) -> bool:
    """`two eggs and a cup of mud`: one of what we do not know."""
    behind = clause.following(item, 2)
    return (
        item.sort == "volume"
        and item.article
        and item.unit == "cup"
        and len(behind) > 1
        and behind[0].text == "of"
        and behind[1].sort == "word"
        and not behind[1].tags
        and behind[1].text.isalpha()
        and behind[1].text not in _SAP_OR_SO
    )


_GOES_TO = (["to", "sell"], ["to", "give"], ["for", "mom"], ["for", "dad"])
_FROM_THAT = re.compile(r"\b(?:off|from|out of) (?:that|those|the same) $")


def _is_known(item: Item, notes: Notes) -> bool:
    """`made 2 quarts off that 20 gal`: sap that was told before."""
    others = bool(_before(notes, item, "volume"))
    told = _FROM_THAT.search(notes.text[: item.start]) is not None
    return item.sort == "volume" and others and told


_OF_THE_SEASON = Sought(
    "year|season|books|so far|date|grand|spent|now",
    r"\b(?:on|for|in) the (?:year|season|books)\b|\bthis (?:year|season)\b|\bseason so far\b"
    r"|\bso far this\b|\bto date\b|\bgrand total\b|\bseason(?:'s| is)? over\b|\btotal spent\b"
    r"|\bin it so far\b|\bso far spent\b|\btotal now\b|\bspent so far\b",
)


_EXPECTED = frozenset("thats that's figure figures should makes worth about".split())


def _is_expected(clause: Clause, item: Item, notes: Notes) -> bool:
    """`14 gal at 2.2, thats a quart and a half of syrup`: what it should make."""
    if item.sort != "volume" or not clause.has("SYRUP") or clause.has("DRAW", "BOIL", "BOTTLE"):
        return False
    first = clause.items[0].text
    sap = any(
        each.sort == "volume" and each.start < item.start
        for other in notes.clauses
        if other is not clause
        for each in other.items
    )
    boiled = any(other.has("BOIL", "FIRE", "DRAW") for other in notes.clauses)
    return sap and not boiled and first in _EXPECTED


def _is_of_the_season(clause: Clause, item: Item) -> bool:
    """`84 gal on the year`, `60 dollars spent so far this year`: sums that are kept already."""
    sort = item.sort in ("volume", "cords", "money")
    own = clause.has("SETV", "BOTTLE") or clause.holds("date")
    return sort and not own and _OF_THE_SEASON.search(clause.text) is not None


_STANDS_THERE = re.compile(r"\b(?:waiting to boil|in there now|on hand|gallons now|gal now)\b")


def _is_in_store_already(clause: Clause, item: Item, notes: Notes) -> bool:
    """`20 gal today, 45 gal in the tank at 39F`: what stands there, beside what came today."""
    if item.sort != "volume" or clause.has("GATHER", "POUR", "BOIL", "MORE", "THROUGH"):
        return False
    stands = clause.has("STORE") and re.search(r"\bin (?:the|my|our) ", clause.text)
    gathered = any(
        other is not clause
        and not other.has("STORE")
        and other.holds("volume")
        and any(each.text in ("today", "this morning", "tonight") for each in other.items)
        for other in notes.clauses
    )
    return gathered and bool(stands or _STANDS_THERE.search(clause.text))


def _was_before(clause: Clause, item: Item) -> bool:
    """`sugar 2.2, up from 1.9 on Sunday`."""
    if item.sort not in ("brix", "number", "volume") or "from" not in clause.each_word:
        return False
    before = [each.text for each in clause.preceding(item, 2)]
    moved = before[:1] == ["from"] and before[1:] in (["up"], ["down"], ["dropped"], ["went"])
    behind = [each.text for each in clause.following(item, 1)]
    return moved or (before[:1] == ["from"] and behind == ["to"] and clause.has("SUGAR"))
