"""How somebody wants to be texted unasked: at what hour, on which mornings, a weekly total.

The reading contract knows no such kind: outside, a wish is a `chat` with fields of its own.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import time
from typing import TYPE_CHECKING, ClassVar

from bot.reading.kinds.base import Reading
from bot.reading.signs import Sought

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.notes import Notes

EVERY, RUN_DAYS, NEVER = "every", "run_days", "never"

_UNASKED = frozenset(
    "alert alerts reminder reminders mornings daily notification notifications ".split()
)
_TEXTS = frozenset("text texts message messages note notes update updates".split())
_REFUSING = frozenset(
    "no stop off quit skip don't dont never without mute silence pause end".split()
)
_ASKS_TO_BE_TEXTED = Sought(
    " me|alert|morning|daily text",
    r"\b(text|alert|message|tell|wake|ping|remind|notify) me\b"
    r"|\b(alert|alerts|morning texts?|morning message|daily text)\b",
)
_ONLY_RUN_DAYS = Sought(
    "only|run",
    r"\bonly\b.*\b(run days?|runs?|running|sap run|good days|matters?|something to say)\b"
    r"|\brun days? only\b|\bwhen (it'?s|it is|sap is) (going to|gonna) run\b",
)
_EVERY = re.compile(r"\b(every|each) (single )?(morning|day)\b|\bdaily\b")
_WEEKLY = re.compile(r"\b(weekly|sunday|every week|each week)\b")
_SENDS = re.compile(
    r"\b(?:send|text|give|tell|mail) me\b|\bcan (?:i|you)\b|\bi'?d? (?:want|like)\b"
)
_SUMMED = frozenset("total totals summary tally sum recap".split())


@dataclass(frozen=True, slots=True, kw_only=True)
class Wish(Reading):
    """A wish about unasked texts. alert_at: local time of the morning alert. mornings:
    "every", "run_days" or "never". weekly: whether a weekly total is wanted."""

    kind: ClassVar[str] = "chat"

    alert_at: time | None = None
    mornings: str | None = None
    weekly: bool | None = None


def find_whole(notes: Notes) -> bool:
    """A text that says how to be texted, and nothing else. Says whether it is one."""
    if any(c.holds("volume", "brix", "vessels") for c in notes.clauses):
        return False
    words = frozenset().union(*(clause.each_word for clause in notes.clauses))
    weekly = bool(words & _SUMMED) and bool(_WEEKLY.search(notes.text))
    if any(_asks(clause, weekly=weekly) for clause in notes.clauses) or len(words) > MOST_WORDS:
        return False
    refused = bool(words & _REFUSING)
    if weekly:
        notes.add(Wish(weekly=not refused), 0)
        return True
    about_mornings = bool(words & _UNASKED) or bool(
        {"morning", "mornings"} & words and words & _TEXTS
    )
    if _ONLY_RUN_DAYS.search(notes.text) and (
        about_mornings or _ASKS_TO_BE_TEXTED.search(notes.text)
    ):
        at = next((found for clause in notes.clauses for found in [_hour(clause)] if found), None)
        notes.add(Wish(alert_at=at, mornings=RUN_DAYS), 0)
        return True
    if refused and (about_mornings or about_one_thing(notes.text)):
        notes.add(Wish(mornings=NEVER), 0)
        return True
    if not _ASKS_TO_BE_TEXTED.search(notes.text):
        return False
    at = next((found for clause in notes.clauses for found in [_hour(clause)] if found), None)
    every = EVERY if _EVERY.search(notes.text) else None
    if at is None and every is None:
        return False
    notes.add(Wish(alert_at=at, mornings=every), 0)
    return True


_ABOUT = Sought(
    " me",
    r"\b(?:text|texting|messag(?:e|ing)|remind|reminding|bug|bugging) me"
    r" (?:\w+ )?about (?!any|it\b|this\b)",
)


def about_one_thing(text: str) -> bool:
    """`don't text me about boiling` refuses reminders, and not every answer."""
    return _ABOUT.search(text) is not None


def _asks(clause: Clause, *, weekly: bool) -> bool:
    """Whether a clause asks; `send me the weekly summary` wishes, though "send me" else asks."""
    return clause.question and not (
        weekly and not clause.has("ASKHOW") and _SENDS.search(clause.text)
    )


MOST_WORDS = 14
_LATEST_BARE_HOUR = 11


def _hour(clause: Clause) -> time | None:
    """`at 8`, `at 6:30`, `at 7am`: a morning hour."""
    for item in clause.items:
        behind = [each.text for each in clause.preceding(item, 1)]
        if item.sort == "clock" or (
            item.sort == "number" and behind[:1] in (["at"], ["to"], ["around"], ["by"])
            and 4 <= item.value <= _LATEST_BARE_HOUR and item.value == int(item.value)
        ):  # fmt: skip
            return time(int(item.value) % 24, round(item.value % 1 * 60) % 60)
    return None
