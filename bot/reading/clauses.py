"""Fourth stage: items become clauses, each with what it does, when, and how sure it is."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from bot.reading.clause import Clause
from bot.reading.comparing import set_apart
from bot.reading.cutting import cut
from bot.reading.frames import QUANTITIES
from bot.reading.going_on import frames_said_last, mark_sureness
from bot.reading.items import Item
from bot.reading.naming import mark_names_and_days
from bot.reading.own_deeds import mark_deeds
from bot.reading.which_ask import mark_questions


def clauses(items: Sequence[Item]) -> list[Clause]:
    """The clauses of one text, in order."""
    found = cut(items)
    for clause in found:
        mark_deeds(clause)
    said: dict[int, frozenset[str]] = {}
    for clause in found:
        timed = {"HOURS"} if clause.holds("hours") else set()
        said[clause.sentence] = said.get(clause.sentence, frozenset()) | clause.tags | timed
    for clause in found:
        clause.sentence_tags = said[clause.sentence]
    set_apart(found)
    mark_questions(found)
    mark_sureness(found)
    mark_names_and_days(found)
    frames_said_last(found)
    for before, clause in itertools.pairwise(found):
        plain = not any(item.sort in QUANTITIES or item.sort == "vessels" for item in before.items)
        clause.bucket_before = (
            clause.sentence == before.sentence
            and "BUCKET" in before.tags
            and plain
            and clause.sorts.isdisjoint(("tree", "lot"))
            and not before.tags & {"GATHER", "FULL", "SAP", "POUR", "DRY", "BOIL"}
            and not {"new", "using", "use", "hung", "hanging", "my", "our"}.isdisjoint(
                before.words()
            )
        )
    return found
