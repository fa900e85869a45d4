"""Tree by tree and lot by lot."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.reckoning import trees
from bot.reckoning.trees import Gathering

RECORDS = (
    Gathering(date(2027, 3, 1), 4, 2.0, tree="7", lot="back lot"),
    Gathering(date(2027, 3, 4), 2, 2.6, tree="7", lot="back lot"),
    Gathering(date(2027, 3, 8), 1.5, None, tree="Big Maple", lot="roadside"),
    Gathering(date(2027, 3, 2), 0, None, tree="3", lot="Roadside"),
    Gathering(date(2027, 3, 2), None, 3.1, tree="3"),
    Gathering(date(2027, 3, 8), 40, 2.2),
)


def _tally(name: str) -> trees.Tally:
    return next(one for one in trees.tallies(RECORDS, "tree") if one.name == name)


def test_only_records_that_name_a_tree_are_counted() -> None:
    assert [one.name for one in trees.tallies(RECORDS, "tree")] == ["7", "Big Maple", "3"]


def test_lots_are_the_same_in_any_case() -> None:
    assert [(one.name, one.gallons) for one in trees.tallies(RECORDS, "lot")] == [
        ("back lot", 6),
        ("roadside", 1.5),
    ]


def test_a_trees_sugar_is_that_of_its_sap_mixed() -> None:
    assert _tally("7").brix == pytest.approx(2.2, abs=0.005)
    assert _tally("7").sugar_lb == pytest.approx(1.11, abs=0.005)


def test_a_test_without_sap_is_a_trees_sugar_when_there_is_no_other() -> None:
    assert _tally("3").brix == 3.1


def test_a_tree_nobody_tested_has_no_sugar_rather_than_none_in_it() -> None:
    assert (_tally("Big Maple").brix, _tally("Big Maple").sugar_lb) == (None, None)


def test_a_dry_pail_was_emptied_and_a_test_was_not() -> None:
    assert (_tally("3").gatherings, _tally("3").last_emptied) == (1, date(2027, 3, 2))


def test_best_poorest_and_sweetest_are_told_apart() -> None:
    found = trees.tallies(RECORDS, "tree")
    names = [one and one.name for one in (trees.best(found), trees.poorest(found))]
    assert names == ["7", "3"]
    sweetest = trees.sweetest(found)
    assert sweetest is not None
    assert sweetest.name == "3"


def test_without_records_there_is_no_best_tree() -> None:
    assert (trees.best(()), trees.poorest(()), trees.sweetest(())) == (None, None, None)


def test_without_tests_there_is_no_sweetest_tree() -> None:
    found = trees.tallies([Gathering(date(2027, 3, 1), 4, tree="7")], "tree")
    assert trees.sweetest(found) is None


def test_trees_passed_over_for_more_than_four_days_are_named_longest_first() -> None:
    found = trees.tallies(RECORDS, "tree")
    assert [one.name for one in trees.not_emptied(found, date(2027, 3, 9))] == ["3", "7"]
    assert [one.name for one in trees.not_emptied(found, date(2027, 3, 8))] == ["3"]


def test_when_nothing_was_gathered_lately_no_tree_is_blamed() -> None:
    found = trees.tallies(RECORDS, "tree")
    assert trees.not_emptied(found, date(2027, 3, 20)) == ()
    assert trees.not_emptied(found, date(2027, 3, 13)) == ()
    assert trees.not_emptied(found, date(2027, 3, 12)) != ()


def test_a_tree_only_ever_tested_stands_first_among_those_not_emptied() -> None:
    records = [*RECORDS, Gathering(date(2027, 3, 8), None, 2.0, tree="9")]
    found = trees.not_emptied(trees.tallies(records, "tree"), date(2027, 3, 9))
    assert found[0].name == "9"


@given(
    st.lists(
        st.builds(
            Gathering,
            on=st.just(date(2027, 3, 1)),
            gallons=st.integers(0, 500).map(lambda n: n / 10),
            brix=st.none() | st.floats(0.5, 6),
            tree=st.sampled_from(["1", "2", "3"]),
        )
    )
)
def test_no_sap_is_lost_between_the_trees(records: list[Gathering]) -> None:
    found = trees.tallies(records, "tree")
    there = sum(record.gallons for record in records if record.gallons is not None)
    assert sum(one.gallons for one in found) == pytest.approx(there)


def test_a_negative_gathering_is_refused() -> None:
    with pytest.raises(ValueError, match="Sap is -1 gal"):
        trees.tallies([Gathering(date(2027, 3, 1), -1, tree="7")], "tree")
