"""What a mail that leaves has beyond its words: its thread, the way out, a file."""

from __future__ import annotations

from dataclasses import dataclass

from bot.channels.email_smtp import Cover, Enclosure
from bot.exporting import FILE_NAME, export_csv
from bot.ledger import Book, Ledger
from bot.links import Links
from bot.messages import Outgoing

_REPLY = "reply:"


@dataclass(frozen=True, slots=True)
class Covers:
    """Looks up covers. links: None where there is no public address, so no way out by a click."""

    ledger: Ledger
    links: Links | None

    def __call__(self, outgoing: Outgoing) -> Cover:
        """The cover of a text of the outbox."""
        if outgoing.kind != "reply":
            url = None if self.links is None else self.links.unsubscribe_url(outgoing.to)
            return Cover(unsubscribe_url=url)
        if outgoing.text_id is None:
            return Cover()
        with self.ledger.reading() as book:
            return _of_reply(book, outgoing.text_id)


def _of_reply(book: Book, owed_id: int) -> Cover:
    key = book.mail.key_of(owed_id) or ""
    thread = book.mail.thread(int(key.removeprefix(_REPLY))) if key.startswith(_REPLY) else None
    if thread is None:
        return Cover()
    enclosure = None
    if thread.attach == "export":
        owed = book.outbox.get(owed_id)
        file = None if owed is None else export_csv(book, owed.person_id)
        enclosure = None if file is None else Enclosure(FILE_NAME, file)
    return Cover(thread.subject, thread.message_ids, None, enclosure)
