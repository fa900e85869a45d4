"""Gallons are told as a range, and only once their own gatherings have taught it."""

from __future__ import annotations

import re

from tests.mornings.stage import Left, Season, alerts, weather_of

STEADY = [(24.0, 42.0)] * 16


def told_after(gatherings: int, gallons: str = "14 gal") -> list[Left]:
    """The alerts of the day after so many daily gatherings."""
    made = Season(weather_of(STEADY))
    made.settle("05760", "put in 20 taps")
    for day in range(1, gatherings + 1):
        made.text(f"{gallons} at 2", f"2027-03-{day:02}T18:00")
        made.text(f"boiled {gallons} in 3 hours", f"2027-03-{day:02}T21:00")
    day = gatherings + 1
    made.until(f"2027-03-{day:02}T06:00")
    return alerts(made.until(f"2027-03-{day:02}T07:00"))


def test_few_gatherings_teach_nothing() -> None:
    assert "Likely" not in told_after(4)[0].text


def test_enough_of_them_give_a_range_about_what_came() -> None:
    found = re.search(r"Likely ([\d.]+) to ([\d.]+) gal\.", told_after(9)[0].text)
    assert found is not None
    low, high = float(found[1]), float(found[2])
    assert low < 14 < high


def test_a_bush_that_gives_more_is_told_more() -> None:
    ranges = [
        re.search(r"Likely ([\d.]+) to ([\d.]+)", told_after(9, gallons)[0].text)
        for gallons in ("6 gal", "28 gal")
    ]
    less, more = (float(found[2]) for found in ranges if found is not None)
    assert more > 2 * less
