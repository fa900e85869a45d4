"""The finish point by the forecast's air, where nobody boiled water today; it says so."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

from bot.outdoors import Weather
from bot.reckoning.finish import finish_f, station_inhg, water_boils_f
from bot.weather import Known, Place
from tests.mornings.stage import RUN, Season, weather_of

HEIGHT_M, SEA_LEVEL_INHG = 400.0, 29.6
VERMONT_BRIX = 66.9


class WithAir:
    """Weather that tells the height of its ground and the pressure of its air."""

    def __init__(self, weather: Weather, height_m: float | None, inhg: float | None) -> None:
        self._weather, self._height_m, self._inhg = weather, height_m, inhg

    def known(self, place: Place, now_utc: datetime) -> Known | None:
        """The same, with air."""
        found = self._weather.known(place, now_utc)
        assert found is not None
        hours = tuple(replace(hour, sea_level_inhg=self._inhg) for hour in found.hours)
        forecast = replace(found.forecast, source="nws", elevation_m=self._height_m)
        return replace(found, forecast=forecast, hours=hours)

    def area(self, place: Place, now_utc: datetime) -> str:
        """That of the weather beneath."""
        return self._weather.area(place, now_utc)


def season(height_m: float | None = HEIGHT_M, inhg: float | None = SEA_LEVEL_INHG) -> Season:
    made = Season(WithAir(weather_of([RUN] * 9), height_m, inhg))
    made.settle()
    return made


def draw() -> str:
    water_f = water_boils_f(station_inhg(SEA_LEVEL_INHG, HEIGHT_M / 0.3048))
    return f"{finish_f(water_f, VERMONT_BRIX):.1f}F"


def test_the_forecasts_air_gives_the_draw_and_is_named() -> None:
    said = season().text("when is it syrup?", "2027-03-02T09:00")
    assert said.startswith("By the forecast's air pressure water boils near")
    assert draw() in said
    assert "boil plain water today" in said


def test_water_boiled_today_goes_before_the_forecast() -> None:
    made = season()
    made.text("water boils at 210.4", "2027-03-02T08:00")
    said = made.text("when is it syrup?", "2027-03-02T09:00")
    assert said.startswith("Water boiled at 210.4F for you")


def test_the_forecast_goes_before_water_boiled_another_day() -> None:
    made = season()
    made.text("water boils at 210.4", "2027-03-02T08:00")
    said = made.text("when is it syrup?", "2027-03-05T09:00")
    assert said.startswith("By the forecast's air pressure")


def test_a_forecast_without_pressure_does_not_outdo_water_boiled_another_day() -> None:
    made = season(inhg=None)
    made.text("water boils at 210.4", "2027-03-02T08:00")
    assert made.text("when is it syrup?", "2027-03-05T09:00").startswith("Water boiled at 210.4F")


def test_a_forecast_with_the_height_alone_says_so() -> None:
    said = season(inhg=None).text("when is it syrup?", "2027-03-02T09:00")
    assert said.startswith("By the forecast's height water boils near")
    assert "a degree either way by the weather" in said


def test_a_forecast_without_air_leaves_the_rule() -> None:
    said = season(None, None).text("when is it syrup?", "2027-03-02T09:00")
    assert said.startswith("Boil plain water with your thermometer")


def test_a_pan_is_judged_by_the_forecasts_air_and_says_so() -> None:
    said = season().text("pan at 216", "2027-03-02T09:00")
    assert draw() in said
    assert "By the forecast's air" in said
