"""Invented weather."""

from __future__ import annotations

from datetime import timedelta
from itertools import pairwise

import pytest

from bot.reckoning.outlook import outlook_by_day
from bot.weather.forecast import Forecast, Place, local_hours
from bot.weather.invented import InventedWeather
from tests.weather.peers import at

VERMONT = Place(44.05, -72.95, zone="America/New_York")


def invented(now: str, place: Place = VERMONT) -> Forecast:
    weather = InventedWeather()
    return weather.forecast(place, weather.locate(place), at(now))


def test_it_says_that_it_is_invented() -> None:
    forecast = invented("2027-03-08T11:00")
    assert forecast.source == "invented"
    assert "not a forecast" in forecast.attribution


def test_the_same_place_and_moment_have_the_same_weather() -> None:
    assert invented("2027-03-08T11:00") == invented("2027-03-08T11:00")


def test_tomorrow_turns_out_as_it_was_foretold() -> None:
    today = {h.start_utc: h.temp_f for h in invented("2027-03-08T11:00").hours}
    tomorrow = {h.start_utc: h.temp_f for h in invented("2027-03-09T11:00").hours}
    both = today.keys() & tomorrow.keys()
    assert len(both) > 300
    assert all(today[start] == tomorrow[start] for start in both)


def test_far_places_have_other_weather() -> None:
    ohio = Place(41.0, -82.0, zone="America/New_York")
    assert invented("2027-03-08T11:00").hours != invented("2027-03-08T11:00", ohio).hours


def test_it_reaches_seven_days_ahead_and_knows_the_nights_before() -> None:
    forecast = invented("2027-03-08T11:00")
    assert forecast.ends_utc == at("2027-03-15T11:00")
    assert forecast.hours[0].start_utc == at("2027-02-26T00:00")


def test_hours_follow_each_other_without_a_leap() -> None:
    hours = invented("2027-03-08T11:00").hours
    for before, after in pairwise(hours):
        assert after.start_utc - before.start_utc == timedelta(hours=1)
        assert abs(after.temp_f - before.temp_f) < 5


@pytest.mark.parametrize("year", [2026, 2027, 2028])
def test_a_spring_has_run_days_and_idle_ones_to_talk_about(year: int) -> None:
    grades = {
        day.outlook
        for week in ("02-20", "02-27", "03-06", "03-13", "03-20", "03-27")
        for day in outlook_by_day(
            local_hours(invented(f"{year}-{week}T11:00").hours, "America/New_York")
        )
    }
    assert grades & {"likely", "big"}
    assert grades & {"none", "possible"}


def test_summer_is_warmer_than_winter() -> None:
    def mean_f(now: str) -> float:
        hours = invented(now).hours
        return sum(hour.temp_f for hour in hours) / len(hours)

    assert mean_f("2027-07-20T11:00") > 60 > 35 > mean_f("2027-01-20T11:00")
