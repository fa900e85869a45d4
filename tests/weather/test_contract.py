"""What every weather service must keep to, run over each of them against a real loopback server."""

from __future__ import annotations

from collections import Counter
from datetime import UTC, datetime, timedelta
from itertools import chain, pairwise
from zoneinfo import ZoneInfo

import pytest

from bot.reckoning.hours_csv import read_hours
from bot.reckoning.outlook import outlook_by_day
from bot.weather.errors import (
    NotCoveredError,
    RefusedError,
    StaleError,
    TryLaterError,
)
from bot.weather.forecast import Place, local_hours
from bot.weather.services import SERVICES
from tests.weather.conftest import BUSH, CONTACT, NOW, Asking
from tests.weather.loopback import Answer, Asked
from tests.weather.peers import FIXTURES, PEERS, at, fixture, steady

ISSUED = NOW - timedelta(hours=2)
THIS_HOUR = at("2027-03-08T10:00")
GOOD = steady(THIS_HOUR, 48)


def test_every_service_has_a_peer() -> None:
    assert {service.name for service in SERVICES} == {peer.name for peer in PEERS}


def test_the_invented_week_is_found_as_it_was_told(asking: Asking) -> None:
    asking.service.script = asking.peer.script(Answer(asking.peer.week()))
    forecast = asking.forecast()
    told = {
        hour.at_local.replace(tzinfo=ZoneInfo("America/New_York")).astimezone(UTC): hour.temp_f
        for hour in read_hours((FIXTURES / "week.csv").read_text().splitlines())
    }
    found = {hour.start_utc: hour.temp_f for hour in forecast.hours}
    first_two_days = [start for start in sorted(told) if start < at("2027-03-10T05:00")]
    assert {start: found[start] for start in first_two_days} == pytest.approx(
        {start: told[start] for start in first_two_days}, abs=0.1
    )
    assert forecast.source == asking.peer.name
    assert forecast.issued_utc == at("2027-03-08T09:17")
    assert forecast.attribution
    assert forecast.elevation_m in (352, 360)


def test_the_invented_week_has_the_same_lows_highs_and_run_days(asking: Asking) -> None:
    """Worked out by hand from the lows and highs that the fixtures' README lists."""
    asking.service.script = asking.peer.script(Answer(asking.peer.week()))
    days = outlook_by_day(local_hours(asking.forecast().hours, "America/New_York"))[:6]
    assert [(round(day.low_f), round(day.high_f)) for day in days] == [
        (-4, 20),
        (0, 26),
        (18, 36),
        (24, 43),
        (27, 45),
        (33, 52),
    ]
    assert [day.outlook for day in days[:2]] == ["none", "none"]
    assert all(day.outlook in ("likely", "big") for day in days[3:])


def test_hours_come_in_order_an_hour_apart_and_in_utc(asking: Asking) -> None:
    asking.service.script = asking.peer.script(Answer(asking.peer.week()))
    starts = [hour.start_utc for hour in asking.forecast().hours]
    assert all(b - a == timedelta(hours=1) for a, b in pairwise(starts))
    assert all(start.tzinfo is UTC for start in starts)


@pytest.mark.parametrize(("celsius", "temp_f"), [(0.0, 32.0), (0, 32.0), (-17.777777, 0.0)])
def test_zero_degrees_is_a_temperature(asking: Asking, celsius: float, temp_f: float) -> None:
    body = asking.peer.body(steady(THIS_HOUR, 24, celsius), ISSUED)
    asking.service.script = asking.peer.script(Answer(body))
    temps = [hour.temp_f for hour in asking.forecast().hours]
    assert len(temps) == 24
    assert temps == pytest.approx([temp_f] * 24, abs=0.001)


def test_a_null_leaves_its_hours_out_and_the_others_in(asking: Asking) -> None:
    holed = [(start, None if 5 <= n < 15 else c) for n, (start, c) in enumerate(GOOD)]
    asking.service.script = asking.peer.script(Answer(asking.peer.body(holed, ISSUED)))
    assert len(asking.forecast().hours) == 38


def test_nothing_but_nulls_is_no_forecast(asking: Asking) -> None:
    nulls = [(start, None) for start, _ in GOOD]
    asking.service.script = asking.peer.script(Answer(asking.peer.body(nulls, ISSUED)))
    with pytest.raises(TryLaterError, match="no temperatures"):
        asking.forecast()


def test_a_stale_answer_with_status_200_is_refused(asking: Asking) -> None:
    old = asking.peer.body(steady(THIS_HOUR, 48), NOW - timedelta(days=2))
    asking.service.script = asking.peer.script(Answer(old))
    with pytest.raises(StaleError, match="too old"):
        asking.forecast()


def test_a_forecast_that_ended_before_now_is_refused(asking: Asking) -> None:
    past = asking.peer.body(steady(NOW - timedelta(hours=20), 12), ISSUED)
    asking.service.script = asking.peer.script(Answer(past))
    with pytest.raises(TryLaterError):
        asking.forecast()


def test_a_short_forecast_ends_where_it_ends(asking: Asking) -> None:
    short = asking.peer.body(steady(THIS_HOUR, 6), ISSUED)
    asking.service.script = asking.peer.script(Answer(short))
    assert asking.forecast().ends_utc == THIS_HOUR + timedelta(hours=6)


def answers_in_turn(asking: Asking, *answers: Answer) -> None:
    """The forecast's answers one after another, the last for ever."""
    left = list(answers)

    def script(asked: Asked) -> Answer:
        if not asking.peer.is_forecast(asked):
            return asking.peer.script(answers[-1])(asked)
        return left.pop(0) if len(left) > 1 else left[0]

    asking.service.script = script


def test_500_twice_then_good_is_good(asking: Asking) -> None:
    trouble = Answer(fixture("nws_problem_unexpected.json"), status=500)
    answers_in_turn(asking, trouble, trouble, Answer(asking.peer.body(GOOD, ISSUED)))
    assert len(asking.forecast().hours) == 48
    assert asking.forecast_requests() == 3


def test_500_for_ever_is_given_up_after_three_tries(asking: Asking) -> None:
    answers_in_turn(asking, Answer(fixture("nws_problem_unexpected.json"), status=500))
    with pytest.raises(TryLaterError, match="500 Unexpected Problem"):
        asking.forecast()
    assert asking.forecast_requests() == 3


def test_pauses_between_tries_grow_and_differ(asking: Asking) -> None:
    answers_in_turn(asking, Answer({}, status=502))
    with pytest.raises(TryLaterError):
        asking.forecast()
    pauses = [pause for pause in asking.pauses if pause > 0.1]
    assert len(pauses) == 2
    assert 0.25 <= pauses[0] <= 0.5
    assert 1.0 <= pauses[1] <= 2.0


def test_an_expired_grid_503_is_passing(asking: Asking) -> None:
    answers_in_turn(asking, Answer(fixture("nws_problem_grid_expired.json"), status=503))
    with pytest.raises(TryLaterError, match="503 Forecast Grid Expired"):
        asking.forecast()


def test_too_many_requests_429_is_passing(asking: Asking) -> None:
    answers_in_turn(asking, Answer({"title": "Too Many Requests"}, status=429))
    with pytest.raises(TryLaterError, match="429"):
        asking.forecast()


def test_a_service_that_dawdles_is_given_up(asking: Asking) -> None:
    answers_in_turn(asking, Answer(asking.peer.body(GOOD, ISSUED), seconds=0.7))
    with pytest.raises(TryLaterError, match="ReadTimeout"):
        asking.forecast()


def test_one_slow_answer_is_made_good_by_the_next(asking: Asking) -> None:
    good = Answer(asking.peer.body(GOOD, ISSUED))
    slow = Answer(good.body, seconds=0.7)
    answers_in_turn(asking, slow, good)
    assert len(asking.forecast().hours) == 48


def test_a_place_not_covered_404_is_told_apart(asking: Asking) -> None:
    asking.service.script = lambda asked: asking.peer.nowhere
    with pytest.raises(NotCoveredError, match="404"):
        asking.forecast()
    assert len(asking.service.asked) == 1


def test_a_refusal_403_is_not_tried_again(asking: Asking) -> None:
    answers_in_turn(asking, Answer({"title": "Forbidden"}, status=403))
    with pytest.raises(RefusedError, match="403 Forbidden"):
        asking.forecast()
    assert asking.forecast_requests() == 1


def test_every_request_says_who_we_are_and_whom_to_write_to(asking: Asking) -> None:
    def only_the_known(asked: Asked) -> Answer:
        if CONTACT not in asked.headers.get("user-agent", ""):
            return Answer({"title": "Forbidden"}, status=403)
        return asking.peer.script(Answer(asking.peer.body(GOOD, ISSUED)))(asked)

    asking.service.script = only_the_known
    assert len(asking.forecast().hours) == 48
    assert all(a.headers["user-agent"] == f"Pailtext ({CONTACT})" for a in asking.service.asked)


def test_no_request_has_more_than_four_decimals(asking: Asking) -> None:
    asking.service.script = asking.peer.script(Answer(asking.peer.body(GOOD, ISSUED)))
    asking.forecast(Place(44.051234567, -72.953456789, 352.77))
    for asked in asking.service.asked:
        numbers = [*asked.path.split("/")[-1].split(","), *chain(*asked.query.values())]
        assert all(len(number.partition(".")[2]) <= 4 for number in numbers)


def test_no_request_carries_a_parameter_the_service_does_not_know(asking: Asking) -> None:
    """The US service answers 400 to any; cache busters are one way to get there."""
    asking.service.script = asking.peer.script(Answer(asking.peer.body(GOOD, ISSUED)))
    asking.forecast()
    assert {name for asked in asking.service.asked for name in asked.query} <= {
        "lat",
        "lon",
        "altitude",
    }


@pytest.mark.parametrize(
    "body",
    [
        b"",
        b"<html>maintenance</html>",
        b'{"properties": {"timeseries": [',
        b"[1, 2]",
        b"null",
        b"{}",
        b'{"properties": null}',
        b'{"properties": {}}',
        b'{"properties": {"updateTime": "soon", "meta": {"updated_at": "soon"}}}',
        b"\xff\xfe\x00",
    ],
)
def test_an_answer_that_cannot_be_read_is_passing(asking: Asking, body: bytes) -> None:
    answers_in_turn(asking, Answer(body))
    with pytest.raises(TryLaterError):
        asking.forecast()


@pytest.mark.parametrize("celsius", [float("nan"), 9999.0, -9999.0])
def test_a_temperature_that_cannot_be_spoils_the_answer(asking: Asking, celsius: float) -> None:
    hours = [*GOOD[:10], (GOOD[10][0], celsius), *GOOD[11:]]
    answers_in_turn(asking, Answer(asking.peer.body(hours, ISSUED)))
    with pytest.raises(TryLaterError, match="cannot be read"):
        asking.forecast()


def test_a_fresh_answer_is_not_asked_for_twice(asking: Asking) -> None:
    answers_in_turn(
        asking,
        Answer(asking.peer.body(GOOD, ISSUED), headers={"Cache-Control": "public, max-age=600"}),
    )
    assert asking.forecast() == asking.forecast()
    assert asking.forecast_requests() == 1


def test_an_answer_with_expires_is_kept_until_then(asking: Asking) -> None:
    headers = {"Expires": (datetime.now(UTC) + timedelta(minutes=30)).strftime(HTTP_DATE)}
    answers_in_turn(asking, Answer(asking.peer.body(GOOD, ISSUED), headers=headers))
    asking.forecast()
    asking.forecast()
    assert asking.forecast_requests() == 1


def test_an_old_answer_is_asked_for_with_if_modified_since_and_304_gives_it_again(
    asking: Asking,
) -> None:
    modified = "Mon, 08 Mar 2027 08:30:00 GMT"
    first = Answer(
        asking.peer.body(GOOD, ISSUED),
        headers={
            "Last-Modified": modified,
            "Expires": (datetime.now(UTC) - timedelta(minutes=1)).strftime(HTTP_DATE),
        },
    )
    answers_in_turn(asking, first, Answer(status=304, headers={"Last-Modified": modified}))
    assert asking.forecast() == asking.forecast()
    asked = [each for each in asking.service.asked if asking.peer.is_forecast(each)]
    assert "if-modified-since" not in asked[0].headers
    assert asked[1].headers["if-modified-since"] == modified


def test_a_deprecated_version_203_is_used_and_logged(
    asking: Asking, capsys: pytest.CaptureFixture[str]
) -> None:
    answers_in_turn(asking, Answer(asking.peer.body(GOOD, ISSUED), status=203))
    assert len(asking.forecast().hours) == 48
    assert "weather_deprecated" in capsys.readouterr().out


def test_a_redirect_is_followed(asking: Asking) -> None:
    good = asking.peer.script(Answer(asking.peer.body(GOOD, ISSUED)))

    def script(asked: Asked) -> Answer:
        if "/moved" not in asked.path:
            query = "&".join(f"{name}={values[0]}" for name, values in asked.query.items())
            return Answer(status=301, headers={"Location": f"/moved{asked.path}?{query}"})
        return good(Asked(asked.path.removeprefix("/moved"), asked.query, asked.headers))

    asking.service.script = script
    assert len(asking.forecast().hours) == 48


def test_redirects_without_end_are_refused(asking: Asking) -> None:
    asking.service.script = lambda asked: Answer(status=302, headers={"Location": asked.path})
    with pytest.raises(RefusedError, match="redirects for ever"):
        asking.forecast()


@pytest.mark.parametrize(
    ("changes_on", "start", "hours_of_day"),
    [("2027-03-14", "2027-03-14T05:00", 23), ("2026-11-01", "2026-11-01T04:00", 25)],
)
def test_the_days_when_clocks_change_have_all_their_hours(
    asking: Asking, changes_on: str, start: str, hours_of_day: int
) -> None:
    midnight = at(start)
    now = midnight + timedelta(hours=1)
    body = asking.peer.body(steady(midnight, 60), midnight)
    asking.service.script = asking.peer.script(Answer(body))
    forecast = asking.source.forecast(BUSH, asking.source.locate(BUSH), now)
    local = local_hours(forecast.hours, "America/New_York")
    by_day = Counter(hour.at_local.date().isoformat() for hour in local)
    assert by_day[changes_on] == hours_of_day
    assert outlook_by_day(local)[0].complete


def test_places_in_one_cell_get_the_same_cell(asking: Asking) -> None:
    asking.service.script = asking.peer.script(Answer(asking.peer.week()))
    near = Place(BUSH.latitude + 0.0005, BUSH.longitude, BUSH.elevation_m, BUSH.zone)
    assert asking.source.locate(BUSH) == asking.source.locate(near)


def test_the_place_s_zone_comes_along(asking: Asking) -> None:
    asking.service.script = asking.peer.script(Answer(asking.peer.week()))
    assert asking.source.locate(BUSH).zone == "America/New_York"


def test_sea_level_pressure_comes_along(asking: Asking) -> None:
    """1013.25 hPa is 29.92 inHg (US Standard Atmosphere 1976)."""
    asking.service.script = asking.peer.script(Answer(asking.peer.week()))
    assert asking.forecast().hours[0].sea_level_inhg == pytest.approx(29.92, abs=0.005)


HTTP_DATE = "%a, %d %b %Y %H:%M:%S GMT"
