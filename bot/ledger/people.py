"""People, their addresses, and whose sugarbush they belong to."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any, Literal

from sqlalchemy import Connection, bindparam, insert, select, update

from bot.ledger.notes import Asked
from bot.ledger.ready import Ready
from bot.ledger.tables import (
    Address,
    Consent,
    Member,
    Pending,
    Person,
    Sugarbush,
    table_of,
)

Units = Literal["us", "metric"]

OWNER = "owner"
HELPER = "helper"

_person, _address = table_of(Person), table_of(Address)
_sugarbush, _member = table_of(Sugarbush), table_of(Member)
_consent, _pending = table_of(Consent), table_of(Pending)

_BELONGS = (_member.c.joined_utc.is_not(None), _member.c.left_utc.is_(None))
_IS_OPEN = (
    _member.c.address == bindparam("whose"),
    _member.c.invited_utc.is_not(None),
    _member.c.joined_utc.is_(None),
    _member.c.left_utc.is_(None),
)
_other = _member.alias("other")
_IS_SHARED = (
    select(_other.c.id)
    .where(
        _other.c.sugarbush_id == _member.c.sugarbush_id,
        _other.c.person_id != _person.c.id,
        _other.c.joined_utc.is_not(None),
        _other.c.left_utc.is_(None),
    )
    .exists()
)
_FIND = (
    select(_person.c.id, _person.c.units, _member.c.sugarbush_id, _member.c.role, _IS_SHARED)
    .join_from(_address, _person, _address.c.person_id == _person.c.id)
    .join(_member, _member.c.person_id == _person.c.id)
    .join(_sugarbush, _member.c.sugarbush_id == _sugarbush.c.id)
    .where(_address.c.address == bindparam("address"), *_BELONGS)
    # The sugarbush too: the kept sums of its records are written by one at a time.
    .with_for_update(of=[_person, _sugarbush])
)
# The same, and what is open with them: what they said last of consent, and the question that waits.
_FIND_WITH_NOTES = Ready(
    _FIND.add_columns(
        select(_consent.c.said)
        .where(_consent.c.person_id == _person.c.id)
        .order_by(_consent.c.at_utc.desc(), _consent.c.id.desc())
        .limit(1)
        .scalar_subquery(),
        _pending.c.question,
        _pending.c.text_id,
        _pending.c.asked_utc,
    ).join(_pending, _pending.c.person_id == _person.c.id, isouter=True)
)
_BY_ID = (
    select(_person.c.id, _person.c.units, _member.c.sugarbush_id, _member.c.role)
    .join_from(_person, _member, _member.c.person_id == _person.c.id)
    .where(_person.c.id == bindparam("person_id"), *_BELONGS)
    .with_for_update(of=_person)
)
_ADDRESSES = (
    select(_address.c.address)
    .where(_address.c.person_id == bindparam("person_id"))
    .order_by(_address.c.id)
)
_NEW_PERSON = insert(_person).returning(_person.c.id)
_NEW_SUGARBUSH = insert(_sugarbush).returning(_sugarbush.c.id)
_NEW_ADDRESS = insert(_address)
_NEW_MEMBER = insert(_member)
_SPEAKS = (
    update(_person).where(_person.c.id == bindparam("person_id")).values(units=bindparam("spoken"))
)
_IS_MEMBER = (
    select(_member.c.id)
    .join_from(_member, _address, _address.c.person_id == _member.c.person_id)
    .where(
        _address.c.address == bindparam("address"),
        _member.c.sugarbush_id == bindparam("sugarbush_id"),
        *_BELONGS,
    )
)
_OPEN_ONE = select(_member.c.id).where(*_IS_OPEN, _member.c.sugarbush_id == bindparam("bush"))
_CLOSE = (
    update(_member)
    .where(*_IS_OPEN, _member.c.sugarbush_id == bindparam("bush"))
    .values(left_utc=bindparam("now_utc"))
)
_INVITATION = (
    select(_member.c.id, _member.c.sugarbush_id, _address.c.address)
    .join_from(_member, _address, _address.c.person_id == _member.c.invited_by_id, isouter=True)
    .where(*_IS_OPEN)
    .order_by(_member.c.id.desc(), _address.c.id)
    .limit(1)
)
_LEAVE = (
    update(_member)
    .where(_member.c.person_id == bindparam("who"), *_BELONGS)
    .values(left_utc=bindparam("now_utc"))
)
_JOIN = (
    update(_member)
    .where(_member.c.id == bindparam("member_id"))
    .values(person_id=bindparam("who"), joined_utc=bindparam("now_utc"))
)


@dataclass(frozen=True, slots=True)
class Who:
    """A person as they text now. `units` is "us" or "metric", None while they named none.
    is_shared: others keep the tally of the sugarbush too."""

    person_id: int
    address: str
    units: Units | None
    sugarbush_id: int
    role: str
    is_shared: bool = False


@dataclass(frozen=True, slots=True)
class Invitation:
    """An open invitation to a sugarbush; `by` is an address of the one who invited."""

    member_id: int
    sugarbush_id: int
    by: str


class People:
    """People within one transaction."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def find(self, address: str) -> Who | None:
        """The person behind an address, locked with their sugarbush until the transaction ends;
        None if unknown."""
        found = self._first(_FIND, address=address)
        if found is None:
            return None
        person_id, units, sugarbush_id, role, is_shared = found
        return Who(person_id, address, units, sugarbush_id, role, is_shared)

    def find_with_notes(self, address: str) -> tuple[Who, str | None, Asked | None] | None:
        """The same, with what they said last of consent and the question that waits for them.

        All as of the moment before the lock was had: only where one transaction writes at a time.
        """
        found = _FIND_WITH_NOTES.run(self._connection, {"address": address}).first()
        if found is None:
            return None
        person_id, units, sugarbush_id, role, is_shared, said, question, text_id, asked_utc = found
        asked = None if text_id is None else Asked(question, text_id, asked_utc)
        return Who(person_id, address, units, sugarbush_id, role, is_shared), said, asked

    def lock(self, person_id: int) -> Who | None:
        """The person of this number, locked until the transaction ends, with the address that
        they had first; None if there is none."""
        found = self._first(_BY_ID, person_id=person_id)
        if found is None:
            return None
        addresses = self.addresses(person_id)
        if not addresses:
            return None
        _, units, sugarbush_id, role = found
        return Who(person_id, addresses[0], units, sugarbush_id, role)

    def addresses(self, person_id: int) -> list[str]:
        """The addresses of a person, in the order in which they were linked."""
        return list(self._connection.execute(_ADDRESSES, {"person_id": person_id}).scalars())

    def meet(self, address: str, now_utc: datetime) -> Who:
        """Somebody new, with a sugarbush of their own."""
        run = self._connection.execute
        person_id = run(_NEW_PERSON, {"met_utc": now_utc}).scalar_one()
        sugarbush_id = run(_NEW_SUGARBUSH, {"made_utc": now_utc}).scalar_one()
        run(_NEW_ADDRESS, {"person_id": person_id, "address": address, "linked_utc": now_utc})
        run(
            _NEW_MEMBER,
            {
                "sugarbush_id": sugarbush_id,
                "role": OWNER,
                "address": address,
                "person_id": person_id,
                "joined_utc": now_utc,
            },
        )
        return Who(person_id, address, None, sugarbush_id, OWNER)

    def speaks(self, who: Who, units: Units) -> Who:
        """Remember the units that a person used: "us" or "metric"."""
        self._connection.execute(_SPEAKS, {"person_id": who.person_id, "spoken": units})
        return replace(who, units=units)

    def is_member(self, sugarbush_id: int, address: str) -> bool:
        """True when the person behind this address belongs to the sugarbush now."""
        found = self._first(_IS_MEMBER, sugarbush_id=sugarbush_id, address=address)
        return found is not None

    def invite(self, sugarbush_id: int, address: str, by: int, now_utc: datetime) -> None:
        """Leave an open invitation for an address. Inviting twice leaves one."""
        self.withdraw(sugarbush_id, address, now_utc)
        self._connection.execute(
            _NEW_MEMBER,
            {
                "sugarbush_id": sugarbush_id,
                "role": HELPER,
                "address": address,
                "invited_by_id": by,
                "invited_utc": now_utc,
            },
        )

    def withdraw(self, sugarbush_id: int, address: str, now_utc: datetime) -> None:
        """Take an open invitation back; nothing happens when there is none."""
        self._connection.execute(
            _CLOSE, {"whose": address, "bush": sugarbush_id, "now_utc": now_utc}
        )

    def is_invited(self, sugarbush_id: int, address: str) -> bool:
        """True when an invitation of this address is still open."""
        return self._first(_OPEN_ONE, whose=address, bush=sugarbush_id) is not None

    def invitation(self, address: str) -> Invitation | None:
        """The latest open invitation of an address."""
        found = self._first(_INVITATION, whose=address)
        if found is None:
            return None
        member_id, sugarbush_id, by = found
        return Invitation(member_id, sugarbush_id, by or "")

    def join(self, who: Who, invitation: Invitation, now_utc: datetime) -> Who:
        """Move a person to the sugarbush that they were invited to."""
        given = {"who": who.person_id, "now_utc": now_utc}
        self._connection.execute(_LEAVE, given)
        self._connection.execute(_JOIN, {**given, "member_id": invitation.member_id})
        return replace(who, sugarbush_id=invitation.sugarbush_id, role=HELPER)

    def _first(self, wanted: Any, **given: Any) -> Any:
        return self._connection.execute(wanted, given).first()
