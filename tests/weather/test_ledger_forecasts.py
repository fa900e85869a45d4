"""What weather remembers in the ledger, like `MemoryStore`: on both databases, and by others."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

import pytest

from bot.forecasts import LedgerForecasts
from bot.ledger import Ledger
from bot.weather import Store
from bot.weather.forecast import Cell
from bot.weather.store import Kept, Located, MemoryStore
from tests.weather.test_store import FIRST, kept

PLACE = "44.0500,-72.9500"


@pytest.fixture(params=["memory", "sqlite", "postgresql"])
def store(request: pytest.FixtureRequest) -> Iterator[Store]:
    """Every store there is."""
    if request.param == "memory":
        yield MemoryStore()
        return
    if request.param == "sqlite":
        url = f"sqlite:///{request.getfixturevalue('tmp_path') / 'a.sqlite3'}"
    else:
        url = request.getfixturevalue("postgres_url")
    ledger = Ledger.open(url)
    yield LedgerForecasts(ledger)
    ledger.close()


def test_a_kept_forecast_is_found_by_source_and_cell(store: Store) -> None:
    store.keep(kept("nws"))
    assert store.last_good("nws", "INV/12,34") == kept("nws")
    assert store.last_good("metno", "INV/12,34") is None
    assert store.last_good("nws", "INV/12,35") is None


def test_a_newer_forecast_takes_the_place_of_the_older(store: Store) -> None:
    store.keep(kept())
    newer = Kept(kept().forecast, FIRST + timedelta(hours=1))
    store.keep(newer)
    assert store.last_good("nws", "INV/12,34") == newer


@pytest.mark.parametrize(
    "cell", [Cell("INV/12,34", "America/New_York"), Cell("INV/12,34"), None], ids=str
)
def test_a_noted_cell_is_found_by_source_and_place(store: Store, cell: Cell | None) -> None:
    store.note_located("nws", PLACE, Located(cell, FIRST))
    assert store.located("nws", PLACE) == Located(cell, FIRST)
    assert store.located("metno", PLACE) is None
    assert store.located("nws", "44.0500,-72.9501") is None


def test_a_cell_that_moved_takes_the_place_of_the_older(store: Store) -> None:
    store.note_located("nws", PLACE, Located(Cell("INV/12,34"), FIRST))
    moved = Located(Cell("INV/12,35"), FIRST + timedelta(days=1))
    store.note_located("nws", PLACE, moved)
    assert store.located("nws", PLACE) == moved


def test_what_one_process_kept_another_finds(store_url: str) -> None:
    first, second = Ledger.open(store_url), Ledger.open(store_url)
    LedgerForecasts(first).keep(kept())
    assert LedgerForecasts(second).last_good("nws", "INV/12,34") == kept()
    first.close()
    second.close()
