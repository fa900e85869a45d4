"""How long a boil takes, when to light the fire, how far along it is."""

from __future__ import annotations

import math
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.reckoning import boil
from tests.reckoning import given as draw

BOILS = [(40.0, 7.0), (36.0, 6.0), (50.0, 9.0)]


def test_a_two_by_three_foot_pan_has_six_square_feet() -> None:
    assert boil.pan_ft2(36, 24) == 6.0


def test_a_round_pot_has_pi_quarters_of_its_square() -> None:
    assert boil.round_pan_ft2(12) == pytest.approx(math.pi / 4)


def test_without_a_pan_and_with_too_few_boils_there_is_nothing_to_go_by() -> None:
    assert boil.boil_time(40, 1, boils=BOILS[:2]) is None


def test_the_pan_is_used_until_there_are_three_boils() -> None:
    with_two = boil.boil_time(40, 1, surface_ft2=6, boils=BOILS[:2])
    with_three = boil.boil_time(40, 1, surface_ft2=6, boils=BOILS)
    assert with_two is not None
    assert with_three is not None
    assert (with_two.basis, with_three.basis) == ("pan", "own boils")


def test_own_boils_are_counted_in_gallons_of_sap() -> None:
    """40 gal in 7 hours is what a person tells, syrup and all."""
    found = boil.boil_time(40, 1, boils=[(40, 8), (40, 8), (40, 8)])
    assert found is not None
    assert found.hours == 8.0


def test_a_pan_boils_off_the_water_only() -> None:
    found = boil.boil_time(7, 1, surface_ft2=6)
    assert found is not None
    assert found.hours == 1.0


def test_one_wrongly_written_boil_does_not_move_the_rate() -> None:
    """40 gal in 70 hours for 7."""
    right = boil.own_rate([*BOILS, (42.0, 7.0), (44.0, 8.0)])
    wrong = boil.own_rate([*BOILS, (42.0, 70.0), (44.0, 8.0)])
    assert right is not None
    assert wrong is not None
    assert wrong.gallons_per_hour == pytest.approx(right.gallons_per_hour, rel=0.05)


@given(
    st.lists(st.tuples(st.floats(1, 500), st.floats(0.5, 24)), min_size=3, max_size=30),
)
def test_the_own_rate_lies_among_the_boils_and_its_low_below_its_high(
    boils: list[tuple[float, float]],
) -> None:
    rates = [gallons / hours for gallons, hours in boils]
    found = boil.own_rate(boils)
    assert found is not None
    assert min(rates) - 1e-9 <= found.low <= found.gallons_per_hour + 1e-9
    assert found.gallons_per_hour - 1e-9 <= found.high <= max(rates) + 1e-9


@given(draw.some_gallons, st.floats(1, 40))
def test_the_shortest_boil_is_no_longer_than_the_longest(
    gallons: float, surface_ft2: float
) -> None:
    found = boil.boil_time(gallons, 0, surface_ft2=surface_ft2)
    assert found is not None
    assert found.shortest_hours <= found.hours <= found.longest_hours


@given(draw.some_gallons, st.floats(1, 40))
def test_twice_the_pan_takes_half_the_time(gallons: float, surface_ft2: float) -> None:
    one = boil.boil_time(gallons, 0, surface_ft2=surface_ft2)
    two = boil.boil_time(gallons, 0, surface_ft2=2 * surface_ft2)
    assert one is not None
    assert two is not None
    assert one.hours == pytest.approx(2 * two.hours)


@pytest.mark.parametrize("bad", [(0.0, 7.0), (40.0, 0.0), (-1.0, 2.0)])
def test_a_boil_of_nothing_is_refused(bad: tuple[float, float]) -> None:
    with pytest.raises(ValueError, match="should be more than 0"):
        boil.own_rate([bad])


def test_more_syrup_than_sap_is_refused() -> None:
    with pytest.raises(ValueError, match=r"Syrup is 2 gal, but should be no more than the 1 gal"):
        boil.boil_time(1, 2, surface_ft2=6)


def test_syrup_that_is_done_takes_no_time() -> None:
    found = boil.boil_time(1, 1, surface_ft2=6)
    assert found is not None
    assert found.hours == 0


def test_a_pan_of_no_size_is_refused() -> None:
    with pytest.raises(ValueError, match="The pan is 0 square feet"):
        boil.boil_time(40, 1, surface_ft2=0)


def test_a_propane_ring_boils_one_to_two_gallons_an_hour() -> None:
    found = boil.ring_rate()
    assert (found.low, found.gallons_per_hour, found.high) == (1.0, 1.5, 2.0)


def test_the_fire_is_lit_so_many_hours_before_dark() -> None:
    dark = datetime(2027, 3, 9, 18, 0)
    assert boil.start_by(dark, 6.5) == dark - timedelta(hours=6, minutes=30)


def test_over_the_change_of_clocks_the_hours_are_real_ones() -> None:
    """In 2027 the clocks go forward on 14 March at 2 am: 1 am to 6 am is four hours."""
    zone = ZoneInfo("America/New_York")
    finish = datetime(2027, 3, 14, 6, 0, tzinfo=zone)
    start = boil.start_by(finish, 4)
    assert (start.hour, start.minute) == (1, 0)


def test_a_boil_of_less_than_no_time_is_refused() -> None:
    with pytest.raises(ValueError, match="A boil is -1 hours"):
        boil.start_by(datetime(2027, 3, 9, 18, 0), -1)


@given(st.floats(0.1, 40), st.floats(0, 80))
def test_water_gone_and_hours_left_never_leave_the_boil(hours: float, gone: float) -> None:
    found = boil.progress(40, 1, hours, gone)
    assert 0 <= found.water_gone_gallons <= 39
    assert found.hours_left >= 0
    assert found.hours_left - found.over_hours == pytest.approx(hours - gone)


def test_halfway_through_half_the_water_is_gone() -> None:
    found = boil.progress(41, 1, 8, 4)
    assert (found.share, found.water_gone_gallons, found.hours_left) == (0.5, 20.0, 4.0)


def test_a_boil_past_its_time_says_by_how_much() -> None:
    found = boil.progress(41, 1, 8, 10)
    assert (found.share, found.hours_left, found.over_hours) == (1.0, 0.0, 2.0)
