"""When is it syrup: by measured water, height and barometer, hydrometer, and the law of a place."""

from __future__ import annotations

import pytest

from tests.answers.asking import asked, has_number


def test_measured_water_gives_the_draw_for_vermont() -> None:
    """Water at 210.4 and 66.9 Brix: 217.9 (common practice: 7.5 F above water)."""
    assert "217.9F" in asked("what temp do i draw at", "water boils at 210.4")


def test_measured_water_gives_the_draw_for_new_york() -> None:
    """66.0 Brix by 1 NYCRR 270.1: 7.2 F above water, by the activity of sucrose solutions."""
    assert "217.6F" in asked("what temp do i draw at", "water boils at 210.4", place="13343")


def test_height_and_barometer_stand_in_for_water() -> None:
    """1500 ft and an altimeter of 30.00: station 28.41 inHg by the US Standard Atmosphere, water
    209.35 by IAPWS-95, so 216.6 for 66.0 Brix."""
    reply = asked("what temp is syrup", "we're at 1500 ft", "barometer 30.00", place="13343")
    assert "209.3F" in reply or "209.4F" in reply
    assert has_number(reply, 216.5, 216.65)
    assert "boil plain water today" in reply


def test_height_alone_takes_standard_pressure_and_says_so() -> None:
    """Water boils at 210.13 at 1000 ft by IAPWS-95; the USDA's canning guide has 210.2."""
    reply = asked("what temp is syrup", "we're at 1000 ft", place="13343")
    assert has_number(reply, 210.05, 210.25)
    assert "weather" in reply


def test_water_measured_today_goes_before_height_and_barometer() -> None:
    reply = asked("what temp is syrup", "elevation 1500 ft", "barometer 30", "water boils at 211")
    assert "211F for you" in reply


def test_nothing_known_gives_the_rise_and_asks_for_water() -> None:
    reply = asked("when is it syrup, what temp")
    assert "7.5F above" in reply
    assert "water boils at" in reply


@pytest.mark.parametrize(
    ("reading", "at_f", "true", "verdict"),
    [
        ("60.4", "185", "66.9", "Syrup"),
        ("61.0", "185", "67.5", "Syrup"),
        ("58.2", "202", "65.5", "Boil on"),
    ],
)
def test_a_hydrometer_is_corrected_by_vermonts_chart(
    reading: str, at_f: str, true: str, verdict: str
) -> None:
    """The chart of Vermont's maple rule for hydrometers made for 60 F."""
    reply = asked(f"hydrometer {reading} at {at_f}, is that done")
    assert f"about {true} Brix" in reply
    assert verdict in reply


def test_the_same_hydrometer_in_baume() -> None:
    """32.75 Baume at 185 F is 36 at 60 F, which is 66.9 Brix (Vermont's chart)."""
    reply = asked("hydrometer 32.75 baume at 185")
    assert has_number(reply, 66.8, 67.0)


def test_a_pan_at_216_is_about_61_brix() -> None:
    """5.6 F above water at 210.4: 61 Brix by the activity of sucrose solutions."""
    reply = asked("what brix is a pan at 216?", "water boils at 210.4")
    assert "about 61 Brix" in reply
    assert "1.9F to go" in reply


@pytest.mark.parametrize(
    ("state", "said"),
    [("vermont", "Boil on, 0.4 short: Vermont has 66.9"), ("ohio", "Syrup: Ohio has 66")],
)
def test_a_density_is_judged_by_the_law_of_the_place_named(state: str, said: str) -> None:
    """66.5 Brix: under Vermont's 66.9, over the federal 66 (21 CFR 168.140)."""
    reply = asked(f"is 66.5 legal in {state}")
    assert said in reply
    assert "no legal certainty" in reply


def test_signs_by_eye_are_answered_by_know_how() -> None:
    assert "sheet" in asked("does it apron off the spoon when its syrup")
