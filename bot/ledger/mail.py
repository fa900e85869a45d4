"""What mail needs in the store: threads, codes that link addresses, strangers, muted addresses."""

from __future__ import annotations

import secrets
from collections.abc import Collection
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, bindparam, delete, func, insert, select, update

from bot.ledger.inbox import storable
from bot.ledger.tables import (
    Address,
    InboxText,
    Letter,
    LinkCode,
    OutboxText,
    Person,
    Secret,
    Stranger,
    table_of,
)

_letter, _code, _stranger = table_of(Letter), table_of(LinkCode), table_of(Stranger)
_address, _person, _secret = table_of(Address), table_of(Person), table_of(Secret)
_outbox, _inbox = table_of(OutboxText), table_of(InboxText)

_KEEP = insert(_letter)
_LETTER = select(
    _letter.c.text_id,
    _letter.c.message_id,
    _letter.c.subject,
    _letter.c.message_ids,
    _letter.c.attach,
).where(_letter.c.text_id == bindparam("text"))
_ATTACH = (
    update(_letter).where(_letter.c.text_id == bindparam("text")).values(attach=bindparam("what"))
)
_CODES = select(
    _code.c.person_id, _code.c.address, _code.c.code, _code.c.tries, _code.c.expires_utc
)
_CODE_OF = _CODES.where(_code.c.person_id == bindparam("person")).with_for_update()
_OPEN_CODES = _CODES.where(_code.c.address.is_(None), _code.c.expires_utc > bindparam("now_utc"))
_OFFER = insert(_code)
_DROP_CODE = delete(_code).where(_code.c.person_id == bindparam("person"))
_WRONG = (
    update(_code).where(_code.c.person_id == bindparam("person")).values(tries=_code.c.tries + 1)
)
_LINK = insert(_address)
_UNLINK = delete(_address).where(
    _address.c.person_id == bindparam("person"), _address.c.address == bindparam("which")
)
_MUTE = (
    update(_address)
    .where(_address.c.address == bindparam("which"))
    .values(muted_utc=bindparam("since_utc"))
)
_IS_MUTED = select(_address.c.id).where(
    _address.c.address == bindparam("which"), _address.c.muted_utc.is_not(None)
)
_STRANGER = select(_stranger.c.since_utc, _stranger.c.tries, _stranger.c.is_answered).where(
    _stranger.c.address == bindparam("which")
)
_NEW_STRANGER = insert(_stranger)
_OLD_STRANGERS = delete(_stranger).where(_stranger.c.since_utc < bindparam("before_utc"))
_ANSWERED = select(func.count()).where(_stranger.c.is_answered)
_NOTE = (
    update(_stranger)
    .where(_stranger.c.address == bindparam("which"))
    .values(tries=bindparam("wrong"), is_answered=bindparam("answered"))
)
_ROUTE = (
    update(_person).where(_person.c.id == bindparam("person")).values(alerts_by=bindparam("way"))
)
_ROUTES = (
    select(_person.c.id, _person.c.alerts_by, _address.c.address)
    .join_from(_person, _address, _address.c.person_id == _person.c.id)
    .where(_person.c.id.in_(bindparam("persons", expanding=True)), _person.c.alerts_by.is_not(None))
    .order_by(_address.c.id)
)
_REPLY = select(_outbox.c.id).where(
    _outbox.c.person_id.in_(bindparam("persons", expanding=True)),
    _outbox.c.key == bindparam("key"),
    _outbox.c.address == bindparam("which"),
)
_OWED_BY_KEY = select(_outbox.c.key).where(_outbox.c.id == bindparam("text"))
_RECENT = select(func.count()).where(
    _inbox.c.sender == bindparam("which"), _inbox.c.arrived_utc > bindparam("since_utc")
)
_SECRET = select(_secret.c.value).where(_secret.c.name == bindparam("name"))
_NEW_SECRET = insert(_secret)


@dataclass(frozen=True, slots=True)
class Thread:
    """The thread of a mail that came in; `attach` is what its answer carries, "" or "export"."""

    text_id: int
    message_id: str
    subject: str
    message_ids: tuple[str, ...]
    attach: str = ""


@dataclass(frozen=True, slots=True)
class Code:
    """A code that links an address. address: where it was mailed, None where it was texted and
    is to be mailed from the address that it links."""

    person_id: int
    address: str | None
    code: str
    tries: int
    expires_utc: datetime


@dataclass(frozen=True, slots=True)
class Day:
    """A stranger's day: since when, how many codes they tried, whether they were answered."""

    since_utc: datetime
    tries: int
    is_answered: bool


class MailRows:
    """Mail within one transaction."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    # --- threads ---------------------------------------------------------------------------

    def keep(self, thread: Thread) -> None:
        """Keep the thread of a mail that is in the inbox."""
        self._connection.execute(
            _KEEP,
            {
                "text_id": thread.text_id,
                "message_id": thread.message_id,
                "subject": storable(thread.subject),
                "message_ids": " ".join(thread.message_ids),
                "attach": thread.attach,
            },
        )

    def thread(self, text_id: int) -> Thread | None:
        """The thread of a text that came by mail, None where it did not."""
        row = self._connection.execute(_LETTER, {"text": text_id}).first()
        if row is None:
            return None
        number, message_id, subject, message_ids, attach = row
        return Thread(number, message_id, subject, tuple(message_ids.split()), attach)

    def attach(self, text_id: int, what: str) -> None:
        """Say what the answer to a mail carries."""
        self._connection.execute(_ATTACH, {"text": text_id, "what": what})

    def owed_ids(self, persons: Collection[int], key: str, address: str) -> list[int]:
        """The numbers in the outbox of what an address is owed for something, as a text of one
        of some persons."""
        given: dict[str, Any] = {"persons": list(persons), "key": key, "which": address}
        return list(self._connection.execute(_REPLY, given).scalars())

    def key_of(self, owed_id: int) -> str | None:
        """What a text of the outbox is owed for."""
        found: str | None = self._connection.execute(_OWED_BY_KEY, {"text": owed_id}).scalar()
        return found

    def came_since(self, address: str, since_utc: datetime) -> int:
        """How many texts came from an address since a moment."""
        given = {"which": address, "since_utc": since_utc}
        found: int = self._connection.execute(_RECENT, given).scalar_one()
        return found

    # --- codes and addresses ---------------------------------------------------------------

    def offer(self, code: Code) -> None:
        """Let a code link an address, in place of the person's code before."""
        self.drop_code(code.person_id)
        row = {name: getattr(code, name) for name in Code.__dataclass_fields__}
        self._connection.execute(_OFFER, row)

    def code_of(self, person_id: int) -> Code | None:
        """The person's code, locked until the transaction ends; None if there is none."""
        row = self._connection.execute(_CODE_OF, {"person": person_id}).first()
        return None if row is None else Code(*row)

    def codes_to_mail(self, now_utc: datetime) -> list[Code]:
        """All codes that were texted and may still be mailed."""
        return [Code(*row) for row in self._connection.execute(_OPEN_CODES, {"now_utc": now_utc})]

    def wrong(self, person_id: int) -> None:
        """Count a wrong try."""
        self._connection.execute(_WRONG, {"person": person_id})

    def drop_code(self, person_id: int) -> None:
        """Let a person's code link nothing any more."""
        self._connection.execute(_DROP_CODE, {"person": person_id})

    def link(self, person_id: int, address: str, now_utc: datetime) -> None:
        """Give a person one more address. Raises sqlalchemy's IntegrityError when it is taken."""
        row = {"person_id": person_id, "address": address, "linked_utc": now_utc}
        self._connection.execute(_LINK, row)

    def unlink(self, person_id: int, address: str) -> bool:
        """Take an address from a person; whether they had it."""
        given = {"person": person_id, "which": address}
        return self._connection.execute(_UNLINK, given).rowcount > 0

    def mute(self, address: str, since_utc: datetime | None) -> bool:
        """Let nothing unasked go to an address from a moment on; None lets it go again. Whether
        the address is known."""
        given = {"which": address, "since_utc": since_utc}
        return self._connection.execute(_MUTE, given).rowcount > 0

    def is_muted(self, address: str) -> bool:
        """True when nothing unasked may go there."""
        return self._connection.execute(_IS_MUTED, {"which": address}).first() is not None

    # --- how unasked texts go --------------------------------------------------------------

    def route(self, person_id: int, way: str) -> None:
        """Remember how a person wants unasked texts: "text", "mail" or "both"."""
        self._connection.execute(_ROUTE, {"person": person_id, "way": way})

    def routes(self, persons: Collection[int]) -> dict[int, tuple[str, list[str]]]:
        """Of those who have told how: the way, and all their addresses."""
        found: dict[int, tuple[str, list[str]]] = {}
        given: dict[str, Any] = {"persons": list(persons)}
        for person_id, way, address in self._connection.execute(_ROUTES, given):
            found.setdefault(person_id, (way, []))[1].append(address)
        return found

    # --- strangers -------------------------------------------------------------------------

    def stranger(self, address: str, before_utc: datetime, now_utc: datetime) -> Day:
        """The day of an address that nobody linked; days that began before a moment are over."""
        self._connection.execute(_OLD_STRANGERS, {"before_utc": before_utc})
        row = self._connection.execute(_STRANGER, {"which": address}).first()
        if row is not None:
            return Day(*row)
        new = {"address": address, "since_utc": now_utc, "tries": 0, "is_answered": False}
        self._connection.execute(_NEW_STRANGER, new)
        return Day(now_utc, 0, False)

    def note_stranger(self, address: str, tries: int, is_answered: bool) -> None:
        """Write down what became of a stranger's mail."""
        given = {"which": address, "wrong": tries, "answered": is_answered}
        self._connection.execute(_NOTE, given)

    def strangers_answered(self) -> int:
        """How many strangers were answered within their day."""
        found: int = self._connection.execute(_ANSWERED).scalar_one()
        return found

    # --- links -----------------------------------------------------------------------------

    def secret(self, name: str) -> str | None:
        """What links are signed with, None before `make_secret`."""
        found: str | None = self._connection.execute(_SECRET, {"name": name}).scalar()
        return found

    def make_secret(self, name: str) -> str:
        """Make it. Raises sqlalchemy's IntegrityError where another process just did."""
        made = secrets.token_hex(32)
        self._connection.execute(_NEW_SECRET, {"name": name, "value": made})
        return made
