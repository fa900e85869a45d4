"""A record that is told with a question mark: `tree 9 is 2.8 brix? seems high`."""

from __future__ import annotations

from collections.abc import Callable

from bot.reading.clause import Clause
from bot.reading.kinds import Question
from bot.reading.notes import Notes
from bot.reading.puzzling import PLAIN_WORDS
from bot.reading.understanding import Choice, Doubt, Understanding

_RECORDS = frozenset(
    "sap sugar syrup poured_out jars taps_set taps_pulled store_temp fuel cost boil".split()
)
"""Kinds that are kept for good, so that it matters whether they were meant."""
_FIGURES = frozenset("number volume brix vessels temp hours cords mass money".split())
LONGEST_ASKED = 60
"""Characters of a text that fit into a question with the words around them (our own)."""


def told_with_a_mark(
    meant: Understanding, notes: Notes, read: Callable[[str], Understanding]
) -> Understanding:
    """Asks whether a figure is to be written down where the question mark alone makes it a
    question and the same words without it are a record. Else what was meant, as it came."""
    asked = [clause for clause in notes.clauses if clause.question]
    if not asked or meant.doubt is not None or not all(map(_is_told, asked)):
        return meant
    if any(not isinstance(reading, Question) for reading in meant.readings):
        return meant
    plain = notes.text.replace("?", ".").strip()
    told = read(plain)
    recorded = {reading.kind for reading in told.readings} - {"chat"}
    if (
        told.doubt is not None
        and not told.readings
        and any(c.has("SUGAR") or c.holds("brix") for c in asked)
    ):
        return told  # "had 12 gal, refractometer says 19 brix??"
    if told.doubt is not None or not recorded or not recorded <= _RECORDS:
        return meant
    said = " ".join(clause.spoken() for clause in asked)
    if len(said) > LONGEST_ASKED:
        said = said[: LONGEST_ASKED - 3] + "..."
    return Understanding(
        (),
        Doubt(
            f"{said[0].upper()}{said[1:]}: shall I write that down?",
            (
                Choice(("ok", "yep", "yeah", "sure", "please", "write it down", "do"), plain),
                Choice(("no", "nope", "nah", "just asking", "don't"), ""),
            ),
            number_only=False,
        ),
    )


def _is_told(clause: Clause) -> bool:
    """A figure, and no word that may ask or that says nothing to us."""
    figures = not clause.sorts.isdisjoint(_FIGURES)
    plain = all(item.tags or item.text in PLAIN_WORDS for item in clause.of_sort("word"))
    return clause.by_mark and figures and plain and not clause.has("TOTAL", "SOFAR")
