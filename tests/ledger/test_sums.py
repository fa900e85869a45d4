"""What the database adds up. On both databases."""

from __future__ import annotations

from datetime import date, time

import pytest

from bot.ledger import KindSum, NamedSap, NamedSugar, Source, TimedSap
from tests.ledger.desk import Desk, entry, sap


def test_a_season_is_summed_by_kind_and_brix(desk: Desk) -> None:
    desk.write(sap(10, brix=1.8), sap(30, brix=2.6), sap(5, brix=1.8), sap(2))
    desk.write(entry("cost", dollars=12.0), entry("cost", dollars=7.5))
    desk.write(entry("fuel", cords=0.25), entry("fuel", propane_lb=20.0))
    assert desk.sums() == [
        KindSum("cost", None, 2, None, 19.5, None, None),
        KindSum("fuel", None, 2, None, None, 0.25, 20.0),
        KindSum("sap", None, 1, 2.0, None, None, None),
        KindSum("sap", 1.8, 2, 15.0, None, None, None),
        KindSum("sap", 2.6, 1, 30.0, None, None, None),
    ]


def test_days_and_a_lot_can_be_picked(desk: Desk) -> None:
    desk.write(
        sap(1, on=date(2027, 3, 1)),
        sap(2, on=date(2027, 3, 2), lot="ridge"),
        sap(4, on=date(2027, 3, 3), lot="ridge"),
    )
    with desk.text() as (book, who, _):
        bush = who.sugarbush_id
        season = book.sums.season
        to_2 = season(bush, 2027, last=date(2027, 3, 2))
        from_2 = season(bush, 2027, first=date(2027, 3, 2))
        ridge_2 = season(bush, 2027, last=date(2027, 3, 2), lot="ridge")
    assert [one.gallons for one in to_2] == [3]
    assert [one.gallons for one in from_2] == [6]
    assert [one.gallons for one in ridge_2] == [2]


def test_sap_by_tree_has_its_mean_brix_and_its_last_day(desk: Desk) -> None:
    desk.write(sap(2, tree="1", brix=2.0, on=date(2027, 3, 1)), sap(1, tree="1"))
    desk.write(sap(1, tree="1", brix=2.6, on=date(2027, 3, 6)), sap(3, tree="2"), sap(9))
    with desk.text() as (book, who, _):
        found = sorted(book.sums.sap_by(who.sugarbush_id, 2027, "tree"), key=lambda one: one.name)
    first, second = found
    assert (first.gallons, first.records, first.last_on) == (4.0, 3, date(2027, 3, 6))
    assert first.brix == pytest.approx(2.2)
    assert second == NamedSap("2", 3.0, 1, date(2027, 3, 4), None)


def test_sap_without_gallons_divides_by_nothing(desk: Desk) -> None:
    desk.write(sap(0, tree="1", brix=2.0))
    with desk.text() as (book, who, _):
        (found,) = book.sums.sap_by(who.sugarbush_id, 2027, "tree")
    assert found.brix is None


def test_sugar_tests_by_tree_lot_and_day(desk: Desk) -> None:
    desk.write(
        entry("sugar", brix=2.0, tree="1"), entry("sugar", brix=3.0, tree="1"),
        entry("sugar", brix=2.4), entry("sugar", brix=2.6), entry("sugar", brix=9.0, lot="ridge"),
    )  # fmt: skip
    with desk.text() as (book, who, _):
        by_tree = book.sums.sugar_by(who.sugarbush_id, 2027, "tree")
        tests = book.sums.sugar_tests(who.sugarbush_id, 2027)
    assert by_tree == [NamedSugar("1", 2, 2.5)]
    day = date(2027, 3, 4)
    assert tests == {
        Source(day, None, "1"): 2.5,
        Source(day, None, None): 2.5,
        Source(day, "ridge", None): 9.0,
    }


def test_untested_sap_by_day_and_lot(desk: Desk) -> None:
    desk.write(
        sap(1), sap(2), sap(4, brix=2.0), sap(5, lot="ridge"), sap(8, on=date(2027, 3, 9))
    )  # fmt: skip
    with desk.text() as (book, who, _):
        every = book.sums.untested_sap(who.sugarbush_id, 2027)
        some = book.sums.untested_sap(who.sugarbush_id, 2027, last=date(2027, 3, 8))
    fourth = {Source(date(2027, 3, 4), None, None): 3, Source(date(2027, 3, 4), "ridge", None): 5}
    assert every == {**fourth, Source(date(2027, 3, 9), None, None): 8}
    assert some == fourth


def test_names_are_each_said_once(desk: Desk) -> None:
    desk.write(sap(1, tree="12"), sap(1, tree="3"), sap(1, tree="12"), sap(1, lot="ridge"), sap(1))
    with desk.text() as (book, who, _):
        trees = book.sums.names(who.sugarbush_id, "tree")
        lots = book.sums.names(who.sugarbush_id, "lot")
    assert (trees, lots) == (("12", "3"), ("ridge",))


def test_no_names_are_no_names(desk: Desk) -> None:
    desk.write(sap(1))
    with desk.text() as (book, who, _):
        assert book.sums.names(who.sugarbush_id, "tree") == ()


def test_a_name_that_was_taken_back_is_forgotten(desk: Desk) -> None:
    desk.write(sap(1, tree="3"))
    desk.write(sap(1, tree="4"))
    desk.undo()
    with desk.text() as (book, who, _):
        assert book.sums.names(who.sugarbush_id, "tree") == ("3",)


def test_sap_of_one_moment_comes_together_from_a_day_on(desk: Desk) -> None:
    early = sap(8, on=date(2027, 2, 20))
    evening = sap(1, tree="1"), sap(2, tree="2"), sap(4, at=time(18))
    desk.write(early, *evening)
    with desk.text() as (book, who, _):
        found = book.sums.sap_since(who.sugarbush_id, 2027, date(2027, 3, 1))
    assert found == [
        TimedSap(evening[0].at_local, date(2027, 3, 4), 3.0),
        TimedSap(evening[2].at_local, date(2027, 3, 4), 4.0),
    ]


def test_a_season_to_a_day_beside_the_whole(desk: Desk) -> None:
    desk.write(sap(5, on=date(2027, 3, 1)), sap(7, on=date(2027, 3, 10)))
    desk.write(entry("syrup", gallons=0.5, on=date(2027, 3, 12)))
    with desk.text() as (book, who, _):
        found = book.sums.to_a_day(who.sugarbush_id, 2027, date(2027, 3, 5))
    assert (found["sap"].whole, found["sap"].to_day) == (12, 5)
    assert (found["syrup"].whole, found["syrup"].to_day) == (0.5, 0)


def test_costs_come_by_item_the_dearest_first(desk: Desk) -> None:
    desk.write(
        entry("cost", dollars=12.0, detail={"item": "lids"}),
        entry("cost", dollars=40.0, detail={"item": "propane"}),
        entry("cost", dollars=8.0, detail={"item": "lids"}),
        entry("cost", dollars=3.0),
    )
    with desk.text() as (book, who, _):
        found = book.sums.costs(who.sugarbush_id, 2027)
    assert found == [("propane", 40.0), ("lids", 20.0), (None, 3.0)]
