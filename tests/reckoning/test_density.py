"""Density, specific gravity, Baume and weight."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot import figures
from bot.reckoning import density
from tests.reckoning import given as draw


def test_water_has_a_specific_gravity_of_one_and_no_baume() -> None:
    assert density.specific_gravity(0.0) == 1.0
    assert density.baume(0.0) == 0.0


@given(draw.any_brix, draw.any_brix)
def test_more_sugar_is_always_denser(one: float, other: float) -> None:
    less, more = sorted((one, other))
    if more - less >= 0.01:
        assert density.density_g_ml(less) < density.density_g_ml(more)
        assert density.baume(less) < density.baume(more)


@given(draw.any_brix)
def test_baume_turned_back_gives_the_brix_again(brix: float) -> None:
    assert density.brix_from_baume(density.baume(brix)) == pytest.approx(brix, abs=1e-6)


@given(draw.any_brix)
def test_a_gallon_weighs_its_density_times_its_volume(brix: float) -> None:
    """231 cubic inches and 453.59237 g to the pound, both exact by NIST Handbook 44."""
    grams = density.density_g_ml(brix) * 231 * 2.54**3
    assert density.pounds_per_gallon(brix) == pytest.approx(grams / 453.59237, rel=1e-6)


@given(draw.gallons, draw.gallons, draw.any_brix)
def test_sugar_adds_up(one: float, other: float, brix: float) -> None:
    together = density.sugar_pounds(one + other, brix)
    apart = density.sugar_pounds(one, brix) + density.sugar_pounds(other, brix)
    assert together == pytest.approx(apart, abs=1e-6)


@pytest.mark.parametrize("brix", [-0.1, 84.1, 900])
def test_impossible_sugar_is_refused_by_name_and_bounds(brix: float) -> None:
    with pytest.raises(ValueError, match=rf"Sugar is {brix} Brix, but should be 0 to 84 Brix"):
        density.density_g_ml(brix)


@given(draw.not_numbers)
def test_what_is_no_number_is_refused(brix: float) -> None:
    with pytest.raises(ValueError, match="Sugar is"):
        density.density_g_ml(brix)


@given(st.floats(min_value=45.0, max_value=1e6))
def test_a_baume_past_the_scale_is_refused(degrees: float) -> None:
    with pytest.raises(ValueError, match="Baume is"):
        density.brix_from_baume(degrees)


def test_the_fit_is_the_water_of_the_figures_at_zero() -> None:
    """Two constants that must not drift apart."""
    assert figures.SUCROSE_DENSITY_COEFFICIENTS[0] == figures.WATER_DENSITY_G_ML
