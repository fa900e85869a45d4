"""What can be told from the bare words of a text."""

from __future__ import annotations

import pytest

from bot.conversation.addresses import normal_address
from bot.conversation.words import (
    Units,
    lets_it_be,
    lots_named,
    same_words,
    units_spoken,
    units_used,
    without_correction,
)


@pytest.mark.parametrize(
    ("text", "units"),
    [
        ("45 L at 2.2", "metric"), ("30 litres", "metric"), ("8 litre pails", "metric"),
        ("12 gal at 2.2", "us"), ("drew off 3 quarts", "us"), ("12g at 2", "us"),
        ("5 gallons, that is 19 L", None), ("canned 6 500 ml jars", None), ("12 taps", None),
        ("all hell", None), ("lit the fire", None),
    ],
)  # fmt: skip
def test_units_used(text: str, units: str | None) -> None:
    assert units_used(text) == units


@pytest.mark.parametrize(
    ("text", "before", "country", "after"),
    [
        ("45 L", None, None, "metric"),
        ("45 L", "us", None, "metric"),
        ("12 gal", "metric", "CA", "metric"),
        ("12 gal", "metric", "US", "us"),
        ("45 L", "us", "US", "us"),
        ("45 L", "us", "CA", "metric"),
        ("12 taps", "metric", "CA", "metric"),
        ("hello", None, "CA", None),
    ],
)
def test_one_text_in_other_units_turns_nobody_round_at_home(
    text: str, before: Units | None, country: str | None, after: Units | None
) -> None:
    assert units_spoken(text, before, country) == after


@pytest.mark.parametrize(
    ("text", "lots"),
    [
        ("north lot 14 gal, South lot 9", ("north", "south")),
        ("14 taps on the ridge and 8 by the road", ("ridge", "road")),
        ("28 gal from the orchard", ("orchard",)),
        ("thanks a lot", ()), ("the whole lot", ()), ("12 gal at 2.2", ()),
        ("which lot is best", ()), ("left it in the parking lot", ()),
    ],
)  # fmt: skip
def test_parts_of_the_bush_as_they_are_named(text: str, lots: tuple[str, ...]) -> None:
    assert lots_named(text) == lots


def test_the_same_words_are_the_same_whatever_their_case_and_spaces() -> None:
    assert same_words(" 12  Gal at 2.2. ") == same_words("12 gal at 2.2")
    assert same_words("12 gal at 2.2") != same_words("12 gal at 2.3")


@pytest.mark.parametrize("text", ["never mind", "Nevermind.", "skip it", "forget it", "leave it"])
def test_words_that_let_a_question_be(text: str) -> None:
    assert lets_it_be(text)


@pytest.mark.parametrize("text", ["gal", "never", "12", "skip the east lot", "no"])
def test_words_that_do_not(text: str) -> None:
    assert not lets_it_be(text)


@pytest.mark.parametrize(
    ("text", "rest"),
    [("no, 12 gal", "12 gal"), ("I meant 14", "14"), ("Sorry: 3", "3"), ("north 3", "north 3")],
)
def test_a_correction_without_its_opening(text: str, rest: str) -> None:
    assert without_correction(text) == rest


@pytest.mark.parametrize(
    ("said", "address"),
    [
        ("+1 555 010 0012", "+15550100012"), ("555-010-0012", "+15550100012"),
        ("(555) 010 0012", "+15550100012"), ("Ann@Example.ORG", "ann@example.org"),
        ("12", None), ("sam", None), ("ann@nowhere", None), ("", None), ("a b@example.org", None),
    ],
)  # fmt: skip
def test_addresses_in_one_form(said: str, address: str | None) -> None:
    assert normal_address(said, like="+15550100011") == address


def test_a_name_is_an_address_only_among_names() -> None:
    assert normal_address("sam", like="ann") == "sam"
