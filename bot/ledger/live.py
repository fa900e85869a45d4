"""Which records count: those that nothing has replaced."""

from __future__ import annotations

from sqlalchemy import ColumnElement, bindparam, select

from bot.ledger.tables import Record, table_of

UNDO = "undo"

_record = table_of(Record)
_replacing = _record.alias("replacing")

# A record of the sugarbush counts while nothing replaces it. To be bound: "bush".
LIVE: tuple[ColumnElement[bool], ...] = (
    _record.c.sugarbush_id == bindparam("bush"),
    _record.c.kind != UNDO,
    _record.c.id.not_in(
        select(_replacing.c.replaces_id).where(
            _replacing.c.sugarbush_id == bindparam("bush"),
            _replacing.c.replaces_id.is_not(None),
        )
    ),
)
