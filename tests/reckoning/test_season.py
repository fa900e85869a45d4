"""Seasons: their names, their sums, one against another."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.reckoning import season
from bot.reckoning.season import SapDay, SyrupDay

DAYS = st.dates(date(2000, 1, 1), date(2099, 12, 31))


@pytest.mark.parametrize(
    ("on", "named"),
    [
        (date(2027, 3, 9), 2027),
        (date(2026, 12, 28), 2027),
        (date(2027, 6, 30), 2027),
        (date(2027, 7, 1), 2028),
        (date(2027, 1, 1), 2027),
    ],
)
def test_a_season_is_named_by_its_spring(on: date, named: int) -> None:
    assert season.season_of(on) == named


@given(DAYS)
def test_every_day_lies_within_its_own_season_and_no_other(on: date) -> None:
    first, last = season.season_days(season.season_of(on))
    assert first <= on <= last
    assert season.season_of(first) == season.season_of(last) == season.season_of(on)
    assert season.season_of(first - timedelta(days=1)) == season.season_of(on) - 1
    assert season.season_of(last + timedelta(days=1)) == season.season_of(on) + 1


@given(DAYS, st.integers(2001, 2098))
def test_the_same_day_of_another_season_lies_in_that_season(on: date, other: int) -> None:
    there = season.same_day(on, other)
    assert season.season_of(there) == other
    assert there.month == on.month


def test_the_29th_of_february_is_the_28th_in_a_common_year() -> None:
    assert season.same_day(date(2028, 2, 29), 2027) == date(2027, 2, 28)
    assert season.same_day(date(2028, 2, 29), 2024) == date(2024, 2, 29)


SAP = (
    SapDay(date(2026, 3, 1), 10, 2.0),
    SapDay(date(2026, 3, 20), 30, 2.4),
    SapDay(date(2026, 12, 29), 4),
    SapDay(date(2027, 3, 2), 20, 2.2),
    SapDay(date(2027, 3, 5), 0),
    SapDay(date(2027, 3, 8), 12, 1.8),
)
SYRUP = (SyrupDay(date(2026, 3, 21), 1.0), SyrupDay(date(2027, 3, 8), 0.5))


def test_a_december_run_counts_with_the_spring_after_it() -> None:
    found = season.season_sum(2027, SAP, SYRUP)
    assert (found.sap_gallons, found.syrup_gallons, found.gatherings) == (36, 0.5, 3)
    assert (found.first_sap, found.last_sap) == (date(2026, 12, 29), date(2027, 3, 8))


def test_untested_sap_does_not_water_down_the_seasons_sugar() -> None:
    found = season.season_sum(2027, SAP, SYRUP)
    assert found.brix == pytest.approx(2.05, abs=0.005)


def test_a_season_up_to_a_day_counts_that_day_and_none_after() -> None:
    assert season.season_sum(2026, SAP, SYRUP, date(2026, 3, 1)).sap_gallons == 10
    assert season.season_sum(2026, SAP, SYRUP, date(2026, 3, 20)).sap_gallons == 40


def test_a_seasons_first_and_last_day_count_in_it() -> None:
    first, last = season.season_days(2027)
    found = season.season_sum(
        2027, [SapDay(first, 1), SapDay(last, 2)], [SyrupDay(first, 0.1), SyrupDay(last, 0.2)]
    )
    assert found.sap_gallons == 3
    assert found.syrup_gallons == pytest.approx(0.3)


def test_a_season_without_records_is_zero_and_its_sugar_is_not_known() -> None:
    found = season.season_sum(2030, SAP, SYRUP)
    assert (found.sap_gallons, found.brix, found.first_sap) == (0, None, None)


def test_a_season_of_dry_pails_has_gathered_nothing() -> None:
    found = season.season_sum(2027, [SapDay(date(2027, 3, 5), 0, 2.0)])
    assert (found.gatherings, found.first_sap, found.brix) == (0, None, None)


def test_seasons_are_compared_to_the_same_date() -> None:
    """On 8 March 2027 only the 10 gal of 1 March 2026 count against it."""
    found = season.compare(date(2027, 3, 8), SAP, SYRUP)
    assert (found.later.sap_gallons, found.earlier.sap_gallons) == (36, 10)
    assert found.sap_more == 26
    assert found.sap_ratio == pytest.approx(3.6)
    assert found.syrup_ratio is None


def test_a_season_further_back_can_be_named() -> None:
    found = season.compare(date(2027, 3, 8), SAP, SYRUP, against=2025)
    assert (found.earlier.season, found.earlier.sap_gallons, found.sap_ratio) == (2025, 0, None)


def test_a_generator_of_records_is_read_once_and_counts_in_both_seasons() -> None:
    found = season.compare(date(2027, 3, 8), iter(SAP), iter(SYRUP))
    assert (found.later.sap_gallons, found.earlier.sap_gallons) == (36, 10)


def test_a_negative_gathering_is_refused() -> None:
    with pytest.raises(ValueError, match="Sap is -1 gal"):
        season.season_sum(2027, [SapDay(date(2027, 3, 1), -1)])
