"""A question's answer, in one word, makes a whole text."""

from __future__ import annotations

from datetime import datetime

import pytest

from bot.reading import Profile, read, settle

SENT = datetime(2027, 3, 10, 18, 5)


@pytest.mark.parametrize(
    ("text", "answer", "kind", "field", "value"),
    [
        ("12", "gal", "sap", "gallons", 12),
        ("12", "gallons of sap", "sap", "gallons", 12),
        ("12", "taps", "taps_set", "count", 12),
        ("12 gal at 22", "ok", "sap", "brix", 2.2),
        ("12 gal at 22", "2.4", "sap", "brix", 2.4),
        ("12 gal at 22", "it was 2.1", "sap", "brix", 2.1),
        ("10 to 12 gal", "11", "sap", "gallons", 11),
        ("10 to 12 gal", "12 gal", "sap", "gallons", 12),
        ("5 full buckets", "10", "sap", "gallons", 10),
        ("filled 4 jars", "pints", "jars", "jars", [{"count": 4, "gallons_each": 0.125}]),
        ("minus 6 gal at 2.0", "6", "sap", "gallons", 6),
        ("water boils at 310 here", "210", "water_boils", "fahrenheit", 210),
        ("boiled 30 hours today", "3", "boil", "hours", 3),
        ("tree 12 is 44 inches", "round", "tree", "diameter_in", pytest.approx(14.006, abs=0.01)),
        ("tree 12 is 44 inches", "across", "tree", "diameter_in", 44),
        ("collected 9 gal on april 20", "march 9", "sap", "on", "2027-03-09"),
        ("set 12 to 15 taps", "14", "taps_set", "count", 14),
        ("tree 9", "2", "sap", "gallons", 2),
    ],
)
def test_a_short_answer_makes_the_record_that_was_meant(
    text: str, answer: str, kind: str, field: str, value: object
) -> None:
    """The question is asked, its answer fits, and what it makes reads without a doubt."""
    asked = read(text, SENT, Profile())
    assert asked.doubt is not None
    completed = settle(asked.doubt, answer)
    assert completed
    understood = read(completed, SENT, Profile())
    assert understood.ask is None, completed
    (reading,) = understood.readings
    assert reading.kind == kind
    assert reading.as_dict()[field] == value


@pytest.mark.parametrize(
    "answer", ["", "what?", "8 gal yesterday from the north lot", "thanks", "twelve-ish I guess"]
)
def test_what_does_not_answer_the_question_is_left_to_stand_on_its_own(answer: str) -> None:
    """A text that is no answer must not be forced into one."""
    doubt = read("12 gal at 22", SENT).doubt
    assert doubt is not None
    assert settle(doubt, answer) is None
