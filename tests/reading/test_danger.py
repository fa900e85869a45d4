"""Cries for help are told apart from fires that are lit and wood that is burned."""

from __future__ import annotations

from datetime import datetime

import pytest

from bot.reading import read
from bot.reading.danger import danger
from bot.reading.kinds import Question

SENT = datetime(2027, 3, 5, 18)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("the pan is on fire", "fire"),
        ("the roof caught fire", "fire"),
        ("chimney fire!!", "fire"),
        ("fire is spreading to the shed", "fire"),
        ("burned my hand on the pan", "burn"),
        ("syrup got on his face", "burn"),
        ("kid fell in the sap tank help", "harm"),
        ("co alarm is going off", "harm"),
        ("dad passed out in the sugarhouse", "harm"),
    ],
)
def test_a_cry_for_help_is_heard_and_nothing_is_recorded(text: str, said: str) -> None:
    assert danger(text) == said
    assert read(text, SENT).readings == (Question(topic="howto", howto="safety"),)


@pytest.mark.parametrize(
    "text",
    [
        "pan's on the fire",
        "lit the fire at 8",
        "burned a quarter cord",
        "burned a face cord this weekend",
        "fire's out",
        "let the fire burn down",
        "burned through half a cord",
        "fell behind on the boiling",
    ],
)
def test_what_only_sounds_like_it_is_no_cry_for_help(text: str) -> None:
    assert danger(text) is None
