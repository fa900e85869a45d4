"""Too thick and too thin."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.reckoning import thickness
from bot.reckoning.density import pounds_per_gallon, sugar_pounds
from tests.reckoning import given as draw

THICK = st.floats(67, 80)


@given(draw.some_gallons, THICK, st.floats(60, 67))
def test_water_added_ends_at_the_density_wanted(gallons: float, brix: float, wanted: float) -> None:
    water = thickness.water_to_add(gallons, brix, wanted)
    weight = gallons * pounds_per_gallon(brix) + water.pounds
    assert sugar_pounds(gallons, brix) / weight * 100 == pytest.approx(wanted)


@given(draw.some_gallons, THICK, st.floats(60, 67))
def test_boiling_off_what_was_added_brings_the_syrup_back(
    gallons: float, brix: float, wanted: float
) -> None:
    added = thickness.water_to_add(gallons, brix, wanted)
    back = thickness.water_to_boil_off(added.ends_gallons, wanted, brix)
    assert back.pounds == pytest.approx(added.pounds)
    assert back.ends_gallons == pytest.approx(gallons)


@given(draw.some_gallons, draw.syrup_brix)
def test_syrup_that_is_right_needs_no_water(gallons: float, brix: float) -> None:
    assert thickness.water_to_add(gallons, brix, brix).gallons == 0
    assert thickness.water_to_boil_off(gallons, brix, brix).gallons == 0


def test_cups_and_ounces_are_the_same_water() -> None:
    water = thickness.water_to_add(1, 70, 66.9)
    assert water.cups == pytest.approx(water.fluid_ounces / 8)
    assert water.cups == pytest.approx(water.gallons * 16)


# Syrup in gallons, its Brix, the Brix wanted; fluid ounces and the gallons it ends with
# (computed: mass balance on the CRC sucrose densities).
@pytest.mark.parametrize(
    ("gallons", "brix", "wanted", "ounces", "ends"),
    [(1, 70, 66.9, 8.0, 1.06), (1, 69, 66.9, 5.4, 1.04), (2, 68, 66.5, 7.7, 2.06)],
)
def test_water_to_add(
    gallons: float, brix: float, wanted: float, ounces: float, ends: float
) -> None:
    water = thickness.water_to_add(gallons, brix, wanted)
    assert water.fluid_ounces == pytest.approx(ounces, abs=0.05)
    assert water.ends_gallons == pytest.approx(ends, abs=0.006)


@pytest.mark.parametrize(
    ("brix", "ounces", "ends"),
    [(64, 7.3, 0.944), (60, 17.0, 0.869)],
)
def test_water_to_boil_off(brix: float, ounces: float, ends: float) -> None:
    water = thickness.water_to_boil_off(1, brix, 66.9)
    assert water.fluid_ounces == pytest.approx(ounces, abs=0.06)
    assert water.ends_gallons == pytest.approx(ends, abs=6e-4)


def test_thin_syrup_is_not_thinned() -> None:
    with pytest.raises(ValueError, match=r"Syrup is 64 Brix, but should be 66.9 or more"):
        thickness.water_to_add(1, 64, 66.9)


def test_thick_syrup_is_not_boiled() -> None:
    with pytest.raises(ValueError, match=r"Syrup is 70 Brix, but should be 66.9 or less"):
        thickness.water_to_boil_off(1, 70, 66.9)


def test_sap_is_not_reckoned_by_the_cup() -> None:
    with pytest.raises(ValueError, match=r"Syrup is 2 Brix, but should be 40 to 84 Brix"):
        thickness.water_to_boil_off(1, 2, 66.9)
