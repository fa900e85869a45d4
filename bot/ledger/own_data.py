"""One's own data: all of it out, and all of it gone.

To forget is the one thing that takes from the ledger. What others keep together with the person
stays, without a name, an address or a word of theirs: amounts, days, trees.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, delete, func, or_, select, update
from sqlmodel import SQLModel

from bot.entry import ENTRY_FIELDS, Entry
from bot.ledger.editions import Editions
from bot.ledger.live import LIVE
from bot.ledger.tables import (
    Address,
    Consent,
    InboxText,
    Letter,
    LinkCode,
    Member,
    OutboxText,
    Pending,
    Person,
    Record,
    Said,
    Sugarbush,
    table_of,
)

_record, _inbox, _outbox = table_of(Record), table_of(InboxText), table_of(OutboxText)
_person, _address, _member = table_of(Person), table_of(Address), table_of(Member)
_consent, _pending, _said = table_of(Consent), table_of(Pending), table_of(Said)
_letter, _code, _sugarbush = table_of(Letter), table_of(LinkCode), table_of(Sugarbush)

_ALL = (
    select(_record.c.person_id, _record.c.stored_utc, *(_record.c[name] for name in ENTRY_FIELDS))
    .where(*LIVE)
    .order_by(_record.c.at_local, _record.c.id)
)
# What else there is of a sugarbush: members, and sums that are kept of its records.
_OF_BUSHES = [
    table
    for table in SQLModel.metadata.sorted_tables
    if "sugarbush_id" in table.c and table is not _record
]
# What stands where somebody was named.
GONE = "(forgotten)"
# Kinds whose detail names people or is about them alone.
_PERSONAL = ("wish", "helper")


@dataclass(frozen=True, slots=True)
class Line:
    """A record that counts, whose it is, and when it was stored (aware UTC)."""

    person_id: int
    stored_utc: datetime
    entry: Entry


class OwnData:
    """One's own data within one transaction."""

    def __init__(self, connection: Connection, editions: Editions | None = None) -> None:
        self._connection = connection
        self._editions = editions

    def of(self, sugarbush_id: int) -> list[Line]:
        """All that counts of a sugarbush, in wall-clock order, season by season."""
        rows = self._connection.execute(_ALL, {"bush": sugarbush_id})
        return [
            Line(person, stored, Entry(**dict(zip(ENTRY_FIELDS, values, strict=True))))
            for person, stored, *values in rows
        ]

    def forget(self, person_id: int, text_id: int) -> None:
        """Remove a person, and every sugarbush that nobody else belongs to.

        What records of shared ones refer to stays as a bare row without name or address. text_id:
        the text that asks for it keeps the provider's id, so that a repeated delivery finds its
        reply; nothing else of it stays.
        """
        run = self._connection.execute
        if self._editions is not None:
            self._editions.forgot()
        mine = select(_address.c.address).where(_address.c.person_id == person_id)
        texts = select(_inbox.c.id).where(_inbox.c.sender.in_(mine))
        for table in (_pending, _said, _code, _consent, _outbox):
            run(delete(table).where(table.c.person_id == person_id))
        run(delete(_outbox).where(_outbox.c.address.in_(mine)))
        run(delete(_letter).where(_letter.c.text_id.in_(texts)))
        theirs = _member.c.person_id == person_id
        bushes = run(select(_member.c.sugarbush_id).where(theirs).distinct()).scalars().all()
        addresses = run(mine).scalars().all()
        self._lose_mentions(bushes, addresses)
        run(delete(_member).where(or_(theirs, _member.c.address.in_(mine))))
        run(update(_member).where(_member.c.invited_by_id == person_id).values(invited_by_id=None))
        for bush in bushes:
            if not self._has_members(bush):
                self._drop(bush)
        self._lose_names(person_id)
        self._lose_texts(mine, text_id)
        run(delete(_address).where(_address.c.person_id == person_id))
        if not self._is_referred_to(person_id):
            run(delete(_person).where(_person.c.id == person_id))

    def _lose_mentions(self, bushes: Sequence[int], addresses: Sequence[str]) -> None:
        """What was said to and by the others of shared sugarbushes names the person no more."""
        run = self._connection.execute
        mates = (
            select(_address.c.address)
            .join(_member, _member.c.person_id == _address.c.person_id)
            .where(_member.c.sugarbush_id.in_(bushes))
        )
        for address in addresses:
            for column, whose in (
                (_inbox.c.text, _inbox.c.sender.in_(mates)),
                (_inbox.c.reply, _inbox.c.sender.in_(mates)),
                (_outbox.c.body, _outbox.c.address.in_(mates)),
            ):
                said = func.replace(column, address, GONE)
                names = column.contains(address, autoescape=True)
                run(update(column.table).where(whose, names).values({column: said}))
        invited = select(_record.c.id, _record.c.text_id, _record.c.detail).where(
            _record.c.sugarbush_id.in_(bushes), _record.c.kind == "helper"
        )
        for record_id, text_id, detail in run(invited).all():
            if detail.get("address") in addresses:
                told = {"address": GONE}
                run(update(_record).where(_record.c.id == record_id).values(detail=told))
                # They may have spelt the number in another way.
                run(update(_inbox).where(_inbox.c.id == text_id).values(text=GONE))

    def _lose_names(self, person_id: int) -> None:
        self._connection.execute(
            update(_record)
            .where(_record.c.person_id == person_id, _record.c.kind.in_(_PERSONAL))
            .values(detail={})
        )

    def _has_members(self, bush: int) -> bool:
        found = select(_member.c.id).where(
            _member.c.sugarbush_id == bush,
            _member.c.joined_utc.is_not(None),
            _member.c.left_utc.is_(None),
        )
        return self._connection.execute(found).first() is not None

    def _drop(self, bush: int) -> None:
        """Later records refer to earlier ones: the chains are undone first."""
        run = self._connection.execute
        here = _record.c.sugarbush_id == bush
        run(update(_record).where(here).values(replaces_id=None))
        run(delete(_record).where(here))
        for table in _OF_BUSHES:
            run(delete(table).where(table.c.sugarbush_id == bush))
        run(delete(_sugarbush).where(_sugarbush.c.id == bush))

    def _lose_texts(self, mine: Any, text_id: int) -> None:
        """Texts that records refer to are emptied, the others go."""
        run = self._connection.execute
        run(
            update(_inbox)
            .where(_inbox.c.sender.in_(mine), _inbox.c.id != text_id)
            .values(
                sender="", to="", text="", reply=None, reply_owed=False, opt_out=None,
                provider_id="forgotten:" + _inbox.c.id.cast(_inbox.c.provider_id.type),
            )
        )  # fmt: skip
        run(
            update(_inbox).where(_inbox.c.id == text_id).values(sender="", to="", text=""),
        )
        kept = select(_record.c.text_id).union(select(_record.c.made_by_text_id))
        waiting = select(_pending.c.text_id).union(
            select(_consent.c.text_id).where(_consent.c.text_id.is_not(None))
        )
        run(
            delete(_inbox).where(
                _inbox.c.provider_id.startswith("forgotten:"),
                _inbox.c.sender == "",
                _inbox.c.id.not_in(kept),
                _inbox.c.id.not_in(waiting),
            )
        )

    def _is_referred_to(self, person_id: int) -> bool:
        found = select(_record.c.id).where(_record.c.person_id == person_id).limit(1)
        return self._connection.execute(found).first() is not None
