"""Whether the records of a sugarbush are still those that this process saw last.

On SQLite alone, where one connection does all the writing of a process, and tells whether any
other has written since (`PRAGMA data_version`, sqlite.org/pragma.html). On PostgreSQL many
processes write, and what was seen is always looked at again.
"""

from __future__ import annotations

from collections import Counter
from typing import Any, NamedTuple

from sqlalchemy import Connection


class Edition(NamedTuple):
    """One state of a sugarbush's records. `era` moves on when others may have written anything."""

    sugarbush_id: int
    era: int
    writes: int


class Editions:
    """Counts what is written. To be asked within a transaction that writes: one at a time."""

    def __init__(self) -> None:
        self._connection: Any = None
        self._version = 0
        self._era = 0
        self._writes: Counter[int] = Counter()

    def of(self, connection: Connection, sugarbush_id: int) -> Edition | None:
        """The state that the transaction sees, None where it cannot be told."""
        if connection.dialect.name != "sqlite":
            return None
        driver: Any = connection.connection.driver_connection
        (version,) = driver.execute("PRAGMA data_version").fetchone()
        # The version is one connection's own count.
        if driver is not self._connection or version != self._version:
            self._connection, self._version = driver, version
            self._era += 1
        return Edition(sugarbush_id, self._era, self._writes[sugarbush_id])

    def wrote(self, sugarbush_id: int) -> None:
        """A record is written. If it is taken back, nothing is lost but a look."""
        self._writes[sugarbush_id] += 1

    def forgot(self) -> None:
        """Records were removed; the numbers of what is gone are given out again."""
        self._era += 1
