"""How many taps: the conservative guideline of the North American Maple Syrup Producers Manual,
found sustainable by van den Berg and others (University of Vermont, 2012)."""

from __future__ import annotations

import pytest

from tests.answers.asking import asked, has_number


@pytest.mark.parametrize(
    ("question", "taps"),
    [
        ("16 inch maple how many taps", "1 tap"),
        ("how many taps for a 57 in round tree", "2 taps"),
        ("how many taps for a 9 inch tree", "no tap"),
        ("can i tap a 14 inch maple", "1 tap"),
        ("how many taps in a 26 inch maple across", "2 taps"),
    ],
)
def test_taps_by_the_careful_rule(question: str, taps: str) -> None:
    assert f": {taps} by the careful rule" in asked(question)


def test_the_older_rule_is_named_where_it_differs() -> None:
    """16 in: two taps by the traditional guideline of the same manual."""
    assert "Older books say 2" in asked("16 inch maple how many taps")


def test_a_girth_is_turned_into_a_diameter() -> None:
    assert "57 in around is 18.1 in across" in asked("57 inches around how many taps")


def test_several_trees_are_added_up() -> None:
    reply = asked("two 14 inch and three 20 inch maples how many taps")
    assert "8 taps in all" in reply


def test_twenty_taps_give_what_maine_tells() -> None:
    """5 to 15 gal a tap in a season (University of Maine Bulletin 7036, as quoted)."""
    reply = asked("what do i need for 20 taps")
    assert "20 spiles and 20 pails" in reply
    assert "100 to 300 gal of sap" in reply
    assert has_number(reply, 80, 80)


def test_the_taps_that_hang_are_told_when_only_that_is_asked() -> None:
    assert "12 taps in" in asked("how many taps do i have", "put in 12 taps")


def test_a_plan_never_promises() -> None:
    assert "rule of thumb" in asked("what do i need for 20 taps")
