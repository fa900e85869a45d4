"""The US National Weather Service's own habits."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

import pytest

from bot.weather.errors import CellMovedError, NotCoveredError, TryLaterError
from bot.weather.forecast import Forecast
from tests.weather.conftest import BUSH, NOW, Asking, Opener
from tests.weather.loopback import Answer, Asked
from tests.weather.peers import NwsPeer, at, changed, fixture

THIS_HOUR = at("2027-03-08T10:00")
PEER = NwsPeer()


@pytest.fixture
def nws(opened: Opener) -> Asking:
    return opened(PEER)


def with_layers(**layers: list[tuple[str, float | None]]) -> Any:
    """The fixture with only these layers: (validTime, C)."""
    body = PEER.body([], NOW - timedelta(hours=1))
    for layer, values in layers.items():
        body["properties"][layer]["values"] = [
            {"validTime": valid_time, "value": celsius} for valid_time, celsius in values
        ]
    return body


def read(nws: Asking, body: Any) -> Forecast:
    nws.service.script = PEER.script(Answer(body))
    return nws.forecast()


def test_merged_hours_are_told_apart_again(nws: Asking) -> None:
    forecast = read(
        nws,
        with_layers(
            temperature=[
                ("2027-03-08T10:00:00+00:00/PT3H", 1.0),
                ("2027-03-08T13:00:00+00:00/P1DT6H", -2.0),
            ]
        ),
    )
    assert len(forecast.hours) == 33
    assert [round(hour.temp_f, 1) for hour in forecast.hours[:4]] == [33.8, 33.8, 33.8, 28.4]


def test_a_span_that_begins_within_an_hour_gives_the_whole_hours_after(nws: Asking) -> None:
    forecast = read(nws, with_layers(temperature=[("2027-03-08T10:30:00+00:00/PT2H30M", 1.0)]))
    assert [hour.start_utc for hour in forecast.hours] == [
        at("2027-03-08T11:00"),
        at("2027-03-08T12:00"),
    ]


def test_the_forecasters_high_and_low_are_reached(nws: Asking) -> None:
    """Hours of 1 C, a high of 4 C among them and a low of -3 C."""
    forecast = read(
        nws,
        with_layers(
            temperature=[("2027-03-08T10:00:00+00:00/PT40H", 1.0)],
            maxTemperature=[("2027-03-08T12:00:00+00:00/PT13H", 4.0)],
            minTemperature=[("2027-03-09T00:00:00+00:00/PT14H", -3.0)],
        ),
    )
    temps = [hour.temp_f for hour in forecast.hours]
    assert max(temps) == pytest.approx(39.2)
    assert min(temps) == pytest.approx(26.6)


def test_a_low_of_a_night_partly_gone_is_left_out(nws: Asking) -> None:
    forecast = read(
        nws,
        with_layers(
            temperature=[("2027-03-08T10:00:00+00:00/PT40H", 1.0)],
            minTemperature=[("2027-03-08T00:00:00+00:00/PT14H", -9.0)],
        ),
    )
    assert min(hour.temp_f for hour in forecast.hours) == pytest.approx(33.8)


def test_a_high_of_a_day_cut_short_is_left_out(nws: Asking) -> None:
    """It may have been reached before the grid begins."""
    forecast = read(
        nws,
        with_layers(
            temperature=[("2027-03-08T10:00:00+00:00/PT40H", 1.0)],
            maxTemperature=[("2027-03-08T10:00:00+00:00/PT4H", 9.0)],
        ),
    )
    assert max(hour.temp_f for hour in forecast.hours) == pytest.approx(33.8)


def test_fahrenheit_layers_are_read_too(nws: Asking) -> None:
    body = with_layers(temperature=[("2027-03-08T10:00:00+00:00/PT5H", 20.0)])
    body["properties"]["temperature"]["uom"] = "wmoUnit:degF"
    assert read(nws, body).hours[0].temp_f == 20.0


def test_the_unit_may_stand_under_its_other_name(nws: Asking) -> None:
    body = with_layers(temperature=[("2027-03-08T10:00:00+00:00/PT5H", 0.0)])
    temperature = body["properties"]["temperature"]
    temperature["unitCode"] = temperature.pop("uom")
    assert read(nws, body).hours[0].temp_f == 32.0


def test_a_unit_not_known_is_not_guessed(nws: Asking) -> None:
    body = with_layers(temperature=[("2027-03-08T10:00:00+00:00/PT5H", 273.0)])
    body["properties"]["temperature"]["uom"] = "wmoUnit:K"
    with pytest.raises(TryLaterError, match="wmoUnit:K"):
        read(nws, body)


@pytest.mark.parametrize("layer", ["maxTemperature", "minTemperature", "pressure", "elevation"])
def test_a_missing_layer_does_no_harm(nws: Asking, layer: str) -> None:
    body = fixture("nws_gridpoint.json")
    del body["properties"][layer]
    assert len(read(nws, body).hours) == 168


def test_without_a_temperature_layer_there_is_no_forecast(nws: Asking) -> None:
    body = fixture("nws_gridpoint.json")
    del body["properties"]["temperature"]
    with pytest.raises(TryLaterError, match="no temperatures"):
        read(nws, body)


def test_a_grid_whose_valid_times_have_passed_is_stale(nws: Asking) -> None:
    body = changed(
        fixture("nws_gridpoint.json"),
        ["properties", "validTimes"],
        "2027-02-26T05:00:00+00:00/P7D",
    )
    with pytest.raises(TryLaterError, match="too old"):
        read(nws, body)


def test_a_stale_grid_is_asked_for_once_more_past_the_cache(nws: Asking) -> None:
    stale = changed(
        fixture("nws_gridpoint.json"), ["properties", "updateTime"], "2027-02-20T02:50:40+00:00"
    )
    left = [Answer(stale, headers={"Cache-Control": "max-age=600"}), Answer(PEER.week())]

    def script(asked: Asked) -> Answer:
        return left.pop(0) if PEER.is_forecast(asked) else Answer(fixture("nws_points.json"))

    nws.service.script = script
    assert nws.forecast().issued_utc == at("2027-03-08T09:17")
    assert nws.service.asked[-1].headers["cache-control"] == "no-cache"


@pytest.mark.parametrize("problem", ["nws_problem_marine.json", "nws_problem_invalid_point.json"])
def test_a_cell_that_is_no_more_is_told_as_moved(nws: Asking, problem: str) -> None:
    nws.service.script = PEER.script(Answer(fixture(problem), status=404))
    with pytest.raises(CellMovedError, match="404"):
        nws.forecast()


def test_a_point_without_a_grid_is_not_covered(nws: Asking) -> None:
    points = changed(fixture("nws_points.json"), ["properties", "gridX"], None)
    nws.service.script = lambda asked: Answer(points)
    with pytest.raises(NotCoveredError, match="no forecast grid"):
        nws.source.locate(BUSH)


def test_grid_numbers_may_come_as_text(nws: Asking) -> None:
    points = changed(fixture("nws_points.json"), ["properties", "gridX"], "12")
    nws.service.script = lambda asked: Answer(points)
    assert nws.source.locate(BUSH).key == "INV/12,34"


def test_grid_number_zero_is_a_number(nws: Asking) -> None:
    points = changed(fixture("nws_points.json"), ["properties", "gridX"], 0)
    nws.service.script = lambda asked: Answer(points)
    assert nws.source.locate(BUSH).key == "INV/0,34"


def test_points_are_asked_with_short_numbers(nws: Asking) -> None:
    nws.service.script = lambda asked: Answer(fixture("nws_points.json"))
    nws.source.locate(BUSH)
    assert nws.service.asked[0].path == "/points/44.0512,-72.9534"
    assert nws.service.asked[0].headers["accept"] == "application/geo+json"
