"""The weather's memory kept in the ledger, so that it outlives the process and is shared."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import astuple
from datetime import date

from bot.ledger import Ledger
from bot.outdoors import DayKept
from bot.weather import Cell, Kept, Located
from bot.weather.store import kept_as_text, kept_from_text


class LedgerForecasts:
    """A `weather.Store` on the ledger. Each call is a transaction of its own: never ask for
    weather inside a writing one, which on SQLite would wait for itself."""

    def __init__(self, ledger: Ledger) -> None:
        self._ledger = ledger

    def last_good(self, source: str, cell_key: str) -> Kept | None:
        """The forecast kept for a cell, or None."""
        with self._ledger.reading() as book:
            told = book.forecasts.told(source, cell_key)
        return None if told is None else kept_from_text(told)

    def keep(self, kept: Kept) -> None:
        """Keeps a forecast in place of the cell's last one."""
        forecast = kept.forecast
        with self._ledger.writing() as book:
            book.forecasts.keep(
                forecast.source, forecast.cell.key, kept_as_text(kept), kept.fetched_utc
            )

    def located(self, source: str, place_key: str) -> Located | None:
        """The cell noted for a place, or None."""
        with self._ledger.reading() as book:
            found = book.forecasts.cell(source, place_key)
        if found is None:
            return None
        cell_key, zone, asked_utc = found
        return Located(None if cell_key is None else Cell(cell_key, zone), asked_utc)

    def note_located(self, source: str, place_key: str, located: Located) -> None:
        """Notes a place's cell."""
        cell = located.cell
        with self._ledger.writing() as book:
            book.forecasts.note_cell(
                source,
                place_key,
                None if cell is None else cell.key,
                None if cell is None else cell.zone,
                located.asked_utc,
            )


class LedgerDays:
    """`outdoors.Days` on the ledger: one winter's days, of which a forecast's memory of ten is no
    more than the last. Each call is a transaction of its own, as above."""

    def __init__(self, ledger: Ledger) -> None:
        self._ledger = ledger

    def of(self, area: str, since: date) -> list[DayKept]:
        """The kept days of an area from one on, in order."""
        with self._ledger.reading() as book:
            return [DayKept(*day) for day in book.forecasts.days(area, since)]

    def keep(self, area: str, days: Sequence[DayKept]) -> None:
        """Keep days, each in place of what was kept of it."""
        with self._ledger.writing() as book:
            book.forecasts.keep_days(area, [astuple(day) for day in days])
