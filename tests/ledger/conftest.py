"""The ledger on both databases."""

from __future__ import annotations

from collections.abc import Iterator

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
