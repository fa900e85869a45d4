"""The records: only ever added to. To amend, to undo and to bring back are to add."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time
from functools import lru_cache
from typing import Any

from sqlalchemy import ColumnElement, Connection, Row, bindparam, insert, or_, select, union_all

from bot.entry import AMOUNT_FIELDS, ENTRY_FIELDS, Entry
from bot.ledger.editions import Editions
from bot.ledger.live import LIVE as LIVE
from bot.ledger.live import UNDO
from bot.ledger.ready import Ready
from bot.ledger.season_sums import SeasonSums
from bot.ledger.tables import Record, table_of

_record = table_of(Record)
_KEPT = select(
    _record.c.id,
    _record.c.person_id,
    _record.c.text_id,
    _record.c.replaces_id,
    *(_record.c[name] for name in ENTRY_FIELDS),
)
_BY_PERSON = (
    _record.c.person_id == bindparam("person"),
    _record.c.kind.not_in(bindparam("skip", expanding=True)),
)
_LAST_TEXTS = (
    select(_record.c.text_id)
    .where(*LIVE, *_BY_PERSON)
    .distinct()
    .order_by(_record.c.text_id.desc())
    .limit(bindparam("most"))
)
_OF_TEXTS = _KEPT.where(
    *LIVE, *_BY_PERSON, _record.c.text_id.in_(bindparam("texts", expanding=True))
).order_by(_record.c.text_id.desc(), _record.c.id)
_OF_TEXT = Ready(_KEPT.where(*LIVE, _record.c.text_id == bindparam("text")).order_by(_record.c.id))
_OF_KIND = Ready(
    _KEPT.where(*LIVE, _record.c.kind == bindparam("sort")).order_by(
        _record.c.at_local, _record.c.id
    )
)
_LATEST = Ready(
    _KEPT.where(
        *LIVE, _record.c.kind == bindparam("sort"), _record.c.at_local <= bindparam("until")
    )
    .order_by(_record.c.at_local.desc(), _record.c.id.desc())
    .limit(1)
)


_UNTESTED = Ready(
    select(_record.c.id)
    .where(
        *LIVE,
        _record.c.season == bindparam("year"),
        _record.c.kind == "sap",
        _record.c.on == bindparam("day"),
        _record.c.gallons == bindparam("much"),
        _record.c.brix.is_(None),
    )
    .limit(1)
)


@lru_cache(maxsize=64)
def _of_kinds(kinds: tuple[str, ...]) -> Ready:
    return Ready(
        _KEPT.where(
            *LIVE,
            _record.c.season == bindparam("year"),
            _record.c.at_local >= bindparam("since"),
            _is_one_of(kinds),
        ).order_by(_record.c.at_local, _record.c.id)
    )


@lru_cache(maxsize=8)
def _standing(latest: tuple[str, ...], whole: tuple[str, ...]) -> Ready:
    """The latest of each of some kinds, and all of others from a day on, in one look."""
    parts = [
        _KEPT.where(*LIVE, _record.c.kind == kind)
        .order_by(_record.c.at_local.desc(), _record.c.id.desc())
        .limit(1)
        for kind in latest
    ]
    if whole:
        parts.append(
            _KEPT.where(*LIVE, _is_one_of(whole), _record.c.at_local >= bindparam("since"))
        )
    both = union_all(*(select(part.subquery()) for part in parts))
    return Ready(both.order_by("at_local", "id"))


def _is_one_of(kinds: Collection[str]) -> ColumnElement[bool]:
    # Written out: a list that is bound has the statement made anew each time it is run.
    return or_(*(_record.c.kind == kind for kind in kinds))


_OF_DAY = Ready(
    _KEPT.where(
        *LIVE,
        _record.c.season == bindparam("year"),
        _record.c.kind == bindparam("sort"),
        _record.c.on == bindparam("day"),
    ).order_by(_record.c.id)
)
_ANY_BY = select(_record.c.id).where(*LIVE, *_BY_PERSON).limit(1)
_BY_ID = Ready(_KEPT.where(_record.c.id == bindparam("record_id")))
_ADD = Ready(insert(_record).returning(_record.c.id))

# Earlier and later than any record, for "no limit".
_EVER = date(1, 1, 1)
_FOR_EVER = datetime(9999, 1, 1)  # noqa: DTZ001  (a wall clock has no zone)
# An empty list of kinds to skip is said by one that no record has.
_NONE = ("",)


@dataclass(frozen=True, slots=True)
class Kept:
    """An entry as it stands in the ledger: who wrote it, the text it stands for, and the
    record it replaced, if any."""

    id: int
    person_id: int
    text_id: int
    replaces_id: int | None
    entry: Entry


@dataclass(frozen=True, slots=True)
class Undone:
    """A record taken back, and the earlier version that counts again (None: nothing does)."""

    was: Entry
    now: Entry | None


@dataclass(frozen=True, slots=True)
class Writer:
    """Who writes, for which sugarbush, because of which text, at which UTC moment."""

    sugarbush_id: int
    person_id: int
    text_id: int
    now_utc: datetime


class Records:
    """The records of one transaction."""

    def __init__(self, connection: Connection, editions: Editions | None = None) -> None:
        self._connection = connection
        self._editions = editions
        self._sums = SeasonSums(connection)

    def add(self, writer: Writer, entry: Entry) -> Kept:
        """Write a new record."""
        return self._write(writer, entry, stands_for=writer.text_id, was=None)

    def amend(self, writer: Writer, kept: Kept, entry: Entry) -> Kept:
        """Write a complete new record in place of `kept`, which stays but no longer counts.

        Raises sqlalchemy's IntegrityError if another has replaced it in the meantime.
        """
        return self._write(writer, entry, stands_for=writer.text_id, was=kept)

    def undo(self, writer: Writer, kept: Sequence[Kept]) -> list[Undone]:
        """Take records back: an amended one returns to its earlier version, others to nothing.

        The version that returns stands for the text that first wrote it, so that a second
        undo goes one further back.
        """
        undone = []
        for record in kept:
            earlier = self._earlier_version(record)
            if earlier is None:
                marker = Entry(kind=UNDO, on=record.entry.on, at_local=record.entry.at_local)
                self._write(writer, marker, stands_for=writer.text_id, was=record)
                undone.append(Undone(record.entry, None))
            else:
                self._write(writer, earlier.entry, stands_for=earlier.text_id, was=record)
                undone.append(Undone(record.entry, earlier.entry))
        return undone

    def last_texts(
        self, sugarbush_id: int, person_id: int, most: int, skip_kinds: Collection[str] = ()
    ) -> list[list[Kept]]:
        """What counts of a person's last texts: the latest text first, each in its own order."""
        by = {"bush": sugarbush_id, "person": person_id, "skip": list(skip_kinds or _NONE)}
        found = self._connection.execute(_LAST_TEXTS, {**by, "most": most})
        texts = list(found.scalars())
        if not texts:
            return []
        rows = self._connection.execute(_OF_TEXTS, {**by, "texts": texts})
        kept_of = [_kept(row) for row in rows]
        return [[kept for kept in kept_of if kept.text_id == text_id] for text_id in texts]

    def of_text(self, sugarbush_id: int, text_id: int) -> list[Kept]:
        """What counts of what one text wrote."""
        return self._all(_OF_TEXT, bush=sugarbush_id, text=text_id)

    def of_kinds(
        self, sugarbush_id: int, kinds: Collection[str], season: int, since: date = _EVER
    ) -> list[Entry]:
        """What counts of some kinds in a season, in the order that the wall clock gave it, from
        the local day `since` on."""
        wanted = _of_kinds(tuple(kinds))
        found = self._all(wanted, bush=sugarbush_id, year=season, since=midnight(since))
        return [kept.entry for kept in found]

    def of_kind(self, sugarbush_id: int, kind: str) -> list[Entry]:
        """What counts of one kind in all seasons, in the order that the wall clock gave it: for
        kinds that are told now and then, such as trees."""
        found = self._all(_OF_KIND, bush=sugarbush_id, sort=kind)
        return [kept.entry for kept in found]

    def latest(
        self, sugarbush_id: int, kind: str, *, not_after: datetime | None = None
    ) -> Entry | None:
        """The latest record of a kind by the wall clock (naive), whatever its season."""
        until = _FOR_EVER if not_after is None else not_after
        found = self._all(_LATEST, bush=sugarbush_id, sort=kind, until=until)
        return found[0].entry if found else None

    def of_day(self, sugarbush_id: int, kind: str, season: int, on: date) -> list[Kept]:
        """What counts of one kind on a local day, in the order in which it was written."""
        return self._all(_OF_DAY, bush=sugarbush_id, sort=kind, year=season, day=on)

    def told_untested(self, sugarbush_id: int, season: int, on: date, gallons: float) -> bool:
        """True when so much sap of a local day is told without its Brix."""
        given = {"bush": sugarbush_id, "year": season, "day": on, "much": gallons}
        return _UNTESTED.run(self._connection, given).first() is not None

    def standing(
        self,
        sugarbush_id: int,
        latest: Collection[str],
        whole: Collection[str] = (),
        since: date = _EVER,
    ) -> list[Entry]:
        """The latest of each of the kinds `latest`, and all of the kinds `whole` from the local day
        `since` on, in the order that the wall clock gave them."""
        wanted = _standing(tuple(latest), tuple(whole))
        given = {"since": midnight(since)} if whole else {}
        return [kept.entry for kept in self._all(wanted, bush=sugarbush_id, **given)]

    def any_by(self, sugarbush_id: int, person_id: int, besides: Collection[str] = ()) -> bool:
        """True when something that this person wrote here still counts, `besides` some kinds."""
        by = {"bush": sugarbush_id, "person": person_id, "skip": list(besides or _NONE)}
        return self._connection.execute(_ANY_BY, by).first() is not None

    def _earlier_version(self, record: Kept) -> Kept | None:
        """The nearest version before `record` that an earlier text wrote."""
        at = record
        while at.replaces_id is not None:
            at = self._all(_BY_ID, record_id=at.replaces_id)[0]
            if at.text_id < record.text_id:
                return at
        return None

    def _write(self, writer: Writer, entry: Entry, *, stands_for: int, was: Kept | None) -> Kept:
        replaces = None if was is None else was.id
        row = {name: getattr(entry, name) for name in AMOUNT_FIELDS}
        row.update(
            sugarbush_id=writer.sugarbush_id,
            person_id=writer.person_id,
            text_id=stands_for,
            made_by_text_id=writer.text_id,
            replaces_id=replaces,
            kind=entry.kind,
            on=entry.on,
            at_local=entry.at_local,
            season=entry.season,
            detail=dict(entry.detail),
            stored_utc=writer.now_utc,
        )
        record_id = _ADD.run(self._connection, row).scalar_one()
        if self._editions is not None:
            self._editions.wrote(writer.sugarbush_id)
        if was is None:
            self._sums.add(writer.sugarbush_id, entry)
        else:
            self._sums.replace(writer.sugarbush_id, was.entry, entry)
        return Kept(record_id, writer.person_id, stands_for, replaces, entry)

    def _all(self, wanted: Ready, **given: Any) -> list[Kept]:
        return [_kept(row) for row in wanted.run(self._connection, given)]


def midnight(on: date) -> datetime:
    """The start of a local day, naive: every record of a day has its wall clock in that day."""
    return datetime.combine(on, time.min)


def _kept(row: Row[Any]) -> Kept:
    values = tuple(row)
    entry = Entry(**dict(zip(ENTRY_FIELDS, values[4:], strict=True)))
    return Kept(values[0], values[1], values[2], values[3], entry)
