"""What a morning's forecast asks of the sugarer."""

from __future__ import annotations

from datetime import timedelta

import pytest

from bot.reckoning.hourly import Hour
from bot.reckoning.mornings import (
    best_hours_to_gather,
    first_warm_day,
    freeze_tonight,
    pails_full_at,
)
from bot.reckoning.recharge import Drip, drips
from tests.outlook.invented import FIRST_DAY, hours_of

TODAY = FIRST_DAY + timedelta(days=1)


def todays_drips(days: list[tuple[float, float]]) -> list[Drip]:
    """The drips of the second day."""
    return [drip for drip in drips(hours_of(days)) if drip.at_local.date() == TODAY]


def test_on_a_mild_day_gather_in_the_last_three_hours_of_light() -> None:
    gather = best_hours_to_gather(todays_drips([(24, 45), (26, 50), (36, 55)]))
    assert gather is not None
    assert (gather.from_local.hour, gather.by_local.hour) == (15, 18)
    assert not gather.freezes


def test_on_a_day_that_freezes_again_gather_before_it_does() -> None:
    cold_front = [
        Hour(hour.at_local, 30.0 if hour.at_local.hour >= 16 else hour.temp_f)
        for hour in hours_of([(24, 45)] * 2)
    ]
    gather = best_hours_to_gather(drips(cold_front)[24:])
    assert gather is not None
    assert gather.freezes
    assert (gather.from_local.hour, gather.by_local.hour) == (13, 16)


def test_a_frozen_day_needs_no_round() -> None:
    assert best_hours_to_gather(todays_drips([(5, 20)] * 3)) is None


def test_a_day_known_only_until_noon_names_no_hours() -> None:
    morning = [d for d in todays_drips([(24, 45)] * 3) if d.at_local.hour < 12]
    assert best_hours_to_gather(morning) is None


def test_two_gallon_pails_overflow_when_the_fullest_get_more() -> None:
    """20 pails, 30 gal: the mean pail gets 1.5 gal, the fullest 2.25."""
    full = pails_full_at(todays_drips([(24, 45)] * 3), 30, pails=20, pail_gallons=2)
    assert full is not None
    assert 10 <= full.hour <= 23


def test_the_same_day_does_not_overflow_four_gallon_pails() -> None:
    assert pails_full_at(todays_drips([(24, 45)] * 3), 30, pails=20, pail_gallons=4) is None


def test_sap_already_hanging_brings_the_overflow_forward() -> None:
    today = todays_drips([(24, 45)] * 3)
    empty = pails_full_at(today, 35, pails=20, pail_gallons=2)
    held = pails_full_at(today, 35, pails=20, pail_gallons=2, held_gallons=15)
    assert empty is not None
    assert held is not None
    assert held < empty


def test_zero_gallons_expected_fill_no_pail() -> None:
    assert pails_full_at(todays_drips([(24, 45)] * 3), 0.0, pails=20, pail_gallons=2) is None


def test_a_day_without_flow_fills_no_pail() -> None:
    assert pails_full_at(todays_drips([(5, 20)] * 3), 30, pails=20, pail_gallons=2) is None


@pytest.mark.parametrize(
    ("gallons", "pails", "pail_gallons"), [(-1, 20, 2), (30, 0, 2), (30, 20, 0)]
)
def test_impossible_pails_are_refused(gallons: float, pails: float, pail_gallons: float) -> None:
    with pytest.raises(ValueError, match="should be"):
        pails_full_at(todays_drips([(24, 45)] * 3), gallons, pails, pail_gallons)


def test_a_hard_freeze_tonight_may_burst_jars() -> None:
    night = freeze_tonight(hours_of([(30, 45), (18, 40)]), FIRST_DAY)
    assert night is not None
    assert night.bursts
    assert night.low_f == 18
    assert night.low_local.hour == 6


def test_a_light_freeze_tonight_is_told_but_does_not_burst() -> None:
    night = freeze_tonight(hours_of([(30, 45), (29, 44)]), FIRST_DAY)
    assert night is not None
    assert not night.bursts


def test_zero_degrees_tonight_is_a_freeze() -> None:
    night = freeze_tonight(hours_of([(10, 25), (0, 20)]), FIRST_DAY)
    assert night is not None
    assert night.low_f == 0.0
    assert night.bursts


def test_a_mild_night_brings_no_freeze() -> None:
    assert freeze_tonight(hours_of([(36, 50), (36, 50)]), FIRST_DAY) is None


def test_a_night_past_the_end_of_the_hours_is_not_guessed() -> None:
    assert freeze_tonight(hours_of([(10, 25)]), FIRST_DAY + timedelta(days=3)) is None


def test_the_first_warm_day_for_stored_sap_is_found() -> None:
    spell = first_warm_day(hours_of([(24, 40), (26, 42), (38, 58)]), FIRST_DAY)
    assert spell is not None
    assert spell.day == FIRST_DAY + timedelta(days=2)
    assert spell.fast


def test_mild_but_not_hot_sap_weather_is_warm_without_being_fast() -> None:
    spell = first_warm_day(hours_of([(37, 47)] * 2), FIRST_DAY)
    assert spell is not None
    assert not spell.fast


def test_cold_days_hold_no_warm_spell() -> None:
    assert first_warm_day(hours_of([(20, 40)] * 3), FIRST_DAY) is None


def test_warm_days_gone_by_are_not_told() -> None:
    hours = hours_of([(40, 60), (20, 35), (20, 35)])
    assert first_warm_day(hours, FIRST_DAY + timedelta(days=1)) is None
