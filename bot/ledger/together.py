"""Writers of one SQLite file, in turn, and one commit for all that waited.

A commit that is safe on the disk takes as long as it takes to write a few texts down, and
meanwhile nobody else can write. So who finds somebody waiting at the end of their own part leaves
the transaction open to the next, and the last commits for all. Nobody goes on before what they
wrote is on the disk. A part that fails is taken back alone; the others stand.
"""

from __future__ import annotations

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from sqlalchemy import Connection, Engine

# Parts in one commit at most: the first of them waits for the last (our own).
MOST_TOGETHER = 16
# So long a part waits for the next to commit before it sees to it itself: the next may have been
# told to stop while it waited for its turn.
PATIENCE_S = 2.0


class LostError(Exception):
    """The transaction broke as a whole: nothing that was written in it is kept."""


class _Group:
    """The parts of one transaction. `is_over`: it is committed, or `is_lost`."""

    def __init__(self, connection: Connection) -> None:
        self.connection = connection
        self.transaction = connection.begin()
        self.parts = 0
        self.is_lost = False
        self.is_over = threading.Event()
        connection.exec_driver_sql("BEGIN IMMEDIATE")

    @contextmanager
    def part(self) -> Iterator[None]:
        """What is written in the block is undone alone if it raises."""
        driver: Any = self.connection.connection.driver_connection
        self.parts += 1
        driver.execute("SAVEPOINT part")
        try:
            yield
            driver.execute("RELEASE part")
        except BaseException:
            # A full disk, for one, ends the whole transaction by itself.
            self.is_lost = not driver.in_transaction
            if not self.is_lost:
                driver.execute("ROLLBACK TO part")
                driver.execute("RELEASE part")
            raise

    def end(self) -> None:
        """Commit, and let all go on that wait for it."""
        try:
            if self.is_lost:
                self.transaction.rollback()
            else:
                self.transaction.commit()
        except BaseException:
            self.is_lost = True
            self.connection.invalidate()
            raise
        finally:
            self.is_over.set()


class Together:
    """The one connection that writes to a SQLite file. Safe in threads; a part must not be opened
    within another."""

    def __init__(self, engine: Engine) -> None:
        self._engine = engine
        self._turn = threading.Lock()
        self._counting = threading.Lock()
        self._waiting = 0
        self._connection: Connection | None = None
        self._group: _Group | None = None

    @contextmanager
    def part(self) -> Iterator[Connection]:
        """A part of a transaction: on the disk when the block is left; undone if it raises.

        Raises LostError when the transaction broke as a whole, with the reason as its context where
        this part was the one that broke it.
        """
        group: _Group | None = None
        try:
            with self._own_turn():
                group = self._joined()
                try:
                    with group.part():
                        yield group.connection
                finally:
                    if not self._waiting or group.is_lost or group.parts >= MOST_TOGETHER:
                        self._end(group)
        finally:
            # Who was refused waits too: what was in the way has to be there when they look.
            if group is not None:
                self._wait(group)

    def close(self) -> None:
        """Close the connection."""
        with self._turn:
            if self._connection is not None:
                self._connection.close()
                self._connection = None

    @contextmanager
    def _own_turn(self) -> Iterator[None]:
        with self._counting:
            self._waiting += 1
        try:
            self._turn.acquire()
        finally:
            with self._counting:
                self._waiting -= 1
        try:
            yield
        finally:
            self._turn.release()

    def _joined(self) -> _Group:
        """The group that was left open, else a new one."""
        if self._group is None:
            if self._connection is None or self._connection.invalidated:
                self._connection = self._engine.connect()
            try:
                self._group = _Group(self._connection)
            except BaseException:
                # Another process has been writing for too long. The next begins afresh.
                self._connection.close()
                self._connection = None
                raise
        return self._group

    def _end(self, group: _Group) -> None:
        self._group = None
        group.end()

    def _wait(self, group: _Group) -> None:
        while not group.is_over.wait(PATIENCE_S):
            with self._turn:
                if self._group is group:
                    self._end(group)
        if group.is_lost:
            raise LostError("The store could not commit what was written")
