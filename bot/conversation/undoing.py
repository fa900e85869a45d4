"""What an undo takes back: the last text's records, those of the last few, or the one it names."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta

from bot.conversation.amending import is_long_ago
from bot.conversation.household import drop_invitation
from bot.conversation.turn import Turn
from bot.conversation.words import (
    counted_texts,
    day_of_a_record,
    figures_of_a_record,
    kinds_of_a_record,
    names_a_place,
)
from bot.entry import Entry
from bot.ledger import Kept
from bot.reading import Choice, Doubt
from bot.reading.kinds import Undo
from bot.wording import questions, receipts
from bot.wording.compose import sentence
from bot.wording.days import day as say_day

_LOOKS_BACK = 6
# A record that is named by its figure or its day is looked for further back.
_LOOKS_FOR = 12


@dataclass(frozen=True, slots=True)
class _Named:
    """Which record an undo names: by its figures, its day, its lot or tree, its kind."""

    figures: frozenset[str]
    day: date | None
    places: frozenset[str]
    kinds: frozenset[str]

    @classmethod
    def by(cls, turn: Turn) -> _Named:
        known = turn.known
        places = names_a_place(turn.words, (*known.lots, *known.trees))
        day = day_of_a_record(turn.words, turn.today)
        kinds = kinds_of_a_record(turn.words)
        return cls(figures_of_a_record(turn.words), day, places, kinds)

    @property
    def is_none(self) -> bool:
        """True for an undo of whatever was last."""
        return not (self.figures or self.places or self.kinds) and self.day is None

    def fits(self, entry: Entry, turn: Turn) -> bool:
        """Whether a record has all that is named."""
        shown = figures_of_a_record(receipts.line(entry, turn.style))
        here = {entry.lot, entry.tree} & self.places
        return (
            self.figures <= shown
            and (self.day is None or entry.on == self.day)
            and (not self.places or bool(here))
            and (not self.kinds or entry.kind in self.kinds)
        )

    def said(self, turn: Turn) -> str:
        """What is named, for who is told that there is no such record."""
        if self.figures or self.places:
            return max(self.figures or self.places)
        if self.kinds:
            return min(self.kinds).replace("_", " ")
        return f"record of {say_day(self.day or turn.today, turn.today)}"


def undo(turn: Turn, _reading: Undo) -> None:
    """Take back what this person's latest text wrote that still counts, what several wrote, or the
    record that the words name."""
    if turn.drops_question:
        turn.reply.answers.append(questions.DROPPED)
        return
    named = _Named.by(turn)
    looks = _LOOKS_BACK if named.is_none else _LOOKS_FOR
    texts = turn.book.records.last_texts(turn.who.sugarbush_id, turn.who.person_id, looks)
    found = [wanted for text in texts if (wanted := _wanted(turn, text, named))]
    bought = _bought(turn, texts) if named.is_none else []
    if bought:
        found = [bought]
    if not found:
        turn.reply.answers.append(
            questions.NOTHING_TO_UNDO
            if named.is_none
            else questions.no_such_record(named.said(turn))
        )
        return
    sure = turn.is_settled or bought or not named.is_none or _goes_on(turn)
    if not sure and is_long_ago(turn, found[0]):
        receipt = "; ".join(receipts.line(kept.entry, turn.style) for kept in found[0][:2])
        question = questions.undo_that(receipt)
        turn.ask(question, Doubt(question, (Choice(_AGREED, "undo"), Choice(_NO, ""))))
        return
    count = counted_texts(turn.words)
    if len(found[0]) == count:
        count = 1  # "undo both" of one text that told two things
    for wanted in found[:count]:
        _take_back(turn, wanted)
    turn.forget()


def _goes_on(turn: Turn) -> bool:
    """Whether another undo came just before: twice goes two back, however old they are."""
    since, until = turn.now_utc - _IN_A_ROW, turn.now_utc
    said = turn.book.inbox.earlier_from(turn.who.address, turn.text.id, since, until, "undo")
    return bool(said)


# Undos that follow each other within so long go further back (our own).
_IN_A_ROW = timedelta(hours=1)
_AGREED = ("ok", "undo", "y", "yes", "yep", "yeah", "that one", "right")
_NO = ("no", "n", "nope", "leave it", "keep it")


def _bought(turn: Turn, texts: list[list[Kept]]) -> list[Kept]:
    """The latest cost of a thing that the words name: "delete the lids"."""
    words = set(turn.words.casefold().replace(",", " ").split())
    costs = [kept for text in texts for kept in text if kept.entry.kind == "cost"]
    named = [
        kept
        for kept in costs
        if words & set(str(kept.entry.detail.get("item", "")).casefold().split())
    ]
    return named[:1]


def _wanted(turn: Turn, text: list[Kept], named: _Named) -> list[Kept]:
    """The records of a text that are meant. Somebody who has joined is not put out by an undo."""
    people, bush = turn.book.people, turn.who.sugarbush_id
    return [
        kept
        for kept in text
        if (named.is_none or named.fits(kept.entry, turn))
        and (
            kept.entry.kind != "helper"
            or people.is_invited(bush, str(kept.entry.detail["address"]))
        )
    ]


def _take_back(turn: Turn, wanted: list[Kept]) -> None:
    people = turn.book.people
    for undone in turn.book.records.undo(turn.writer, wanted):
        if undone.was.kind == "helper":
            address = str(undone.was.detail["address"])
            people.withdraw(turn.who.sugarbush_id, address, turn.now_utc)
            drop_invitation(turn, address)
        turn.undone.append(undone.was)
        said = undone.was if undone.now is None else undone.now
        lead = "undone: " if undone.now is None else "back to "
        turn.reply.receipts.append(sentence(lead + receipts.line(said, turn.style)))
