"""What weather remembers, and as text."""

from __future__ import annotations

from datetime import timedelta

import pytest

from bot.weather.forecast import ONE_HOUR, Cell, Forecast, Hour
from bot.weather.store import Kept, Located, MemoryStore, kept_as_text, kept_from_text
from tests.weather.peers import at

FIRST = at("2027-03-08T10:00")


def kept(source: str = "nws", zone: str | None = "America/New_York") -> Kept:
    hours = (Hour(FIRST, 0.0, 29.92), Hour(FIRST + ONE_HOUR, 31.5, None))
    forecast = Forecast(source, Cell("INV/12,34", zone), FIRST, hours, 352.0, "invented")
    return Kept(forecast, FIRST + timedelta(minutes=3), (Hour(FIRST - ONE_HOUR, -4.0),))


@pytest.mark.parametrize("zone", ["America/New_York", None])
def test_a_kept_forecast_comes_back_from_text_unchanged(zone: str | None) -> None:
    assert kept_from_text(kept_as_text(kept(zone=zone))) == kept(zone=zone)


def test_text_that_is_no_kept_forecast_is_refused() -> None:
    with pytest.raises((KeyError, ValueError)):
        kept_from_text("{}")
    with pytest.raises(ValueError, match="is no hour"):
        kept_from_text(kept_as_text(kept()).replace("31.5", "null"))


def test_what_was_kept_is_found_by_source_and_cell() -> None:
    store = MemoryStore()
    store.keep(kept("nws"))
    assert store.last_good("nws", "INV/12,34") == kept("nws")
    assert store.last_good("metno", "INV/12,34") is None
    assert store.last_good("nws", "INV/12,35") is None


def test_a_newer_forecast_replaces_the_older() -> None:
    store = MemoryStore()
    store.keep(kept())
    newer = Kept(kept().forecast, FIRST + ONE_HOUR)
    store.keep(newer)
    assert store.last_good("nws", "INV/12,34") == newer


def test_a_place_s_cell_is_found_by_source_and_place() -> None:
    store = MemoryStore()
    located = Located(Cell("INV/12,34"), FIRST)
    store.note_located("nws", "44.0500,-72.9500", located)
    assert store.located("nws", "44.0500,-72.9500") == located
    assert store.located("metno", "44.0500,-72.9500") is None
