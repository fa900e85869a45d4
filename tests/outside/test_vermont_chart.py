"""Source: the density chart of Vermont's maple rule (hydrometers made for 60 F; Brix and Baume
that mean 66.9 Brix), as instrument makers and others quote it; 36 to 37 Baume by UVM Extension,
Maple Minute videos, 2022."""

from __future__ import annotations

import pytest

from bot import figures
from bot.reckoning.density import baume
from bot.reckoning.instruments import syrup_line
from tests.outside import sugar_technologists_manual as manual

# Degrees F, and the chart's Baume column beside its Brix.
BAUME_COLUMN = (
    *((209, 32.0), (202, 32.25), (193, 32.5), (185, 32.75), (176, 33.0), (167, 33.25)),
    *((158, 33.5), (149, 33.75), (140, 34.0), (130, 34.25), (120, 34.5), (110, 34.75)),
    *((100, 35.0), (90, 35.25), (80, 35.5), (70, 35.75), (60, 36.0), (50, 36.25)),
)


@pytest.mark.parametrize(("brix", "degrees"), [(66.9, 36.0), (68.9, 37.0)])
def test_vermonts_baume_line_is_its_brix_line(brix: float, degrees: float) -> None:
    """Within 0.02, where a hydrometer's marks are 0.1 or more apart."""
    assert baume(brix) == pytest.approx(degrees, abs=0.02)


@pytest.mark.parametrize(("syrup_f", "degrees"), BAUME_COLUMN)
def test_the_charts_two_columns_agree_by_our_baume(syrup_f: float, degrees: float) -> None:
    """Within 0.1 Baume: its Brix is rounded to 0.1, which is 0.05 Baume, and its Baume goes by
    quarters. From 140 to 176 F the columns disagree by up to 0.09 (0.17 Brix), the Baume being
    nearer to sucrose; we use the Brix, as most stems show it."""
    assert baume(syrup_line(syrup_f, 66.9)) == pytest.approx(degrees, abs=0.1)


def test_the_chart_is_nearly_a_straight_line() -> None:
    """Computed: 70.05 - 0.0521 F runs within 0.16 Brix of every row."""
    for syrup_f, brix in figures.VERMONT_CHART_BRIX:
        assert 70.05 - 0.0521 * syrup_f == pytest.approx(brix, abs=0.165)


def test_the_chart_for_66_is_nine_tenths_lower_but_a_whole_one_at_209() -> None:
    """Instrument makers print 59.5 at 185, 60.0 at 176, 60.5 at 167 and 58.0 at 209 for 66.0.
    Our line is 0.9 below the chart everywhere: within 0.1, a mark on the scale."""
    for syrup_f, printed in ((185, 59.5), (176, 60.0), (167, 60.5), (209, 58.0)):
        assert syrup_line(syrup_f, 66.0) == pytest.approx(printed, abs=0.11)


def test_chart_and_sucrose_agree_cold_and_hot_and_disagree_between() -> None:
    """Against Bubnik and others (Sugar Technologists Manual, 1995) the chart lies 0.3 Brix low
    from 100 to 158 F, so a reading on the chart there is syrup of 66.6; at 60 F and above 185 F,
    where syrup is tested, it is within 0.15. The chart is the law's, so it is the one we use."""
    differs = manual.chart_differs(figures.VERMONT_CHART_BRIX, 66.9, 60)
    for syrup_f in (50, 60, 70, 80, 185, 193, 202, 209):
        assert abs(differs[syrup_f]) <= 0.15
    for syrup_f in (100, 110, 120, 130, 140, 149, 158):
        assert -0.35 <= differs[syrup_f] <= -0.25


def test_the_hot_line_lies_a_tenth_above_the_charts_last_row_though_hotter() -> None:
    """Instrument makers: 59.1 at 211 F, where the chart has 59.0 at 209 and would go on falling;
    by sucrose it should read 59.0. So a hot test is good to 0.2, as `figures` says."""
    hot_line = 59.1
    assert hot_line > syrup_line(209, 66.9)
    by_sucrose = manual.hydrometer_reads(66.9, 211, 60)
    assert by_sucrose == pytest.approx(59.0, abs=0.05)
    assert abs(hot_line - by_sucrose) <= figures.HOT_TEST_BRIX_DOUBT
