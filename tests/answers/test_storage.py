"""Is my sap still good. The days by temperature are a rule of thumb: 38 F and 7 days are many
extension pages', rapid growth above 50 F is Ohio State's, the rows between our own."""

from __future__ import annotations

from tests.answers.asking import all_said, asked
from tests.conversation.stage import Stage


def test_sap_at_41_and_a_day_old_is_boiled_within_a_day() -> None:
    reply = asked("is sap at 41 still ok, it is 1 day old")
    assert "keeps about 2 days" in reply
    assert "within 1 day" in reply


def test_sap_at_52_is_boiled_today() -> None:
    assert "the day it is gathered" in asked("is sap at 52 still good")


def test_the_nose_overrules_it() -> None:
    assert "pour it out" in asked("is sap at 36 still good")


def test_the_oldest_comes_first() -> None:
    stage = Stage()
    stage.settled()
    stage.text("10 gal at 2", "2027-03-03T18:00")
    stage.text("20 gal at 2", "2027-03-04T18:00")
    said = all_said(stage, "is my sap still good", "2027-03-04T19:00")
    assert "About 30 gal waits" in said[0]
    assert "10 gal of Wed" in said[1]
    assert said[1].index("of Wed") < said[1].index("of Thu")


def test_sap_that_is_past_its_day_is_smelt_and_boiled() -> None:
    stage = Stage()
    stage.settled()
    stage.text("10 gal at 2", "2027-03-01T18:00")
    stage.text("sap is at 47F", "2027-03-01T18:01")
    assert "past its day" in stage.text("is my sap still good", "2027-03-04T19:00")
