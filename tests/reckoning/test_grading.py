"""Colour classes by measured light."""

from __future__ import annotations

import pytest

from bot.reckoning.grading import grade_class


@pytest.mark.parametrize(
    ("percent", "colour", "taste"),
    [
        (100, "Golden", "delicate"),
        (75.0, "Golden", "delicate"),
        (74.9, "Amber", "rich"),
        (50.0, "Amber", "rich"),
        (49.9, "Dark", "robust"),
        (25.0, "Dark", "robust"),
        (24.9, "Very Dark", "strong"),
        (0.0, "Very Dark", "strong"),
    ],
)
def test_each_class_begins_at_its_published_light(percent: float, colour: str, taste: str) -> None:
    """USDA AMS, US Standards for Grades of Maple Syrup, 2015."""
    assert grade_class(percent) == (colour, taste)


@pytest.mark.parametrize("percent", [-1, 101])
def test_light_that_cannot_be_is_refused(percent: float) -> None:
    with pytest.raises(ValueError, match=r"Light transmission is .* %, but should be 0 to 100 %"):
        grade_class(percent)
