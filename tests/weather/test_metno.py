"""MET Norway's own habits."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

import pytest

from bot.weather.errors import TryLaterError
from bot.weather.forecast import Forecast, Place
from tests.weather.conftest import BUSH, NOW, Asking, Opener
from tests.weather.loopback import Answer
from tests.weather.peers import MetNoPeer, at, changed, fixture

PEER = MetNoPeer()


@pytest.fixture
def metno(opened: Opener) -> Asking:
    return opened(PEER)


def read(metno: Asking, body: Any) -> Forecast:
    metno.service.script = PEER.script(Answer(body))
    return metno.forecast()


def six_hourly(*steps: tuple[str, float, float | None, float | None]) -> Any:
    """(time, C, low C, high C) as a body."""
    body = PEER.body([(at(time), celsius) for time, celsius, _, _ in steps], NOW)
    for entry, (_, _, low_c, high_c) in zip(body["properties"]["timeseries"], steps, strict=True):
        if low_c is not None or high_c is not None:
            entry["data"]["next_6_hours"] = {
                "details": {"air_temperature_min": low_c, "air_temperature_max": high_c}
            }
    return body


def test_six_hourly_steps_become_hours(metno: Asking) -> None:
    forecast = read(
        metno,
        six_hourly(
            ("2027-03-08T12:00", -5.0, None, None),
            ("2027-03-08T18:00", 4.0, None, None),
            ("2027-03-09T00:00", 0.0, None, None),
        ),
    )
    assert len(forecast.hours) == 13
    assert [round(hour.temp_f, 1) for hour in forecast.hours[::6]] == [23.0, 39.2, 32.0]


def test_a_low_between_two_instants_is_not_lost(metno: Asking) -> None:
    """0.5 and 1 C at the ends, -2.5 C between them: a freeze the instants do not show."""
    forecast = read(
        metno,
        six_hourly(
            ("2027-03-08T06:00", 0.5, -2.5, 1.0),
            ("2027-03-08T12:00", 1.0, None, None),
        ),
    )
    assert min(hour.temp_f for hour in forecast.hours) == pytest.approx(27.5)
    assert max(hour.temp_f for hour in forecast.hours) == pytest.approx(33.8)


def test_a_high_between_two_instants_is_not_lost(metno: Asking) -> None:
    forecast = read(
        metno,
        six_hourly(("2027-03-08T12:00", 1.0, 1.0, 6.0), ("2027-03-08T18:00", 3.0, None, None)),
    )
    assert max(hour.temp_f for hour in forecast.hours) == pytest.approx(42.8)


def test_a_low_and_a_high_between_two_instants_are_both_kept(metno: Asking) -> None:
    forecast = read(
        metno,
        six_hourly(("2027-03-08T12:00", -2.0, -4.0, 6.0), ("2027-03-08T18:00", 4.0, None, None)),
    )
    temps = [hour.temp_f for hour in forecast.hours]
    assert min(temps) == pytest.approx(24.8)
    assert max(temps) == pytest.approx(42.8)
    assert temps.index(min(temps)) < temps.index(max(temps))


def test_a_low_of_zero_celsius_counts(metno: Asking) -> None:
    forecast = read(
        metno,
        six_hourly(("2027-03-08T12:00", 2.0, 0, 3.0), ("2027-03-08T18:00", 3.0, None, None)),
    )
    assert min(hour.temp_f for hour in forecast.hours) == pytest.approx(32.0)


def test_the_six_hours_of_an_hourly_step_do_not_bend_the_hours(metno: Asking) -> None:
    forecast = read(
        metno,
        six_hourly(
            ("2027-03-08T10:00", 1.0, -9.0, 9.0),
            ("2027-03-08T11:00", 1.0, -9.0, 9.0),
            ("2027-03-08T12:00", 1.0, None, None),
        ),
    )
    assert {round(hour.temp_f, 1) for hour in forecast.hours} == {33.8}


def test_a_gap_of_twelve_hours_stays_open(metno: Asking) -> None:
    forecast = read(
        metno,
        six_hourly(("2027-03-08T12:00", 1.0, 0.0, 2.0), ("2027-03-09T00:00", 2.0, None, None)),
    )
    assert len(forecast.hours) == 2


def test_pressure_runs_smoothly_between_steps(metno: Asking) -> None:
    hours = read(metno, PEER.week()).hours
    pressures = [hour.sea_level_inhg for hour in hours]
    known = [pressure for pressure in pressures if pressure is not None]
    assert len(known) == len(pressures)
    assert known == sorted(known)


def test_the_height_is_sent_in_whole_metres(metno: Asking) -> None:
    read(metno, PEER.week())
    assert metno.service.asked[0].query == {
        "lat": ["44.05"],
        "lon": ["-72.95"],
        "altitude": ["360"],
    }


def test_without_a_height_none_is_sent(metno: Asking) -> None:
    metno.service.script = PEER.script(Answer(PEER.week()))
    metno.forecast(Place(44.0, -72.0))
    assert metno.service.asked[0].query == {"lat": ["44"], "lon": ["-72"]}


def test_a_height_of_zero_is_sent(metno: Asking) -> None:
    metno.service.script = PEER.script(Answer(PEER.week()))
    metno.forecast(Place(44.0, -72.0, 0.0))
    assert metno.service.asked[0].query["altitude"] == ["0"]


def test_another_unit_is_not_guessed(metno: Asking) -> None:
    kelvin = changed(
        fixture("metno_complete.json"), ["properties", "meta", "units", "air_temperature"], "kelvin"
    )
    with pytest.raises(TryLaterError, match="kelvin"):
        read(metno, kelvin)


def test_without_any_of_the_coming_hours_the_instants_are_enough(metno: Asking) -> None:
    body = PEER.week()
    for entry in body["properties"]["timeseries"]:
        entry["data"].pop("next_6_hours", None)
        entry["data"].pop("next_1_hours", None)
    assert len(read(metno, body).hours) >= 160


def test_the_series_may_begin_before_now(metno: Asking) -> None:
    forecast = read(metno, PEER.week())
    assert forecast.hours[0].start_utc < NOW - timedelta(hours=1)
    assert forecast.cell.zone == BUSH.zone
