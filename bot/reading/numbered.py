"""Figures that say which one, and not how much: grade 6, room 12, run #2, day 3."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item

_NUMBERED = frozenset(
    "# no no. number day days week run runs round boil batch trip load gathering collection pull "
    "draw season year section zip road route page other room grade grades class bus group unit "
    "lesson session period meeting visit age site gr troop pack chapter step lap pass row stop "
    "zone".split()
)


def says_which(clause: Clause, item: Item) -> bool:
    """True where the word before a figure makes it a name."""
    before = clause.preceding(item, 2)
    if len(before) > 1 and before[1].text in _IN_A_ROW:
        return False  # "first trip 12 gal, second trip 9"
    return item.text.isdigit() and bool(before) and before[0].text in _NUMBERED


_IN_A_ROW = frozenset("first second third fourth next last other 1st 2nd 3rd 4th".split())
