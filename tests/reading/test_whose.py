"""An outsider's doing is talk, an unknown doer is asked about, and our own people are ours."""

from __future__ import annotations

from datetime import datetime

import pytest

from bot.reading.read import read

SENT = datetime(2027, 3, 11, 17, 20)


@pytest.mark.parametrize(
    "text",
    [
        "the guy with the red truck got 30 gal",
        "word is the co-op pulled in 400 gal",
        "heard the big operation is at 3.1 brix",
        "over at the miller farm they drew off 4 gal",
        "a visitor asked whether 40 gal of sap make one of syrup",
    ],
)
def test_what_an_outsider_did_is_talk(text: str) -> None:
    meant = read(text, SENT)
    assert [reading.kind for reading in meant.readings] == ["chat"]
    assert meant.doubt is None


def test_an_unknown_doer_is_asked_about_and_ok_records_the_deed() -> None:
    meant = read("the wilsons boiled 60 gal", SENT)
    assert not meant.readings
    assert meant.doubt is not None
    assert meant.doubt.question == "The wilsons: is that of your own sugarbush?"
    ours = next(choice for choice in meant.doubt.choices if "ours" in choice.words)
    assert [reading.kind for reading in read(ours.text, SENT).readings] == ["boil"]


@pytest.mark.parametrize(
    "text",
    [
        "the third graders collected 8 gal",
        "our crew brought in 118 gal",
        "the kids hauled 12 gal",
        "hey folks got 12 gal",
        "the university lot got 12 gal",
        "in the morning they collected 12 gal",
        "the creek side gave 5 gal",
    ],
)
def test_our_own_people_and_places_are_recorded(text: str) -> None:
    meant = read(text, SENT)
    assert [reading.kind for reading in meant.readings] == ["sap"]
