"""What can go wrong with a weather source, drawn by what the caller should do.

WeatherError
    TryLaterError      passing: down, slow, too busy, or its answer cannot be read
        StaleError     it answered, with an old forecast
    NotCoveredError    it will never have this place: ask another source
        CellMovedError this cell is no more: find the place's cell anew, then ask again
    RefusedError       our own fault (no contact, a wrong request): the host must act
"""

from __future__ import annotations


class WeatherError(Exception):
    """A source gave no forecast; the message names the source and what it said."""


class TryLaterError(WeatherError):
    """The source is down, slow, too busy, or its answer cannot be read: ask again later."""


class StaleError(TryLaterError):
    """The source answered with a forecast that is too old to be told."""


class NotCoveredError(WeatherError):
    """The place lies outside what this source covers: ask another."""


class CellMovedError(NotCoveredError):
    """The cell is no more, or now lies at sea: find the place's cell anew."""


class RefusedError(WeatherError):
    """The source refuses us: a missing contact, or a request that is wrong. The host must act."""
