"""Reading between the rows, and refusing numbers."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot import figures
from bot.reckoning import checks
from bot.reckoning.tables import between_rows, turned

ROWS = ((0.0, 10.0), (2.0, 20.0), (6.0, 0.0))


@pytest.mark.parametrize(("x", "y"), [(0, 10), (1, 15), (2, 20), (4, 10), (6, 0)])
def test_between_the_rows_is_a_straight_line(x: float, y: float) -> None:
    assert between_rows(ROWS, x) == y


@given(st.floats(0, 6))
def test_nothing_lies_outside_the_second_column(x: float) -> None:
    assert 0 <= between_rows(ROWS, x) <= 20


@pytest.mark.parametrize("x", [-0.001, 6.001, float("nan")])
def test_outside_the_table_is_refused(x: float) -> None:
    with pytest.raises(ValueError, match="is outside the table, which runs from 0 to 6"):
        between_rows(ROWS, x)


@pytest.mark.parametrize(
    "table",
    [
        figures.SUCROSE_RISE_F,
        figures.VERMONT_CHART_BRIX,
        figures.SAP_HYDROMETER_ADD_BRIX,
        figures.HOT_SYRUP_SHRINKS_TO,
    ],
)
def test_every_table_of_the_figures_rises_in_its_first_column(table: figures.Table) -> None:
    assert all(one[0] < other[0] for one, other in pairwise(table))


@given(st.floats(0, 17))
def test_a_table_turned_and_turned_back_is_itself(rise: float) -> None:
    table = figures.SUCROSE_RISE_F
    assert between_rows(table, between_rows(turned(table), rise)) == pytest.approx(rise)


def test_a_refusal_names_the_thing_the_value_and_the_bounds() -> None:
    with pytest.raises(ValueError, match=r"^Sap is 120 F, but should be 32 to 80 F$"):
        checks.within("Sap", 120, 32, 80, "F")
    with pytest.raises(ValueError, match=r"^Sap is -1 gal, but should be 0 or more$"):
        checks.not_negative("Sap", -1, "gal")
    with pytest.raises(ValueError, match=r"^Taps is 0 in number, but should be more than 0$"):
        checks.positive("Taps", 0, "in number")


@pytest.mark.parametrize("value", [float("nan"), float("inf"), float("-inf")])
def test_what_is_no_number_is_refused_everywhere(value: float) -> None:
    with pytest.raises(ValueError, match="Sap is"):
        checks.within("Sap", value, 0, 1, "gal")
    with pytest.raises(ValueError, match="Sap is"):
        checks.not_negative("Sap", value, "gal")
    with pytest.raises(ValueError, match="Sap is"):
        checks.positive("Sap", value, "gal")


def test_the_bounds_themselves_and_zero_are_allowed() -> None:
    assert checks.within("Sap", 0, 0, 1, "gal") == 0
    assert checks.within("Sap", 1, 0, 1, "gal") == 1
    assert checks.not_negative("Sap", 0, "gal") == 0
