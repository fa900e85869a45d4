"""Writers of one SQLite file that wait for each other commit together."""

from __future__ import annotations

import sqlite3
import threading
from collections.abc import Callable, Iterator
from concurrent.futures import Future, ThreadPoolExecutor
from contextlib import contextmanager
from functools import partial
from pathlib import Path

import pytest
from sqlalchemy import Connection, Engine, create_engine, event
from sqlalchemy.exc import IntegrityError

from bot.ledger import together
from bot.ledger.together import LostError, Together

PATIENCE_S = 60.0
PAUSE = threading.Event()


class Desk:
    """A file that several write to, who can be held up."""

    def __init__(self, file: Path) -> None:
        self.file = file
        self.engine: Engine = create_engine(f"sqlite:///{file}")
        event.listen(self.engine, "connect", _prepare)
        with self.engine.begin() as connection:
            connection.exec_driver_sql("CREATE TABLE word (said TEXT UNIQUE)")
        self.commits = 0
        event.listen(self.engine, "commit", self._count)
        self.together = Together(self.engine)
        self.pool = ThreadPoolExecutor(8)
        self._to_come: list[Callable[[], None]] = []
        self._come: list[Future[None]] = []

    def _count(self, _connection: Connection) -> None:
        self.commits += 1

    @contextmanager
    def part(self) -> Iterator[Connection]:
        """A part in which the next of those in turn comes, and waits."""
        with self.together.part() as connection:
            if self._to_come:
                self._come.append(self.pool.submit(self._to_come.pop(0)))
                self._until_waiting(1)
            yield connection

    def write(self, word: str) -> None:
        with self.part() as connection:
            connection.exec_driver_sql("INSERT INTO word VALUES (?)", (word,))

    def on_disk(self) -> set[str]:
        """What another process would find."""
        with sqlite3.connect(self.file) as other:
            return {said for (said,) in other.execute("SELECT said FROM word")}

    def write_in_turn(self, *acts: Callable[[], None]) -> list[Future[None]]:
        """Have each of them wait for its turn while the one before it has its own."""
        self._to_come = list(acts[1:])
        with self.together._turn:
            self._come = [self.pool.submit(acts[0])]
        for _ in range(2000):
            if len(self._come) == len(acts):
                return self._come
            PAUSE.wait(0.005)
        raise AssertionError(f"Only {len(self._come)} of {len(acts)} had a turn")

    def _until_waiting(self, number: int) -> None:
        for _ in range(2000):
            if self.together._waiting == number:
                return
            PAUSE.wait(0.005)
        raise AssertionError(f"There are {self.together._waiting} waiting, and should be {number}")


def _prepare(connection: sqlite3.Connection, _record: object) -> None:
    connection.isolation_level = None
    connection.execute("PRAGMA journal_mode = WAL")


@pytest.fixture
def desk(tmp_path: Path) -> Iterator[Desk]:
    desk = Desk(tmp_path / "desk.sqlite")
    yield desk
    desk.pool.shutdown()
    desk.together.close()
    desk.engine.dispose()


def test_one_alone_commits_at_once(desk: Desk) -> None:
    desk.write("sap")
    assert desk.on_disk() == {"sap"}
    assert desk.commits == 1


def test_those_who_wait_commit_together(desk: Desk) -> None:
    for one in desk.write_in_turn(*(partial(desk.write, word) for word in "abcd")):
        one.result(PATIENCE_S)
    assert desk.on_disk() == set("abcd")
    assert desk.commits == 1


def test_nobody_goes_on_before_it_is_on_the_disk(desk: Desk) -> None:
    def is_there_afterwards(word: str) -> None:
        desk.write(word)
        assert word in desk.on_disk()

    for one in desk.write_in_turn(*(partial(is_there_afterwards, word) for word in "abcd")):
        one.result(PATIENCE_S)


def test_a_part_that_fails_is_undone_alone(desk: Desk) -> None:
    def fail() -> None:
        with desk.part() as connection:
            connection.exec_driver_sql("INSERT INTO word VALUES ('never')")
            raise ZeroDivisionError

    first, failing, last = desk.write_in_turn(
        partial(desk.write, "first"), fail, partial(desk.write, "last")
    )
    with pytest.raises(ZeroDivisionError):
        failing.result(PATIENCE_S)
    first.result(PATIENCE_S)
    last.result(PATIENCE_S)
    assert desk.on_disk() == {"first", "last"}


def test_who_is_refused_finds_what_was_in_the_way(desk: Desk) -> None:
    def write_the_same() -> None:
        with pytest.raises(IntegrityError):
            desk.write("same")
        assert "same" in desk.on_disk()

    for one in desk.write_in_turn(
        partial(desk.write, "same"), write_the_same, partial(desk.write, "last")
    ):
        one.result(PATIENCE_S)


def test_a_transaction_that_breaks_is_told_to_all_of_it(desk: Desk) -> None:
    def break_it() -> None:
        with desk.part() as connection:
            # What SQLite does by itself when the disk is full.
            connection.exec_driver_sql("ROLLBACK")
            raise OSError("The disk is full")

    lost, broken, later = desk.write_in_turn(
        partial(desk.write, "lost"), break_it, partial(desk.write, "later")
    )
    with pytest.raises(LostError):
        lost.result(PATIENCE_S)
    with pytest.raises(LostError) as told:
        broken.result(PATIENCE_S)
    assert isinstance(told.value.__context__, OSError)
    later.result(PATIENCE_S)
    assert desk.on_disk() == {"later"}


def test_a_commit_that_fails_is_told_and_the_next_begins_afresh(desk: Desk) -> None:
    def fail(_connection: Connection) -> None:
        event.remove(desk.engine, "commit", fail)
        raise OSError("The disk is full")

    event.listen(desk.engine, "commit", fail)
    with pytest.raises(LostError) as told:
        desk.write("lost")
    assert isinstance(told.value.__context__, OSError)
    desk.write("kept")
    assert desk.on_disk() == {"kept"}


def test_a_group_does_not_grow_for_ever(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(together, "MOST_TOGETHER", 2)
    for one in desk.write_in_turn(*(partial(desk.write, word) for word in "abcd")):
        one.result(PATIENCE_S)
    assert desk.commits == 2


def test_who_is_let_down_by_the_next_commits_by_itself(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The one that waited for its turn was told to stop."""
    monkeypatch.setattr(together, "PATIENCE_S", 0.05)
    desk.together._waiting += 1
    desk.write("sap")
    assert desk.on_disk() == {"sap"}
