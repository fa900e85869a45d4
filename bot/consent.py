"""May we text this person? STOP and START as they were said, and when."""

from __future__ import annotations

from bot.ledger import Book, KeptText

STOP = "stop"
START = "start"


class Consent:
    """The consent log, within one transaction. The last word counts; it is asked at the
    moment of sending."""

    def __init__(self, book: Book) -> None:
        self._log = book.consents

    def may_text(self, person_id: int) -> bool:
        """True unless the person's last word was STOP."""
        return self._log.last(person_id) != STOP

    def stop(self, person_id: int, text: KeptText) -> None:
        """The person's text says that nothing more may be sent."""
        self._log.log(person_id, STOP, _how(text), text.id, text.incoming.arrived_utc)

    def start(self, person_id: int, text: KeptText) -> None:
        """The person's text says that texts are welcome again."""
        self._log.log(person_id, START, _how(text), text.id, text.incoming.arrived_utc)


def _how(text: KeptText) -> str:
    return f"{text.incoming.door}: {text.incoming.opt_out or text.incoming.text.strip()[:40]}"
