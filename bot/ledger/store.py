"""The database behind the ledger: SQLite in a file by default, PostgreSQL by URL.

SQLite runs in WAL mode with synchronous=FULL, since a text must be on the disk before it is
answered. Its writers queue behind one lock: left to SQLite's own sleep-and-retry, the slowest
hundredth waits ten times longer. PostgreSQL needs neither.
"""

from __future__ import annotations

import threading
from collections.abc import Iterator
from contextlib import contextmanager, nullcontext
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, Engine, create_engine, event
from sqlalchemy.engine import make_url
from sqlalchemy.pool import StaticPool

from bot.ledger.schema import bring_up_to_date

# How long a writer of one process waits for a writer of another (SQLite only).
BUSY_TIMEOUT_MS = 10_000
IN_MEMORY = "sqlite://"


class Store:
    """One database: reading and writing transactions on it."""

    def __init__(self, url: str) -> None:
        """Open the store at `url` and bring its tables up to date.

        `sqlite:///path`, `sqlite://` (in memory, gone when closed) or `postgresql://...`.
        Raises `schema.NewerStoreError` when a later version of the program wrote it.
        """
        parsed = make_url(url)
        if parsed.get_backend_name() == "postgresql":
            parsed = parsed.set(drivername="postgresql+psycopg")
        self._engine = _engine(parsed.render_as_string(hide_password=False))
        self.is_sqlite = self._engine.dialect.name == "sqlite"
        self._in_memory = self.is_sqlite and parsed.database in (None, "", ":memory:")
        self._writers = self._engine.execution_options(pailtext_writes=True)
        self._lock = threading.RLock()
        with self._one_at_a_time():
            bring_up_to_date(self._engine)

    @contextmanager
    def writing(self) -> Iterator[Connection]:
        """A transaction that may write: committed at the end, rolled back if anything raises."""
        with self._one_at_a_time(), self._writers.begin() as connection:
            yield connection

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """A transaction that only reads."""
        # One connection in memory serves all threads, so that readers have to queue as well.
        queue = self._one_at_a_time() if self._in_memory else nullcontext()
        with queue, self._engine.begin() as connection:
            yield connection

    def close(self) -> None:
        """Close every connection."""
        self._engine.dispose()

    @property
    def engine(self) -> Engine:
        """The engine, for what shares the database."""
        return self._engine

    @contextmanager
    def _one_at_a_time(self) -> Iterator[None]:
        with self._lock if self.is_sqlite else nullcontext():
            yield


def _engine(url: str) -> Engine:
    parsed = make_url(url)
    if parsed.get_backend_name() != "sqlite":
        return create_engine(url, pool_pre_ping=True)
    if parsed.database in (None, "", ":memory:"):
        engine = create_engine(url, poolclass=StaticPool, connect_args={"check_same_thread": False})
    else:
        Path(str(parsed.database)).parent.mkdir(parents=True, exist_ok=True)
        engine = create_engine(url)
    event.listen(engine, "connect", _prepare_sqlite)
    event.listen(engine, "begin", _begin_sqlite)
    return engine


def _prepare_sqlite(connection: Any, _record: Any) -> None:
    # Python's sqlite3 would begin transactions by itself, too late and only for writes.
    connection.isolation_level = None
    cursor = connection.cursor()
    cursor.execute(f"PRAGMA busy_timeout = {BUSY_TIMEOUT_MS}")
    cursor.execute("PRAGMA journal_mode = WAL")
    cursor.execute("PRAGMA synchronous = FULL")
    cursor.execute("PRAGMA foreign_keys = ON")
    cursor.close()


def _begin_sqlite(connection: Any) -> None:
    # A writer says so at once: a reader that turns writer later can fail with SQLITE_BUSY,
    # whatever the timeout.
    writes = connection.get_execution_options().get("pailtext_writes", False)
    connection.connection.driver_connection.execute("BEGIN IMMEDIATE" if writes else "BEGIN")
