"""MET Norway, api.met.no, Locationforecast 2.0 `complete`: the whole world, no key, CC BY 4.0.

Hourly for some 55 hours, then six-hourly to day nine; the low and the high of each six hours come
along and are used, since instants six hours apart miss them. Terms: say who we are and how to
reach us, not more than four decimals, nothing before `Expires`, If-Modified-Since with what it
said, under 20 requests a second, credit (https://api.met.no/doc/TermsOfService).
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime, timedelta
from typing import Any

from bot.units import factor
from bot.weather.errors import StaleError, TryLaterError
from bot.weather.fetching import Fetcher
from bot.weather.forecast import Cell, Forecast, Hour, Place, temp_f_of, utc
from bot.weather.shaping import Step, hours_of_steps

BASE_URL = "https://api.met.no/weatherapi/locationforecast/2.0"
OLDEST = timedelta(hours=24)
"""Outside the Nordic countries there are two runs a day; one a day old has missed both."""

CELL_DECIMALS = 2
"""About a kilometre: the model's own cells outside the Nordic countries have nine, and people of
one village then share one request."""

CELL_HEIGHT_M = 20
"""m. The service corrects temperature for height; 20 m are 0.2 F at the usual lapse (6.5 C a km,
ISO 2533 standard atmosphere)."""


class MetNo:
    """MET Norway."""

    name = "metno"
    attribution = "Forecast: MET Norway, CC BY 4.0"
    keep_for = timedelta(minutes=45)
    asks_where = False

    def __init__(self, fetcher: Fetcher, base_url: str = BASE_URL) -> None:
        self._fetcher = fetcher
        self._base_url = base_url.rstrip("/")

    def locate(self, place: Place) -> Cell:
        """The place rounded to a kilometre and 20 m of height: no request is needed."""
        latitude, longitude = (
            _short(round(degrees, CELL_DECIMALS)) for degrees in (place.latitude, place.longitude)
        )
        if place.elevation_m is None:
            return Cell(f"{latitude},{longitude}", place.zone)
        height_m = CELL_HEIGHT_M * round(place.elevation_m / CELL_HEIGHT_M)
        return Cell(f"{latitude},{longitude},{height_m}", place.zone)

    def forecast(self, place: Place, cell: Cell, now_utc: datetime) -> Forecast:
        """The hours for a cell, temperatures corrected for its height."""
        del place  # the cell says it all
        latitude, longitude, *height_m = cell.key.split(",")
        params = {"lat": latitude, "lon": longitude}
        if height_m:
            params["altitude"] = height_m[0]
        answer = self._fetcher.json(f"{self._base_url}/complete", params)
        try:
            return _parsed(answer, cell, now_utc)
        except (KeyError, TypeError, ValueError, AttributeError, IndexError) as error:
            raise TryLaterError(f"metno: the answer cannot be read: {error!r}") from error


def _parsed(answer: Mapping[str, Any], cell: Cell, now_utc: datetime) -> Forecast:
    properties = answer["properties"]
    issued_utc = utc(properties["meta"]["updated_at"])
    if now_utc - issued_utc > OLDEST:
        raise StaleError(f"metno: issued {issued_utc:%Y-%m-%d %H:%M} UTC, too old")
    units = properties["meta"]["units"]
    if units["air_temperature"] != "celsius":
        raise ValueError(f"air_temperature is in {units['air_temperature']!r}, wanted celsius")
    pressure_in_hpa = units.get("air_pressure_at_sea_level") == "hPa"
    steps = [
        step
        for each in properties["timeseries"]
        if (step := _step(each, pressure_in_hpa=pressure_in_hpa)) is not None
    ]
    hours = tuple(hours_of_steps(sorted(steps, key=lambda step: step.hour.start_utc)))
    if not hours or hours[-1].start_utc < now_utc:
        raise TryLaterError("metno: no temperatures from now on")
    heights = answer["geometry"]["coordinates"][2:]
    return Forecast(
        source=MetNo.name,
        cell=cell,
        issued_utc=issued_utc,
        hours=hours,
        elevation_m=float(heights[0]) if heights and heights[0] is not None else None,
        attribution=MetNo.attribution,
    )


def _step(each: Mapping[str, Any], *, pressure_in_hpa: bool) -> Step | None:
    """One entry of the series, or None where it has no temperature. Every `next_*` may be missing;
    the six hours' low and high are used only where the next instant is six hours off, which
    `hours_of_steps` sees."""
    details = each["data"]["instant"]["details"]
    temp_c = details.get("air_temperature")
    if temp_c is None:
        return None
    hpa = details.get("air_pressure_at_sea_level") if pressure_in_hpa else None
    following = (each["data"].get("next_6_hours") or {}).get("details") or {}
    low_c, high_c = (following.get(f"air_temperature_{end}") for end in ("min", "max"))
    return Step(
        Hour(
            utc(each["time"]),
            temp_f_of(float(temp_c)),
            None if hpa is None else float(hpa) * factor("hectopascal", "inHg"),
        ),
        low_f=None if low_c is None else temp_f_of(float(low_c)),
        high_f=None if high_c is None else temp_f_of(float(high_c)),
    )


def _short(degrees: float) -> str:
    """Degrees without zeros at the end."""
    return f"{degrees:.{CELL_DECIMALS}f}".rstrip("0").rstrip(".")
