"""The texts that came in: kept under the provider's id, then read once."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from datetime import datetime
from typing import Any, NamedTuple

from sqlalchemy import Connection, Row, bindparam, insert, select, update

from bot.ledger.ready import Ready
from bot.ledger.tables import InboxText, table_of
from bot.messages import Incoming

_inbox = table_of(InboxText)
_INCOMING = ("door", "provider_id", "sender", "to", "text", "media", "opt_out", "arrived_utc")
_SELECT = select(
    _inbox.c.id,
    *(_inbox.c[name] for name in _INCOMING),
    _inbox.c.read_utc,
    _inbox.c.reply,
    _inbox.c.tries,
)
_KEEP = Ready(insert(_inbox).returning(_inbox.c.id))
_FIND = _SELECT.where(
    _inbox.c.door == bindparam("door"), _inbox.c.provider_id == bindparam("provider_id")
)
_CLAIM = _SELECT.where(_inbox.c.id == bindparam("text_id")).with_for_update()
_ANSWER = Ready(
    update(_inbox)
    .where(_inbox.c.id == bindparam("text_id"), _inbox.c.read_utc.is_(None))
    .values(reply=bindparam("said"), read_utc=bindparam("now_utc"), reply_owed=bindparam("owed"))
)
_FAILED = update(_inbox).where(_inbox.c.id == bindparam("text_id")).values(tries=_inbox.c.tries + 1)
_UNREAD = _SELECT.where(
    _inbox.c.read_utc.is_(None), _inbox.c.tries < bindparam("most_tries")
).order_by(_inbox.c.id)
_OWED = _SELECT.where(_inbox.c.reply_owed).order_by(_inbox.c.id)
_ESCAPE = "\\"
_EARLIER = Ready(
    select(_inbox.c.id, _inbox.c.text)
    .where(
        _inbox.c.sender == bindparam("sender"),
        _inbox.c.arrived_utc.between(bindparam("since_utc"), bindparam("until_utc")),
        _inbox.c.id < bindparam("text_id"),
        _inbox.c.text.ilike(bindparam("like"), escape=_ESCAPE),
    )
    .order_by(_inbox.c.id.desc())
)
_WORDS = select(_inbox.c.text).where(_inbox.c.id == bindparam("text_id"))
_TIMES = select(_inbox.c.id, _inbox.c.arrived_utc).where(
    _inbox.c.id.in_(bindparam("text_ids", expanding=True))
)


@dataclass(frozen=True, slots=True)
class KeptText:
    """A text that is safe in the store. `is_read` says that its reply (maybe None) stands."""

    id: int
    incoming: Incoming
    is_read: bool
    reply: str | None
    tries: int


class Earlier(NamedTuple):
    """A text that came before: its number and its words."""

    id: int
    text: str


class InboxRows:
    """The inbox within one transaction."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def keep(self, incoming: Incoming) -> KeptText:
        """Store a new text. Raises sqlalchemy's IntegrityError when its id is there already."""
        row = {name: getattr(incoming, name) for name in _INCOMING}
        row["text"] = storable(incoming.text)
        begin = {"tries": 0, "reply_owed": False}
        text_id = _KEEP.run(self._connection, {**row, **begin}).scalar_one()
        return KeptText(text_id, Incoming(**row), is_read=False, reply=None, tries=0)

    def find(self, door: str, provider_id: str) -> KeptText | None:
        """The text with this provider's id, None if it never came."""
        found = self._all(_FIND, door=door, provider_id=provider_id)
        return found[0] if found else None

    def claim(self, text_id: int) -> KeptText:
        """The text, locked until the transaction ends, so that it is read by one at a time."""
        return self._all(_CLAIM, text_id=text_id)[0]

    def answer(self, text_id: int, reply: str | None, now_utc: datetime, *, owed: bool) -> bool:
        """Store the reply beside the text, and say whether it was the first: a text is answered
        once. `owed`: the reply still has to be sent by another way."""
        written = _ANSWER.changed(
            self._connection,
            {
                "text_id": text_id,
                "said": reply,
                "now_utc": now_utc,
                "owed": owed and reply is not None,
            },
        )
        return written == 1

    def failed(self, text_id: int) -> None:
        """Count a reading that failed."""
        self._connection.execute(_FAILED, {"text_id": text_id})

    def unread(self, most_tries: int) -> list[KeptText]:
        """Texts kept and not yet read, oldest first, without those that failed too often."""
        return self._all(_UNREAD, most_tries=most_tries)

    def owed(self) -> list[KeptText]:
        """Texts whose reply still has to be sent, oldest first."""
        return self._all(_OWED)

    def earlier_from(
        self, sender: str, text_id: int, since_utc: datetime, until_utc: datetime, words: str
    ) -> list[Earlier]:
        """What this sender texted before `text_id` between two moments, latest first: texts that
        hold all of these words, in this order and in any case. Others may stand between."""
        given: dict[str, object] = {"sender": sender, "text_id": text_id, "like": _like(words)}
        given |= {"since_utc": since_utc, "until_utc": until_utc}
        rows = _EARLIER.run(self._connection, given)
        return [Earlier(*row) for row in rows]

    def times(self, text_ids: Collection[int]) -> dict[int, datetime]:
        """When texts arrived, aware UTC, by their ids."""
        rows = self._connection.execute(_TIMES, {"text_ids": list(text_ids)})
        return dict(map(tuple, rows))

    def words(self, text_id: int) -> str:
        """The words of a text, "" where there is no such text."""
        found = self._connection.execute(_WORDS, {"text_id": text_id}).scalar()
        return "" if found is None else str(found)

    def _all(self, wanted: Any, **given: Any) -> list[KeptText]:
        return [_kept(row) for row in self._connection.execute(wanted, given)]


def _like(words: str) -> str:
    """A pattern for texts with these words. A database knows the case of ASCII letters alone."""
    held = (
        "".join(
            f"{_ESCAPE}{char}" if char in f"%_{_ESCAPE}" else char if char.isascii() else "%"
            for char in word
        )
        for word in words.split()
    )
    return f"%{'%'.join(held)}%"


def storable(text: str) -> str:
    """The text without what a database refuses: NUL and halves of surrogate pairs."""
    return text.replace("\x00", "\ufffd").encode("utf-8", "replace").decode("utf-8")


def _kept(row: Row[Any]) -> KeptText:
    told = row._mapping
    return KeptText(
        id=told["id"],
        incoming=Incoming(**{name: told[name] for name in _INCOMING}),
        is_read=told["read_utc"] is not None,
        reply=told["reply"],
        tries=told["tries"],
    )
