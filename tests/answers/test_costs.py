"""What the season cost, a gallon and a pint, and what it is worth at a price that is told."""

from __future__ import annotations

from tests.answers.asking import asked


def test_a_gallon_and_a_pint_of_syrup() -> None:
    reply = asked("what did it cost me", "$24 for jars", "drew off 3 qt")
    assert "$32 a gal" in reply
    assert "$4 a pint" in reply


def test_worth_asks_the_price_first() -> None:
    assert "What would a gallon sell at" in asked("what is my syrup worth", "drew off 3 qt")


def test_worth_at_the_price_in_the_question() -> None:
    assert "that is $45" in asked("what's it worth at $60 a gallon", "drew off 3 qt")


def test_a_price_for_a_pint_is_one_for_eight() -> None:
    reply = asked("what's it worth", "drew off 3 qt", "my price is $15 a pint")
    assert "at $120 a gal that is $90" in reply


def test_a_price_that_cannot_be_is_not_replaced_by_an_older_one() -> None:
    reply = asked("what's it worth at $0.01 a gallon", "drew 3 qt", "price is $60 a gallon")
    assert "What would a gallon sell at" in reply


def test_what_is_left_after_the_costs() -> None:
    reply = asked("what's it worth at $60 a gallon", "drew off 3 qt", "spent $24 on lids")
    assert "$21 over" in reply


def test_selling_is_left_to_the_state() -> None:
    assert "ask your state" in asked("what's it worth at $60 a gallon", "drew off 3 qt")
