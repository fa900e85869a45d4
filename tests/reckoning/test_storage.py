"""How long sap keeps, and what goes first."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.reckoning import storage
from bot.reckoning.storage import StoredLot

TODAY = date(2027, 3, 10)
LOTS = st.lists(
    st.builds(
        StoredLot,
        gallons=st.integers(0, 10_000).map(lambda n: n / 100),
        gathered_on=st.integers(0, 20).map(lambda days: TODAY - timedelta(days=days)),
        fahrenheit=st.none() | st.integers(0, 70).map(float),
    ),
    max_size=12,
)


@pytest.mark.parametrize(
    ("fahrenheit", "days"),
    [
        (0.0, 7),
        (32, 7),
        (35, 7),
        (35.1, 5),
        (38, 5),
        (38.1, 2),
        (45, 2),
        (46, 1),
        (50, 1),
        (50.1, 0),
        (70, 0),
        (None, 3),
    ],
)
def test_sap_keeps_fewer_days_the_warmer_it_is(fahrenheit: float | None, days: int) -> None:
    """At or under 38 F and 7 days at most: many extension pages; over 50 F: OSU Extension."""
    assert storage.keeps_days(fahrenheit) == days


@given(st.floats(-40, 120), st.floats(-40, 120))
def test_warmer_sap_never_keeps_longer(one: float, other: float) -> None:
    colder, warmer = sorted((one, other))
    assert storage.keeps_days(warmer) <= storage.keeps_days(colder)


@pytest.mark.parametrize("fahrenheit", [-41, 121, 212, float("nan")])
def test_an_impossible_barrel_is_refused(fahrenheit: float) -> None:
    with pytest.raises(ValueError, match=r"Stored sap is .* F, but should be -40 to 120 F"):
        storage.keeps_days(fahrenheit)


def test_zero_degrees_is_measured_and_none_is_not() -> None:
    assert storage.boil_by(TODAY, 0.0) == TODAY + timedelta(days=7)
    assert storage.boil_by(TODAY, None) == TODAY + timedelta(days=3)


def test_the_nearest_boil_by_day_comes_first_even_when_it_is_not_the_oldest() -> None:
    cold = StoredLot(20, TODAY - timedelta(days=2), 34)
    warm = StoredLot(5, TODAY, 48)
    found = storage.stored([cold, warm], TODAY)
    assert [one.lot for one in found.lots] == [warm, cold]
    assert found.boil_by == TODAY + timedelta(days=1)


def test_of_two_lots_with_one_boil_by_day_the_older_comes_first() -> None:
    older = StoredLot(5, TODAY - timedelta(days=1), 41)
    newer = StoredLot(5, TODAY, 48)
    found = storage.stored([newer, older], TODAY)
    assert [one.lot for one in found.lots] == [older, newer]


def test_what_is_due_and_what_is_overdue_are_told_apart() -> None:
    due = StoredLot(10, TODAY - timedelta(days=2), 41)
    overdue = StoredLot(4, TODAY - timedelta(days=4), 41)
    fresh = StoredLot(7, TODAY, 36)
    found = storage.stored([fresh, due, overdue], TODAY)
    assert (found.gallons, found.due_gallons, found.overdue_gallons) == (21, 10, 4)
    assert found.lots[0].days_left == -2


def test_nothing_stored_has_no_boil_by_day() -> None:
    found = storage.stored([StoredLot(0, TODAY)], TODAY)
    assert (found.lots, found.gallons, found.boil_by) == ((), 0, None)


def test_a_lot_of_tomorrow_is_refused() -> None:
    with pytest.raises(ValueError, match="should be no later than 2027-03-10"):
        storage.stored([StoredLot(1, date(2027, 3, 11))], TODAY)


def test_a_negative_lot_is_refused() -> None:
    with pytest.raises(ValueError, match="A stored lot is -1 gal"):
        storage.stored([StoredLot(-1, TODAY)], TODAY)


@given(LOTS)
def test_no_sap_is_lost_or_made_in_sorting(lots: list[StoredLot]) -> None:
    found = storage.stored(lots, TODAY)
    assert found.gallons == pytest.approx(sum(lot.gallons for lot in lots))
    days = [one.boil_by for one in found.lots]
    assert days == sorted(days)


@given(LOTS, st.integers(0, 20_000).map(lambda n: n / 100))
def test_taking_sap_leaves_what_was_there_less_what_was_taken(
    lots: list[StoredLot], taken: float
) -> None:
    there = sum(lot.gallons for lot in lots)
    left = sum(lot.gallons for lot in storage.take_oldest(lots, taken))
    assert left == pytest.approx(max(0.0, there - taken), abs=1e-6)


def test_the_oldest_sap_is_boiled_first() -> None:
    old = StoredLot(10, TODAY - timedelta(days=3))
    new = StoredLot(10, TODAY)
    assert storage.take_oldest([new, old], 12) == (StoredLot(8, TODAY),)


def test_taking_nothing_leaves_every_lot_that_holds_something() -> None:
    lots = (StoredLot(10, TODAY, 36.0),)
    assert storage.take_oldest(lots, 0) == lots


def test_cooling_the_barrel_does_not_undo_its_warm_day() -> None:
    warm = StoredLot(10, TODAY, 48.0)
    never_measured = StoredLot(10, TODAY)
    assert [lot.fahrenheit for lot in storage.measured([warm, never_measured], 34.0)] == [48, 34]


@pytest.mark.parametrize(
    ("sign", "care"),
    [
        ("clear", "keep cold"),
        ("cloudy_sap", "boil at once"),
        ("yellow_sap", "boil at once"),
        ("off_smell", "pour out"),
        ("sour", "pour out"),
        ("ropy", "pour out"),
        ("buds", "keep cold"),
        ("moths", "keep cold"),
    ],
)
def test_cloudy_sap_is_boiled_and_sour_sap_poured_out(sign: str, care: str) -> None:
    """Cornell, "Reducing Maple Sap Spoilage", 2025."""
    assert storage.care(sign) == care


def test_an_unknown_sign_is_refused() -> None:
    with pytest.raises(ValueError, match="The sign is 'green'"):
        storage.care("green")
