"""The know-how in the conversation: the right part first, figures first, two offered if unsure."""

from __future__ import annotations

from datetime import datetime

import pytest

from bot.answers.howto import HOWTO
from bot.answers.howto.told import Told
from bot.answers.know_how import either, nearest_first
from bot.reading import read
from bot.wording.gsm import is_gsm, segments
from bot.wording.know_how import NAMES
from tests.answers.asking import all_said, asked
from tests.conversation.stage import Stage

SENT = datetime(2027, 3, 5, 9, 0)


def test_every_how_to_has_a_name_to_be_offered_by() -> None:
    assert set(NAMES) == set(HOWTO)


@pytest.mark.parametrize("howto", sorted(NAMES))
def test_the_words_that_stand_for_a_how_to_are_read_as_it(howto: str) -> None:
    """Chosen between two, it is read again: it must not be doubted once more."""
    readings = read(NAMES[howto].asked, SENT).readings
    assert [one.as_dict() for one in readings] == [
        {"kind": "question", "topic": "howto", "howto": howto}
    ]


def test_two_that_are_offered_have_words_apart_and_fit_a_text() -> None:
    for first in NAMES:
        for second in NAMES:
            if first == second:
                continue
            doubt = either(first, second)
            assert is_gsm(doubt.question)
            assert segments(doubt.question) == 1
            words = [set(choice.words) for choice in doubt.choices]
            assert doubt.choices[0].words[0] not in words[1]
            assert doubt.choices[1].words[0] not in words[0]


@pytest.mark.parametrize("howto", sorted(NAMES))
def test_more_brings_all_of_a_how_to_a_text_at_a_time(howto: str) -> None:
    stage = Stage()
    stage.settled()
    said = all_said(stage, NAMES[howto].asked)
    assert len(said) >= 2
    assert len(set(said)) == len(said)
    assert all(segments(text) <= 2 for text in said)


def test_a_part_that_speaks_of_what_is_asked_comes_first() -> None:
    assert "Lead" in asked("is there lead in my old buckets")


def test_an_opening_that_is_as_near_stays_first() -> None:
    parts = Told("Wash it hot.", ("Dry it in the sun.",))
    assert nearest_first("how do i wash it", parts) == ("Wash it hot.", "Dry it in the sun.")
    assert nearest_first("does it dry in the sun", parts)[0] == "Dry it in the sun."


def test_no_part_is_lost_when_another_comes_first() -> None:
    parts = Told("Wash it hot.", ("Dry it in the sun.", "Stack it clean."))
    assert set(nearest_first("dry in the sun", parts)) == {parts.first, *parts.more}


def test_a_bit_that_was_told_changes_the_advice() -> None:
    assert "Your 7/16 in bit" in asked("which bit do i use", "my bit is 7/16")


def test_water_measured_today_changes_the_advice() -> None:
    reply = asked("how do i finish syrup", "water boils at 210.4")
    assert "217.9F" in reply


@pytest.mark.parametrize(
    ("percent", "colour", "taste"),
    [(80, "Golden", "delicate"), (62, "Amber", "rich"), (30, "Dark", "robust")],
)
def test_a_light_transmission_has_a_class_and_no_promise(
    percent: int, colour: str, taste: str
) -> None:
    """USDA AMS, United States Standards for Grades of Maple Syrup, 2015."""
    reply = asked(f"light transmission {percent} what grade")
    assert colour in reply
    assert taste in reply
    assert "I promise no grade" in reply


def test_a_gallon_at_70_takes_a_cup_of_water() -> None:
    """8.0 fl oz to 66.9 Brix, by mass balance with the CRC Handbook's densities."""
    reply = asked("1 gal at 70 brix too thick")
    assert "8 fl oz" in reply
    assert "1.06 gal" in reply


def test_a_gallon_at_64_loses_seven_ounces() -> None:
    """7.3 fl oz to 66.9 Brix, by the same balance."""
    assert "7.3 fl oz" in asked("1 gal at 64 brix too thin")


def test_two_gallons_at_68_to_a_density_that_is_named() -> None:
    """7.7 fl oz to 66.5 Brix, by the same balance."""
    assert "7.7 fl oz" in asked("2 gal at 68 brix too thick, want 66.5")


def test_syrup_at_172_is_reheated_before_it_is_bottled() -> None:
    """CFIA maple manual and OMAFRA: 180 F or more under the cap."""
    reply = asked("bottling at 172 ok?")
    assert "reheat to 185F" in reply
    assert "gloves" in reply.casefold()


def test_how_long_sap_keeps_at_a_temperature() -> None:
    assert "keeps about 2 days" in asked("how long does sap keep at 41")


@pytest.mark.parametrize(
    ("question", "first"),
    [
        ("can the kids stand near the evaporator?", "children and pets well back"),
        ("is my dog ok near the fire", "children and pets well back"),
        ("can kids drink raw sap", "not pasteurized"),
        ("is lead in old pails bad for kids at the boil", "Lead:"),
    ],
)
def test_safety_opens_with_what_was_asked(question: str, first: str) -> None:
    assert first in asked(question)
