"""The ledger on both databases."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from bot.ledger import Ledger
from tests.ledger.desk import Desk


@pytest.fixture
def ledger(store_url: str) -> Iterator[Ledger]:
    """An empty ledger; a test that takes it runs on SQLite and on PostgreSQL."""
    opened = Ledger.open(store_url)
    yield opened
    opened.close()


@pytest.fixture
def desk(ledger: Ledger) -> Desk:
    """An empty ledger and somebody to write in it."""
    return Desk(ledger)


@pytest.fixture
def sqlite_url(tmp_path: Path) -> str:
    """The URL of a SQLite store in a file."""
    return f"sqlite:///{tmp_path / 'desk.sqlite'}"


@pytest.fixture
def sqlite_ledger(sqlite_url: str) -> Iterator[Ledger]:
    """An empty ledger on SQLite alone."""
    opened = Ledger.open(sqlite_url)
    yield opened
    opened.close()


@pytest.fixture
def sqlite_desk(sqlite_ledger: Ledger) -> Desk:
    """An empty ledger on SQLite, and somebody to write in it."""
    return Desk(sqlite_ledger)
