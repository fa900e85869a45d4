"""A text from any door: kept, then read once, then answered.

Kept before answered: the raw text is committed under its provider's id before it is read. Its
records and its reply commit together. The same id again gets the same reply and writes nothing.
"""

from __future__ import annotations

import logging
from dataclasses import dataclass
from typing import Protocol

from bot.clock import Clock
from bot.ledger import Book, CollisionError, KeptText, Ledger
from bot.messages import Incoming
from bot.wording.meeting import TROUBLE

log = logging.getLogger(__name__)

# A text that raised an error this often is left for a person to look at.
MOST_TRIES = 5
# Two first texts of one person at the same moment collide once, not more.
_MOST_COLLISIONS = 3


class Answers(Protocol):
    """What answers a text within a transaction: the conversation."""

    def answer(self, book: Book, text: KeptText) -> str | None:
        """Record what the text says and give the reply, None for silence."""
        ...


@dataclass(frozen=True, slots=True)
class Inbox:
    """The way of every text into the ledger. Safe in threads and in several processes."""

    ledger: Ledger
    conversation: Answers
    clock: Clock

    def receive(self, incoming: Incoming) -> str | None:
        """Keep a text, read it, and give the reply that goes back; None for no reply.

        An error in reading never loses the text and never reaches the door: the text stays
        unread, to be taken up again, and the sender is told so.
        """
        kept = self.ledger.keep(incoming)
        if kept.is_read:
            return kept.reply
        try:
            return self._read(kept.id, owed=False)
        except Exception:
            log.exception("A text could not be read; it stays in the inbox", extra=_which(kept))
            self._count_failure(kept.id)
            return TROUBLE

    def take_up_unread(self) -> int:
        """Read the texts that were kept but not read, because a process died or an error was
        mended since. Their replies are stored, to be sent another way. Gives how many."""
        with self.ledger.reading() as book:
            unread = book.inbox.unread(MOST_TRIES)
        taken_up = 0
        for kept in unread:
            try:
                self._read(kept.id, owed=True)
                taken_up += 1
            except Exception:
                log.exception("A text still cannot be read", extra=_which(kept))
                self._count_failure(kept.id)
        return taken_up

    def _read(self, text_id: int, *, owed: bool) -> str | None:
        """Read one kept text, again if another text of the same people got in between."""
        for _ in range(_MOST_COLLISIONS):
            try:
                return self._read_once(text_id, owed=owed)
            except CollisionError:
                continue
        return self._read_once(text_id, owed=owed)

    def _read_once(self, text_id: int, *, owed: bool) -> str | None:
        """Read it in one transaction. Whoever comes second gets the first's reply."""
        with self.ledger.writing() as book:
            text = book.inbox.claim(text_id)
            if text.is_read:
                return text.reply
            reply = self.conversation.answer(book, text)
            book.inbox.answer(text_id, reply, self.clock.now_utc(), owed=owed)
            return reply

    def _count_failure(self, text_id: int) -> None:
        with self.ledger.writing() as book:
            book.inbox.failed(text_id)


def _which(kept: KeptText) -> dict[str, object]:
    """What names a text in the log, without its words or its sender."""
    return {"text_id": kept.id, "door": kept.incoming.door}
