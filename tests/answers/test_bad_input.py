"""Figures that cannot be, in every sort of question: asked after or passed over, never a fall."""

from __future__ import annotations

import random

import pytest

from bot.reading.topics import NONE, examples
from bot.wording.gsm import is_gsm
from tests.answers.asking import asked
from tests.conversation.stage import Stage

FIGURES = ("-5", "0", "0.001", "3", "38", "66.9", "70", "185", "216", "400", "9999", "1e9")
UNITS = (
    *("gal", "at", "brix", "F", "C", "in", "ft", "inches around", "cords", "lb propane"),
    *("$ a gallon", "qt", "days old", "taps", "hpa"),
)


@pytest.mark.parametrize("topic", sorted(set(examples()) - {NONE}))
def test_no_figure_makes_an_answer_fall(topic: str) -> None:
    """Three of the topic's own examples, each with invented figures behind it."""
    chance = random.Random(topic)
    stage = Stage()
    stage.settled()
    stage.text("12 gal at 2.2", "2027-03-04T18:00")
    for words in chance.sample(examples()[topic], 3):
        figures = " ".join(f"{chance.choice(FIGURES)} {chance.choice(UNITS)}" for _ in range(2))
        reply = stage.text(f"{words} {figures}", "2027-03-05T09:00")
        assert reply
        assert is_gsm(reply)


@pytest.mark.parametrize(
    ("question", "thing"),
    [
        ("how much syrup from 40 gal at 90", "Sap sugar 90 Brix?"),
        ("if i get 0 gal at 2 how much syrup", "Sap 0 gal?"),
        ("how long for 40 gal at 90 in a 2x3 pan", "Sap sugar 90 Brix?"),
        ("how many taps for a 300 inch tree across", "The tree 300 in across?"),
        ("what temp is syrup at 20000 ft", "Elevation 20000 ft?"),
        ("how long does sap keep at -80F", "Stored sap -80 F?"),
        ("light transmission 140 what grade", "Light transmission 140 %?"),
    ],
)
def test_a_figure_that_cannot_be_is_asked_after_in_one_line(question: str, thing: str) -> None:
    reply = asked(question)
    assert reply.startswith(thing)
    assert reply.endswith("What is it?")
    assert "\n" not in reply


def test_the_question_is_in_the_persons_units() -> None:
    reply = asked("how long does sap keep at -80F", place="k0a 1a0")
    assert "-62" in reply
    assert "-40 to 48.9 C" in reply
