"""What a sugarbush's records add up to: read from the kept sums, else one pass over an index."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime
from functools import lru_cache
from typing import Any, NamedTuple

from sqlalchemy import Connection, Select, bindparam, case, desc, func, literal, select, union_all

from bot.entry import Entry
from bot.ledger.live import LIVE
from bot.ledger.ready import Ready
from bot.ledger.records import midnight
from bot.ledger.season_sums import side_of_brix
from bot.ledger.tables import Record, SeasonSum, table_of

_record, _kept = table_of(Record), table_of(SeasonSum)
_IN_SEASON = _record.c.season == bindparam("year")
_SOURCE = (_record.c.on, _record.c.lot, _record.c.tree)


@dataclass(frozen=True, slots=True)
class KindSum:
    """All records of one kind that share a Brix (None: not told): how many, and their sums.

    A sum is None when no record of them told that amount.
    """

    kind: str
    brix: float | None
    records: int
    gallons: float | None
    dollars: float | None
    cords: float | None
    propane_lb: float | None

    @property
    def place(self) -> tuple[str, str]:
        """Where it stands among the others of a season."""
        return self.kind, side_of_brix(self.brix)

    def with_one_more(self, entry: Entry) -> KindSum:
        """The same with another record of its kind and Brix."""
        return KindSum(
            self.kind,
            self.brix,
            self.records + 1,
            _added(self.gallons, entry.gallons),
            _added(self.dollars, entry.dollars),
            _added(self.cords, entry.cords),
            _added(self.propane_lb, entry.propane_lb),
        )


def _added(sum_: float | None, more: float | None) -> float | None:
    if sum_ is None or more is None:
        return more if sum_ is None else sum_
    return sum_ + more


def with_entry(sums: Sequence[KindSum], entry: Entry) -> tuple[KindSum, ...]:
    """The sums of a season with a new record of it, as the ledger keeps them."""
    brix = None if entry.brix is None else float(entry.brix)
    new = KindSum(entry.kind, brix, 0, None, None, None, None)
    others = [one for one in sums if one.place != new.place]
    had = next((one for one in sums if one.place == new.place), new)
    return tuple(sorted([*others, had.with_one_more(entry)], key=lambda one: one.place))


@dataclass(frozen=True, slots=True)
class NamedSap:
    """The sap of one tree or lot, the day of the last, and its mean Brix (None: none told).

    The mean is weighted by gallons, which is good to 0.01 Brix at sap strength.
    """

    name: str
    gallons: float
    records: int
    last_on: date
    brix: float | None


class DaySum(NamedTuple):
    """What the records of one kind on one local day add up to: gallons, of them those whose sugar
    was told, and gallons times Brix of these."""

    kind: str
    on: date
    gallons: float
    tested_gallons: float
    sugar: float


class ToADay(NamedTuple):
    """Gallons of a season: all, and up to a day."""

    whole: float
    to_day: float


class Source(NamedTuple):
    """What sap or a test of it is of: its local day, and its lot or tree where one was told."""

    on: date
    lot: str | None
    tree: str | None


class TimedSap(NamedTuple):
    """Sap by the wall clock: when (naive), the local day it is of, gallons."""

    at_local: datetime
    on: date
    gallons: float


@dataclass(frozen=True, slots=True)
class NamedSugar:
    """Sugar tests of one tree or lot: how many and their plain mean, Brix."""

    name: str
    tests: int
    mean_brix: float


class Sums:
    """The sums of one transaction. Days and seasons are local."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def season(
        self,
        sugarbush_id: int,
        season: int,
        *,
        first: date | None = None,
        last: date | None = None,
        lot: str | None = None,
    ) -> list[KindSum]:
        """The season by kind and Brix, or only its days from `first` to `last`, both included,
        or only one lot."""
        if first is None and last is None and lot is None:
            kept = self._run(_BY_BRIX, sugarbush_id, season)
            return [KindSum(kind, float(name) if name else None, *row) for kind, name, *row in kept]
        only = {"first": first, "last": last, "place": lot}
        given = {name: value for name, value in only.items() if value is not None}
        rows = self._run(_by_kind(tuple(given)), sugarbush_id, season, **given)
        return [KindSum(*row) for row in rows]

    def untested_sap(
        self, sugarbush_id: int, season: int, *, first: date | None = None, last: date | None = None
    ) -> dict[Source, float]:
        """Gallons of sap without a Brix, by day and the lot or tree that they are of."""
        given = {
            name: value for name, value in (("first", first), ("last", last)) if value is not None
        }
        rows = self._run(_untested(tuple(given)), sugarbush_id, season, **given)
        return {Source(on, lot, tree): gallons for on, lot, tree, gallons in rows}

    def sugar_tests(self, sugarbush_id: int, season: int) -> dict[Source, float]:
        """The mean of each day's sugar tests by what was tested, Brix; the whole bush's sap has
        neither lot nor tree."""
        rows = self._run(_SUGAR_TESTS, sugarbush_id, season)
        return {Source(on, lot, tree): brix for on, lot, tree, brix in rows}

    def sap_since(self, sugarbush_id: int, season: int, since: date) -> list[TimedSap]:
        """The sap of a season from a day on, in wall-clock order, a moment's sap together."""
        given = {"bush": sugarbush_id, "year": season, "since": midnight(since)}
        rows = _SAP_SINCE.run(self._connection, given)
        # A record's wall clock is always in its own day.
        return [TimedSap(at_local, at_local.date(), gallons) for at_local, gallons in rows]

    def to_a_day(self, sugarbush_id: int, season: int, day: date) -> dict[str, ToADay]:
        """Gallons of each kind in a season, all of them and those up to a day, by kind."""
        rows = self._run(_TO_A_DAY, sugarbush_id, season, day=day.isoformat())
        return {kind: ToADay(whole or 0.0, to_day or 0.0) for kind, whole, to_day in rows}

    def by_day(self, sugarbush_id: int, season: int) -> list[DaySum]:
        """The season's sap and syrup, kind by kind and day by day."""
        return [
            DaySum(kind, date.fromisoformat(on), gallons or 0.0, tested or 0.0, sugar or 0.0)
            for kind, on, gallons, tested, sugar in self._run(_BY_DAY, sugarbush_id, season)
        ]

    def costs(self, sugarbush_id: int, season: int) -> list[tuple[str | None, float]]:
        """Dollars of a season by item (None: no item told), the dearest first."""
        return [(item, dollars) for item, dollars in self._run(_COSTS, sugarbush_id, season)]

    def sap_by(self, sugarbush_id: int, season: int, what: str) -> list[NamedSap]:
        """The season's sap by `what`: "tree" or "lot"."""
        return [NamedSap(*row) for row in self._run(_SAP_BY, sugarbush_id, season, what=what)]

    def sugar_by(self, sugarbush_id: int, season: int, what: str) -> list[NamedSugar]:
        """The season's sugar tests by `what`: "tree" or "lot"."""
        return [NamedSugar(*row) for row in self._run(_SUGAR_BY, sugarbush_id, season, what=what)]

    def names(self, sugarbush_id: int, what: str) -> tuple[str, ...]:
        """The names of trees or lots ("tree", "lot") ever used, sorted."""
        found = self._connection.execute(_names(what), {"bush": sugarbush_id})
        return tuple(sorted(found.scalars()))

    def all_names(self, sugarbush_id: int) -> tuple[tuple[str, ...], tuple[str, ...]]:
        """The names of trees and of lots ever used, each sorted."""
        found = _ALL_NAMES.run(self._connection, {"bush": sugarbush_id}).all()
        trees, lots = (
            tuple(sorted(name for what, name in found if what == wanted))
            for wanted in ("tree", "lot")
        )
        return trees, lots

    def _run(self, wanted: Select[Any], sugarbush_id: int, season: int, **given: Any) -> Any:
        return self._connection.execute(wanted, {"bush": sugarbush_id, "year": season, **given})


_LIMITS = {
    "first": _record.c.on >= bindparam("first"),
    "last": _record.c.on <= bindparam("last"),
    "place": _record.c.lot == bindparam("place"),
}


@lru_cache(maxsize=16)
def _by_kind(limits: tuple[str, ...]) -> Select[Any]:
    return (
        select(
            _record.c.kind,
            _record.c.brix,
            func.count(),
            func.sum(_record.c.gallons),
            func.sum(_record.c.dollars),
            func.sum(_record.c.cords),
            func.sum(_record.c.propane_lb),
        )
        .where(*LIVE, _IN_SEASON, *(_LIMITS[name] for name in limits))
        .group_by(_record.c.kind, _record.c.brix)
    )


@lru_cache(maxsize=16)
def _untested(limits: tuple[str, ...]) -> Select[Any]:
    return (
        select(*_SOURCE, func.sum(_record.c.gallons))
        .where(
            *LIVE,
            _IN_SEASON,
            _record.c.kind == "sap",
            _record.c.brix.is_(None),
            *(_LIMITS[name] for name in limits),
        )
        .group_by(*_SOURCE)
    )


_SUGAR_TESTS = (
    select(*_SOURCE, func.avg(_record.c.brix))
    .where(*LIVE, _IN_SEASON, _record.c.kind == "sugar")
    .group_by(*_SOURCE)
)


_SAP_SINCE = Ready(
    select(_record.c.at_local, func.sum(_record.c.gallons))
    .where(*LIVE, _IN_SEASON, _record.c.kind == "sap", _record.c.at_local >= bindparam("since"))
    .group_by(_record.c.at_local)
    .order_by(_record.c.at_local)
)
_KEPT_IN_SEASON = (_kept.c.sugarbush_id == bindparam("bush"), _kept.c.season == bindparam("year"))
_BY_BRIX = select(
    _kept.c.kind,
    _kept.c.name,
    _kept.c.records,
    _kept.c.gallons,
    _kept.c.dollars,
    _kept.c.cords,
    _kept.c.propane_lb,
).where(*_KEPT_IN_SEASON, _kept.c.side == "brix")
_TO_A_DAY = (
    select(
        _kept.c.kind,
        func.sum(_kept.c.gallons),
        func.sum(case((_kept.c.name <= bindparam("day"), _kept.c.gallons))),
    )
    .where(*_KEPT_IN_SEASON, _kept.c.side == "day")
    .group_by(_kept.c.kind)
)
_BY_DAY = (
    select(_kept.c.kind, _kept.c.name, _kept.c.gallons, _kept.c.tested_gallons, _kept.c.sugar)
    .where(*_KEPT_IN_SEASON, _kept.c.side == "day", _kept.c.kind.in_(("sap", "syrup")))
    .order_by(_kept.c.name)
)
_NAMED = (*_KEPT_IN_SEASON, _kept.c.side == bindparam("what"))
_SAP_BY = select(
    _kept.c.name,
    _kept.c.gallons,
    _kept.c.records,
    _kept.c.last_on,
    _kept.c.sugar / func.nullif(_kept.c.tested_gallons, 0.0),
).where(*_NAMED, _kept.c.kind == "sap")
# A test always tells a Brix.
_SUGAR_BY = select(_kept.c.name, _kept.c.records, _kept.c.brix / _kept.c.records).where(
    *_NAMED, _kept.c.kind == "sugar"
)
_ITEM = _record.c.detail["item"].as_string()
_COSTS = (
    select(_ITEM.label("item"), func.sum(_record.c.dollars).label("dollars"))
    .where(*LIVE, _IN_SEASON, _record.c.kind == "cost")
    .group_by("item")
    .order_by(desc("dollars"), "item")
)


@lru_cache(maxsize=2)
def _names(what: str) -> Select[Any]:
    """Each name once, by stepping from name to name on its index: a tree that was told of a
    thousand times costs one step."""
    # An undo marker names no tree and no lot, so its kind need not be looked at.
    counts = (LIVE[0], LIVE[2])
    name = _record.c[what]
    least = select(func.min(name).label("name")).where(*counts, name.is_not(None))
    steps = least.cte(f"{what}_steps", recursive=True)
    further = (
        select(func.min(name))
        .where(*counts, name > steps.c.name)
        .correlate(steps)
        .scalar_subquery()
    )
    steps = steps.union_all(select(further).where(steps.c.name.is_not(None)))
    return select(steps.c.name).where(steps.c.name.is_not(None))


_ALL_NAMES = Ready(
    union_all(*(select(literal(what), *_names(what).subquery().c) for what in ("tree", "lot")))
)
