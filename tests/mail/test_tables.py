"""Answers that a text has no room for: a table below the words of a mail, and only there."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from tests.mail.letters import ANN
from tests.mail.stage import NOW_UTC, House


@pytest.fixture
def told(house: House) -> House:
    """Ann's mail is linked, and there is something to show."""
    house.clock.set(datetime(2026, 3, 1, 20, tzinfo=UTC))
    house.text("40 gal")
    house.clock.set(NOW_UTC)
    house.link()
    house.text("tree 1 2 gal at 2.0, tree 2 3 gal at 2.6, tree 3 1 gal")
    house.text("spent $12 on lids")
    house.text("spent $30 for wood")
    house.text("on Feb 24 20 gal at 1.8")
    house.text("drew off a quart of syrup on Feb 28")
    house.text("tree 7 sugar maple 16 in")
    return house


def _rows(said: str) -> list[list[str]]:
    table = said.split("\n\n")[-1]
    return [[cell.strip() for cell in line.split("|")] for line in table.split("\n")]


def test_all_trees_with_their_sugar_and_last_day_the_best_first(told: House) -> None:
    assert _rows(told.mail("best tree?")) == [
        ["Tree", "Sap", "Brix", "Last"],
        ["2", "3 gal", "2.6", "Mar 5"],
        ["1", "2 gal", "2.0", "Mar 5"],
        ["3", "1 gal", "", "Mar 5"],
    ]


def test_the_season_week_by_week_each_mean_weighted_by_sugar(told: House) -> None:
    """Mondays of 2027: Feb 22, Mar 1. (2 x 2.0 + 3 x 2.6) / 5 = 2.36."""
    assert _rows(told.mail("how much so far?")) == [
        ["Week from", "Sap", "Brix", "Syrup"],
        ["Feb 22", "20 gal", "1.8", "1 qt"],
        ["Mar 1", "6 gal", "2.4", ""],
    ]


def test_every_cost_and_their_sum(told: House) -> None:
    assert _rows(told.mail("what did it cost?")) == [
        ["Cost", "Dollars"],
        ["wood", "$30"],
        ["lids", "$12"],
        ["all", "$42"],
    ]


def test_two_seasons_side_by_side(told: House) -> None:
    assert _rows(told.mail("are we ahead of last year?")) == [
        ["", "2027 so far", "2026 to Mar 5", "2026 in all"],
        ["Sap", "26 gal", "40 gal", "40 gal"],
        ["Syrup", "1 qt", "0 gal", "0 gal"],
    ]


def test_the_trees_of_a_tapping_plan(told: House) -> None:
    assert _rows(told.mail("how many taps should I put in?")) == [
        ["Tree", "Species", "Across", "Taps"],
        ["7", "sugar maple", "16 in", "1"],
    ]


@pytest.mark.parametrize("words", ["best tree?", "how much so far?", "what did it cost?"])
def test_a_text_gets_no_table(told: House, words: str) -> None:
    assert "|" not in told.text(words)


def test_an_answer_of_one_figure_gets_none(told: House) -> None:
    assert "|" not in told.mail("how many taps do I have?")
    assert told.mails.texts(ANN)
