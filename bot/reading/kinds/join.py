"""An invited helper accepts."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar

from bot.reading.kinds.base import Reading

if TYPE_CHECKING:
    from bot.reading.notes import Notes

CUES = {
    "JOINW": "join joining",
}

MOST_WORDS = 9
_SAID_WITH = frozenset(
    "join ok okay yes yeah yep sure please i'll i will we'd "
    "we'll like to want let's me in the it up us and "
    "thanks hi hello happy glad i'd accept".split()
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Join(Reading):
    """An invited helper accepts."""

    kind: ClassVar[str] = "join"


def find_whole(notes: Notes) -> bool:
    """A text that only says join. Says whether it is one."""
    words = [item.text for clause in notes.clauses for item in clause.of_sort("word")]
    if "join" not in words or len(words) > MOST_WORDS or any(c.question for c in notes.clauses):
        return False
    if any(item.sort not in ("word", "sign") for clause in notes.clauses for item in clause.items):
        return False
    if not set(words) <= _SAID_WITH and not _wishes_to(notes):
        return False
    notes.add(Join(), 0)
    return True


def _wishes_to(notes: Notes) -> bool:
    """`i will join my wife's sugarbush`, `this is Otis, join`."""
    alone = any(clause.text == "join" for clause in notes.clauses)
    asked = any(said in notes.text for said in _WISHES)
    return alone or asked


_WISHES = (
    "i want to join",
    "i will join",
    "i'll join",
    "i'd like to join",
    "we want to join",
    "let me join",
    "i would like to join",
    "i am joining",
    "ill join",
)
