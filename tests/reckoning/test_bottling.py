"""Jars, hot filling, costs, and syrup that fell short."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.reckoning import bottling, yields
from bot.reckoning.bottling import JarCount
from tests.reckoning import given as draw

PINT, HALF_PINT, QUART = 1 / 8, 1 / 16, 1 / 4


def test_six_pints_and_four_half_pints_are_a_gallon() -> None:
    assert bottling.jars_gallons([(6, PINT), (4, HALF_PINT)]) == 1.0


def test_no_jars_hold_nothing() -> None:
    assert bottling.jars_gallons([]) == 0
    assert bottling.jars_gallons([(0, PINT)]) == 0


@pytest.mark.parametrize("jars", [[(-1, PINT)], [(1, 0.0)], [(1, -0.1)]])
def test_jars_that_cannot_be_are_refused(jars: list[tuple[int, float]]) -> None:
    with pytest.raises(ValueError, match=r"^(Jars|A jar) is"):
        bottling.jars_gallons(jars)


@given(
    draw.gallons,
    st.lists(
        st.sampled_from([1.0, 0.5, QUART, PINT, HALF_PINT, 0.0660430]), min_size=1, max_size=4
    ),
)
def test_jars_and_rest_together_are_the_batch(gallons: float, sizes: list[float]) -> None:
    plan = bottling.jars_for(gallons, sizes)
    filled = bottling.jars_gallons([(jar.count, jar.gallons_each) for jar in plan.jars])
    assert filled + plan.rest_gallons == pytest.approx(gallons, abs=1e-6)
    assert 0 <= plan.rest_gallons < min(sizes)


def test_the_largest_jars_are_filled_first() -> None:
    plan = bottling.jars_for(1.45, [PINT, QUART])
    assert plan.jars == (JarCount(5, QUART), JarCount(1, PINT))
    assert plan.rest_gallons == pytest.approx(0.075)
    assert plan.last_share == pytest.approx(0.6)


def test_three_pints_fill_three_pint_jars() -> None:
    """Though 0.3 / 0.1 is 2.9999999999999996."""
    plan = bottling.jars_for(0.3, [0.1])
    assert (plan.jars, plan.rest_gallons) == ((JarCount(3, 0.1),), 0.0)


def test_binary_dust_is_not_a_rest() -> None:
    """0.8 less three times 0.25 is 0.05000000000000004."""
    assert bottling.jars_for(0.8, [0.25, 0.05]).rest_gallons == 0.0


def test_no_jar_sizes_are_refused() -> None:
    with pytest.raises(ValueError, match="Jar sizes are missing"):
        bottling.jars_for(1, [])


@pytest.mark.parametrize(
    ("syrup_f", "advice"),
    [
        (172, "reheat"),
        (179.9, "reheat"),
        (180, "fill now"),
        (184.9, "fill now"),
        (185, "fill"),
        (200, "fill"),
        (200.1, "too hot"),
        (219, "too hot"),
    ],
)
def test_syrup_is_filled_hot_but_not_boiling(syrup_f: float, advice: str) -> None:
    """CFIA: 180 to 185; OMAFRA: 185 to 190, at least 180 under the cap; MSU: not over 200."""
    assert bottling.fill_advice(syrup_f) == advice


@pytest.mark.parametrize("syrup_f", [20, 300])
def test_an_impossible_bottling_temperature_is_refused(syrup_f: float) -> None:
    with pytest.raises(ValueError, match=r"Syrup is .* F, but should be 32 to 250 F"):
        bottling.fill_advice(syrup_f)


def test_a_gallon_measured_hot_is_less_when_cold() -> None:
    assert bottling.cold_gallons(1, 185) == pytest.approx(0.969, abs=1e-3)
    assert bottling.cold_gallons(1, 60) == 1.0


def test_crystals_are_likely_over_68_brix_only() -> None:
    assert bottling.may_crystallize(68.5)
    assert not bottling.may_crystallize(66.9)


def test_a_cost_is_told_by_the_gallon_and_by_the_pint() -> None:
    assert bottling.cost_of(48, 1.5) == bottling.Cost(per_gallon=32.0, per_pint=4.0)


def test_nothing_spent_costs_nothing_and_no_syrup_has_no_cost() -> None:
    assert bottling.cost_of(0, 1.5) == bottling.Cost(0.0, 0.0)
    assert bottling.cost_of(48, 0) is None


def test_syrup_is_worth_its_price() -> None:
    assert bottling.worth_dollars(1.5, 60) == 90


def test_a_negative_cost_is_refused() -> None:
    with pytest.raises(ValueError, match="Money spent is -5 dollars"):
        bottling.cost_of(-5, 1)


@pytest.mark.parametrize(
    ("drawn", "verdict"),
    [(0.0, "short"), (0.84, "short"), (0.85, "as expected"), (1.15, "as expected"), (1.16, "over")],
)
def test_fifteen_percent_either_way_is_as_expected(drawn: float, verdict: str) -> None:
    assert yields.check_yield(1.0, drawn).verdict == verdict


def test_what_is_missing_is_told_in_gallons() -> None:
    assert yields.check_yield(2.0, 1.5).short_gallons == 0.5
    assert yields.check_yield(2.0, 2.5).short_gallons == 0.0


def test_nothing_expected_is_nothing_to_check_against() -> None:
    with pytest.raises(ValueError, match="Expected syrup is 0 gal"):
        yields.check_yield(0, 1)


def test_a_yield_that_is_not_short_has_nothing_to_look_for() -> None:
    assert yields.where_the_rest_may_be(yields.check_yield(1, 1), 66.9) == ()


def test_with_nothing_else_known_the_pan_and_the_filter_are_named() -> None:
    found = yields.where_the_rest_may_be(yields.check_yield(1, 0.5), 66.9)
    assert [rest.place for rest in found] == ["in the pan", "filter and foam"]
    assert found[0].least_gallons is None


def test_an_undrawn_pan_accounts_for_a_range() -> None:
    """6 square feet: 3.74 gal at 1 in, 7.48 at 2."""
    found = yields.where_the_rest_may_be(yields.check_yield(2, 1), 66.9, pan_ft2=6)
    assert yields.pan_gallons(6, 1) == pytest.approx(3.74, abs=5e-3)
    assert found[0].least_gallons == pytest.approx(0.91, abs=0.01)
    assert found[0].most_gallons == pytest.approx(6.50, abs=0.01)


@given(draw.some_gallons, st.floats(66.91, 75))
def test_syrup_drawn_thick_accounts_for_exactly_its_sugar(drawn: float, brix: float) -> None:
    """As water added to it would make up."""
    check = yields.check_yield(drawn * 2, drawn)
    found = yields.where_the_rest_may_be(check, 66.9, drawn_brix=brix)
    thick = next(rest for rest in found if rest.place == "drawn thick")
    assert thick.least_gallons is not None
    assert thick.least_gallons == thick.most_gallons
    assert thick.least_gallons > 0


def test_sap_poured_out_accounts_for_its_syrup() -> None:
    check = yields.check_yield(1.0, 0.5)
    found = yields.where_the_rest_may_be(check, 66.9, sap_brix=2.2, poured_out_gallons=12)
    lost = next(rest for rest in found if rest.place == "sap lost")
    assert lost.least_gallons == pytest.approx(0.299, abs=5e-4)


def test_sap_that_was_not_poured_out_is_not_blamed() -> None:
    found = yields.where_the_rest_may_be(yields.check_yield(1.0, 0.5), 66.9, sap_brix=2.2)
    assert "sap lost" not in [rest.place for rest in found]


def test_sap_of_no_sugar_was_not_read_high() -> None:
    found = yields.where_the_rest_may_be(yields.check_yield(1.0, 0.5), 66.9, sap_brix=0.0)
    assert "sugar read high" not in [rest.place for rest in found]


def test_syrup_drawn_right_is_not_blamed() -> None:
    found = yields.where_the_rest_may_be(yields.check_yield(1.0, 0.5), 66.9, drawn_brix=66.9)
    assert "drawn thick" not in [rest.place for rest in found]


def test_a_tenth_of_a_brix_read_high_accounts_for_five_percent_at_two() -> None:
    check = yields.check_yield(1.0, 0.5)
    found = yields.where_the_rest_may_be(check, 66.9, sap_brix=2.0)
    high = next(rest for rest in found if rest.place == "sugar read high")
    assert high.most_gallons == pytest.approx(0.05)
