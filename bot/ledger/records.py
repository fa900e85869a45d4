"""The records: only ever added to. To amend, to undo and to bring back are to add."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any

from sqlalchemy import ColumnElement, Row, Select, select
from sqlmodel import Session, col

from bot.entry import AMOUNT_FIELDS, ENTRY_FIELDS, Entry
from bot.ledger.tables import Record

UNDO = "undo"

_ENTRY_COLUMNS = tuple(getattr(Record, name) for name in ENTRY_FIELDS)
_KEPT_COLUMNS = (
    col(Record.id),
    col(Record.person_id),
    col(Record.text_id),
    col(Record.replaces_id),
    *_ENTRY_COLUMNS,
)


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


def live(sugarbush_id: int) -> tuple[ColumnElement[bool], ...]:
    """The conditions that a record of a sugarbush counts: nothing replaces it."""
    replaced = select(col(Record.replaces_id)).where(
        col(Record.sugarbush_id) == sugarbush_id, col(Record.replaces_id).is_not(None)
    )
    return (
        col(Record.sugarbush_id) == sugarbush_id,
        col(Record.kind) != UNDO,
        col(Record.id).not_in(replaced),
    )


@dataclass(frozen=True, slots=True)
class Writer:
    """Who writes, for which sugarbush, because of which text, at which UTC moment."""

    sugarbush_id: int
    person_id: int
    text_id: int
    now_utc: datetime


class Records:
    """The records of one transaction."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def add(self, writer: Writer, entry: Entry) -> Kept:
        """Write a new record."""
        return self._write(writer, entry, stands_for=writer.text_id, replaces=None)

    def amend(self, writer: Writer, kept: Kept, entry: Entry) -> Kept:
        """Write a complete new record in place of `kept`, which stays but no longer counts.

        Raises sqlalchemy's IntegrityError if another has replaced it in the meantime.
        """
        return self._write(writer, entry, stands_for=writer.text_id, replaces=kept.id)

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
                self._write(writer, marker, stands_for=writer.text_id, replaces=record.id)
                undone.append(Undone(record.entry, None))
            else:
                self._write(writer, earlier.entry, stands_for=earlier.text_id, replaces=record.id)
                undone.append(Undone(record.entry, earlier.entry))
        return undone

    def last_texts(
        self, sugarbush_id: int, person_id: int, most: int, skip_kinds: Collection[str] = ()
    ) -> list[list[Kept]]:
        """What counts of a person's last texts: the latest text first, each in its own order."""
        texts = [
            row[0]
            for row in self._session.execute(
                select(col(Record.text_id))
                .where(
                    *live(sugarbush_id),
                    col(Record.person_id) == person_id,
                    col(Record.kind).not_in(skip_kinds),
                )
                .distinct()
                .order_by(col(Record.text_id).desc())
                .limit(most)
            )
        ]
        if not texts:
            return []
        rows = self._all(
            select(*_KEPT_COLUMNS)
            .where(
                *live(sugarbush_id),
                col(Record.person_id) == person_id,
                col(Record.text_id).in_(texts),
                col(Record.kind).not_in(skip_kinds),
            )
            .order_by(col(Record.text_id).desc(), col(Record.id))
        )
        return [[kept for kept in rows if kept.text_id == text_id] for text_id in texts]

    def of_text(self, sugarbush_id: int, text_id: int) -> list[Kept]:
        """What counts of what one text wrote."""
        return self._all(
            select(*_KEPT_COLUMNS)
            .where(*live(sugarbush_id), col(Record.text_id) == text_id)
            .order_by(col(Record.id))
        )

    def of_kinds(self, sugarbush_id: int, kinds: Collection[str], season: int) -> list[Entry]:
        """What counts of some kinds in a season, in the order that the wall clock gave it."""
        return [
            kept.entry
            for kept in self._all(
                select(*_KEPT_COLUMNS)
                .where(
                    *live(sugarbush_id),
                    col(Record.season) == season,
                    col(Record.kind).in_(kinds),
                )
                .order_by(col(Record.at_local), col(Record.id))
            )
        ]

    def latest(
        self, sugarbush_id: int, kind: str, *, not_after: datetime | None = None
    ) -> Entry | None:
        """The latest record of a kind by the wall clock (naive), whatever its season."""
        wanted = (
            select(*_KEPT_COLUMNS)
            .where(*live(sugarbush_id), col(Record.kind) == kind)
            .order_by(col(Record.at_local).desc(), col(Record.id).desc())
            .limit(1)
        )
        if not_after is not None:
            wanted = wanted.where(col(Record.at_local) <= not_after)
        found = self._all(wanted)
        return found[0].entry if found else None

    def any_by(self, sugarbush_id: int, person_id: int, besides: Collection[str] = ()) -> bool:
        """True when something that this person wrote here still counts, `besides` some kinds."""
        return (
            self._session.execute(
                select(col(Record.id))
                .where(
                    *live(sugarbush_id),
                    col(Record.person_id) == person_id,
                    col(Record.kind).not_in(besides),
                )
                .limit(1)
            ).first()
            is not None
        )

    def _earlier_version(self, record: Kept) -> Kept | None:
        """The nearest version before `record` that an earlier text wrote."""
        at = record
        while at.replaces_id is not None:
            at = self._all(select(*_KEPT_COLUMNS).where(col(Record.id) == at.replaces_id))[0]
            if at.text_id < record.text_id:
                return at
        return None

    def _write(
        self, writer: Writer, entry: Entry, *, stands_for: int, replaces: int | None
    ) -> Kept:
        row = Record(
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
            **{name: getattr(entry, name) for name in AMOUNT_FIELDS},
        )
        self._session.add(row)
        self._session.flush()
        assert row.id is not None
        return Kept(row.id, writer.person_id, stands_for, replaces, replace(entry))

    def _all(self, wanted: Select[Any]) -> list[Kept]:
        return [_kept(row) for row in self._session.execute(wanted)]


def _kept(row: Row[Any]) -> Kept:
    values = tuple(row)
    entry = Entry(**dict(zip(ENTRY_FIELDS, values[4:], strict=True)))
    return Kept(values[0], values[1], values[2], values[3], entry)
