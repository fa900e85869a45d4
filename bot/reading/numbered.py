"""Figures that say which one, and not how much: grade 6, room 12, run #2, day 3."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item

_NUMBERED = frozenset(
    "# no no. number day days week run runs round boil batch trip load gathering collection pull "
    "draw season year section zip road route page other room grade grades class bus group unit "
    "site gr troop pack chapter step lap pass row stop zone".split()
)


def says_which(clause: Clause, item: Item) -> bool:
    """True where the word before a figure makes it a name."""
    before = clause.preceding(item, 1)
    return item.text.isdigit() and bool(before) and before[0].text in _NUMBERED
