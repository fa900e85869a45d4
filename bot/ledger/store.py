"""The database behind the ledger: SQLite in a file by default, PostgreSQL by URL.

SQLite runs in WAL mode with synchronous=FULL, since a text must be on the disk before it is
answered. Its writers queue behind one lock, and commit together: left to SQLite's own
sleep-and-retry, the slowest hundredth waits ten times longer. PostgreSQL needs neither.
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

from bot.ledger.schema import bring_up_to_date, writing_alone
from bot.ledger.together import Together

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
        in_memory = self.is_sqlite and parsed.database in (None, "", ":memory:")
        # One connection in memory serves all threads, so that readers have to queue as well.
        self._queue = threading.RLock() if in_memory else nullcontext()
        self._together = Together(self._engine) if self.is_sqlite and not in_memory else None
        with self._queue:
            bring_up_to_date(self._engine)

    @contextmanager
    def writing(self) -> Iterator[Connection]:
        """A transaction that may write: committed at the end, rolled back if anything raises."""
        if self._together is not None:
            with self._together.part() as connection:
                yield connection
        else:
            with self._queue, writing_alone(self._engine) as connection:
                yield connection

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """A transaction that only reads."""
        with self._queue, self._engine.begin() as connection:
            if self.is_sqlite:
                connection.exec_driver_sql("BEGIN")
            yield connection

    def close(self) -> None:
        """Close every connection."""
        if self._together is not None:
            self._together.close()
        self._engine.dispose()

    @property
    def engine(self) -> Engine:
        """The engine, for what shares the database."""
        return self._engine


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
    return engine


def _prepare_sqlite(connection: Any, _record: Any) -> None:
    # Python's sqlite3 would begin transactions by itself, too late and only for writes. We say
    # BEGIN ourselves where one begins: SQLAlchemy's event for it makes every statement slower.
    connection.isolation_level = None
    cursor = connection.cursor()
    cursor.execute(f"PRAGMA busy_timeout = {BUSY_TIMEOUT_MS}")
    cursor.execute("PRAGMA journal_mode = WAL")
    cursor.execute("PRAGMA synchronous = FULL")
    cursor.execute("PRAGMA foreign_keys = ON")
    cursor.close()
