"""Sources: 7 CFR 52.5961 as of 1967 (11 lb a gallon at 68 F); Taylor, University of Vermont
Experiment Station Bulletin 587, 1956 (8 lb of sugar in a gallon)."""

from __future__ import annotations

import pytest

from bot.reckoning.density import pounds_per_gallon, sugar_pounds


def test_the_old_eleven_pound_line_is_thinner_than_todays_law() -> None:
    """11 lb a gallon is 65.3 Brix weighed in vacuum and 65.5 weighed in air (0.1 % lighter), so
    syrup that just kept the old rule falls short of 66.0."""
    # A tenth of a Brix is 0.006 lb.
    assert pounds_per_gallon(65.3) == pytest.approx(11.0, abs=3e-3)
    assert pounds_per_gallon(65.5) * 0.999 == pytest.approx(11.0, abs=3e-3)
    assert pounds_per_gallon(66.0) > 11.0


@pytest.mark.parametrize(("brix", "pounds"), [(66.0, 7.28), (66.9, 7.41)])
def test_taylors_eight_pounds_of_sugar_are_too_many(brix: float, pounds: float) -> None:
    """Computed 7.28 and 7.41; Taylor rounds up to 8, which no legal syrup holds."""
    assert sugar_pounds(1, brix) == pytest.approx(pounds, abs=6e-3)
    assert sugar_pounds(1, 68.9) < 8
