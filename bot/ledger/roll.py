"""Everybody at once, page by page: what a morning's round reads, a few queries a page."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from sqlalchemy import BindParameter, Connection, bindparam, func, select

from bot.entry import ENTRY_FIELDS, Entry
from bot.ledger.outbox import OPEN_STATES, SENT
from bot.ledger.tables import Address, Consent, Member, OutboxText, Person, Record, table_of

_person, _address, _member = table_of(Person), table_of(Address), table_of(Member)
_consent, _record, _outbox = table_of(Consent), table_of(Record), table_of(OutboxText)
_replacing = _record.alias("replacing")

_PAGE = (
    select(_person.c.id, _person.c.units, _member.c.sugarbush_id)
    .join_from(_person, _member, _member.c.person_id == _person.c.id)
    .where(
        _person.c.id > bindparam("after"),
        _member.c.joined_utc.is_not(None),
        _member.c.left_utc.is_(None),
    )
    .order_by(_person.c.id)
    .limit(bindparam("most"))
)
_IN_PAGE: BindParameter[Any] = bindparam("persons", expanding=True)
_ADDRESSES = (
    select(_address.c.person_id, _address.c.address)
    .where(_address.c.person_id.in_(_IN_PAGE))
    .order_by(_address.c.id.desc())
)
_WORDS = (
    select(_consent.c.person_id, _consent.c.said)
    .where(_consent.c.person_id.in_(_IN_PAGE))
    .order_by(_consent.c.at_utc, _consent.c.id)
)
_TOLD = select(_outbox.c.person_id, _outbox.c.key, _outbox.c.local_date, _outbox.c.body).where(
    _outbox.c.person_id.in_(_IN_PAGE),
    _outbox.c.local_date >= bindparam("since"),
    _outbox.c.state.in_((*OPEN_STATES, SENT)),
)

_IN_BUSHES: BindParameter[Any] = bindparam("bushes", expanding=True)
_LIVE = (
    _record.c.sugarbush_id.in_(_IN_BUSHES),
    _record.c.id.not_in(
        select(_replacing.c.replaces_id).where(
            _replacing.c.sugarbush_id.in_(_IN_BUSHES), _replacing.c.replaces_id.is_not(None)
        )
    ),
)
_OF_KINDS = (
    select(_record.c.sugarbush_id, _record.c.person_id, *(_record.c[name] for name in ENTRY_FIELDS))
    .where(
        *_LIVE,
        _record.c.kind.in_(bindparam("kinds", expanding=True)),
        _record.c.at_local >= bindparam("since"),
    )
    .order_by(_record.c.at_local, _record.c.id)
)
_SAP_BY_DAY = (
    select(_record.c.sugarbush_id, _record.c.on, func.sum(_record.c.gallons))
    .where(
        *_LIVE,
        _record.c.kind == "sap",
        _record.c.season == bindparam("year"),
    )
    .group_by(_record.c.sugarbush_id, _record.c.on)
    .order_by(_record.c.on)
)

# Earlier than any record, for "ever".
_EVER = datetime(1, 1, 1)  # noqa: DTZ001  (a wall clock has no zone)


@dataclass(frozen=True, slots=True)
class Enrolled:
    """Somebody who belongs to a sugarbush and has not said STOP. `address` is the one that they
    had first; `units` is "us" or "metric", None while they named none."""

    person_id: int
    sugarbush_id: int
    units: str | None
    address: str


@dataclass(frozen=True, slots=True)
class Told:
    """A text of the outbox that was sent or will be: what it was owed for, which day, its words."""

    key: str
    local_date: date
    body: str


@dataclass(frozen=True, slots=True)
class ByPerson:
    """An entry that counts, and whose it is."""

    person_id: int
    entry: Entry


class Roll:
    """The roll of everybody within one transaction."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def page(self, after: int, most: int) -> tuple[list[Enrolled], int | None]:
        """The people with numbers above `after`, at most so many, but those who said STOP; and
        the number after which the next page begins, None at the end."""
        rows = self._connection.execute(_PAGE, {"after": after, "most": most}).all()
        if not rows:
            return [], None
        persons = {"persons": [row[0] for row in rows]}
        address = dict(map(tuple, self._connection.execute(_ADDRESSES, persons).all()))
        last_word = dict(map(tuple, self._connection.execute(_WORDS, persons).all()))
        enrolled = [
            Enrolled(person, bush, units, address[person])
            for person, units, bush in rows
            if last_word.get(person) != "stop" and person in address
        ]
        return enrolled, rows[-1][0] if len(rows) == most else None

    def of_kinds(
        self, bushes: Collection[int], kinds: Collection[str], since: datetime = _EVER
    ) -> dict[int, list[ByPerson]]:
        """What counts of some kinds, by sugarbush, in wall-clock order, from the naive local time
        `since` on."""
        found: dict[int, list[ByPerson]] = defaultdict(list)
        if bushes:
            given = {"bushes": list(bushes), "kinds": list(kinds), "since": since}
            for bush, person, *values in self._connection.execute(_OF_KINDS, given).all():
                entry = Entry(**dict(zip(ENTRY_FIELDS, values, strict=True)))
                found[bush].append(ByPerson(person, entry))
        return found

    def sap_by_day(self, bushes: Collection[int], season: int) -> dict[int, dict[date, float]]:
        """Gallons of sap of a season by sugarbush and local day; 0 for dry pails."""
        found: dict[int, dict[date, float]] = defaultdict(dict)
        if bushes:
            given = {"bushes": list(bushes), "year": season}
            for bush, on, gallons in self._connection.execute(_SAP_BY_DAY, given).all():
                found[bush][on] = gallons or 0.0
        return found

    def told(self, persons: Collection[int], since: date) -> dict[int, list[Told]]:
        """What the outbox has for people, from the day `since` on, but what was given up."""
        found: dict[int, list[Told]] = defaultdict(list)
        if persons:
            given: dict[str, Any] = {"persons": list(persons), "since": since}
            for person, key, on, body in self._connection.execute(_TOLD, given).all():
                found[person].append(Told(key, on, body))
        return found
