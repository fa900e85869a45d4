"""The texts that are owed: written with their cause, claimed one try at a time, settled once."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from sqlalchemy import Connection, Row, bindparam, delete, func, select, update
from sqlalchemy.dialects import postgresql, sqlite

from bot.ledger.inbox import storable
from bot.ledger.tables import Mark, OutboxText, table_of

OWED, TRYING, UNCLEAR = "owed", "trying", "unclear"
SENT, DROPPED, FAILED = "sent", "dropped", "failed"
OPEN_STATES = (OWED, TRYING, UNCLEAR)

_outbox, _mark = table_of(OutboxText), table_of(Mark)
_COLUMNS = tuple(column.name for column in _outbox.c)
_SELECT = select(*_outbox.c)
_ONCE = [_outbox.c.person_id, _outbox.c.key, _outbox.c.local_date]
# Written anew it is passed over: whoever owed it first was right.
_ADD = {
    "sqlite": sqlite.insert(_outbox)
    .on_conflict_do_nothing(index_elements=_ONCE)
    .execution_options(preserve_rowcount=True),
    "postgresql": postgresql.insert(_outbox)
    .on_conflict_do_nothing(index_elements=_ONCE)
    .execution_options(preserve_rowcount=True),
}
# The words of the partial index, so that it is used.
_IS_OPEN = _outbox.c.state.in_(OPEN_STATES)
_DUE = (
    select(_outbox.c.id, _outbox.c.tries, _outbox.c.sent_from)
    .where(_IS_OPEN, _outbox.c.look_utc <= bindparam("now_utc"))
    .order_by(_outbox.c.look_utc, _outbox.c.id)
    .limit(bindparam("most"))
)
_GET = _SELECT.where(_outbox.c.id == bindparam("text_id"))
_LOCK = _GET.with_for_update()
_BY_PROVIDER_ID = _SELECT.where(_outbox.c.provider_id == bindparam("provider")).with_for_update()
_OF_PERSON = _SELECT.where(_outbox.c.person_id == bindparam("person")).order_by(_outbox.c.id)
_SET = update(_outbox).where(_outbox.c.id == bindparam("text_id"))
_TAKE_BACK = delete(_outbox).where(
    _outbox.c.person_id == bindparam("person"),
    _outbox.c.kind == bindparam("sort"),
    _outbox.c.state == OWED,
    _outbox.c.tries == 0,
    _outbox.c.due_utc > bindparam("now_utc"),
)
# Between two moments: sent then, or being sent by somebody since then.
_GONE_OUT = select(func.count()).where(
    _outbox.c.person_id == bindparam("person"),
    _outbox.c.kind.in_(bindparam("kinds", expanding=True)),
    (
        _outbox.c.sent_utc.between(bindparam("since_utc"), bindparam("until_utc"))
        | (
            _outbox.c.state.in_((TRYING, UNCLEAR))
            & (_outbox.c.trying_since_utc >= bindparam("since_utc"))
        )
    ),
)
_TOLD = select(_outbox.c.state, func.count()).group_by(_outbox.c.state)
_MARK = select(_mark.c.done_until_utc).where(_mark.c.name == bindparam("mark"))
_MARK_NEVER_BACK = _mark.c.done_until_utc < bindparam("until_utc")
# Of two rounds at once the later one's mark stands.
_PUT_MARK = {
    "sqlite": sqlite.insert(_mark).on_conflict_do_update(
        index_elements=["name"],
        set_={"done_until_utc": bindparam("until_utc")},
        where=_MARK_NEVER_BACK,
    ),
    "postgresql": postgresql.insert(_mark).on_conflict_do_update(
        index_elements=["name"],
        set_={"done_until_utc": bindparam("until_utc")},
        where=_MARK_NEVER_BACK,
    ),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class NewText:
    """A text to be owed; the fields are those of `tables.OutboxText`."""

    person_id: int
    door: str
    address: str
    kind: str
    key: str
    local_date: date
    body: str
    segments: int
    due_utc: datetime
    useless_after_utc: datetime
    sent_from: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class OwedText(NewText):
    """A text of the outbox, as it stands; the fields are those of `tables.OutboxText`."""

    id: int
    made_utc: datetime
    look_utc: datetime
    state: str
    reason: str | None
    tries: int
    trying_since_utc: datetime | None
    sent_utc: datetime | None
    provider_id: str | None
    status: str | None

    @property
    def is_open(self) -> bool:
        """True until it is sent, dropped or failed."""
        return self.state in OPEN_STATES


@dataclass(frozen=True, slots=True)
class Due:
    """A text whose time has come: which, how often it was claimed, and by what it leaves."""

    id: int
    tries: int
    sent_from: str


class OutboxRows:
    """The outbox within one transaction."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def owe(self, texts: Sequence[NewText], now_utc: datetime) -> int:
        """Write texts that are owed from now on. One that its person is owed already, for the
        same key and local day, is passed over. Gives how many were new."""
        if not texts:
            return 0
        rows = [_row(text, now_utc) for text in texts]
        done = self._connection.execute(_ADD[self._connection.dialect.name], rows)
        return done.rowcount

    def take_back(self, person_id: int, kind: str, now_utc: datetime) -> int:
        """Owe a person no more what of a kind is not due yet and nobody has begun to send: it may
        be owed anew, under the same key. Gives how many texts that were."""
        given = {"person": person_id, "sort": kind, "now_utc": now_utc}
        return self._connection.execute(_TAKE_BACK, given).rowcount

    def due(self, now_utc: datetime, most: int) -> list[Due]:
        """The texts to look at now, those that wait longest first."""
        rows = self._connection.execute(_DUE, {"now_utc": now_utc, "most": most})
        return [Due(*row) for row in rows]

    def get(self, text_id: int) -> OwedText | None:
        """A text as it stands, None if there is none."""
        return self._first(_GET, text_id=text_id)

    def lock(self, text_id: int) -> OwedText | None:
        """The same, and nobody else changes it until the transaction ends."""
        return self._first(_LOCK, text_id=text_id)

    def lock_by_provider_id(self, provider_id: str) -> OwedText | None:
        """The text that the provider knows by this id, locked likewise."""
        return self._first(_BY_PROVIDER_ID, provider=provider_id)

    def change(self, text_id: int, **values: Any) -> None:
        """Write some columns of a text that is locked."""
        self._connection.execute(_SET.values(**values), {"text_id": text_id})

    def gone_out(
        self, person_id: int, kinds: Sequence[str], since_utc: datetime, until_utc: datetime
    ) -> int:
        """How many texts of some kinds went to a person between two moments, counting those that
        are being sent."""
        given = {
            "person": person_id,
            "kinds": list(kinds),
            "since_utc": since_utc,
            "until_utc": until_utc,
        }
        found: int = self._connection.execute(_GONE_OUT, given).scalar_one()
        return found

    def of_person(self, person_id: int) -> list[OwedText]:
        """All that was ever owed to a person, in the order in which it came up."""
        return [_owed(row) for row in self._connection.execute(_OF_PERSON, {"person": person_id})]

    def counts(self) -> dict[str, int]:
        """How many texts are in each state."""
        return {row[0]: row[1] for row in self._connection.execute(_TOLD)}

    def planned_until(self, plan: str) -> datetime | None:
        """Up to which moment what is owed was planned by the plan of this name, None if never."""
        found: datetime | None = self._connection.execute(_MARK, {"mark": plan}).scalar()
        return found

    def mark_planned(self, plan: str, until_utc: datetime) -> None:
        """Note up to which moment it is planned."""
        self._connection.execute(
            _PUT_MARK[self._connection.dialect.name],
            {"name": plan, "done_until_utc": until_utc, "until_utc": until_utc},
        )

    def _first(self, wanted: Any, **given: Any) -> OwedText | None:
        row = self._connection.execute(wanted, given).first()
        return None if row is None else _owed(row)


def _row(text: NewText, now_utc: datetime) -> dict[str, Any]:
    return {
        "person_id": text.person_id,
        "door": text.door,
        "address": text.address,
        "sent_from": text.sent_from,
        "kind": text.kind,
        "key": text.key,
        "local_date": text.local_date,
        "body": storable(text.body),
        "segments": text.segments,
        "made_utc": now_utc,
        "due_utc": text.due_utc,
        "useless_after_utc": text.useless_after_utc,
        "look_utc": text.due_utc,
        "state": OWED,
        "tries": 0,
    }


def _owed(row: Row[Any]) -> OwedText:
    return OwedText(**{name: row._mapping[name] for name in _COLUMNS})
