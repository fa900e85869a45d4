"""Numbers are said as people say them."""

from __future__ import annotations

from datetime import date, time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.units import gallons as gallons_of
from bot.units import litres
from bot.wording import amounts
from bot.wording.days import day
from bot.wording.style import Style

US = Style("us", date(2027, 3, 10))
METRIC = Style("metric", date(2027, 3, 10))


@pytest.mark.parametrize(
    ("gallons", "said"),
    [
        (12, "12 gal"), (11.9999, "12 gal"), (57.5, "57.5 gal"), (12.25, "12.25 gal"),
        (100 / 3, "33.3 gal"), (20 / 3, "6.67 gal"), (128.37, "128.4 gal"), (0, "0 gal"),
        (0.0625, "0.06 gal"), (1200, "1200 gal"),
    ],
)  # fmt: skip
def test_sap_in_gallons(gallons: float, said: str) -> None:
    assert amounts.volume(gallons, US) == said


@pytest.mark.parametrize(
    ("amount_litres", "said"),
    [(45, "45 L"), (99, "99 L"), (2.5, "2.5 L"), (0.35, "350 mL"), (0, "0 L")],
)
def test_sap_in_litres(amount_litres: float, said: str) -> None:
    assert amounts.volume(gallons_of(amount_litres, "liter"), METRIC) == said


@pytest.mark.parametrize(
    ("gallons", "said"),
    [
        (0.5, "2 qt"), (0.25, "1 qt"), (0.75, "3 qt"), (0.125, "1 pint"), (0.375, "3 pints"),
        (0.5625, "4 1/2 pints"), (0.0625, "1/2 pint"), (0.4, "0.4 gal"), (1, "1 gal"),
        (1.125, "1.125 gal"), (2.5, "2.5 gal"),
    ],
)  # fmt: skip
def test_syrup_in_quarts_and_pints_where_it_comes_out_even(gallons: float, said: str) -> None:
    assert amounts.syrup(gallons, US) == said


@pytest.mark.parametrize(
    ("gallons", "short", "full"),
    [
        (1.42, "about 1.4 gal", "about 1.4 gal (11 1/2 pints)"),
        (0.299, "about 2 1/2 pints", "about 0.3 gal (2 1/2 pints)"),
        (0.98, "about 0.98 gal", "about 0.98 gal (8 pints)"),
        (2.04, "about 2 gal", "about 2 gal (16 1/2 pints)"),
        (0.05, "about 6.4 fl oz", "about 0.05 gal (6.4 fl oz)"),
        (14.2, "about 14 gal", "about 14 gal"),
    ],
)
def test_expected_syrup_in_two_figures(gallons: float, short: str, full: str) -> None:
    assert amounts.about_syrup(gallons, US) == short
    assert amounts.about_syrup_full(gallons, US) == full


def test_expected_syrup_in_litres() -> None:
    assert amounts.about_syrup(gallons_of(1.138, "liter"), METRIC) == "about 1.1 L"
    assert amounts.about_syrup(gallons_of(0.1138, "liter"), METRIC) == "about 110 mL"


@pytest.mark.parametrize(
    ("value", "said"), [(0.0921, "0.092"), (0.996, "1"), (9.96, "10"), (138, "140"), (0, "0")]
)
def test_two_figures(value: float, said: str) -> None:
    assert amounts.two_figures(value) == said


@pytest.mark.parametrize(
    ("hours", "said"), [(7, "7 h"), (7.25, "7 h 15 min"), (0.5, "30 min"), (7.9999, "8 h")]
)
def test_hours(hours: float, said: str) -> None:
    assert amounts.hours(hours) == said


@pytest.mark.parametrize(
    ("at", "said"),
    [(time(0), "12 am"), (time(12), "12 pm"), (time(14, 5), "2:05 pm"), (time(9), "9 am")],
)
def test_clock_times(at: time, said: str) -> None:
    assert amounts.clock(at) == said


def test_money_fuel_and_temperatures() -> None:
    assert [amounts.dollars(one) for one in (12, 7.49, 0.5)] == ["$12", "$7.49", "$0.50"]
    assert [amounts.cords(one) for one in (0.25, 1 / 3, 1, 1.5)] == [
        "1/4 cord", "1/3 cord", "1 cord", "1.5 cords"
    ]  # fmt: skip
    assert amounts.temperature(210.4, US) == "210.4F"
    assert amounts.temperature(0.0, US) == "0F"
    assert amounts.temperature(41.0, METRIC) == "5C"
    assert (amounts.cold_limit(38, US), amounts.cold_limit(38, METRIC)) == ("38F", "3C")


@pytest.mark.parametrize(
    ("gallons", "said"),
    [(0.125, "pint"), (0.0625, "half pint"), (0.25, "quart"), (0.09375, "12 oz jar")],
)
def test_jars_by_their_names(gallons: float, said: str) -> None:
    assert amounts.jar_size(gallons, US) == said


@given(st.floats(0.02, 500))
def test_what_is_said_of_a_volume_is_within_a_hundredth_of_it(gallons: float) -> None:
    said = float(amounts.volume(gallons, US).split()[0])
    assert said == pytest.approx(gallons, rel=0.01, abs=0.006)


@given(st.floats(0.3, 500))
def test_litres_are_said_within_a_hundredth(gallons: float) -> None:
    said = float(amounts.volume(gallons, METRIC).split()[0])
    assert said == pytest.approx(litres(gallons), rel=0.01)


@pytest.mark.parametrize(
    ("on", "said"),
    [
        (date(2027, 3, 10), "Wed"), (date(2027, 3, 4), "Thu"), (date(2027, 3, 3), "Mar 3"),
        (date(2026, 3, 28), "Mar 28 2026"), (date(2027, 3, 12), "Fri"),
    ],
)  # fmt: skip
def test_days(on: date, said: str) -> None:
    assert day(on, date(2027, 3, 10)) == said
