"""Sources: USDA NASS, Maple Syrup (US yield, gallons of syrup a tap); OMAFRA 2020 (Ontario's
average); Davenport and Staats, Penn State and Cornell (sap and syrup by tree); University of
Maine (sap by the hole, as quoted)."""

from __future__ import annotations

import pytest

from bot import figures
from bot.reckoning.balance import syrup_gallons
from bot.reckoning.taps import PlannedTree, doubtful_day, plan

LITRES_PER_GALLON = figures.ML_PER_GALLON / 1000


@pytest.mark.parametrize(
    "per_tap",
    [
        0.304,  # NASS, US, all systems, 2018
        0.165,  # NASS, US, 2001, a poor season with more buckets in it
        1.1 / LITRES_PER_GALLON,  # OMAFRA 2020, Ontario's average
    ],
)
def test_the_countrys_yields_lie_within_what_a_plan_promises(per_tap: float) -> None:
    """A plan gives a range, and averages of whole countries must lie in it; tubing under vacuum
    is in these figures, which is why the best of them is near the middle and not at the top."""
    one_tap = plan([PlannedTree("1", 14, "sugar maple")], 66.0)
    assert one_tap.total_taps == 1
    assert one_tap.syrup_low < per_tap < one_tap.syrup_high


def test_a_forest_trees_ten_gallons_are_a_quart() -> None:
    """Davenport and Staats: about 10 gal of sap, 1 qt of syrup; that is sap of 2.2 Brix. Within
    10 %, for two round figures."""
    assert syrup_gallons(10, 2.2, 66.0) == pytest.approx(0.25, rel=0.10)


def test_an_open_grown_trees_half_gallon_needs_sweet_sap() -> None:
    """The same: 15 to 20 gal make half a gallon. By the balance that is 2.2 to 2.9 Brix, so open
    crowns are sweeter, which agrees with common practice."""
    assert syrup_gallons(20, 2.2, 66.0) == pytest.approx(0.5, rel=0.05)
    assert syrup_gallons(15, 2.9, 66.0) == pytest.approx(0.5, rel=0.05)


def test_a_big_day_is_believed_and_a_season_in_a_day_is_not() -> None:
    """Penn State Extension 2011, as quoted: 2 gal a tree in a good run; University of Maine: 5 to
    15 a hole in a season."""
    assert not doubtful_day(2 * 10, taps=10)
    assert doubtful_day(figures.SAP_PER_TAP_SEASON_GALLONS[0] * 10, taps=10)
