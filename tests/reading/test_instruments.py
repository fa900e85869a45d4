"""What an instrument showed is found in the words, with and without its heat."""

from __future__ import annotations

import pytest

from bot.reading import Profile
from bot.reading.instruments import (
    Batch,
    Bottling,
    Density,
    IceOut,
    Light,
    SapTest,
    Shown,
    SyrupTest,
    shown,
)


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("hydrometer 60.4 at 185 is that done", SyrupTest(60.4, 185.0)),
        ("hydro reads 59 at 209F", SyrupTest(59.0, 209.0)),
        ("hydro reads 64 hot, is that syrup", SyrupTest(64.0, None, is_hot=True)),
        ("hydrometer 32.5 baume at 193", SyrupTest(32.5, 193.0, is_baume=True)),
        ("sap reads 2.5 at 38, stem says 60", SapTest(2.5, 38.0, 60.0)),
        ("sap hydrometer 2.0 at 68 F, made for 38", SapTest(2.0, 68.0, 38.0)),
        ("sap hydrometer reads 2.0 at 68", SapTest(2.0, 68.0, None)),
        ("1 gal at 70 brix too thick", Batch(1.0, 70.0)),
        ("2 quarts at 64 brix too thin", Batch(0.5, 64.0)),
        ("my syrup is 70 brix, how much water to add", Batch(None, 70.0)),
        ("2 gal at 68 too thick want 66.5", Batch(2.0, 68.0, 66.5)),
        ("threw 3 gal of ice out of 10 gal at 2.0", IceOut(10.0, 2.0, 3.0)),
        ("took 3 gal of ice off 10 gal", IceOut(10.0, None, 3.0)),
        ("light transmission 62", Light(62.0)),
        ("bottling at 172 ok?", Bottling(172.0)),
        ("is 66.5 legal in vermont", Density(66.5)),
    ],
)
def test_what_was_shown(text: str, wanted: Shown) -> None:
    assert shown(text) == wanted


def test_celsius_for_somebody_metric() -> None:
    found = shown("hydrometer 60.4 at 85", Profile(units="metric"))
    assert isinstance(found, SyrupTest)
    assert found.at_f == pytest.approx(185.0)


@pytest.mark.parametrize(
    "text",
    [
        "12 gal at 2.2",
        "drew off 1 gal at 67 brix",
        "dumped 3 gal of ice",
        "bottled 12 pints",
        "pan at 216",
        "sap in the barrel is 41F",
        "sap testing 2.4 today",
        "iced in, no sap",
        "my lights went out at 62",
    ],
)
def test_what_shows_nothing(text: str) -> None:
    assert shown(text) is None
