"""A day that is said behind what it belongs to: `got 12 gal, 2.2 brix yesterday`."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from typing import TYPE_CHECKING

from bot.reading.frames import FRAME_TAGS, QUANTITIES

if TYPE_CHECKING:
    from bot.reading.clause import Clause

OTHER_MATTERS = frozenset(
    "frost froze frozen freeze cold rain rained snow snowed wind windy zero storm thaw thawed warm "
    "missed power peepers stars moon flu sick away skipped".split()
)
"""What a day is told of beside any sap: weather, and why nobody was there."""


def day_said_last(found: Sequence[Clause]) -> None:
    """`got 12 gal, 2.2 brix yesterday`: the day holds for the whole sentence."""
    for n in range(len(found) - 1, 0, -1):
        clause, before = found[n], found[n - 1]
        if clause.on is None or before.on is not None or clause.sentence != before.sentence:
            continue
        if clause.plan and clause.ahead:
            continue  # "fire is out, we'll continue tomorrow"
        if clause.items[0].sort == "date" and not clause.sorts.isdisjoint(_TESTS):
            continue  # "12 gal, brix 2.1, yesterday was 2.3"
        amount = clause.holds("volume")
        if clause.tags & {"NONE", "DRY", "DRYSAID"} and not amount:
            continue  # "9 gal, nothing yesterday"
        if not OTHER_MATTERS.isdisjoint(clause.words()) and clause.items[0].text not in _THEN:
            continue  # "9 gal, froze last night"
        if not _TO_COME.isdisjoint(clause.words()):
            continue  # "spent $48 on spiles, coming monday"
        told_then = clause.items[0].text in _THEN and not amount
        listed = _named_alike(before, clause) or _only_tests(before, clause)
        listed = listed or _goes_with_it(before, clause) or _says_it_again(before, clause)
        if told_then or listed or _more_jars(before, clause):
            before.on, before.ahead = clause.on, clause.ahead
            continue
        own_fact = clause.tags & (FRAME_TAGS - {"SUGAR"} | {"ITEMS"}) or clause.holds(
            "volume", "cords", "money", "tree"
        )
        if {"rest", "others"} & set(clause.text.replace("the ", "").split()):
            continue  # "backed out 31 spiles, rest sat"
        rest = clause.ahead and not {"rest", "other", "more"}.isdisjoint(clause.words())
        if not own_fact and not rest and not _was_before_that(clause):
            before.on, before.ahead = clause.on, clause.ahead


def _more_jars(before: Clause, clause: Clause) -> bool:
    """`bottled 3 quarts and 6 pints yesterday`: one deed, and its day."""
    jarred = not _JARRED.isdisjoint(before.frame | clause.frame)
    joined = clause.joint in ("and", "&", "plus", "+", ",")
    own = [each.tags & (FRAME_TAGS - {"BOTTLE", "SYRUP"}) for each in (before, clause)]
    sizes = before.holds("volume")
    both = "BOTTLE" in before.tags and "BOTTLE" in clause.tags
    return jarred and joined and sizes and not any(own) and not both


def _named_alike(before: Clause, clause: Clause) -> bool:
    """`20 gal from ridge and 10 from brook yesterday`: a list, with its day."""
    deeds = clause.tags & (FRAME_TAGS - {"SAP"})
    joined = clause.joint in ("and", "&", ",", "")
    return (
        joined
        and not deeds
        and all(
            each.holds("tree", "lot") and each.holds("volume", "number")
            for each in (before, clause)
        )
    )


def _only_tests(before: Clause, clause: Clause) -> bool:
    """`2.4% and 10 gal yesterday`: the sugar of that sap."""
    figures = [item for item in before.items if item.sort in QUANTITIES or item.sort == "number"]
    tested = bool(figures) and all(item.sort in _TESTS for item in figures)
    tested = tested and ("SUGAR" in before.tags or figures[0].sort == "brix")
    named = any(item.sort in ("tree", "lot") for item in (*before.items, *clause.items))
    return tested and not named and clause.holds("volume")


def _says_it_again(before: Clause, clause: Clause) -> bool:
    """`38 L (10 gal) yesterday`, `2 qts of syrup in 4 pints yesterday`: the same amount."""
    first, last = ([item.gallons for item in each.of_sort("volume")] for each in (before, clause))
    if len(first) != 1 or len(last) != 1 or clause.joint not in ("(", ""):
        return False
    return abs(first[0] - last[0]) <= _ALIKE * max(first[0], last[0])


_ALIKE = 0.03
"""Two amounts in two units that differ by less are one, said again (our own)."""


def _goes_with_it(before: Clause, clause: Clause) -> bool:
    """`seven jugs filled and capped on monday`, `$31 on hooks and lids on monday`: no figure of its
    own."""
    joined = clause.joint in ("and", "&", "n", "then")
    figures = any(item.sort in QUANTITIES or item.sort in _COUNTS for item in clause.items)
    night = any(item.text in ("last night", "tonight") for item in clause.items)
    told = any(item.sort in QUANTITIES or item.sort in _COUNTS for item in before.items)
    return joined and told and not (figures or night or clause.plan or clause.ahead)


_COUNTS = frozenset(("number", "vessels", "money"))
_JARRED = frozenset(("BOTTLE", "JARN"))
_TESTS = frozenset(("brix", "number"))
_THEN = frozenset("when as while after once because".split())
"""`lost 4 gal when the tote tipped yesterday`: then it was."""
_TO_COME = frozenset(
    "coming arriving arrive arrives due getting shipped delivered here back next".split()
)


def _was_before_that(clause: Clause) -> bool:
    """`up from 1.9 on sunday`: the day of the figure that it was."""
    words = clause.words()
    return any(" ".join(pair) in ("up from", "down from") for pair in itertools.pairwise(words))
