"""Numbers in words become figures where their unit follows, and nowhere else."""

from __future__ import annotations

import pytest

from bot.reading.number_words import ONES, TENS, in_figures

_DIGITS = {"one": 1} | {word: number for word, number in ONES.items() if number < 10}


def _spoken() -> list[tuple[str, int]]:
    """Every number from 2 to 99, as it is said."""
    tens = [(word, number) for word, number in TENS.items()]
    both = [
        (f"{ten} {one}", number + more)
        for ten, number in TENS.items()
        for one, more in _DIGITS.items()
    ]
    return [*ONES.items(), *tens, *both]


@pytest.mark.parametrize(("said", "number"), _spoken())
def test_every_number_to_99_is_written_as_its_figure(said: str, number: int) -> None:
    assert in_figures(f"got {said} gallons") == f"got {number} gallons"
    assert in_figures(f"a hundred and {said} gallons") == f"{100 + number} gallons"


@pytest.mark.parametrize(
    ("text", "written"),
    [
        ("twenty-six gallons", "26 gallons"),
        ("two hundred gallons", "200 gallons"),
        ("set thirty five taps", "set 35 taps"),
        # 1.25, and not 1.2 and 5
        ("one point two five gallons", "one point two five gallons"),
        ("tested one point nine twelve gallons", "tested one point nine , 12 gallons"),
        # no unit, no figure
        ("two of the kids", "two of the kids"),
        ("three hundred", "three hundred"),
        ("one gallon", "one gallon"),
    ],
)
def test_only_a_number_before_its_unit_is_written(text: str, written: str) -> None:
    assert in_figures(text) == written
