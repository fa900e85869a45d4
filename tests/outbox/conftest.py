"""The outbox on both databases."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from bot.ledger import Ledger
from tests.outbox.post_office import Office


@pytest.fixture
def office(store_url: str) -> Iterator[Office]:
    """An empty store with an outbox; a test that takes it runs on SQLite and on PostgreSQL."""
    ledger = Ledger.open(store_url)
    yield Office(ledger)
    ledger.close()
