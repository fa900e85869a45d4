"""The question that waits for its answer, as it is stored and as it is answered.

Four sorts: a doubt of the reading ("12 what?"), where the trees are, which of several records a
correction means, and the rest of an answer, which waits for "more" and asks nothing.
"""

from __future__ import annotations

from dataclasses import asdict, dataclass
from datetime import timedelta
from typing import Any

from bot.reading import Choice, Doubt

# A bare word or number answers for half a day; after that it is taken for itself (our own).
ANSWERABLE_FOR = timedelta(hours=12)


@dataclass(frozen=True, slots=True)
class WhereAsked:
    """ "Where are your trees?" Any text that names a place answers it."""


@dataclass(frozen=True, slots=True)
class WhichRecord:
    """Which record a correction means: the words of each option with the record's id, and the
    correction as the reading's JSON object. other: the answer that is about no record, and the
    text that it makes."""

    options: tuple[tuple[tuple[str, ...], int], ...]
    amend: dict[str, Any]
    other: Choice | None = None

    def chosen(self, answer: str) -> int | None:
        """The id of the record that the answer names, None if it names none."""
        said = answer.strip(" .!?").casefold()
        for words, record_id in self.options:
            if said in words:
                return record_id
        return None


@dataclass(frozen=True, slots=True)
class Rest:
    """What is left of the last answer, a text for each "more", and the question that it was of,
    which another may follow up ("and yesterday?")."""

    texts: tuple[str, ...]
    about: str = ""


Question = Doubt | WhereAsked | WhichRecord | Rest


def to_json(question: Question) -> dict[str, Any]:
    """The question as plain JSON."""
    if isinstance(question, WhereAsked):
        return {"sort": "where"}
    if isinstance(question, WhichRecord):
        return {
            "sort": "which",
            "options": [[list(words), record_id] for words, record_id in question.options],
            "amend": question.amend,
            "other": None if question.other is None else asdict(question.other),
        }
    if isinstance(question, Rest):
        return {"sort": "rest", "texts": list(question.texts), "about": question.about}
    return {"sort": "doubt", **asdict(question)}


def from_json(stored: dict[str, Any]) -> Question:
    """The question back again. Raises ValueError for a sort that is not known."""
    sort = stored.get("sort")
    if sort == "where":
        return WhereAsked()
    if sort == "which":
        options = tuple((tuple(words), record_id) for words, record_id in stored["options"])
        other = stored.get("other")
        made = None if other is None else Choice(tuple(other["words"]), other["text"])
        return WhichRecord(options, stored["amend"], made)
    if sort == "rest":
        return Rest(tuple(stored["texts"]), stored.get("about", ""))
    if sort == "doubt":
        return Doubt(
            question=stored["question"],
            choices=tuple(Choice(tuple(one["words"]), one["text"]) for one in stored["choices"]),
            fill=stored["fill"],
            number_only=stored["number_only"],
        )
    raise ValueError(
        f"The open question is of sort {sort!r}, but should be doubt, where, which or rest"
    )
