"""What a sugarbush's records add up to: one pass over an index, done by the database."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from sqlalchemy import ColumnElement, func, select
from sqlmodel import Session, col

from bot.ledger.records import live
from bot.ledger.tables import Record


@dataclass(frozen=True, slots=True)
class KindSum:
    """All records of one kind that share a Brix (None: not told): how many, and their sums.

    A sum is None when no record of them told that amount.
    """

    kind: str
    brix: float | None
    records: int
    gallons: float | None
    hours: float | None
    dollars: float | None
    cords: float | None
    propane_lb: float | None


@dataclass(frozen=True, slots=True)
class NamedSap:
    """The sap of one tree or lot at one Brix (None: not told)."""

    name: str
    brix: float | None
    gallons: float
    records: int
    last_on: date


@dataclass(frozen=True, slots=True)
class NamedSugar:
    """Sugar tests of one tree or lot: how many and their plain mean, Brix."""

    name: str
    tests: int
    mean_brix: float


class Sums:
    """The sums of one transaction. Days and seasons are local."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def season(
        self,
        sugarbush_id: int,
        season: int,
        *,
        first: date | None = None,
        last: date | None = None,
        lot: str | None = None,
        tree: str | None = None,
    ) -> list[KindSum]:
        """The season by kind and Brix, or only its days from `first` to `last`, both included,
        or only one lot or tree."""
        where = [*live(sugarbush_id), col(Record.season) == season, *_between(first, last)]
        if lot is not None:
            where.append(col(Record.lot) == lot)
        if tree is not None:
            where.append(col(Record.tree) == tree)
        rows = self._session.execute(
            select(
                col(Record.kind),
                col(Record.brix),
                func.count(),
                func.sum(col(Record.gallons)),
                func.sum(col(Record.hours)),
                func.sum(col(Record.dollars)),
                func.sum(col(Record.cords)),
                func.sum(col(Record.propane_lb)),
            )
            .where(*where)
            .group_by(col(Record.kind), col(Record.brix))
        )
        return [KindSum(*row) for row in rows]

    def untested_sap_by_day(
        self, sugarbush_id: int, season: int, *, first: date | None = None, last: date | None = None
    ) -> dict[date, float]:
        """Gallons of sap without a Brix, by day."""
        rows = self._session.execute(
            select(col(Record.on), func.sum(col(Record.gallons)))
            .where(
                *live(sugarbush_id),
                col(Record.season) == season,
                col(Record.kind) == "sap",
                col(Record.brix).is_(None),
                *_between(first, last),
            )
            .group_by(col(Record.on))
        )
        return dict(rows.tuples())

    def sugar_by_day(self, sugarbush_id: int, season: int) -> dict[date, float]:
        """The mean of each day's sugar tests of the whole bush's sap, Brix."""
        rows = self._session.execute(
            select(col(Record.on), func.avg(col(Record.brix)))
            .where(
                *live(sugarbush_id),
                col(Record.season) == season,
                col(Record.kind) == "sugar",
                col(Record.tree).is_(None),
                col(Record.lot).is_(None),
            )
            .group_by(col(Record.on))
        )
        return dict(rows.tuples())

    def sap_by(self, sugarbush_id: int, season: int, what: str) -> list[NamedSap]:
        """The season's sap by `what`: "tree" or "lot"."""
        name = col(getattr(Record, what))
        rows = self._session.execute(
            select(
                name,
                col(Record.brix),
                func.sum(col(Record.gallons)),
                func.count(),
                func.max(col(Record.on)),
            )
            .where(
                *live(sugarbush_id),
                col(Record.season) == season,
                col(Record.kind) == "sap",
                name.is_not(None),
            )
            .group_by(name, col(Record.brix))
        )
        return [NamedSap(*row) for row in rows]

    def sugar_by(self, sugarbush_id: int, season: int, what: str) -> list[NamedSugar]:
        """The season's sugar tests by `what`: "tree" or "lot"."""
        name = col(getattr(Record, what))
        rows = self._session.execute(
            select(name, func.count(), func.avg(col(Record.brix)))
            .where(
                *live(sugarbush_id),
                col(Record.season) == season,
                col(Record.kind) == "sugar",
                name.is_not(None),
            )
            .group_by(name)
        )
        return [NamedSugar(*row) for row in rows]

    def names(self, sugarbush_id: int, what: str, seasons: tuple[int, ...]) -> tuple[str, ...]:
        """The names of trees or lots ("tree", "lot") used in these seasons, sorted."""
        name = col(getattr(Record, what))
        rows = self._session.execute(
            select(name)
            .where(*live(sugarbush_id), col(Record.season).in_(seasons), name.is_not(None))
            .distinct()
        )
        return tuple(sorted(row[0] for row in rows))


def _between(first: date | None, last: date | None) -> list[ColumnElement[bool]]:
    where: list[ColumnElement[bool]] = []
    if first is not None:
        where.append(col(Record.on) >= first)
    if last is not None:
        where.append(col(Record.on) <= last)
    return where
