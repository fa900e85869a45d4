"""What a season adds up to, kept beside the records in the transaction that writes them, so that
an answer takes as long after a thousand records as after ten.

A record is added in once for each of its sides: its Brix, its day, its lot, its tree. One that is
replaced has the sums of its sides made anew from the records that count, since a latest day cannot
be taken back, nor a fraction without a trace.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from sqlalchemy import Connection, String, bindparam, case, delete, func, insert, select
from sqlalchemy.dialects import postgresql, sqlite

from bot.entry import Entry
from bot.ledger.live import LIVE, UNDO
from bot.ledger.ready import Ready
from bot.ledger.tables import Record, SeasonSum, table_of

_record, _sums = table_of(Record), table_of(SeasonSum)
_KEYS = tuple(column.name for column in _sums.primary_key)
# The sums, by the column of SeasonSum, of the records that are grouped.
_ADDED = {
    "gallons": func.sum(_record.c.gallons),
    "dollars": func.sum(_record.c.dollars),
    "cords": func.sum(_record.c.cords),
    "propane_lb": func.sum(_record.c.propane_lb),
    "brix": func.sum(_record.c.brix),
    "tested_gallons": func.sum(case((_record.c.brix.is_not(None), _record.c.gallons))),
    "sugar": func.sum(_record.c.gallons * _record.c.brix),
}
_IS_ON_SIDE = {
    "day": _record.c.on == bindparam("of"),
    "lot": _record.c.lot == bindparam("of"),
    "tree": _record.c.tree == bindparam("of"),
    "brix": _record.c.brix == bindparam("of"),
    "untested": _record.c.brix.is_(None),
}


def side_of_brix(brix: float | None) -> str:
    """The name of a Brix among the sums, "" where none was told."""
    return "" if brix is None else repr(float(brix))


class SeasonSums:
    """The kept sums within one transaction."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def add(self, sugarbush_id: int, entry: Entry) -> None:
        """Add a new record in."""
        if entry.kind == UNDO:
            return
        add, amounts = _add(self._connection.dialect.name), _amounts(entry)
        for key in _keys(sugarbush_id, entry):
            add.run(self._connection, {**key, **amounts})

    def replace(self, sugarbush_id: int, was: Entry, now: Entry) -> None:
        """Make the sums of two records anew, once the second has replaced the first."""
        sides = {
            tuple(key.values()): (key, entry)
            for entry in (was, now)
            if entry.kind != UNDO
            for key in _keys(sugarbush_id, entry)
        }
        for key, entry in sides.values():
            self._connection.execute(_DROP, {f"the_{name}": key[name] for name in _KEYS})
            wanted, of = _side(key["side"], entry)
            given = {"bush": sugarbush_id, "year": key["season"], "sort": key["kind"], **of}
            told = {"the_side": key["side"], "the_name": key["name"]}
            self._connection.execute(_make(wanted), {**given, **told})


def _keys(sugarbush_id: int, entry: Entry) -> list[dict[str, Any]]:
    names = {"brix": side_of_brix(entry.brix), "day": entry.on.isoformat()}
    names |= {side: name for side in ("lot", "tree") if (name := getattr(entry, side)) is not None}
    whose = {"sugarbush_id": sugarbush_id, "season": entry.season, "kind": entry.kind}
    return [{**whose, "side": side, "name": name} for side, name in names.items()]


def _amounts(entry: Entry) -> dict[str, Any]:
    is_tested = entry.brix is not None and entry.gallons is not None
    return {
        "records": 1,
        "last_on": entry.on,
        "gallons": entry.gallons,
        "dollars": entry.dollars,
        "cords": entry.cords,
        "propane_lb": entry.propane_lb,
        "brix": entry.brix,
        "tested_gallons": entry.gallons if is_tested else None,
        "sugar": (entry.gallons or 0.0) * (entry.brix or 0.0) if is_tested else None,
    }


def _side(side: str, entry: Entry) -> tuple[str, dict[str, Any]]:
    """Which records share a side with the entry, and what is to be bound for it."""
    if side == "brix" and entry.brix is None:
        return "untested", {}
    return side, {"of": entry.on if side == "day" else getattr(entry, side)}


@lru_cache(maxsize=2)
def _add(dialect: str) -> Ready:
    made = (postgresql if dialect == "postgresql" else sqlite).insert(_sums)
    new = made.excluded
    added = {
        name: func.coalesce(_sums.c[name] + new[name], _sums.c[name], new[name]) for name in _ADDED
    }
    later = case((new.last_on > _sums.c.last_on, new.last_on), else_=_sums.c.last_on)
    return Ready(
        made.on_conflict_do_update(
            index_elements=list(_KEYS),
            set_={"records": _sums.c.records + new.records, "last_on": later, **added},
        )
    )


_DROP = delete(_sums).where(*(_sums.c[name] == bindparam(f"the_{name}") for name in _KEYS))


@lru_cache(maxsize=8)
def _make(side: str) -> Any:
    columns = {
        "sugarbush_id": _record.c.sugarbush_id,
        "season": _record.c.season,
        "kind": _record.c.kind,
        "side": bindparam("the_side", type_=String),
        "name": bindparam("the_name", type_=String),
        "records": func.count(),
        "last_on": func.max(_record.c.on),
        **_ADDED,
    }
    made = (
        select(*columns.values())
        .where(
            *LIVE,
            _record.c.season == bindparam("year"),
            _record.c.kind == bindparam("sort"),
            _IS_ON_SIDE[side],
        )
        .group_by(_record.c.sugarbush_id, _record.c.season, _record.c.kind)
    )
    return insert(_sums).from_select(list(columns), made)
