"""The newest forecast that can be had: sources in turn, the last good one kept with its age.

For a place, in this order, source by source: a forecast fetched a short while ago is used again
(so a cell is fetched once, however many people live in it); else the source is asked; if it fails,
its last good forecast is used while it is young; else the next source has its turn. If all fail,
the newest forecast that still covers the coming hours is told with its age; if there is none, none.
"""

from __future__ import annotations

import threading
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import TypeVar

import structlog

from bot.weather.errors import (
    CellMovedError,
    NotCoveredError,
    RefusedError,
    StaleError,
    TryLaterError,
    WeatherError,
)
from bot.weather.forecast import Cell, Forecast, Hour, Place, Source
from bot.weather.store import Kept, Located, Store

LOCATED_FOR = timedelta(hours=24)
"""Cells are redefined without notice: ask again daily."""

YOUNG = timedelta(hours=6)
"""After a failure, a forecast no older than this is better than another source's: a morning's
news still holds by noon, and both services issue anew about as often."""

REMEMBERED = timedelta(days=10)
"""Past hours kept from earlier forecasts: the outlook asks how the last nights froze."""

FAILURES_BEFORE_REST = 3
REST = timedelta(minutes=5)
"""A source that failed so often in a row is left alone so long: in an outage each of thousands of
cells would else wait for its timeouts."""

Answer = TypeVar("Answer")

log = structlog.get_logger("pailtext.weather")


@dataclass(frozen=True, slots=True)
class Known:
    """What is known of a place's weather. hours: UTC, in order, first those gone by; age: since
    the forecast was issued; failures: what the sources said that did not give one."""

    forecast: Forecast
    hours: tuple[Hour, ...]
    fetched_utc: datetime
    age: timedelta
    failures: tuple[str, ...]


class Latest:
    """Sources in order of preference over a store. Safe to use from several threads."""

    def __init__(self, sources: Sequence[Source], store: Store) -> None:
        if not sources:
            raise ValueError("no weather source given, wanted one at least")
        self._sources = tuple(sources)
        self._store = store
        self._lock = threading.Lock()
        self._turns: dict[str, threading.Lock] = {}
        self._rests_until_utc: dict[str, datetime] = {}
        self._failures_in_a_row: dict[str, int] = {}

    def known(self, place: Place, now_utc: datetime) -> Known | None:
        """The newest weather for a place, or None if no source has any. Never raises a
        WeatherError: what the sources said stands in `failures` and in the log."""
        failures: list[str] = []
        older: list[Kept] = []
        for source in self._sources:
            try:
                kept = self._from_source(source, place, now_utc, older)
            except WeatherError as error:
                log.warning("weather_failed", source=source.name, error=str(error))
                failures.append(str(error))
            else:
                return _known(kept, now_utc, failures)
        useful = [kept for kept in older if kept.forecast.ends_utc > now_utc]
        if not useful:
            return None
        newest = max(useful, key=lambda kept: kept.forecast.issued_utc)
        return _known(newest, now_utc, failures)

    def area(self, place: Place, now_utc: datetime) -> str:
        """Names what shares its weather with a place: the cell of the first source that covers
        it; where none can say, the place itself. Never raises a WeatherError."""
        for source in self._sources:
            try:
                return _cell_name(source, self._cell(source, place, now_utc))
            except WeatherError as error:
                log.info("weather_no_cell", source=source.name, error=str(error))
        return place.key

    def _from_source(
        self, source: Source, place: Place, now_utc: datetime, older: list[Kept]
    ) -> Kept:
        """A new or young forecast of one source; a cell that has moved is looked for once."""
        cell = self._cell(source, place, now_utc)
        try:
            return self._of_cell(source, place, cell, now_utc, older)
        except CellMovedError:
            moved_to = self._located(source, place, now_utc)
            if moved_to == cell:
                raise
            return self._of_cell(source, place, moved_to, now_utc, older)

    def _of_cell(
        self, source: Source, place: Place, cell: Cell, now_utc: datetime, older: list[Kept]
    ) -> Kept:
        """The cell's forecast: kept a short while ago, else fetched, else kept and still young.

        Adds a last good one to `older`. Raises a WeatherError where there is none of the three.
        """
        cell_name = _cell_name(source, cell)
        with self._turn(cell_name):
            last = self._store.last_good(source.name, cell.key)
            if last is not None:
                if now_utc - last.fetched_utc < source.keep_for:
                    return last
                older.append(last)
            try:
                self._refuse_if_resting(cell_name, now_utc)
                forecast = self._asked(
                    source, now_utc, lambda: source.forecast(place, cell, now_utc)
                )
            except CellMovedError:
                raise
            except WeatherError as error:
                self._rest(cell_name, now_utc)
                if last is not None and _is_young(last, now_utc):
                    log.info("weather_kept_young", source=source.name, error=str(error))
                    return last
                raise
            with self._lock:
                self._failures_in_a_row[source.name] = 0
            kept = Kept(forecast, now_utc, _past(forecast, older))
            self._store.keep(kept)
            return kept

    def _cell(self, source: Source, place: Place, now_utc: datetime) -> Cell:
        """The place's cell: reckoned where that needs no request, else noted today, else asked
        for; an old note serves if asking fails."""
        if not source.asks_where:
            return source.locate(place)
        noted = self._store.located(source.name, place.key)
        if noted is not None and now_utc - noted.asked_utc < LOCATED_FOR:
            if noted.cell is None:
                raise NotCoveredError(f"{source.name}: does not cover {place.key}")
            return noted.cell
        try:
            return self._located(source, place, now_utc)
        except TryLaterError as error:
            if noted is None or noted.cell is None:
                raise
            log.info("weather_old_cell", source=source.name, error=str(error))
            return noted.cell

    def _located(self, source: Source, place: Place, now_utc: datetime) -> Cell:
        """Asks for the place's cell and notes it, or that there is none: asked once a day."""
        try:
            cell = self._asked(source, now_utc, lambda: source.locate(place))
        except NotCoveredError:
            self._store.note_located(source.name, place.key, Located(None, now_utc))
            raise
        self._store.note_located(source.name, place.key, Located(cell, now_utc))
        return cell

    def _asked(self, source: Source, now_utc: datetime, question: Callable[[], Answer]) -> Answer:
        """The source's answer. After three failures in a row, or a refusal, it is left alone a
        while; an old grid or a place not covered says nothing against the service."""
        self._refuse_if_resting(source.name, now_utc)
        try:
            return question()
        except (StaleError, NotCoveredError):
            raise
        except RefusedError as error:
            log.error("weather_refused", source=source.name, error=str(error))
            self._rest(source.name, now_utc)
            raise
        except WeatherError:
            with self._lock:
                failures = self._failures_in_a_row.get(source.name, 0) + 1
                self._failures_in_a_row[source.name] = failures
            if failures >= FAILURES_BEFORE_REST:
                self._rest(source.name, now_utc)
            raise

    def _rest(self, name: str, now_utc: datetime) -> None:
        with self._lock:
            self._rests_until_utc.setdefault(name, now_utc + REST)

    def _refuse_if_resting(self, name: str, now_utc: datetime) -> None:
        """Raises TryLaterError while the source or cell of that name is left alone."""
        with self._lock:
            until = self._rests_until_utc.get(name)
            if until is not None and now_utc >= until:
                del self._rests_until_utc[name]
                until = None
        if until is not None:
            raise TryLaterError(f"{name}: failed a moment ago, left alone until {until:%H:%M} UTC")

    def _turn(self, cell_name: str) -> threading.Lock:
        """One asks for a cell while the others wait for what it gets."""
        with self._lock:
            return self._turns.setdefault(cell_name, threading.Lock())


def _cell_name(source: Source, cell: Cell) -> str:
    return f"{source.name} {cell.key}"


def _is_young(kept: Kept, now_utc: datetime) -> bool:
    return now_utc - kept.forecast.issued_utc < YOUNG and kept.forecast.ends_utc > now_utc


def _known(kept: Kept, now_utc: datetime, failures: Sequence[str]) -> Known:
    return Known(
        forecast=kept.forecast,
        hours=kept.past + kept.forecast.hours,
        fetched_utc=kept.fetched_utc,
        age=max(timedelta(0), now_utc - kept.forecast.issued_utc),
        failures=tuple(failures),
    )


def _past(forecast: Forecast, older: Sequence[Kept]) -> tuple[Hour, ...]:
    """Hours before the forecast's first, each as the newest of the older ones told it."""
    first = forecast.hours[0].start_utc
    told: dict[datetime, Hour] = {}
    for kept in sorted(older, key=lambda each: each.forecast.issued_utc):
        told.update((hour.start_utc, hour) for hour in kept.past + kept.forecast.hours)
    return tuple(told[at] for at in sorted(told) if first - REMEMBERED <= at < first)
