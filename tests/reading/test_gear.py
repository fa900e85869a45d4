"""Gear that is told is read by itself; amounts beside it are not lost, nor taken for it."""

from __future__ import annotations

from datetime import datetime
from math import pi

import pytest

from bot.reading import Profile, read
from bot.reading.kinds import Gear, Question, Sap
from bot.reading.kinds.gear import mentioned

SENT = datetime(2027, 3, 5, 18, 0)


def gear(text: str, units: str = "us") -> Gear | None:
    found = [one for one in read(text, SENT, Profile(units=units)).readings if type(one) is Gear]
    return found[0] if found else None


@pytest.mark.parametrize(
    ("text", "ft2"),
    [
        ("my pan is 2x3 ft", 6.0),
        ("2x3 pan", 6.0),
        ("our pan is 2 by 4 feet", 8.0),
        ("24 x 36 in pan", 6.0),
        ("My pan is 24x36", 6.0),
        ("i boil in a 2x6 flat pan", 12.0),
        ("pan is 6 square feet", 6.0),
        ("my pan is 24 inches round", pi),
        ("it's a 12x20 steam pan, we use it as the pan", None),
    ],
)
def test_a_pan(text: str, ft2: float | None) -> None:
    found = gear(text)
    if ft2 is None:
        assert found is None
    else:
        assert found is not None
        assert found.pan_ft2 == pytest.approx(ft2)


def test_a_pan_in_centimetres() -> None:
    found = gear("my pan is 60x90", "metric")
    assert found is not None
    assert found.pan_ft2 == pytest.approx(0.54 * 10.7639, rel=1e-4)


@pytest.mark.parametrize(
    ("text", "field", "value"),
    [
        ("we're at 1200 ft", "elevation_ft", 1200.0),
        ("elevation 1200", "elevation_ft", 1200.0),
        ("our trees are at 1,450 feet", "elevation_ft", 1450.0),
        ("we sit at 350 m", "elevation_ft", 350 / 0.3048),
        ("my bit is 7/16", "bit_in", 7 / 16),
        ("I use a 5/16 bit", "bit_in", 5 / 16),
        ("my hydrometer stem says 38", "stem_f", 38.0),
        ("hydrometer is calibrated for 60", "stem_f", 60.0),
        ("we boil on propane", "fire", "propane"),
        ("i burn wood", "fire", "wood"),
        ("barometer is 29.7", "barometer_inhg", 29.7),
        ("barometer 1013.25 hpa", "barometer_inhg", 29.92),
        ("my price is $15 a pint", "price", 120.0),
        ("i sell it for $60 a gallon", "price", 60.0),
    ],
)
def test_other_gear(text: str, field: str, value: float | str) -> None:
    found = gear(text)
    assert found is not None
    told = getattr(found, field)
    assert told == (value if isinstance(value, str) else pytest.approx(value, rel=1e-3))


@pytest.mark.parametrize(
    "text",
    [
        "12 gal at 2.2",
        "pan at 216",
        "fire lit at 8, pan at 210 by 9",
        "tree 7 sugar maple 16 in",
        "5/16 spiles, set 21 of them",
        "spent $60 on a pan",
        "sold a gallon for $60",
        "burned a quarter cord",
        "is my pan big enough",
        "what size pan do i need, 2x3 or 2x4?",
        "walked 1200 ft to the far lot",
    ],
)
def test_what_is_no_gear(text: str) -> None:
    assert gear(text) is None


def test_sap_told_beside_a_pan_is_still_sap() -> None:
    readings = read("12 gal at 2.2, my pan is 2x3 ft", SENT).readings
    assert {type(one) for one in readings} == {Gear, Sap}


def test_a_question_beside_a_pan_is_still_asked() -> None:
    readings = read("my pan is 2x3. how long will 40 gal take to boil", SENT).readings
    assert [type(one) for one in readings] == [Gear, Question]


@pytest.mark.parametrize(
    "text",
    [
        "my pan is 900x900 ft",
        "elevation 20000 ft",
        "barometer 12",
        "stem says 212",
        "my bit is 3/1",
    ],
)
def test_gear_that_cannot_be_is_asked_about(text: str) -> None:
    understood = read(text, SENT)
    assert not any(isinstance(one, Gear) for one in understood.readings)
    assert understood.ask is not None


def test_what_a_question_mentions() -> None:
    found = mentioned("how long in a 2x3 pan at elevation 1200 ft", metric=False)
    assert (found.pan_ft2, found.elevation_ft) == (6.0, 1200.0)


def test_what_a_question_mentions_and_cannot_be_is_left_out() -> None:
    assert mentioned("how long in a 900x900 ft pan", metric=False).pan_ft2 is None
