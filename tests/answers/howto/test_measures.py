"""Measures are said as people say them, in their own units."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.answers.howto import measures
from bot.units import celsius


@pytest.mark.parametrize(
    ("inches", "us", "metric"),
    [
        (0.25, "1/4 in", "6 mm"),
        (1.0, "1 in", "2.5 cm"),
        (1.5, "1 1/2 in", "4 cm"),
        (2.0, "2 in", "5 cm"),
        (12.0, "12 in", "30 cm"),
        (24.0, "24 in", "60 cm"),
    ],
)
def test_lengths_are_fractions_of_inches_or_centimetres(
    inches: float, us: str, metric: str
) -> None:
    assert measures.length(inches, "us") == us
    assert measures.length(inches, "metric") == metric


def test_bits_keep_their_inches_beside_the_millimetres() -> None:
    assert measures.bit(5 / 16, "us") == "5/16 in"
    assert measures.bit(5 / 16, "metric") == "8 mm (5/16 in)"
    assert measures.bit(7 / 16, "metric") == "11 mm (7/16 in)"


def test_heights_are_feet_or_centimetres() -> None:
    assert measures.heights((24.0, 48.0), "us") == "2 to 4 ft"
    assert measures.heights((24.0, 48.0), "metric") == "60 to 120 cm"


def test_a_range_of_heat_says_its_unit_once() -> None:
    assert measures.heats((185.0, 190.0), "us") == "185 to 190F"
    assert measures.heats((20.0, 29.0), "metric") == "-7 to -2C"


def test_a_round_amount_of_gallons_has_no_decimals() -> None:
    assert measures.volume(2.0, "us") == "2 gal"
    assert measures.volume(3.25, "us") == "3.2 gal"
    assert measures.volume(2.0, "metric") == "7.6 L"


@given(st.floats(min_value=-40, max_value=230))
def test_a_least_heat_is_never_said_too_low_nor_a_most_too_high(degrees_f: float) -> None:
    least_c = int(measures.heat_at_least(degrees_f, "metric")[:-1])
    most_c = int(measures.heat_at_most(degrees_f, "metric")[:-1])
    assert least_c >= celsius(degrees_f) - 1e-5
    assert most_c <= celsius(degrees_f) + 1e-5
    assert int(measures.heat_at_least(degrees_f, "us")[:-1]) == math.ceil(degrees_f)
    assert int(measures.heat_at_most(degrees_f, "us")[:-1]) == math.floor(degrees_f)
