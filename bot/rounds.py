"""The rounds of the clock: what became due since the last one is planned, and owed.

A plan says what is owed because of a stretch of time. The stretches follow one another without a
gap, through crashes and standstills: the mark is moved only after all of a stretch is owed, and
what is planned a second time is owed once.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import islice

from bot.clock import Clock
from bot.ledger import Ledger
from bot.messages import Unasked
from bot.outbox import owe

# (since_utc, until_utc) -> the texts owed because of what lies after the first moment and up to
# the second, aware UTC.
Plan = Callable[[datetime, datetime], Iterable[Unasked]]

# The first round looks back as far as rounds are apart; after a standstill no plan has use for
# what lies longer ago than a day. Our own.
FIRST_LOOK_BACK = timedelta(minutes=15)
LONGEST_LOOK_BACK = timedelta(days=1)
# Texts owed in one transaction: long ones keep the webhook waiting on SQLite.
_AT_ONCE = 500


@dataclass(frozen=True, slots=True)
class Round:
    """One plan, and the name that its mark has."""

    name: str
    plan: Plan
    ledger: Ledger
    clock: Clock

    def go(self) -> int:
        """Plan from the last round until now, and owe it. Gives how many texts were new."""
        now_utc = self.clock.now_utc()
        with self.ledger.reading() as book:
            mark = book.outbox.planned_until(self.name)
        since_utc = now_utc - FIRST_LOOK_BACK if mark is None else mark
        if since_utc >= now_utc:
            return 0
        since_utc = max(since_utc, now_utc - LONGEST_LOOK_BACK)
        new = 0
        for texts in _batches(self.plan(since_utc, now_utc)):
            with self.ledger.writing() as book:
                new += owe(book, texts, now_utc)
        with self.ledger.writing() as book:
            book.outbox.mark_planned(self.name, now_utc)
        return new


def _batches(texts: Iterable[Unasked]) -> Iterator[list[Unasked]]:
    rest = iter(texts)
    while batch := list(islice(rest, _AT_ONCE)):
        yield batch
