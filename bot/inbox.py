"""A text from any door: kept, then read once, then answered.

Kept before answered: the raw text is committed under its provider's id before it is read. Its
records and its reply commit together. The same id again gets the same reply and writes nothing.
"""

from __future__ import annotations

import logging
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Protocol

from bot.clock import DEFAULT_ZONE, Clock
from bot.ledger import Book, CollisionError, KeptText, Ledger
from bot.messages import Incoming
from bot.outbox import owe_reply
from bot.outdoors import Looked, WeatherWantedError
from bot.wording.meeting import TROUBLE

log = logging.getLogger(__name__)

# A text that raised an error this often is left for a person to look at.
MOST_TRIES = 5
# As long as a door may still answer a text itself. Twilio gives up after 15 s (error 11205), and
# whoever takes a text up before that would answer it twice.
IN_HAND = timedelta(seconds=30)
# Two first texts of one person at the same moment collide once, not more.
_MOST_COLLISIONS = 3
# A text wants the weather of one place.
_MOST_LOOKS = 1


class Answers(Protocol):
    """What answers a text within a transaction: the conversation."""

    def answer(self, book: Book, text: KeptText, looked: Looked | None = None) -> str | None:
        """Record what the text says and give the reply, None for silence.

        Raises WeatherWantedError for weather that was not looked up yet.
        """
        ...

    def look(self, wanted: WeatherWantedError) -> Looked:
        """Look the weather up that an answer wants, outside of any transaction."""
        ...


@dataclass(frozen=True, slots=True)
class Inbox:
    """The way of every text into the ledger. Safe in threads and in several processes."""

    ledger: Ledger
    conversation: Answers
    clock: Clock
    default_zone: str = DEFAULT_ZONE
    in_hand: timedelta = IN_HAND

    def receive(self, incoming: Incoming) -> str | None:
        """Keep a text, read it, and give the reply that goes back; None for no reply.

        An error in reading never loses the text and never reaches the door: the text stays
        unread, to be taken up again, and the sender is told so.
        """
        kept = self.ledger.keep(incoming)
        if kept.is_read:
            return kept.reply
        try:
            return self._read(kept, owed=False)
        except Exception:
            log.exception("A text could not be read; it stays in the inbox", extra=_which(kept))
            self._count_failure(kept.id)
            return TROUBLE

    def take(self, incoming: Incoming, *, is_answered: bool = True) -> KeptText:
        """Keep a text whose reply goes by the outbox, and read it; gives it as it was kept.

        is_answered: False where nothing may be sent for it. An error leaves it unread, to be
        taken up again.
        """
        kept = self.ledger.keep(incoming)
        if kept.is_read:
            return kept
        try:
            self._read(kept, owed=is_answered)
        except Exception:
            log.exception("A text could not be read; it stays in the inbox", extra=_which(kept))
            self._count_failure(kept.id)
        return kept

    def take_up_unread(self, kept_before_utc: datetime | None = None) -> int:
        """Read the texts that were kept but not read, because a process died or an error was
        mended since. Their replies are owed by the outbox. Gives how many.

        kept_before_utc: younger texts are left to whoever just took them in: see `IN_HAND`.
        """
        with self.ledger.reading() as book:
            unread = book.inbox.unread(MOST_TRIES)
        taken_up = 0
        for kept in unread:
            if kept_before_utc is not None and kept.incoming.arrived_utc >= kept_before_utc:
                continue
            try:
                self._read(kept, owed=True)
                taken_up += 1
            except Exception:
                log.exception("A text still cannot be read", extra=_which(kept))
                self._count_failure(kept.id)
        return taken_up

    def sweep(self) -> int:
        """Take up what nobody has in hand any more."""
        return self.take_up_unread(self.clock.now_utc() - self.in_hand)

    def _read(self, kept: KeptText, *, owed: bool) -> str | None:
        """Read one kept text, again if another text of the same people got in between, or once
        the weather is known that it asks for."""
        looked: Looked | None = None
        # A text that has just been kept is surely unread; any other is looked at again.
        claims = owed
        for _ in range(_MOST_COLLISIONS + _MOST_LOOKS):
            try:
                return self._read_once(kept, looked, owed=owed, claims=claims)
            except CollisionError:
                claims = True
            except WeatherWantedError as wanted:
                looked, claims = self.conversation.look(wanted), True
        return self._read_once(kept, looked, owed=owed, claims=True)

    def _read_once(
        self, kept: KeptText, looked: Looked | None, *, owed: bool, claims: bool
    ) -> str | None:
        """Read it in one transaction. Whoever comes second gets the first's reply.

        Raises CollisionError, and writes nothing, when another came first with the answer.
        """
        with self.ledger.writing() as book:
            text = book.inbox.claim(kept.id) if claims else kept
            if text.is_read:
                return text.reply
            reply = self.conversation.answer(book, text, looked)
            now_utc = self.clock.now_utc()
            if not book.inbox.answer(kept.id, reply, now_utc, owed=owed):
                raise CollisionError("Somebody else has answered this text")
            if owed and reply is not None:
                owe_reply(book, text, reply, now_utc, self.default_zone)
            return reply

    def _count_failure(self, text_id: int) -> None:
        with self.ledger.writing() as book:
            book.inbox.failed(text_id)


def _which(kept: KeptText) -> dict[str, object]:
    """What names a text in the log, without its words or its sender."""
    return {"text_id": kept.id, "door": kept.incoming.door}
