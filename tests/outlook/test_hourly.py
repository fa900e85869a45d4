"""Hours made whole."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest

from bot.reckoning.hourly import Hour, whole_hours

MIDNIGHT = datetime.fromisoformat("2027-03-01")


def at(hour: float, temp_f: float) -> Hour:
    return Hour(MIDNIGHT + timedelta(hours=hour), temp_f)


def test_readings_within_an_hour_are_averaged() -> None:
    assert whole_hours([at(0, 30.0), at(0.5, 34.0)]) == [at(0, 32.0)]


def test_one_missing_hour_is_bridged_between_its_neighbours() -> None:
    bridged = whole_hours([at(0, 30), at(1, 31), at(3, 33), at(4, 34)])
    assert [hour.at_local.hour for hour in bridged] == [0, 1, 2, 3, 4]
    assert bridged[2].temp_f == pytest.approx(32.0)


def test_a_gap_of_eight_hours_stays_open() -> None:
    assert whole_hours([at(0, 30), at(8, 30)]) == [at(0, 30), at(8, 30)]


def test_a_six_hour_gap_is_filled_hour_by_hour() -> None:
    assert len(whole_hours([at(0, 30), at(6, 36)])) == 7


def test_a_low_between_two_six_hourly_readings_is_not_cut_off() -> None:
    night = whole_hours([at(0, 40), at(6, 31), at(12, 31), at(18, 40)])
    assert min(hour.temp_f for hour in night) < 30.5


def test_a_bridge_never_leaves_its_ends_by_more_than_three_degrees() -> None:
    wild = whole_hours([at(0, 90), at(1, 30), at(7, 30), at(8, 90)])
    assert min(hour.temp_f for hour in wild) >= 27


def test_readings_are_kept_where_they_are_known() -> None:
    known = [at(0, 20), at(3, 41.5), at(4, 12)]
    assert set(known) <= set(whole_hours(known))


def test_an_hour_with_a_zone_is_refused() -> None:
    with pytest.raises(ValueError, match="must be a wall clock time"):
        Hour(datetime(2027, 3, 1, tzinfo=UTC), 30.0)


@pytest.mark.parametrize("temp_f", [float("nan"), float("inf"), 140.0, -90.0])
def test_a_temperature_that_cannot_be_is_refused(temp_f: float) -> None:
    with pytest.raises(ValueError, match=r"temp_f is .* wanted -80 to 135 F"):
        Hour(MIDNIGHT, temp_f)
