"""Numbers as people write and say them."""

from __future__ import annotations

import pytest

from bot.reading.amounts import amounts
from bot.reading.numbers import match
from bot.reading.tidy import tidy
from bot.reading.tokens import tokens


@pytest.mark.parametrize(
    ("said", "value"),
    [
        ("12", 12), ("2.2", 2.2), (".5", 0.5), ("2,2", 2.2), ("1,200", 1200), ("1/2", 0.5),
        ("½", 0.5),
        ("10¼", 10.25), ("10 1/4", 10.25), ("10-1/2", 10.5), ("twelve", 12), ("twenty five", 25),
        ("twenty-five", 25), ("two point one", 2.1), ("sixty six point nine", 66.9),
        ("210 point 6", 210.6),
        ("a hundred", 100), ("a hundred and twelve", 112), ("a dozen", 12), ("half a dozen", 6),
        ("two dozen", 24), ("a dozen and a half", 18), ("a couple", 2), ("half", 0.5),
        ("a half", 0.5),
        ("a quarter of a", 0.25), ("three quarters", 0.75), ("one and a half", 1.5),
        ("four and a half", 4.5),
        ("six and three quarter", 6.75), ("a third", 1 / 3), ("a fifth of a", 0.2),
    ],
)  # fmt: skip
def test_a_number_is_worth_what_it_says(said: str, value: float) -> None:
    """In figures, in words, in fractions, in dozens."""
    found = match(tokens(tidy(said)), 0)
    assert found is not None
    assert found.value == pytest.approx(value)


@pytest.mark.parametrize(
    ("said", "sort", "value"),
    [
        ("12 gal 3 qt", "volume", 12.75), ("3 gal + 4 gal + 2.5 gal", "volume", 9.5),
        ("6+5+8 gal", "volume", 19),
        ("half a gal and another half gal", "volume", 1.0), ("28 L", "volume", 28 / 3.785411784),
        ("5 imperial gallons", "volume", 5 * 4.54609 / 3.785411784),
        ("7 half pints", "volume", 7 / 16),
        ("3 C", "temp", 37.4), ("41F", "temp", 41), ("44 cm", "length", 44 / 2.54),
        ("17\"", "length", 17),
        ("90 minutes", "hours", 1.5), ("a face cord", "cords", 1 / 3), ("$38.50", "money", 38.5),
        ("12 bucks", "money", 12), ("5 kg", "mass", 5 / 0.45359237), ("2.4 brix", "brix", 2.4),
        ("2 %", "brix", 2),
    ],
)  # fmt: skip
def test_an_amount_is_worth_what_its_units_say(said: str, sort: str, value: float) -> None:
    """Conversions by Pint: US liquid measure, the imperial gallon, SI (NIST SP 811)."""
    (found,) = amounts(said)
    assert found.sort == sort
    assert found.value == pytest.approx(value, rel=1e-6)


@pytest.mark.parametrize(
    "said", ["10 to 12 gal", "10-12 gal", "between 10 and 12 gal", "10 or 12 gallons"]
)
def test_a_range_keeps_both_ends(said: str) -> None:
    """So that it can be asked which was meant."""
    (found,) = amounts(said)
    assert (found.low, found.high) == (10, 12)
