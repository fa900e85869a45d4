"""The US National Weather Service, api.weather.gov: raw gridpoint forecasts, 2.5 km cells, edited
by forecasters. United States and territories only; free for any purpose, no key.

Two requests: /points tells the cell of a place (asked again daily, and when a cell has moved:
offices redefine their grids without notice), /gridpoints tells the cell's hours. Equal hours come
merged ("PT3H"), a value may be null, a layer may be missing, and an old grid comes with status 200:
`updateTime` and `validTimes` are checked against now.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime, timedelta
from typing import Any

from bot.units import factor
from bot.weather.errors import (
    CellMovedError,
    NotCoveredError,
    StaleError,
    TryLaterError,
)
from bot.weather.fetching import Fetcher
from bot.weather.forecast import ONE_HOUR, Cell, Forecast, Hour, Place, temp_f_of, utc
from bot.weather.shaping import reaching

BASE_URL = "https://api.weather.gov"
GEOJSON = "application/geo+json"
OLDEST = timedelta(hours=24)
"""Offices update their grids several times a day; one not touched for a day is stuck."""

WHOLE_DAY_OR_NIGHT = timedelta(hours=12)
"""Highs come for 13 hours of day, lows for 14 of night."""

_DURATION = re.compile(r"P(?:(?P<d>\d+)D)?(?:T(?:(?P<h>\d+)H)?(?:(?P<m>\d+)M)?)?")
_PRESSURE_UNITS = {"wmoUnit:hPa": "hectopascal", "wmoUnit:Pa": "pascal", "wmoUnit:inHg": "inHg"}

Span = tuple[datetime, datetime, float]
"""(start, end, value): UTC, the end not included."""


class Nws:
    """The US National Weather Service."""

    name = "nws"
    attribution = "Forecast: US National Weather Service"
    keep_for = timedelta(minutes=45)
    asks_where = True

    def __init__(self, fetcher: Fetcher, base_url: str = BASE_URL) -> None:
        self._fetcher = fetcher
        self._base_url = base_url.rstrip("/")

    def locate(self, place: Place) -> Cell:
        """The grid cell of a place. Four decimals at most: more are answered with a redirect."""
        point = f"{_short(place.latitude)},{_short(place.longitude)}"
        found = self._fetcher.json(f"{self._base_url}/points/{point}", accept=GEOJSON)
        properties = _properties(found)
        grid = [properties.get(name) for name in ("gridId", "gridX", "gridY")]
        if any(part is None for part in grid):
            raise NotCoveredError(f"nws: no forecast grid at {point}")
        zone = properties.get("timeZone")
        return Cell("{}/{},{}".format(*grid), zone if isinstance(zone, str) else None)

    def forecast(self, place: Place, cell: Cell, now_utc: datetime) -> Forecast:
        """The hours of a grid cell. An old grid is asked for once more, past the cache."""
        del place  # the cell says it all
        try:
            return self._read(cell, now_utc, past_cache=False)
        except StaleError:
            return self._read(cell, now_utc, past_cache=True)

    def _read(self, cell: Cell, now_utc: datetime, *, past_cache: bool) -> Forecast:
        url = f"{self._base_url}/gridpoints/{cell.key}"
        try:
            answer = self._fetcher.json(url, accept=GEOJSON, past_cache=past_cache)
        except NotCoveredError as error:
            raise CellMovedError(str(error)) from error
        properties = _properties(answer)
        try:
            return _parsed(properties, cell, now_utc)
        except (KeyError, TypeError, ValueError, AttributeError) as error:
            raise TryLaterError(f"nws: cell {cell.key} cannot be read: {error!r}") from error


def _parsed(properties: Mapping[str, Any], cell: Cell, now_utc: datetime) -> Forecast:
    issued_utc = utc(properties["updateTime"])
    _, valid_until, _ = _span(properties["validTimes"], 0.0)
    if now_utc - issued_utc > OLDEST or valid_until <= now_utc:
        raise StaleError(
            f"nws: cell {cell.key} was issued {issued_utc:%Y-%m-%d %H:%M} UTC and is too old"
        )
    pressure = dict(_hourly(_pressures_inhg(properties)))
    hours = [
        Hour(start, temp_f, pressure.get(start))
        for start, temp_f in sorted(dict(_hourly(_temps_f(properties, "temperature"))).items())
    ]
    if not hours or hours[-1].start_utc < now_utc:
        raise TryLaterError(f"nws: cell {cell.key} has no temperatures from now on")
    for start, end, high_f in _whole(_temps_f(properties, "maxTemperature")):
        hours = reaching(hours, start, end, high_f=high_f)
    for start, end, low_f in _whole(_temps_f(properties, "minTemperature")):
        hours = reaching(hours, start, end, low_f=low_f)
    height = properties.get("elevation") or {}
    return Forecast(
        source=Nws.name,
        cell=cell,
        issued_utc=issued_utc,
        hours=tuple(hours),
        elevation_m=height.get("value") if str(height.get("unitCode", "")).endswith(":m") else None,
        attribution=Nws.attribution,
    )


def _whole(spans: Sequence[Span]) -> Iterator[Span]:
    """The days and nights not yet cut short by the grid's beginning: the high of a day of which
    four hours are left may be of the hours gone by."""
    return (span for span in spans if span[1] - span[0] >= WHOLE_DAY_OR_NIGHT)


def _temps_f(properties: Mapping[str, Any], layer: str) -> list[Span]:
    """A temperature layer in F; a missing layer and null values give nothing.

    The unit's key is `uom` here and `unitCode` elsewhere. Raises ValueError for a unit not known.
    """
    found = properties.get(layer) or {}
    unit = str(found.get("uom") or found.get("unitCode") or "")
    spans = _spans(found)
    if not spans or unit.endswith("degF"):
        return spans
    if not unit.endswith("degC"):
        raise ValueError(f"{layer} is in {unit!r}, wanted degC or degF")
    return [(start, end, temp_f_of(value)) for start, end, value in spans]


def _pressures_inhg(properties: Mapping[str, Any]) -> list[Span]:
    """The pressure layer, which most offices leave empty. A unit not known gives nothing: pressure
    is a help to have, not a reason to refuse the forecast."""
    found = properties.get("pressure") or {}
    unit = _PRESSURE_UNITS.get(str(found.get("uom") or found.get("unitCode") or ""))
    if unit is None:
        return []
    return [(start, end, value * factor(unit, "inHg")) for start, end, value in _spans(found)]


def _spans(layer: Mapping[str, Any]) -> list[Span]:
    return [
        _span(each["validTime"], float(each["value"]))
        for each in layer.get("values") or ()
        if each.get("value") is not None
    ]


def _span(valid_time: str, value: float) -> Span:
    """ "2027-03-08T06:00:00+00:00/PT3H" and its value as a span."""
    start_text, _, duration = valid_time.partition("/")
    parts = _DURATION.fullmatch(duration)
    if parts is None or not any(parts.groups()):
        raise ValueError(f"the duration {duration!r} is none")
    days, hours, minutes = (int(parts[name] or 0) for name in ("d", "h", "m"))
    start = utc(start_text)
    return start, start + timedelta(days=days, hours=hours, minutes=minutes), value


def _hourly(spans: Sequence[Span]) -> Iterator[tuple[datetime, float]]:
    """Every hour that begins within a span, with the span's value."""
    for start, end, value in spans:
        hour = start.replace(minute=0, second=0, microsecond=0)
        if hour < start:
            hour += ONE_HOUR
        while hour < end:
            yield hour, value
            hour += ONE_HOUR


def _properties(answer: Mapping[str, Any]) -> Mapping[str, Any]:
    properties = answer.get("properties")
    if not isinstance(properties, dict):
        raise TryLaterError("nws: the answer has no properties")
    return properties


def _short(degrees: float) -> str:
    """Degrees with four decimals at most and no zeros at the end, as the service wants them."""
    return f"{degrees:.4f}".rstrip("0").rstrip(".")
