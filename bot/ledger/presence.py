"""Which workers live on a store, told by locks that the system lets go when their holder dies.

On SQLite there is one worker, under one name, so that the next one finishes what it began: a lock
on a file beside the store. On PostgreSQL there are many, each under a name of its own: a session
lock of the server, on a connection that is held for nothing else. (So not through a proxy that
pools by the transaction.)
"""

from __future__ import annotations

import fcntl
import os
import socket
import threading
from contextlib import suppress
from pathlib import Path
from typing import IO, Any, Protocol
from uuid import uuid4

from sqlalchemy import Connection, create_engine, text
from sqlalchemy.engine import make_url
from sqlalchemy.exc import DBAPIError
from sqlalchemy.pool import NullPool

ONLY_WORKER = "pailtext"


class NoRoomError(Exception):
    """There is no room for this worker at the store. The message says why, and what to do."""


class Presence(Protocol):
    """A worker's sign of life. name: unique among all that live."""

    @property
    def name(self) -> str: ...

    def begin(self) -> None:
        """Show it. Raises NoRoomError."""
        ...

    def renew(self) -> None:
        """See that it still shows, and show it again where it was lost."""
        ...

    def is_gone(self, name: str) -> bool:
        """True when no worker of this name lives any more."""
        ...

    def end(self) -> None:
        """Take it away."""
        ...


def presence_on(database_url: str) -> Presence:
    """The sign of life of a worker on this store. Raises NoRoomError for a store in memory."""
    url = make_url(database_url)
    if url.get_backend_name() == "postgresql":
        return PostgresPresence(database_url)
    if url.database in (None, "", ":memory:"):
        raise NoRoomError("A store in memory has no room for a worker: give it a file.")
    return FilePresence(Path(f"{url.database}.worker"))


class FilePresence:
    """The one worker on a SQLite store: it holds a lock on the file at `path`."""

    name = ONLY_WORKER

    def __init__(self, path: Path) -> None:
        self._path = path
        self._file: IO[str] | None = None

    def begin(self) -> None:
        """Lock the file. Raises NoRoomError."""
        file = self._path.open("a")
        try:
            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            file.close()
            raise NoRoomError(
                f"Another worker holds {self._path}: on SQLite there is room for one."
                " Stop it, or run `serve --no-worker` beside it."
            ) from None
        self._file = file

    def renew(self) -> None:
        """The lock of a file is never lost."""

    def is_gone(self, name: str) -> bool:
        """True for any other: there is only this one."""
        return name != self.name

    def end(self) -> None:
        """Let the lock go; the file stays, since to remove it could let two in."""
        if self._file is not None:
            self._file.close()
            self._file = None


class PostgresPresence:
    """One of many workers on a PostgreSQL store."""

    def __init__(self, database_url: str) -> None:
        url = make_url(database_url).set(drivername="postgresql+psycopg")
        self._engine = create_engine(url, poolclass=NullPool, isolation_level="AUTOCOMMIT")
        self._connection: Connection | None = None
        self._lock = threading.Lock()
        self.name = f"{socket.gethostname()}-{os.getpid()}-{uuid4().hex[:8]}"

    def begin(self) -> None:
        """Take the lock of this name; nobody else asks for it but to see whether it is held."""
        with self._lock:
            self._begin()

    def renew(self) -> None:
        """Connect again where the connection, and so the lock, was lost."""
        with self._lock:
            try:
                self._ask("SELECT 1")
            except DBAPIError:
                self._close()
                self._begin()

    def is_gone(self, name: str) -> bool:
        """True when nobody holds the lock of that name."""
        with self._lock:
            if name == self.name:
                return False
            if not self._ask(f"SELECT pg_try_advisory_lock({_KEY})", name=name):
                return False
            self._ask(f"SELECT pg_advisory_unlock({_KEY})", name=name)
            return True

    def end(self) -> None:
        """Let the lock go, at once: a closed connection lets it go too, but some time later."""
        with self._lock:
            if self._connection is not None:
                with suppress(DBAPIError):
                    self._ask(f"SELECT pg_advisory_unlock({_KEY})", name=self.name)
            self._close()
        self._engine.dispose()

    def _begin(self) -> None:
        self._connection = self._engine.connect()
        self._ask(f"SELECT pg_advisory_lock({_KEY})", name=self.name)

    def _close(self) -> None:
        if self._connection is not None:
            self._connection.invalidate()
            self._connection.close()
            self._connection = None

    def _ask(self, sentence: str, **given: str) -> Any:
        assert self._connection is not None, "begin comes first"
        return self._connection.execute(text(sentence), given).scalar()


_KEY = "hashtext('pailtext:' || :name)"
