"""A ledger to test with: people who text, and entries that they could have texted."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time, timedelta
from itertools import count
from typing import Any

from bot.entry import Entry
from bot.ledger import Book, KindSum, Ledger, Undone, Who, Writer
from bot.messages import Incoming

ANN, BEN, CAL = "+15550100011", "+15550100012", "+15550100013"
START = datetime(2027, 3, 1, 22, tzinfo=UTC)


def sap(gallons: float, *, on: date = date(2027, 3, 4), at: time = time(17), **more: Any) -> Entry:
    """Sap gathered on a day."""
    at_local = datetime.combine(on, at)
    return Entry(kind="sap", on=on, at_local=at_local, gallons=gallons, **more)


def entry(kind: str, *, on: date = date(2027, 3, 4), at: time = time(17), **more: Any) -> Entry:
    """Any entry on a day."""
    return Entry(kind=kind, on=on, at_local=datetime.combine(on, at), **more)


@dataclass
class Desk:
    """Writes in the ledger as the work layer does: one text, one transaction."""

    ledger: Ledger
    _numbers: Iterator[int] = field(default_factory=lambda: count(1))

    @contextmanager
    def text(self, sender: str = ANN) -> Iterator[tuple[Book, Who, Writer]]:
        """A text of somebody, who is met at first, and the transaction that it is read in."""
        number = next(self._numbers)
        now = START + timedelta(minutes=number)
        kept = self.ledger.keep(Incoming("test", str(number), sender, f"text {number}", now))
        with self.ledger.writing() as book:
            who = book.people.find(sender) or book.people.meet(sender, now)
            yield book, who, Writer(who.sugarbush_id, who.person_id, kept.id, now)
            book.inbox.answer(kept.id, "ok", now, owed=False)

    def write(self, *entries: Entry, sender: str = ANN) -> None:
        """One text that writes these."""
        with self.text(sender) as (book, _, writer):
            for one in entries:
                book.records.add(writer, one)

    def amend(self, entry: Entry, sender: str = ANN) -> None:
        """One text that puts the person's last record right."""
        with self.text(sender) as (book, who, writer):
            last = book.records.last_texts(who.sugarbush_id, who.person_id, 1)[0][-1]
            book.records.amend(writer, last, entry)

    def undo(self, sender: str = ANN) -> list[Undone]:
        """One text that takes back what the person's last text wrote."""
        with self.text(sender) as (book, who, writer):
            texts = book.records.last_texts(who.sugarbush_id, who.person_id, 1)
            return book.records.undo(writer, texts[0]) if texts else []

    def sap(self, sender: str = ANN, season: int = 2027) -> float:
        """The season's sap, gallons, of the person's sugarbush."""
        return sum(one.gallons or 0.0 for one in self.sums(sender, season) if one.kind == "sap")

    def sums(self, sender: str = ANN, season: int = 2027) -> list[KindSum]:
        """The season's sums, sorted."""
        with self.ledger.reading() as book:
            who = book.people.find(sender)
            assert who is not None
            found = book.sums.season(who.sugarbush_id, season)
        return sorted(found, key=lambda one: (one.kind, one.brix is not None, one.brix or 0.0))
