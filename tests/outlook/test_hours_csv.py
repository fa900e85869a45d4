"""Hours read from CSV lines."""

from __future__ import annotations

from datetime import datetime

import pytest

from bot.reckoning.hourly import Hour
from bot.reckoning.hours_csv import UnreadableHoursError, read_hours

SIX_IN_THE_MORNING = datetime.fromisoformat("2027-03-01T06:00")


def test_a_line_gives_an_hour() -> None:
    lines = ["time_local,temp_f\n", "2027-03-01T06:00,0\n"]
    assert list(read_hours(lines)) == [Hour(SIX_IN_THE_MORNING, 0.0)]


def test_a_space_an_offset_and_seconds_are_read_as_wall_clock() -> None:
    lines = ["time_local,temp_f", "2027-03-01 06:00:00,31.5", "2027-03-01T07:00:00-05:00,32"]
    assert [hour.at_local.hour for hour in read_hours(lines)] == [6, 7]


def test_columns_may_stand_in_any_order_beside_others() -> None:
    lines = ["station,temp_f,time_local", "X1,28,2027-03-01T06:00"]
    assert list(read_hours(lines)) == [Hour(SIX_IN_THE_MORNING, 28.0)]


@pytest.mark.parametrize("missing", ["", "NA", "nan", "null", "M"])
def test_an_hour_nobody_measured_gives_nothing(missing: str) -> None:
    assert list(read_hours(["time_local,temp_f", f"2027-03-01T06:00,{missing}"])) == []


def test_a_byte_order_mark_and_empty_lines_do_no_harm() -> None:
    lines = ["\ufefftime_local,temp_f\r\n", "\r\n", "2027-03-01T06:00,28\r\n"]
    assert len(list(read_hours(lines))) == 1


def test_a_file_without_the_heading_is_refused() -> None:
    with pytest.raises(UnreadableHoursError, match="wanted a heading with time_local and temp_f"):
        list(read_hours(["2027-03-01T06:00,28"]))


def test_an_empty_file_is_refused() -> None:
    with pytest.raises(UnreadableHoursError, match="line 1"):
        list(read_hours([]))


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("2027-03-01T06:00,warm", "line 2: .*'warm'"),
        ("yesterday,28", "line 2: .*'yesterday'"),
        ("2027-03-01T06:00,999", "line 2: temp_f is 999"),
        ("2027-03-01T06:00", "line 2 has 1 columns"),
    ],
)
def test_a_line_that_cannot_be_read_is_named(line: str, message: str) -> None:
    with pytest.raises(UnreadableHoursError, match=message):
        list(read_hours(["time_local,temp_f", line]))
