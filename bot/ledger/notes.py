"""Small things remembered about a person: the open question, hints said, consent."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from datetime import date, datetime
from functools import lru_cache
from typing import Any

from sqlalchemy import Connection, bindparam, delete, insert, select
from sqlalchemy.dialects import postgresql, sqlite

from bot.ledger.ready import Ready
from bot.ledger.tables import Consent, Pending, Said, table_of

_pending, _said, _consent = table_of(Pending), table_of(Said), table_of(Consent)

_OPEN = select(_pending.c.question, _pending.c.text_id, _pending.c.asked_utc).where(
    _pending.c.person_id == bindparam("person_id")
)
_ASK = insert(_pending)
_DROP = delete(_pending).where(_pending.c.person_id == bindparam("person_id"))

_IS_HINT = (_said.c.person_id == bindparam("person"), _said.c.what == bindparam("hint"))
_SAID_ON = Ready(select(_said.c.on).where(*_IS_HINT))
_SAID_ALL = Ready(
    select(_said.c.what).where(
        _said.c.person_id == bindparam("person"), _said.c.on == bindparam("day")
    )
)


@lru_cache(maxsize=2)
def _say(dialect: str) -> Ready:
    made = (postgresql if dialect == "postgresql" else sqlite).insert(_said)
    return Ready(
        made.on_conflict_do_update(
            index_elements=list(_said.primary_key), set_={"on": made.excluded.on}
        )
    )


# By the time that it was said: a text that was read late does not outdo a later one.
_LAST_WORD = (
    select(_consent.c.said, _consent.c.at_utc)
    .where(_consent.c.person_id == bindparam("person_id"))
    .order_by(_consent.c.at_utc.desc(), _consent.c.id.desc())
    .limit(1)
)
_LOGGED = (
    select(
        _consent.c.said, _consent.c.how, _consent.c.address, _consent.c.text_id, _consent.c.at_utc
    )
    .where(_consent.c.person_id == bindparam("person_id"))
    .order_by(_consent.c.id)
)
_LOG = insert(_consent)


@dataclass(frozen=True, slots=True)
class Asked:
    """A question that waits for its answer: what, because of which text, and since when."""

    question: dict[str, Any]
    text_id: int
    asked_utc: datetime


@dataclass(frozen=True, slots=True)
class Word:
    """A line of the consent log: "stop" or "start", how and by which address it came, with which
    text, when."""

    said: str
    how: str
    address: str | None
    text_id: int | None
    at_utc: datetime


class Questions:
    """The one question that each person was asked last.

    Nobody else writes it while the person is locked, so that of whom none is open needs no
    second look within the transaction.
    """

    def __init__(self, connection: Connection) -> None:
        self._connection = connection
        self._without: set[int] = set()
        self._seen: dict[int, Asked] = {}

    def seen(self, person_id: int, asked: Asked | None) -> None:
        """It was looked up in this transaction already, with the person locked."""
        if asked is None:
            self._without.add(person_id)
        else:
            self._seen[person_id] = asked

    def open(self, person_id: int) -> Asked | None:
        """The open question, None if there is none."""
        if person_id in self._without:
            return None
        if person_id in self._seen:
            return self._seen[person_id]
        row = self._connection.execute(_OPEN, {"person_id": person_id}).first()
        if row is None:
            self._without.add(person_id)
            return None
        return Asked(*row)

    def ask(self, person_id: int, asked: Asked) -> None:
        """Remember a question in place of the one before."""
        self.drop(person_id)
        self._without.discard(person_id)
        self._seen.pop(person_id, None)
        self._connection.execute(
            _ASK,
            {
                "person_id": person_id,
                "text_id": asked.text_id,
                "question": asked.question,
                "asked_utc": asked.asked_utc,
            },
        )

    def drop(self, person_id: int) -> None:
        """Forget the open question, if there is one."""
        if person_id not in self._without:
            self._connection.execute(_DROP, {"person_id": person_id})
            self._without.add(person_id)
            self._seen.pop(person_id, None)


class Hints:
    """What each person was told on which local day."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def said_on(self, person_id: int, what: str) -> date | None:
        """The local day on which it was last said, None if never."""
        given = {"person": person_id, "hint": what}
        found: date | None = _SAID_ON.run(self._connection, given).scalar()
        return found

    def all_said(self, person_id: int, on: date) -> frozenset[str]:
        """What was said last on a local day."""
        found = _SAID_ALL.run(self._connection, {"person": person_id, "day": on})
        return frozenset(found.scalars())

    def say(self, person_id: int, what: str, on: date) -> None:
        """Remember that it was said on a local day."""
        say = _say(self._connection.dialect.name)
        say.run(self._connection, {"person_id": person_id, "what": what, "on": on})


class Consents:
    """The log of consent: only ever added to."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection
        self._seen: dict[int, str | None] = {}

    def seen(self, person_id: int, said: str | None) -> None:
        """What they said last was looked up in this transaction already."""
        self._seen[person_id] = said

    def last(self, person_id: int) -> str | None:
        """What the person said last: "stop", "start", or None if neither."""
        if person_id in self._seen:
            return self._seen[person_id]
        row = self._connection.execute(_LAST_WORD, {"person_id": person_id}).first()
        return None if row is None else str(row[0])

    def last_at(self, person_id: int) -> datetime | None:
        """When they said it, aware UTC."""
        row = self._connection.execute(_LAST_WORD, {"person_id": person_id}).first()
        return None if row is None else row[1]

    def log(self, person_id: int, word: Word) -> None:
        """Add a line."""
        self._seen.pop(person_id, None)
        self._connection.execute(_LOG, {"person_id": person_id, **asdict(word)})

    def of_person(self, person_id: int) -> list[Word]:
        """The whole log of a person, in the order in which it was written."""
        return [Word(*row) for row in self._connection.execute(_LOGGED, {"person_id": person_id})]
