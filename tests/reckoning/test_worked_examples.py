"""Examples worked by hand, each with where its answer comes from.

"Computed" answers are worked out from published figures by the formulas that the module under
test names; `tests/outside` checks those formulas against other implementations and tables.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from typing import NamedTuple

import pytest

from bot.reckoning import (
    balance,
    boil,
    bottling,
    density,
    finish,
    fuel,
    grading,
    instruments,
    law,
    storage,
    taps,
    thickness,
)


class Example(NamedTuple):
    """What is asked, the answer reckoned, the answer wanted, how near it must be, its source."""

    asked: str
    reckon: Callable[[], float]
    wanted: float
    within: float
    source: str


def _station(altimeter_inhg: float, feet: float) -> float:
    return finish.water_boils_f(finish.station_inhg(altimeter_inhg, feet))


COMPUTED = "computed"
BALANCE = "computed: mass balance on the CRC sucrose densities"
# Half a unit of the last place that the example gives: they were rounded, not measured.
EXAMPLES = (
    Example("12 gal at 2.2", lambda: balance.syrup_gallons(12, 2.2, 66.9), 0.299, 5e-4, BALANCE),
    Example("the same, 66.0", lambda: balance.syrup_gallons(12, 2.2, 66.0), 0.305, 6e-4, BALANCE),
    Example("sugar in it, lb", lambda: density.sugar_pounds(12, 2.2), 2.22, 5e-3, BALANCE),
    Example("40 gal at 2.0", lambda: balance.syrup_gallons(40, 2.0, 66.9), 0.906, 5e-4, BALANCE),
    Example("the same, 66.0", lambda: balance.syrup_gallons(40, 2.0, 66.0), 0.922, 5e-4, BALANCE),
    Example(
        "the same by the rule of 86",
        lambda: 40 / balance.rule_of_86(2.0),
        0.930,
        5e-4,
        "C. H. Jones, University of Vermont, as quoted by others",
    ),
    Example("100 gal at 1.8", lambda: balance.syrup_gallons(100, 1.8, 66.9), 2.04, 5e-3, BALANCE),
    Example("5 gal at 3.0", lambda: balance.syrup_gallons(5, 3.0, 66.9), 0.171, 6e-4, BALANCE),
    Example("30 gal at 1.5", lambda: balance.syrup_gallons(30, 1.5, 66.9), 0.509, 6e-4, BALANCE),
    Example(
        "12 gal at 2.2 with 20 at 1.8",
        lambda: balance.mixed_brix([(12, 2.2), (20, 1.8)]),
        1.95,
        5e-3,
        BALANCE,
    ),
    Example("sap for a gallon, 2.5", lambda: balance.sap_per_syrup(2.5, 66.9), 35.3, 0.05, BALANCE),
    Example(
        "the same by the rule of 86",
        lambda: balance.rule_of_86(2.5),
        34.4,
        0.05,
        "C. H. Jones, as above; UNH Extension prints 34.4, as quoted by others",
    ),
    Example(
        "a gallon of 66.9 weighs, lb",
        lambda: density.pounds_per_gallon(66.9),
        11.08,
        5e-3,
        COMPUTED,
    ),
    Example(
        "its Baume",
        lambda: density.baume(66.9),
        36.0,
        0.05,
        "Vermont's maple rule, as quoted by others; UVM Extension 2022",
    ),
    Example(
        "finish, Vermont, water at 210.4",
        lambda: finish.finish_f(210.4, law.legal_density("VT").min_brix),
        217.9,
        1e-9,
        "common practice, no source: +7.5",
    ),
    Example(
        "finish for 66.0, water at 210.4",
        lambda: finish.finish_f(210.4, 66.0),
        217.6,
        1e-9,
        "computed: +7.2",
    ),
    Example(
        "station at 1500 ft, 30.00", lambda: finish.station_inhg(30, 1500), 28.41, 5e-3, COMPUTED
    ),
    Example("water there", lambda: _station(30, 1500), 209.35, 5e-3, COMPUTED),
    Example(
        "finish there, 66.0",
        lambda: finish.finish_f(_station(30, 1500), 66.0),
        216.6,
        0.06,
        COMPUTED,
    ),
    Example(
        "finish there, 66.9",
        lambda: finish.finish_f(_station(30, 1500), 66.9),
        216.9,
        0.06,
        COMPUTED,
    ),
    Example("1000 ft, 29.50", lambda: _station(29.5, 1000), 209.42, 6e-3, COMPUTED),
    Example("1000 ft, 30.30", lambda: _station(30.3, 1000), 210.76, 6e-3, COMPUTED),
    Example("station 29.00", lambda: finish.water_boils_f(29.0), 210.38, 5e-3, COMPUTED),
    Example("station 29.92", lambda: finish.water_boils_f(29.92), 211.95, 5e-3, COMPUTED),
    Example("station 30.50", lambda: finish.water_boils_f(30.5), 212.92, 5e-3, COMPUTED),
    Example("pan at 216, water 210.4", lambda: finish.pan_brix(216, 210.4), 61.0, 0.5, COMPUTED),
    Example(
        "syrup hydrometer 60.4 at 185",
        lambda: instruments.syrup_brix(60.4, 185),
        66.9,
        1e-9,
        "Vermont's chart, as quoted by others",
    ),
    Example(
        "61.0 at 185",
        lambda: instruments.syrup_brix(61.0, 185),
        67.5,
        1e-9,
        "computed from Vermont's chart",
    ),
    Example(
        "58.2 at 202",
        lambda: instruments.syrup_brix(58.2, 202),
        65.5,
        1e-9,
        "computed from Vermont's chart",
    ),
    Example(
        "sap 2.5 at 38, stem 60", lambda: instruments.sap_brix(2.5, 38, 60), 2.33, 5e-3, COMPUTED
    ),
    Example(
        "sap 2.0 at 68, stem 38", lambda: instruments.sap_brix(2.0, 68, 38), 2.35, 5e-3, COMPUTED
    ),
    Example(
        "sugar maple 16 in, conservative",
        lambda: taps.taps_for(16),
        1,
        0,
        "North American Maple Syrup Producers Manual; van den Berg and others, UVM 2012",
    ),
    Example(
        "the same, traditional",
        lambda: taps.taps_for(16, "traditional"),
        2,
        0,
        "the same manual, as quoted by mapleresearch.org",
    ),
    Example("57 in round, across", lambda: taps.diameter_in(57), 18.1, 0.05, COMPUTED),
    Example(
        "57 in round, taps",
        lambda: taps.taps_for(taps.diameter_in(57)),
        2,
        0,
        "the same manual, conservative",
    ),
    Example("9 in tree", lambda: taps.taps_for(9), 0, 0, "the same manual, both guidelines"),
    Example(
        "box elder, 60 gal at 1.5",
        lambda: balance.syrup_gallons(60, 1.5, 66.9),
        1.02,
        5e-3,
        BALANCE,
    ),
    Example(
        "sap at 41 F keeps, days",
        lambda: storage.keeps_days(41),
        2,
        0,
        "our own judgement: growth slow below 40 F, rapid over 50 (OSU Extension)",
    ),
    Example("sap at 52 F keeps, days", lambda: storage.keeps_days(52), 0, 0, "OSU Extension"),
    Example(
        "40 gal at 2.2, 2 by 3 ft pan, hours",
        lambda: _hours(40, 2.2, boil.pan_ft2(36, 24)),
        6.5,
        0.05,
        "computed; 1 gal/h/ft2 is common practice, no source",
    ),
    Example(
        "20 gal at 2.0, 4 ft2, hours",
        lambda: _hours(20, 2.0, 4),
        4.9,
        0.05,
        "computed; 1 gal/h/ft2 is common practice, no source",
    ),
    Example(
        "half a cord of sugar maple, 30 %",
        lambda: fuel.syrup_from_wood(0.5, 0.30, 2.0, 66.0),
        9.6,
        0.05,
        "computed; the cord from University of Kentucky",
    ),
    Example(
        "a 20 lb cylinder, 50 %",
        lambda: fuel.syrup_from_propane(20, 0.50, 2.0, 66.0),
        0.53,
        5e-3,
        "computed; propane from EIA, as quoted by others",
    ),
    Example(
        "water into 1 gal at 70, fl oz",
        lambda: thickness.water_to_add(1, 70, 66.9).fluid_ounces,
        8.0,
        0.05,
        COMPUTED,
    ),
    Example(
        "off 1 gal at 64, fl oz",
        lambda: thickness.water_to_boil_off(1, 64, 66.9).fluid_ounces,
        7.3,
        0.05,
        COMPUTED,
    ),
    Example(
        "ice, gallons left",
        lambda: balance.after_ice_range(10, 2.0, 3).gallons,
        7,
        0,
        COMPUTED,
    ),
    Example(
        "ice, least Brix",
        lambda: balance.after_ice_range(10, 2.0, 3).low_brix,
        2.64,
        5e-3,
        "computed; 0.5 Brix in the ice is common practice, no source",
    ),
    Example(
        "ice, most Brix",
        lambda: balance.after_ice_range(10, 2.0, 3).high_brix,
        2.86,
        5e-3,
        COMPUTED,
    ),
    Example("40 gal at 2.2 left at 20", lambda: balance.left_at(40, 2.2, 20), 4.10, 6e-3, BALANCE),
    Example("left at 40", lambda: balance.left_at(40, 2.2, 40), 1.88, 5e-3, BALANCE),
    Example("left at 60", lambda: balance.left_at(40, 2.2, 60), 1.15, 5e-3, BALANCE),
)


def _hours(sap_gallons: float, sap_brix: float, surface_ft2: float) -> float:
    syrup = balance.syrup_gallons(sap_gallons, sap_brix, 66.9)
    found = boil.boil_time(sap_gallons, syrup, surface_ft2=surface_ft2)
    assert found is not None
    return found.hours


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda one: f"{one.asked}: {one.wanted}")
def test_a_worked_example_comes_out(example: Example) -> None:
    assert example.reckon() == pytest.approx(example.wanted, rel=0, abs=example.within)


def test_two_days_of_weather_move_the_boiling_point_by_more_than_a_degree() -> None:
    """Computed: 1000 ft, barometer 29.50 and 30.30."""
    assert _station(30.3, 1000) - _station(29.5, 1000) == pytest.approx(1.34, abs=0.01)


def test_a_pan_at_216_where_water_boils_at_210_is_not_done() -> None:
    assert not finish.is_done(216, 210.4, 66.0)


def test_a_reading_on_vermonts_chart_is_legal_in_vermont() -> None:
    """Vermont's chart, as quoted by others: 60.4 at 185 F."""
    assert law.legal_density("VT").judge(instruments.syrup_brix(60.4, 185)) == "within"


def test_a_reading_above_the_chart_is_thick_but_within_the_law() -> None:
    assert law.legal_density("VT").judge(instruments.syrup_brix(61.0, 185)) == "within"


def test_a_reading_below_the_chart_must_boil_more() -> None:
    assert law.legal_density("VT").judge(instruments.syrup_brix(58.2, 202)) == "too thin"


def test_sap_at_41_f_is_boiled_within_two_days_of_gathering() -> None:
    assert storage.boil_by(date(2027, 3, 9), 41) == date(2027, 3, 11)


def test_sap_at_52_f_is_boiled_today() -> None:
    """OSU Extension: growth is rapid above 50 F."""
    assert storage.boil_by(date(2027, 3, 9), 52) == date(2027, 3, 9)


def test_bottling_at_172_f_means_reheating() -> None:
    """CFIA and OMAFRA: never under 180 F."""
    assert bottling.fill_advice(172) == "reheat"


def test_sixty_two_percent_of_light_is_amber_and_rich() -> None:
    """USDA AMS, US Standards for Grades of Maple Syrup, 2015."""
    assert grading.grade_class(62) == ("Amber", "rich")


def test_a_jar_of_66_5_is_too_thin_in_vermont_and_legal_in_ohio() -> None:
    """UVM Extension 2022 for Vermont, FDA 21 CFR 168.140 for Ohio."""
    assert law.legal_density("VT").judge(66.5) == "too thin"
    assert law.legal_density("OH").judge(66.5) == "within"
