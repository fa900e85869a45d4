"""People, their addresses, and whose sugarbush they belong to."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from sqlmodel import Session, col, select

from bot.ledger.tables import Address, Member, Person, Sugarbush

OWNER = "owner"
HELPER = "helper"


@dataclass(frozen=True, slots=True)
class Who:
    """A person as they text now. `units` is "us" or "metric", None while they named none."""

    person_id: int
    address: str
    units: str | None
    sugarbush_id: int
    role: str


@dataclass(frozen=True, slots=True)
class Invitation:
    """An open invitation to a sugarbush; `by` is an address of the one who invited."""

    member_id: int
    sugarbush_id: int
    by: str


class People:
    """People within one transaction."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def find(self, address: str) -> Who | None:
        """The person behind an address, locked until the transaction ends; None if unknown."""
        found = self._session.exec(
            select(Person, Member)
            .join(Address, col(Address.person_id) == col(Person.id))
            .join(Member, col(Member.person_id) == col(Person.id))
            .where(
                col(Address.address) == address,
                col(Member.joined_utc).is_not(None),
                col(Member.left_utc).is_(None),
            )
            .with_for_update(of=Person)
        ).first()
        if found is None:
            return None
        person, member = found
        assert person.id is not None
        return Who(person.id, address, person.units, member.sugarbush_id, member.role)

    def meet(self, address: str, now_utc: datetime) -> Who:
        """Somebody new, with a sugarbush of their own."""
        person = Person(met_utc=now_utc)
        sugarbush = Sugarbush(made_utc=now_utc)
        self._session.add(person)
        self._session.add(sugarbush)
        self._session.flush()
        assert person.id is not None
        assert sugarbush.id is not None
        self._session.add(Address(person_id=person.id, address=address, linked_utc=now_utc))
        self._session.add(
            Member(
                sugarbush_id=sugarbush.id,
                role=OWNER,
                address=address,
                person_id=person.id,
                joined_utc=now_utc,
            )
        )
        self._session.flush()
        return Who(person.id, address, None, sugarbush.id, OWNER)

    def speaks(self, person_id: int, units: str) -> None:
        """Remember the units that a person used: "us" or "metric"."""
        person = self._session.get(Person, person_id)
        assert person is not None
        person.units = units
        self._session.add(person)

    def is_member(self, sugarbush_id: int, address: str) -> bool:
        """True when the person behind this address belongs to the sugarbush now."""
        return (
            self._session.exec(
                select(Member.id)
                .join(Address, col(Address.person_id) == col(Member.person_id))
                .where(
                    col(Address.address) == address,
                    col(Member.sugarbush_id) == sugarbush_id,
                    col(Member.joined_utc).is_not(None),
                    col(Member.left_utc).is_(None),
                )
            ).first()
            is not None
        )

    def invite(self, sugarbush_id: int, address: str, by: int, now_utc: datetime) -> None:
        """Leave an open invitation for an address. Inviting twice leaves one."""
        for old in self._open(address, sugarbush_id):
            old.left_utc = now_utc
            self._session.add(old)
        self._session.add(
            Member(
                sugarbush_id=sugarbush_id,
                role=HELPER,
                address=address,
                invited_by_id=by,
                invited_utc=now_utc,
            )
        )
        self._session.flush()

    def withdraw(self, sugarbush_id: int, address: str, now_utc: datetime) -> None:
        """Take an open invitation back; nothing happens when there is none."""
        for old in self._open(address, sugarbush_id):
            old.left_utc = now_utc
            self._session.add(old)
        self._session.flush()

    def is_invited(self, sugarbush_id: int, address: str) -> bool:
        """True when an invitation of this address is still open."""
        return bool(self._open(address, sugarbush_id))

    def invitation(self, address: str) -> Invitation | None:
        """The latest open invitation of an address."""
        for member in self._open(address):
            assert member.id is not None
            by = self._session.exec(
                select(Address.address)
                .where(col(Address.person_id) == member.invited_by_id)
                .order_by(col(Address.id))
            ).first()
            return Invitation(member.id, member.sugarbush_id, by or "")
        return None

    def join(self, who: Who, invitation: Invitation, now_utc: datetime) -> Who:
        """Move a person to the sugarbush that they were invited to."""
        for mine in self._session.exec(
            select(Member).where(
                col(Member.person_id) == who.person_id,
                col(Member.joined_utc).is_not(None),
                col(Member.left_utc).is_(None),
            )
        ):
            mine.left_utc = now_utc
            self._session.add(mine)
        self._session.flush()
        member = self._session.get(Member, invitation.member_id)
        assert member is not None
        member.person_id = who.person_id
        member.joined_utc = now_utc
        self._session.add(member)
        self._session.flush()
        return Who(who.person_id, who.address, who.units, member.sugarbush_id, member.role)

    def _open(self, address: str, sugarbush_id: int | None = None) -> list[Member]:
        wanted = (
            select(Member)
            .where(
                col(Member.address) == address,
                col(Member.invited_utc).is_not(None),
                col(Member.joined_utc).is_(None),
                col(Member.left_utc).is_(None),
            )
            .order_by(col(Member.id).desc())
        )
        if sugarbush_id is not None:
            wanted = wanted.where(col(Member.sugarbush_id) == sugarbush_id)
        return list(self._session.exec(wanted))
