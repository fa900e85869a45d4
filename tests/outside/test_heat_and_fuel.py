"""Sources: Ohio State University Extension, ohiomaple (heat and cords for a gallon of syrup);
University of Kentucky, firewood properties; US Energy Information Administration (propane, as
quoted by others)."""

from __future__ import annotations

import pytest

from bot import figures
from bot.reckoning import fuel


def test_ohios_heat_for_a_gallon_agrees_with_steam_tables() -> None:
    """OSU: 400,000 BTU at 2 %. Within 2 %: it is a round figure, and the sap's own temperature
    (we start at 38 F) moves it by 1 % for 20 F."""
    assert fuel.heat_btu_per_syrup_gallon(2.0, 66.0) == pytest.approx(400_000, rel=0.02)


def test_ohios_cord_means_an_arch_of_a_third() -> None:
    """OSU: 22 gallons of syrup from a cord in a standard evaporator. On sugar maple (University of
    Kentucky) at 2 Brix that is 35 %, below the 40 to 60 % that OSU itself gives for evaporators:
    the two figures do not agree, unless the wood is poorer."""
    heat = 22 * fuel.heat_btu_per_syrup_gallon(2.0, 66.0)
    efficiency = fuel.wood_efficiency(1.0, heat, "sugar maple")
    assert efficiency == pytest.approx(0.345, abs=0.01)
    assert efficiency < figures.EVAPORATOR_EFFICIENCY[0]


def test_ohios_cord_is_within_its_range_on_poorer_wood() -> None:
    """Silver maple gives 19.3 million BTU a cord (University of Kentucky)."""
    heat = 22 * fuel.heat_btu_per_syrup_gallon(2.0, 66.0)
    low, high = figures.EVAPORATOR_EFFICIENCY
    assert low <= fuel.wood_efficiency(1.0, heat, "silver maple") <= high


def test_propane_by_the_pound_and_by_the_gallon_differ_a_little() -> None:
    """EIA: 91,333 to 91,500 BTU a gallon by year; 4.24 lb of 21,500 are 91,160. Within 0.4 %,
    nothing beside the efficiency of a ring."""
    by_pound = figures.PROPANE_BTU_PER_LB * figures.PROPANE_LB_PER_GALLON
    assert by_pound < 91_333
    assert by_pound == pytest.approx(91_500, rel=0.004)
