"""What weather remembers: each cell's last good forecast, and which cell a place lies in."""

from __future__ import annotations

import json
import threading
from dataclasses import dataclass
from datetime import datetime
from typing import Protocol

from bot.weather.forecast import Cell, Forecast, Hour, utc


@dataclass(frozen=True, slots=True)
class Kept:
    """A fetched forecast. fetched_utc: when; past: hours before its first, from the forecasts
    kept before it, in order: what is known of the nights gone by."""

    forecast: Forecast
    fetched_utc: datetime
    past: tuple[Hour, ...] = ()


@dataclass(frozen=True, slots=True)
class Located:
    """The cell that a source found for a place, None where it covers none there, and when it was
    asked."""

    cell: Cell | None
    asked_utc: datetime


class Store(Protocol):
    """Where they are kept. Newer replaces older; the two keys name one row each."""

    def last_good(self, source: str, cell_key: str) -> Kept | None: ...

    def keep(self, kept: Kept) -> None: ...

    def located(self, source: str, place_key: str) -> Located | None: ...

    def note_located(self, source: str, place_key: str, located: Located) -> None: ...


class MemoryStore:
    """Keeps them in this process. Safe to use from several threads."""

    def __init__(self) -> None:
        self._kept: dict[tuple[str, str], Kept] = {}
        self._located: dict[tuple[str, str], Located] = {}
        self._lock = threading.Lock()

    def last_good(self, source: str, cell_key: str) -> Kept | None:
        """The forecast kept for a cell, or None."""
        with self._lock:
            return self._kept.get((source, cell_key))

    def keep(self, kept: Kept) -> None:
        """Keeps a forecast in place of the cell's last one."""
        with self._lock:
            self._kept[kept.forecast.source, kept.forecast.cell.key] = kept

    def located(self, source: str, place_key: str) -> Located | None:
        """The cell noted for a place, or None."""
        with self._lock:
            return self._located.get((source, place_key))

    def note_located(self, source: str, place_key: str, located: Located) -> None:
        """Notes a place's cell."""
        with self._lock:
            self._located[source, place_key] = located


def kept_as_text(kept: Kept) -> str:
    """A kept forecast as JSON, for a store's text column; `kept_from_text` reads it back."""
    forecast = kept.forecast
    return json.dumps(
        {
            "source": forecast.source,
            "cell": forecast.cell.key,
            "zone": forecast.cell.zone,
            "issued_utc": forecast.issued_utc.isoformat(),
            "fetched_utc": kept.fetched_utc.isoformat(),
            "elevation_m": forecast.elevation_m,
            "attribution": forecast.attribution,
            "hours": [_hour_as_list(hour) for hour in forecast.hours],
            "past": [_hour_as_list(hour) for hour in kept.past],
        },
        separators=(",", ":"),
    )


def kept_from_text(text: str) -> Kept:
    """The kept forecast that `kept_as_text` wrote. Raises KeyError or ValueError for other text."""
    found = json.loads(text)
    return Kept(
        Forecast(
            source=found["source"],
            cell=Cell(found["cell"], found["zone"]),
            issued_utc=utc(found["issued_utc"]),
            hours=tuple(_hour_from_list(each) for each in found["hours"]),
            elevation_m=found["elevation_m"],
            attribution=found["attribution"],
        ),
        utc(found["fetched_utc"]),
        tuple(_hour_from_list(each) for each in found["past"]),
    )


def _hour_as_list(hour: Hour) -> list[str | float | None]:
    return [hour.start_utc.isoformat(), round(hour.temp_f, 2), hour.sea_level_inhg]


def _hour_from_list(found: list[str | float | None]) -> Hour:
    start, temp_f, sea_level_inhg = found
    if not isinstance(start, str) or not isinstance(temp_f, int | float):
        raise ValueError(f"{found!r} is no hour: wanted [time, F, inHg or null]")
    return Hour(
        utc(start),
        float(temp_f),
        float(sea_level_inhg) if isinstance(sea_level_inhg, int | float) else None,
    )
