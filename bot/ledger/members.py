"""Who keeps a sugarbush's tally together, and who wrote what of it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from sqlalchemy import Connection, bindparam, case, func, insert, select, update

from bot.ledger.live import LIVE
from bot.ledger.people import OWNER
from bot.ledger.tables import Address, Member, Person, Record, Sugarbush, table_of

_member, _address, _person = table_of(Member), table_of(Address), table_of(Person)
_record, _sugarbush = table_of(Record), table_of(Sugarbush)

_BELONGS = (_member.c.joined_utc.is_not(None), _member.c.left_utc.is_(None))
_FIRST_ADDRESS = (
    select(_address.c.address)
    .where(_address.c.person_id == _member.c.person_id)
    .order_by(_address.c.id)
    .limit(1)
    .scalar_subquery()
)
_MEMBERS = (
    select(_member.c.person_id, _member.c.role, _FIRST_ADDRESS)
    .where(_member.c.sugarbush_id == bindparam("bush"), *_BELONGS)
    .order_by(_member.c.joined_utc, _member.c.id)
)
_LEAVE = (
    update(_member)
    .where(_member.c.person_id == bindparam("who"), *_BELONGS)
    .values(left_utc=bindparam("now_utc"))
)
_NEW_SUGARBUSH = insert(_sugarbush).returning(_sugarbush.c.id)
_NEW_MEMBER = insert(_member)
_RAISE = (
    update(_member)
    .where(
        _member.c.person_id == bindparam("who"),
        _member.c.sugarbush_id == bindparam("bush"),
        *_BELONGS,
    )
    .values(role=OWNER)
)
_IS_SAP = _record.c.kind == "sap"
# What tells nothing of the trees: how somebody wants to be texted, and whom they let in.
_NOT_LOGGED = ("wish", "helper", "place", "season_over")
_BY_PERSON = (
    select(
        _record.c.person_id,
        func.count(),
        func.sum(case((_IS_SAP, _record.c.gallons))),
    )
    .where(*LIVE, _record.c.season == bindparam("year"), _record.c.kind.not_in(_NOT_LOGGED))
    .group_by(_record.c.person_id)
)
_ON_DAY = _BY_PERSON.where(_record.c.on == bindparam("day"))
_HEARS = (
    update(_person)
    .where(_person.c.id == bindparam("who"))
    .values(hears_helpers=bindparam("wished"))
)
_HEARERS = (
    select(_person.c.id, _person.c.units, _member.c.sugarbush_id)
    .join_from(_person, _member, _member.c.person_id == _person.c.id)
    .where(_person.c.hears_helpers.is_(True), _member.c.role == OWNER, *_BELONGS)
    .order_by(_person.c.id)
)


@dataclass(frozen=True, slots=True)
class Mate:
    """One of those who keep a sugarbush's tally; `address` is the one that they had first."""

    person_id: int
    role: str
    address: str


@dataclass(frozen=True, slots=True)
class Logged:
    """What one person wrote that counts: how many records, and gallons of sap (None: no sap)."""

    person_id: int
    records: int
    sap_gallons: float | None


@dataclass(frozen=True, slots=True)
class Hearer:
    """An owner who wishes to hear what the helpers logged."""

    person_id: int
    units: str | None
    sugarbush_id: int


class Members:
    """The members of sugarbushes within one transaction."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def of(self, sugarbush_id: int) -> list[Mate]:
        """All members, those who joined first first."""
        rows = self._connection.execute(_MEMBERS, {"bush": sugarbush_id})
        return [Mate(person, role, address or "") for person, role, address in rows]

    def move_out(self, person_id: int, address: str, now_utc: datetime) -> int:
        """Give a person a sugarbush of their own, and leave the one they are in with all that
        they logged. Gives the new one's number."""
        run = self._connection.execute
        run(_LEAVE, {"who": person_id, "now_utc": now_utc})
        bush: int = run(_NEW_SUGARBUSH, {"made_utc": now_utc}).scalar_one()
        run(
            _NEW_MEMBER,
            {
                "sugarbush_id": bush,
                "role": OWNER,
                "address": address,
                "person_id": person_id,
                "joined_utc": now_utc,
            },
        )
        return bush

    def close(self, person_id: int, now_utc: datetime) -> None:
        """A person belongs nowhere any more."""
        self._connection.execute(_LEAVE, {"who": person_id, "now_utc": now_utc})

    def make_owner(self, person_id: int, sugarbush_id: int) -> None:
        """A member becomes the owner."""
        self._connection.execute(_RAISE, {"who": person_id, "bush": sugarbush_id})

    def logged(self, sugarbush_id: int, season: int) -> list[Logged]:
        """What each one wrote in a season that counts, also those who have left."""
        return self._logged(_BY_PERSON, bush=sugarbush_id, year=season)

    def logged_on(self, sugarbush_id: int, season: int, on: date) -> list[Logged]:
        """The same for what is of one local day."""
        return self._logged(_ON_DAY, bush=sugarbush_id, year=season, day=on)

    def hear(self, person_id: int, wished: bool) -> None:
        """Remember whether an owner wishes to hear each day what the helpers logged."""
        self._connection.execute(_HEARS, {"who": person_id, "wished": wished})

    def hearers(self) -> list[Hearer]:
        """The owners who do."""
        return [Hearer(*row) for row in self._connection.execute(_HEARERS)]

    def _logged(self, wanted: Any, **given: Any) -> list[Logged]:
        return [Logged(*row) for row in self._connection.execute(wanted, given)]
