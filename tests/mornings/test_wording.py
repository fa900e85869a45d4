"""Whatever the weather and the records: one segment, in the cheap alphabet, from Pailtext."""

from __future__ import annotations

import random
import re
from datetime import date

import pytest

from bot.wording.gsm import is_gsm, segments
from tests.mornings.stage import Days, Season, weather_of


def invented_days(seed: int) -> Days:
    """Ninety days from 1 January on, no two alike."""
    chance = random.Random(seed)
    days = []
    for n in range(100):
        high = 22 + n * 0.4 + chance.uniform(-14, 14)
        days.append((high - chance.uniform(4, 30), high))
    return days


@pytest.mark.parametrize(("seed", "place"), [(1, "05760"), (2, "K0A 1A0"), (3, "54837")])
def test_every_unasked_text_fits_one_segment_and_says_from_whom_it_is(
    seed: int, place: str
) -> None:
    chance = random.Random(seed)
    made = Season(weather_of(invented_days(seed), date(2027, 1, 1)), "2027-02-01T00:00")
    unit = "L" if place.startswith("K") else "gal"
    made.settle(place, f"my pails hold {8 if unit == 'L' else 2} {unit}")
    left = made.until("2027-02-20T12:00")
    made.text("put in 120 taps", "2027-02-20T12:00")
    made.text("text me a weekly total", "2027-02-20T12:01")
    for day in range(22, 29):
        left += made.until(f"2027-02-{day}T17:59")
        made.text(f"{chance.randrange(20, 180)} {unit} at 2.1", f"2027-02-{day}T18:00")
    left += made.until("2027-03-02T06:59")
    made.text("lit the fire", "2027-03-02T07:00")
    left += made.until("2027-04-08T12:00")
    assert len(left) > 10
    for one in left:
        assert one.text.startswith("Pailtext: "), one.text
        assert is_gsm(one.text), one.text
        assert segments(one.text) == 1, one.text
        assert not re.search(r"!|successful|congrat|None|\d\.\d\d\d", one.text), one.text


def test_metric_people_hear_celsius_and_litres() -> None:
    made = Season(weather_of([(24, 44)] * 6))
    made.settle("K0A 1A0", "12 taps, 8 litre pails", "40 L at 2.2")
    left = made.until("2027-03-05T12:00")
    assert left
    assert all(not re.search(r"\dF\b|\bgal\b", one.text) for one in left)
    assert "-4C" in left[0].text
