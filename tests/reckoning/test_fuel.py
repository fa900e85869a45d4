"""Heat, wood and propane."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot import figures
from bot.reckoning import fuel
from bot.reckoning.balance import syrup_gallons
from tests.reckoning import given as draw

EFFICIENCY = st.floats(0.05, 1.0)


@given(draw.some_gallons, draw.sap_brix, EFFICIENCY, st.sampled_from(sorted(figures.CORD_BTU)))
def test_wood_for_a_batch_boils_that_batch(
    gallons: float, brix: float, efficiency: float, species: str
) -> None:
    wood = fuel.wood_for(fuel.heat_btu(gallons, brix, 66.9), efficiency, species)
    syrup = fuel.syrup_from_wood(wood.cords, efficiency, brix, 66.9, species)
    assert syrup == pytest.approx(syrup_gallons(gallons, brix, 66.9))


@given(draw.some_gallons, draw.sap_brix, EFFICIENCY)
def test_propane_for_a_batch_boils_that_batch(
    gallons: float, brix: float, efficiency: float
) -> None:
    propane = fuel.propane_for(fuel.heat_btu(gallons, brix, 66.9), efficiency)
    syrup = fuel.syrup_from_propane(propane.pounds, efficiency, brix, 66.9)
    assert syrup == pytest.approx(syrup_gallons(gallons, brix, 66.9))


@given(draw.some_gallons, draw.sap_brix, EFFICIENCY)
def test_the_efficiency_of_a_boil_comes_out_of_its_wood(
    gallons: float, brix: float, efficiency: float
) -> None:
    heat = fuel.heat_btu(gallons, brix, 66.9)
    wood = fuel.wood_for(heat, efficiency)
    assert fuel.wood_efficiency(wood.cords, heat) == pytest.approx(efficiency)


@given(draw.sap_brix, draw.sap_brix)
def test_sweeter_sap_costs_less_heat_a_gallon(one: float, other: float) -> None:
    less, more = sorted((one, other))
    assert fuel.heat_btu_per_syrup_gallon(more, 66.9) <= fuel.heat_btu_per_syrup_gallon(less, 66.9)


def test_three_face_cords_are_a_cord() -> None:
    wood = fuel.wood_for(25.9e6 * 0.5, 0.5, "sugar maple")
    assert (wood.cords, wood.face_cords) == (1.0, 3.0)


def test_pounds_gallons_and_cylinders_are_the_same_propane() -> None:
    propane = fuel.propane_for(21500 * 20 * 0.5, 0.5)
    assert propane.pounds == pytest.approx(20)
    assert propane.gallons == pytest.approx(20 / 4.24)
    assert propane.cylinders == pytest.approx(1)


# Efficiency and gallons of syrup from a cord of sugar maple at 2 Brix (computed: 25.9 million
# BTU by University of Kentucky, heat by IAPWS-95; for syrup of 66.0).
@pytest.mark.parametrize(
    ("efficiency", "gallons"), [(0.2, 12.8), (0.3, 19.1), (0.4, 25.5), (0.5, 31.9)]
)
def test_a_cord_boils_more_in_a_better_arch(efficiency: float, gallons: float) -> None:
    found = fuel.syrup_from_wood(1, efficiency, 2.0, 66.0)
    assert found == pytest.approx(gallons, abs=0.05)


def test_a_cylinder_at_65_percent() -> None:
    """Computed: 0.69 gal at 2 Brix."""
    assert fuel.syrup_from_propane(20, 0.65, 2.0, 66.0) == pytest.approx(0.69, abs=5e-3)


def test_no_sap_needs_no_wood() -> None:
    assert fuel.wood_for(fuel.heat_btu(0, 2.0, 66.9), 0.3).cords == 0


def test_an_unknown_wood_is_refused_with_those_that_are_known() -> None:
    with pytest.raises(ValueError, match=r"Wood is 'larch', but should be one of: basswood, beech"):
        fuel.wood_for(1e6, 0.3, "larch")


@pytest.mark.parametrize("efficiency", [0.0, 1.1, 30.0, -0.2])
def test_an_efficiency_that_is_no_share_is_refused(efficiency: float) -> None:
    with pytest.raises(ValueError, match="Efficiency is"):
        fuel.propane_for(1e6, efficiency)


def test_an_efficiency_from_no_wood_is_refused() -> None:
    with pytest.raises(ValueError, match="Wood is 0 cords, but should be more than 0"):
        fuel.wood_efficiency(0, 1e6)
