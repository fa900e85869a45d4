"""The texts that came in: kept under the provider's id, then read once."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from datetime import datetime

from sqlmodel import Session, col, select

from bot.ledger.tables import InboxText
from bot.messages import Incoming


@dataclass(frozen=True, slots=True)
class KeptText:
    """A text that is safe in the store. `is_read` says that its reply (maybe None) stands."""

    id: int
    incoming: Incoming
    is_read: bool
    reply: str | None
    tries: int


class InboxRows:
    """The inbox within one transaction."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def keep(self, incoming: Incoming) -> KeptText:
        """Store a new text. Raises sqlalchemy's IntegrityError when its id is there already."""
        row = InboxText(
            door=incoming.door,
            provider_id=incoming.provider_id,
            sender=incoming.sender,
            to=incoming.to,
            text=storable(incoming.text),
            media=incoming.media,
            opt_out=incoming.opt_out,
            arrived_utc=incoming.arrived_utc,
        )
        self._session.add(row)
        self._session.flush()
        return _kept(row)

    def find(self, door: str, provider_id: str) -> KeptText | None:
        """The text with this provider's id, None if it never came."""
        row = self._session.exec(
            select(InboxText).where(
                col(InboxText.door) == door, col(InboxText.provider_id) == provider_id
            )
        ).first()
        return None if row is None else _kept(row)

    def claim(self, text_id: int) -> KeptText:
        """The text, locked until the transaction ends, so that it is read by one at a time."""
        row = self._session.exec(
            select(InboxText).where(col(InboxText.id) == text_id).with_for_update()
        ).one()
        return _kept(row)

    def answer(self, text_id: int, reply: str | None, now_utc: datetime, *, owed: bool) -> None:
        """Store the reply beside the text. `owed`: it still has to be sent by another way."""
        row = self._row(text_id)
        row.reply = reply
        row.read_utc = now_utc
        row.reply_owed = owed and reply is not None
        self._session.add(row)

    def failed(self, text_id: int) -> None:
        """Count a reading that failed."""
        row = self._row(text_id)
        row.tries += 1
        self._session.add(row)

    def unread(self, most_tries: int) -> list[KeptText]:
        """Texts kept and not yet read, oldest first, without those that failed too often."""
        rows = self._session.exec(
            select(InboxText)
            .where(col(InboxText.read_utc).is_(None), col(InboxText.tries) < most_tries)
            .order_by(col(InboxText.id))
        )
        return [_kept(row) for row in rows]

    def earlier_from(self, sender: str, text_id: int, since_utc: datetime) -> list[KeptText]:
        """What this sender texted before `text_id` and not before `since_utc`, latest first."""
        rows = self._session.exec(
            select(InboxText)
            .where(
                col(InboxText.sender) == sender,
                col(InboxText.arrived_utc) >= since_utc,
                col(InboxText.id) < text_id,
            )
            .order_by(col(InboxText.id).desc())
        )
        return [_kept(row) for row in rows]

    def times(self, text_ids: Collection[int]) -> dict[int, datetime]:
        """When texts arrived, aware UTC, by their ids."""
        rows = self._session.exec(
            select(InboxText.id, InboxText.arrived_utc).where(col(InboxText.id).in_(text_ids))
        )
        return {text_id: arrived for text_id, arrived in rows if text_id is not None}

    def _row(self, text_id: int) -> InboxText:
        row = self._session.get(InboxText, text_id)
        if row is None:
            raise LookupError(f"No text {text_id} in the inbox")
        return row


def storable(text: str) -> str:
    """The text without what a database refuses: NUL and halves of surrogate pairs."""
    return text.replace("\x00", "\ufffd").encode("utf-8", "replace").decode("utf-8")


def _kept(row: InboxText) -> KeptText:
    assert row.id is not None
    return KeptText(
        id=row.id,
        incoming=Incoming(
            door=row.door,
            provider_id=row.provider_id,
            sender=row.sender,
            text=row.text,
            arrived_utc=row.arrived_utc,
            to=row.to,
            media=row.media,
            opt_out=row.opt_out,
        ),
        is_read=row.read_utc is not None,
        reply=row.reply,
        tries=row.tries,
    )
