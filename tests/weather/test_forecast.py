"""Places and hours."""

from __future__ import annotations

from datetime import datetime

import pytest

from bot.weather.forecast import Hour, Place, local_hours, pressure_at, temp_f_of, utc
from tests.weather.peers import at


@pytest.mark.parametrize(
    ("latitude", "longitude", "elevation_m"),
    [(91, 0, None), (float("nan"), 0, None), (44, -181, None), (44, -72, 20_000)],
)
def test_a_place_not_on_earth_is_refused(
    latitude: float, longitude: float, elevation_m: float | None
) -> None:
    with pytest.raises(ValueError, match="wanted"):
        Place(latitude, longitude, elevation_m)


def test_an_hour_not_in_utc_is_refused() -> None:
    with pytest.raises(ValueError, match="wanted UTC"):
        Hour(datetime.fromisoformat("2027-03-08T10:00-05:00"), 30.0)
    with pytest.raises(ValueError, match="wanted UTC"):
        Hour(datetime.fromisoformat("2027-03-08T10:00"), 30.0)


@pytest.mark.parametrize("temp_f", [float("nan"), 1000.0, -200.0])
def test_an_hour_of_a_temperature_that_cannot_be_is_refused(temp_f: float) -> None:
    with pytest.raises(ValueError, match="temp_f is"):
        Hour(at("2027-03-08T10:00"), temp_f)


def test_zero_celsius_is_32_and_no_hair_less() -> None:
    assert temp_f_of(0.0) == 32.0


@pytest.mark.parametrize(
    ("zone", "wall_clock"),
    [
        ("America/St_Johns", "2027-03-08T06:30"),
        ("America/New_York", "2027-03-08T05:00"),
        ("America/Anchorage", "2027-03-08T01:00"),
    ],
)
def test_hours_are_told_on_the_wall_clock_of_the_zone(zone: str, wall_clock: str) -> None:
    hours = local_hours([Hour(at("2027-03-08T10:00"), 30.0)], zone)
    assert hours[0].at_local == datetime.fromisoformat(wall_clock)


def test_the_pressure_of_the_hour_is_found() -> None:
    hours = [Hour(at("2027-03-08T10:00"), 30.0, 29.8), Hour(at("2027-03-08T11:00"), 30.0)]
    assert pressure_at(hours, at("2027-03-08T10:59")) == 29.8
    assert pressure_at(hours, at("2027-03-08T11:00")) is None
    assert pressure_at(hours, at("2027-03-08T12:00")) is None


def test_a_time_without_an_offset_is_not_guessed() -> None:
    with pytest.raises(ValueError, match="has no offset"):
        utc("2027-03-08T10:00")
