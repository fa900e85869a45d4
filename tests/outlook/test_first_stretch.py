"""When to tap."""

from __future__ import annotations

from datetime import timedelta

from bot.reckoning.first_stretch import first_stretch, lone_run_day
from tests.outlook.invented import FIRST_DAY, outlooks_of

COLD = (5.0, 22.0)
GOOD = (25.0, 44.0)


def test_the_stretch_begins_with_its_first_run_day() -> None:
    stretch = first_stretch(outlooks_of([COLD] * 3 + [GOOD] * 5))
    assert stretch is not None
    assert stretch.begins == FIRST_DAY + timedelta(days=3)
    assert stretch.run_days == 5


def test_a_lone_warm_day_is_no_stretch() -> None:
    days = outlooks_of([COLD] * 3 + [(25, 48)] + [COLD] * 4)
    assert first_stretch(days) is None
    assert lone_run_day(days) == FIRST_DAY + timedelta(days=3)


def test_a_lone_warm_day_before_the_stretch_does_not_begin_it() -> None:
    stretch = first_stretch(outlooks_of([(25, 48)] + [COLD] * 5 + [GOOD] * 4))
    assert stretch is not None
    assert stretch.begins == FIRST_DAY + timedelta(days=6)


def test_a_cold_day_within_a_stretch_does_not_break_it() -> None:
    stretch = first_stretch(outlooks_of([GOOD, GOOD, COLD, GOOD, GOOD]))
    assert stretch is not None
    assert stretch.begins == FIRST_DAY


def test_a_frozen_week_has_neither() -> None:
    days = outlooks_of([COLD] * 7)
    assert first_stretch(days) is None
    assert lone_run_day(days) is None


def test_two_run_days_at_the_end_of_a_forecast_are_not_yet_a_stretch() -> None:
    assert first_stretch(outlooks_of([COLD] * 5 + [GOOD] * 2)) is None


def test_a_stretch_leaves_no_lone_day() -> None:
    assert lone_run_day(outlooks_of([GOOD] * 4)) is None
