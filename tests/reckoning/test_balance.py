"""Sap into syrup, sap into sap, ice out."""

from __future__ import annotations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from bot.reckoning import balance
from bot.reckoning.density import density_g_ml, sugar_pounds
from tests.reckoning import given as draw

LOTS = st.lists(st.tuples(draw.some_gallons, draw.sap_brix), min_size=1, max_size=8)


@given(draw.some_gallons, draw.sap_brix, draw.syrup_brix)
def test_the_sugar_of_the_sap_is_the_sugar_of_the_syrup(
    gallons: float, sap_brix: float, syrup_brix: float
) -> None:
    syrup = balance.syrup_gallons(gallons, sap_brix, syrup_brix)
    assert sugar_pounds(syrup, syrup_brix) == pytest.approx(sugar_pounds(gallons, sap_brix))


@given(draw.some_gallons, draw.sap_brix, draw.syrup_brix)
def test_sap_per_syrup_and_syrup_from_sap_undo_each_other(
    gallons: float, sap_brix: float, syrup_brix: float
) -> None:
    syrup = balance.syrup_gallons(gallons, sap_brix, syrup_brix)
    assert syrup * balance.sap_per_syrup(sap_brix, syrup_brix) == pytest.approx(gallons)


@given(draw.some_gallons, draw.sap_brix, draw.sap_brix, draw.syrup_brix)
def test_sweeter_sap_makes_more_syrup(
    gallons: float, one: float, other: float, syrup_brix: float
) -> None:
    assume(abs(one - other) > 1e-9)
    less, more = sorted((one, other))
    assert balance.syrup_gallons(gallons, less, syrup_brix) < balance.syrup_gallons(
        gallons, more, syrup_brix
    )


@given(draw.some_gallons, draw.sap_brix, draw.syrup_brix)
def test_boiling_in_two_steps_comes_to_the_same(
    gallons: float, sap_brix: float, syrup_brix: float
) -> None:
    halfway = (sap_brix + syrup_brix) / 2
    left = balance.left_at(gallons, sap_brix, halfway)
    assert balance.left_at(left, halfway, syrup_brix) == pytest.approx(
        balance.left_at(gallons, sap_brix, syrup_brix)
    )


def test_no_sap_makes_no_syrup() -> None:
    assert balance.syrup_gallons(0, 2.0, 66.9) == 0


def test_sap_without_sugar_makes_no_syrup() -> None:
    assert balance.syrup_gallons(10, 0, 66.9) == 0


def test_sap_that_is_syrup_already_stays_as_it_is() -> None:
    assert balance.syrup_gallons(1, 66.9, 66.9) == 1


def test_a_gallon_of_syrup_from_sugarless_sap_is_refused() -> None:
    with pytest.raises(ValueError, match=r"Sap sugar is 0 Brix, but should be more than 0"):
        balance.sap_per_syrup(0, 66.9)


def test_sap_thicker_than_the_syrup_is_refused() -> None:
    with pytest.raises(
        ValueError, match=r"Sap sugar is 70 Brix, but should be no more than the 66.9 Brix"
    ):
        balance.syrup_gallons(1, 70, 66.9)


def test_a_negative_gathering_is_refused() -> None:
    with pytest.raises(ValueError, match=r"Sap is -4 gal, but should be 0 or more"):
        balance.syrup_gallons(-4, 2.0, 66.9)


@given(LOTS)
def test_a_mix_lies_between_its_lots(lots: list[tuple[float, float]]) -> None:
    brixes = [brix for _, brix in lots]
    assert min(brixes) <= balance.mixed_brix(lots) <= max(brixes)


@given(LOTS)
def test_a_mix_holds_the_sugar_of_its_lots(lots: list[tuple[float, float]]) -> None:
    mass = sum(gallons * density_g_ml(brix) for gallons, brix in lots)
    sugar = sum(gallons * density_g_ml(brix) * brix for gallons, brix in lots)
    assert balance.mixed_brix(lots) * mass == pytest.approx(sugar)


@given(LOTS)
def test_the_order_of_pouring_does_not_matter(lots: list[tuple[float, float]]) -> None:
    assert balance.mixed_brix(lots) == pytest.approx(balance.mixed_brix(lots[::-1]))


@given(st.lists(st.tuples(draw.some_gallons, st.floats(0.5, 5)), min_size=1, max_size=8))
def test_weighting_by_gallons_alone_is_good_to_two_hundredths_of_a_brix(
    lots: list[tuple[float, float]],
) -> None:
    """Below 5 Brix, so a sugarer's own arithmetic on paper agrees with ours."""
    by_gallons = sum(g * b for g, b in lots) / sum(g for g, _ in lots)
    assert balance.mixed_brix(lots) == pytest.approx(by_gallons, abs=0.02)


def test_an_empty_pail_does_not_sweeten_a_mix() -> None:
    assert balance.mixed_brix([(10, 2.0), (0, 12.0)]) == pytest.approx(2.0)


@pytest.mark.parametrize("lots", [[], [(0.0, 2.0)]])
def test_mixing_nothing_is_refused(lots: list[tuple[float, float]]) -> None:
    with pytest.raises(ValueError, match="Nothing to mix"):
        balance.mixed_brix(lots)


@given(draw.some_gallons, draw.sap_brix, st.floats(0.0, 0.9), st.floats(0.0, 1.0))
def test_throwing_ice_away_never_thins_the_sap(
    gallons: float, brix: float, share: float, ice_part: float
) -> None:
    left = balance.after_ice(gallons, brix, gallons * share, brix * ice_part)
    assert left.brix >= brix - 1e-9
    assert left.gallons <= gallons


@given(draw.some_gallons, draw.sap_brix, st.floats(0.01, 0.9))
def test_sugar_in_the_ice_makes_the_low_end(gallons: float, brix: float, share: float) -> None:
    left = balance.after_ice_range(gallons, brix, gallons * share)
    assert left.low_brix <= left.high_brix
    assert left.high_brix == pytest.approx(brix / (1 - share))


def test_all_ice_is_refused() -> None:
    with pytest.raises(ValueError, match=r"Ice is 10 gal, but should be less than the 10 gal"):
        balance.after_ice(10, 2.0, 10)


def test_ice_sweeter_than_the_sap_is_refused() -> None:
    with pytest.raises(ValueError, match="Sugar in the ice is 3 Brix"):
        balance.after_ice(10, 2.0, 3, 3.0)


def test_more_than_a_third_of_ice_is_too_much() -> None:
    assert balance.too_much_ice(10, 4)
    assert not balance.too_much_ice(10, 3)


@given(st.floats(0.5, 3.0))
def test_the_old_rule_runs_short_of_the_balance_where_buckets_run(brix: float) -> None:
    """C. H. Jones's rule promises too much syrup below 3 Brix."""
    assert balance.rule_of_86(brix) < balance.sap_per_syrup(brix, 66.0)


@pytest.mark.parametrize(("syrup_brix", "gallons"), [(66.0, 43.23), (66.9, 43.78)])
def test_the_revised_rule_at_two_brix(syrup_brix: float, gallons: float) -> None:
    """Perkins and Isselhardt, as quoted: 87.1 / 2 - 0.32 and 88.2 / 2 - 0.32."""
    assert balance.revised_rule(2.0, syrup_brix) == pytest.approx(gallons)


@pytest.mark.parametrize("syrup_brix", [66.5, 60.0])
def test_the_revised_rule_speaks_of_two_densities_only(syrup_brix: float) -> None:
    with pytest.raises(ValueError, match=r"published for 66\.0 and 66\.9"):
        balance.revised_rule(2.0, syrup_brix)
