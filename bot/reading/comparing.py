"""Other days that a text only compares with: `14 gal, half of yesterday`, `11 vs 9 last year`."""

from __future__ import annotations

import re
from collections.abc import Sequence

from bot.reading.clause import Clause
from bot.reading.dates import WEEKDAY

_AGAINST = re.compile(
    r"\b(?:same (?:\w+ )?as|half of|third of|double|twice|beat|beats|beating"
    r"|(?:more|less|better|worse|sweeter|slower|faster|bigger|colder|warmer) than"
    r"|vs|versus|compared (?:to|with)|up from|down from|ahead of|behind)\b"
)
_THEN = re.compile(
    r"\b(?:yesterday|last (?:year|week|night|time|season|spring|march|monday|tuesday|wednesday"
    rf"|thursday|friday|saturday|sunday)|{WEEKDAY}|the day before"
    r"|this (?:day|time) last)"
)
COMPARES = frozenset(("vs", "versus", "compared to", "compared with", "compared"))
"""Words before which another day begins within a clause."""


def compares(clause: Clause) -> bool:
    """Whether a clause only sets its own amount against that of another day."""
    against = _AGAINST.search(clause.text)
    return against is not None and _THEN.search(clause.text, against.end()) is not None


def set_apart(found: Sequence[Clause]) -> None:
    """Marks what stands beside an amount of its own and only compares: its figures are no record,
    and its day is not the day."""
    told: set[int] = set()
    for clause in found:
        amount = clause.holds("volume", "brix")
        if clause.sentence in told and compares(clause):
            clause.aside = True
            for item in clause.items:
                item.used = True
        elif amount:
            told.add(clause.sentence)
