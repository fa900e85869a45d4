"""What weather remembers: each cell's last good forecast, which cell a place lies in, and how the
days gone by were judged."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime
from typing import Any

from sqlalchemy import Connection, Table, bindparam, select
from sqlalchemy.dialects import postgresql, sqlite

from bot.ledger.tables import CellFound, ForecastKept, WeatherDay, table_of

_forecast, _cell, _day = table_of(ForecastKept), table_of(CellFound), table_of(WeatherDay)


def _put(table: Table, keys: tuple[str, ...]) -> dict[str, Any]:
    """Writes a row in place of the one with the same keys, for each database."""
    values = [column.name for column in table.c if column.name not in keys]
    made = {}
    for name, insert in (
        ("sqlite", sqlite.insert(table)),
        ("postgresql", postgresql.insert(table)),
    ):
        new = {value: insert.excluded[value] for value in values}
        made[name] = insert.on_conflict_do_update(index_elements=list(keys), set_=new)
    return made


_PUT_FORECAST = _put(_forecast, ("source", "cell_key"))
_PUT_CELL = _put(_cell, ("source", "place_key"))
_PUT_DAY = _put(_day, ("area", "on"))
_DAYS = (
    select(_day.c.on, _day.c.score, _day.c.low_f, _day.c.high_f)
    .where(_day.c.area == bindparam("area"), _day.c.on >= bindparam("since"))
    .order_by(_day.c.on)
)
_FORECAST = select(_forecast.c.told).where(
    _forecast.c.source == bindparam("source"), _forecast.c.cell_key == bindparam("cell_key")
)
_CELL = select(_cell.c.cell_key, _cell.c.zone, _cell.c.asked_utc).where(
    _cell.c.source == bindparam("source"), _cell.c.place_key == bindparam("place_key")
)


class ForecastRows:
    """Kept forecasts, found cells and judged days within one transaction."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def told(self, source: str, cell_key: str) -> str | None:
        """What was kept of a cell's last forecast, None if nothing was."""
        given = {"source": source, "cell_key": cell_key}
        found: str | None = self._connection.execute(_FORECAST, given).scalar()
        return found

    def keep(self, source: str, cell_key: str, told: str, fetched_utc: datetime) -> None:
        """Keep a forecast in place of the cell's last one."""
        self._connection.execute(
            _PUT_FORECAST[self._connection.dialect.name],
            {"source": source, "cell_key": cell_key, "told": told, "fetched_utc": fetched_utc},
        )

    def cell(self, source: str, place_key: str) -> tuple[str | None, str | None, datetime] | None:
        """The cell found for a place, its zone, and when it was asked; None if never."""
        given = {"source": source, "place_key": place_key}
        row = self._connection.execute(_CELL, given).first()
        return None if row is None else (row[0], row[1], row[2])

    def note_cell(
        self,
        source: str,
        place_key: str,
        cell_key: str | None,
        zone: str | None,
        asked_utc: datetime,
    ) -> None:
        """Note the cell found for a place, or that there is none."""
        self._connection.execute(
            _PUT_CELL[self._connection.dialect.name],
            {
                "source": source,
                "place_key": place_key,
                "cell_key": cell_key,
                "zone": zone,
                "asked_utc": asked_utc,
            },
        )

    def days(self, area: str, since: date) -> list[tuple[date, float, float, float]]:
        """The kept days of an area from one on, in order: each day, its score, low and high, F."""
        given: dict[str, Any] = {"area": area, "since": since}
        return [
            (on, score, low_f, high_f)
            for on, score, low_f, high_f in self._connection.execute(_DAYS, given)
        ]

    def keep_days(self, area: str, days: Sequence[tuple[date, float, float, float]]) -> None:
        """Keep days, each in place of what was kept of it."""
        # In one order, so that two at once do not wait for each other's rows.
        rows = [
            {"area": area, "on": on, "score": score, "low_f": low_f, "high_f": high_f}
            for on, score, low_f, high_f in sorted(days)
        ]
        if rows:
            self._connection.execute(_PUT_DAY[self._connection.dialect.name], rows)
