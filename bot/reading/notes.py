"""What the kinds write down while a text is read: certain readings, and doubts."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date, datetime
from typing import TYPE_CHECKING, TypeVar

from bot.reading.understanding import Choice, Doubt, Profile

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.kinds.base import Reading

R = TypeVar("R", bound="Reading")


LONG_TALK = 6
"""Clauses beyond which a text with stray figures is a letter, and no note."""


@dataclass(slots=True)
class Noted:
    """A reading, where in the text it stands, and the clause that gave it."""

    reading: Reading
    at: int
    clause: int


@dataclass(slots=True)
class Notes:
    """sent: local time. profile: what is known of the sender. text: the tidy text.
    clause_number: the clause that is being read. spans: clauses that give a boil from one
    clock time to another."""

    text: str
    sent: datetime
    profile: Profile
    clauses: list[Clause] = field(default_factory=list)
    noted: list[Noted] = field(default_factory=list)
    doubts: list[Doubt] = field(default_factory=list)
    clause_number: int = 0
    spans: set[int] = field(default_factory=set)

    has_address: bool = False

    def __post_init__(self) -> None:
        self.has_address = any(clause.holds("phone", "email") for clause in self.clauses)

    @property
    def is_letter(self) -> bool:
        """True for a text so long that much in it is talk."""
        return len(self.clauses) > LONG_TALK

    def day(self, clause: Clause) -> date:
        """The local day that a clause speaks of."""
        return clause.on if clause.on is not None else self.sent.date()

    def add(self, reading: Reading, at: int) -> None:
        """Writes a certain reading down; `at` is its place in the text."""
        self.noted.append(Noted(reading, at, self.clause_number))

    def ask(
        self,
        question: str,
        *choices: tuple[str, str],
        fill: str | None = None,
        number_only: bool = True,
    ) -> None:
        """Asks, in litres where the sender measures in them. Each choice is (words that pick
        it, joined by |; the text that it makes)."""
        if self.profile.units == "metric":
            question = question.replace(" gal of sap", " L of sap").replace("many gal", "many L")
            question = question.replace("12 gal at 2.2", "45 L at 2.2")
            fill = fill and fill.replace("{} gal", "{} litres")
        made = tuple(Choice(tuple(words.split("|")), text) for words, text in choices)
        self.doubts.append(Doubt(question, made, fill, number_only))

    def sentence(self, clause: Clause) -> list[Clause]:
        """All clauses of a clause's sentence, itself among them."""
        if len(self.clauses) == 1:
            return [clause]
        return [other for other in self.clauses if other.sentence == clause.sentence]

    def items_beside(self, clause: Clause) -> list[Item]:
        """All items of a clause's sentence, its own among them, in order."""
        return [item for other in self.sentence(clause) for item in other.items]

    def clause_before(self) -> Clause | None:
        """The clause before the one that is being read."""
        return self.clauses[self.clause_number - 1] if self.clause_number else None

    def clause_after(self) -> Clause | None:
        """The clause after the one that is being read."""
        return next(iter(self.clauses[self.clause_number + 1 :]), None)

    def last(self, kind: type[R], *, clause: int | None = None) -> Noted | None:
        """The last reading of a kind, in one clause or in all so far."""
        if not self.noted:
            return None
        for noted in reversed(self.noted):
            if isinstance(noted.reading, kind) and clause in (None, noted.clause):
                return noted
        return None

    def all(self, kind: type[R]) -> list[Noted]:
        """All readings of a kind so far."""
        return [noted for noted in self.noted if isinstance(noted.reading, kind)]
