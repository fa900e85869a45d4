"""How long a boil takes, when to light the fire, how much fuel.

Hours in a flat pan are common practice (a gallon of water an hour for each square foot). Wood is
checked against heat by IAPWS-95 and the University of Kentucky's figures for a cord.
"""

from __future__ import annotations

import pytest

from tests.answers.asking import asked, has_number
from tests.conversation.stage import Stage


def test_40_gallons_in_a_2_by_3_pan_take_six_and_a_half_hours() -> None:
    """39.0 gal of water at 6 gal an hour (common practice)."""
    assert "about 6 1/2 h" in asked("how long to boil 40 gal at 2.2 in a 2x3 pan")


def test_20_gallons_on_4_square_feet_take_five_hours() -> None:
    """19.5 gal of water at 4 gal an hour is 4.9 h (common practice)."""
    assert "about 5 h" in asked("how long to boil 20 gal at 2.0 in a 2x2 pan")


def test_the_pan_is_asked_for_when_nothing_is_known_to_go_by() -> None:
    assert "What size is your pan" in asked("how long will 40 gal take to boil")


def test_the_sap_is_asked_for_when_none_waits() -> None:
    assert "How much sap" in asked("how long will it take to boil", "my pan is 2x3 ft")


def test_the_sap_that_waits_is_meant_when_none_is_named() -> None:
    reply = asked("how long will it take to boil", "my pan is 2x3 ft", "24 gal at 2")
    assert "The 24 gal that waits" in reply
    assert "about 4 h" in reply


def test_a_pan_that_is_only_asked_about_is_not_remembered() -> None:
    stage = Stage()
    stage.settled()
    stage.text("how long for 40 gal in a 2x6 pan")
    assert "What size is your pan" in stage.text("how long for 40 gal")


def test_half_a_cord_boils_down_nearly_ten_gallons_at_30_percent() -> None:
    """Kentucky: 25.9 million BTU in a cord of sugar maple; at 30 % half a cord makes 9.6 gal of
    66 Brix at 2 Brix, which lies between a block arch at 15 % and an evaporator at 60 %."""
    reply = asked("how much syrup from half a cord", place="13343")
    low, high = 9.6 / 2, 9.6 * 2
    assert has_number(reply, low - 0.15, low + 0.15)
    assert has_number(reply, high - 0.3, high + 0.3)


def test_propane_for_the_half_gallon_of_a_cylinder() -> None:
    """A 20 lb cylinder makes 0.53 gal of syrup of 66 Brix at 2 Brix and 50 %, so the 23.0 gal of
    sap in that take 20 lb at 50 % and 15 at 65 %."""
    reply = asked("how much propane for 23 gal at 2.0", place="13343")
    assert has_number(reply, 19.5, 20.5)
    assert has_number(reply, 15, 16)
    assert "carbon monoxide" in reply


def test_wood_goes_by_what_was_burned_so_far() -> None:
    reply = asked("how much wood for 80 gal", "boiled 40 gal in 5 hours", "burned half a cord")
    assert "1 cord" in reply
    assert "as you burned 1/2 cord for 40 gal" in reply


@pytest.mark.parametrize(
    ("words", "clock"), [("by 9 pm", "9 pm"), ("by 6", "6 pm"), ("by 5:30", "5:30 pm")]
)
def test_a_fire_is_lit_in_time_for_the_hour_that_is_named(words: str, clock: str) -> None:
    reply = asked(f"when do i light the fire for 12 gal at 2 to be done {words}", "my pan is 2x3")
    assert f"by {clock}" in reply


def test_before_dark_needs_a_place() -> None:
    stage = Stage()
    stage.text("hello", "2027-02-20T12:00")
    stage.text("my pan is 2x3 ft", "2027-03-05T08:00")
    reply = stage.text("when do i light the fire for 12 gal at 2 to be done before dark")
    assert "ZIP or town" in reply


def test_the_fire_is_never_left_alone() -> None:
    assert "Never leave it alone" in asked("how long for 40 gal at 2 in a 2x3 pan")


def test_ones_own_rate_is_told_from_the_boils_of_the_season() -> None:
    reply = asked("whats my rate in gallons per hour", "boiled 40 gal in 5 hrs")
    assert "8 gal an hour over 1 boil" in reply
