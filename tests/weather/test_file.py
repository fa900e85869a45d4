"""Weather from a file of hours."""

from __future__ import annotations

from datetime import timedelta

import pytest

from bot.reckoning.hours_csv import UnreadableHoursError
from bot.weather.errors import NotCoveredError
from bot.weather.file import FileWeather
from bot.weather.forecast import Forecast, Place, local_hours
from tests.weather.peers import FIXTURES, at

VERMONT = Place(44.05, -72.95, zone="America/New_York")
WEEK = (FIXTURES / "week.csv").read_text().splitlines()


def forecast_at(lines: list[str], now: str, place: Place = VERMONT) -> Forecast:
    weather = FileWeather(lines)
    return weather.forecast(place, weather.locate(place), at(now))


def hourly(first_day: str, days: int) -> list[str]:
    start = at(f"{first_day}T00:00").replace(tzinfo=None)
    rows = [f"{(start + timedelta(hours=n)).isoformat()},{n % 50}" for n in range(24 * days)]
    return ["time_local,temp_f", *rows]


def test_the_wall_clock_of_the_place_counts() -> None:
    forecast = forecast_at(WEEK, "2027-03-08T10:30")
    assert forecast.hours[0].start_utc == at("2027-03-08T05:00")
    pacific = Place(45, -122, zone="America/Los_Angeles")
    assert forecast_at(WEEK, "2027-03-08T10:30", pacific).hours[0].start_utc == at(
        "2027-03-08T08:00"
    )


def test_a_place_without_a_zone_has_the_file_s() -> None:
    weather = FileWeather(WEEK, zone="America/Chicago")
    assert weather.locate(Place(44, -90)).zone == "America/Chicago"


def test_the_next_seven_days_are_the_forecast_and_no_more() -> None:
    forecast = forecast_at(hourly("2027-02-01", 40), "2027-02-10T12:00")
    assert forecast.ends_utc == at("2027-02-17T12:00")


def test_the_hours_before_are_known_too() -> None:
    forecast = forecast_at(hourly("2027-02-01", 40), "2027-02-20T12:00")
    assert forecast.hours[0].start_utc == at("2027-02-01T05:00")


def test_it_is_as_new_as_the_moment() -> None:
    assert forecast_at(WEEK, "2027-03-09T11:00").issued_utc == at("2027-03-09T11:00")


def test_past_the_end_of_the_file_there_is_no_forecast() -> None:
    with pytest.raises(NotCoveredError, match="no hours from 2027-03-20"):
        forecast_at(WEEK, "2027-03-20T12:00")


def test_before_the_file_begins_its_first_days_lie_ahead() -> None:
    assert forecast_at(WEEK, "2027-03-05T12:00").hours[0].start_utc == at("2027-03-08T05:00")


def test_long_before_the_file_begins_there_is_no_forecast() -> None:
    with pytest.raises(NotCoveredError):
        forecast_at(WEEK, "2027-02-01T12:00")


def test_the_march_change_of_clocks_leaves_no_gap() -> None:
    starts = [hour.start_utc for hour in forecast_at(WEEK, "2027-03-13T12:00").hours]
    assert len(starts) == 168
    assert len(set(starts)) == 168
    assert starts[-1] - starts[0] == timedelta(hours=167)


def test_a_file_that_has_the_hour_march_leaves_out_is_read_all_the_same() -> None:
    forecast = forecast_at(hourly("2027-03-13", 3), "2027-03-13T12:00")
    assert len(forecast.hours) == 71


def test_the_hour_november_has_twice_is_two_hours() -> None:
    lines = [
        "time_local,temp_f",
        "2027-11-07T00:00,30",
        "2027-11-07T01:00,31",
        "2027-11-07T01:00,32",
        "2027-11-07T02:00,33",
    ]
    hours = forecast_at(lines, "2027-11-07T04:30").hours
    assert [hour.temp_f for hour in hours] == [30, 31, 32, 33]
    assert hours[-1].start_utc - hours[0].start_utc == timedelta(hours=3)
    assert [hour.at_local.hour for hour in local_hours(hours, "America/New_York")] == [0, 1, 1, 2]


def test_a_file_that_cannot_be_read_is_refused_at_once() -> None:
    with pytest.raises(UnreadableHoursError):
        FileWeather(["nonsense"])
