"""Records are only ever added to, and still say what counts. On both databases."""

from __future__ import annotations

from datetime import date, datetime, time

from bot.ledger import Writer
from tests.ledger.desk import ANN, BEN, START, Desk, entry, sap


def test_a_record_comes_back_as_it_was_written(desk: Desk) -> None:
    written = entry(
        "jars",
        gallons=0.875,
        brix=66.9,
        count=3,
        hours=1.5,
        dollars=7.49,
        fahrenheit=0.0,
        cords=0.25,
        propane_lb=20.0,
        tree="4",
        lot="ridge",
        detail={"jars": [{"count": 7, "gallons_each": 0.125}], "note": "naïve ✓"},
    )
    desk.write(written)
    with desk.ledger.reading() as book:
        who = book.people.find(ANN)
        assert who is not None
        assert book.records.latest(who.sugarbush_id, "jars") == written


def test_zero_gallons_are_a_record_and_not_an_absence(desk: Desk) -> None:
    desk.write(sap(0.0))
    assert [(one.kind, one.gallons) for one in desk.sums()] == [("sap", 0.0)]


def test_the_wall_clock_is_kept_without_a_zone(desk: Desk) -> None:
    desk.write(sap(3, at=time(2, 30), on=date(2027, 3, 14)))
    with desk.text() as (book, who, _):
        found = book.records.latest(who.sugarbush_id, "sap")
        assert found is not None
        assert found.at_local == datetime.combine(date(2027, 3, 14), time(2, 30))


def test_an_amended_record_counts_once(desk: Desk) -> None:
    desk.write(sap(13))
    desk.amend(sap(18))
    assert desk.sap() == 18


def test_undo_takes_a_record_back(desk: Desk) -> None:
    desk.write(sap(15))
    desk.write(sap(51))
    assert [one.was.gallons for one in desk.undo()] == [51]
    assert desk.sap() == 15


def test_undo_takes_back_all_that_one_text_wrote(desk: Desk) -> None:
    desk.write(sap(1))
    desk.write(sap(2, tree="1"), sap(3.5, tree="2"), entry("sugar", brix=2.4))
    assert len(desk.undo()) == 3
    assert [(one.kind, one.gallons) for one in desk.sums()] == [("sap", 1)]


def test_undo_of_an_amendment_brings_the_earlier_version_back(desk: Desk) -> None:
    desk.write(sap(13))
    desk.amend(sap(18))
    (undone,) = desk.undo()
    assert (undone.was.gallons, undone.now and undone.now.gallons) == (18, 13)
    assert desk.sap() == 13


def test_undo_twice_goes_two_back(desk: Desk) -> None:
    desk.write(sap(5))
    desk.write(sap(13))
    desk.amend(sap(18))
    desk.undo()
    desk.undo()
    assert desk.sap() == 5


def test_undo_goes_back_through_every_amendment(desk: Desk) -> None:
    desk.write(sap(13))
    desk.amend(sap(18))
    desk.amend(sap(19))
    seen = []
    for _ in range(3):
        desk.undo()
        seen.append(desk.sap())
    assert seen == [18, 13, 0]


def test_an_amendment_after_an_undo_amends_what_came_back(desk: Desk) -> None:
    desk.write(sap(13))
    desk.amend(sap(18))
    desk.undo()
    desk.amend(sap(14))
    assert desk.sap() == 14
    desk.undo()
    assert desk.sap() == 13


def test_undo_with_nothing_left_does_nothing(desk: Desk) -> None:
    desk.write(sap(5))
    desk.undo()
    assert desk.undo() == []
    assert desk.sap() == 0


def test_undo_takes_only_ones_own_back(desk: Desk) -> None:
    desk.write(sap(8))
    _let_ben_in(desk)
    desk.write(sap(12), sender=BEN)
    desk.undo(sender=ANN)
    assert desk.sap() == 12
    desk.undo(sender=BEN)
    assert desk.sap() == 0


def test_what_counts_of_the_last_texts_comes_latest_first(desk: Desk) -> None:
    desk.write(sap(1))
    desk.write(sap(2, tree="1"), sap(3, tree="2"))
    with desk.text() as (book, who, _):
        texts = book.records.last_texts(who.sugarbush_id, who.person_id, 5)
    assert [[kept.entry.gallons for kept in text] for text in texts] == [[2, 3], [1]]


def test_kinds_can_be_skipped_among_the_last_texts(desk: Desk) -> None:
    desk.write(sap(1))
    desk.write(entry("place", detail={"name": "Orwell"}))
    with desk.text() as (book, who, _):
        texts = book.records.last_texts(who.sugarbush_id, who.person_id, 1, ("place",))
    assert [kept.entry.kind for kept in texts[0]] == ["sap"]


def test_entries_of_a_day_come_in_the_order_of_the_clock_not_of_the_texts(desk: Desk) -> None:
    desk.write(entry("boil", at=time(21), detail={"state": "end"}))
    desk.write(entry("boil", at=time(14), detail={"state": "start"}))
    with desk.text() as (book, who, _):
        found = book.records.of_kinds(who.sugarbush_id, ("boil",), 2027)
    assert [one.detail["state"] for one in found] == ["start", "end"]


def test_entries_can_be_asked_for_from_a_day_on(desk: Desk) -> None:
    desk.write(sap(1, on=date(2027, 3, 1)), sap(2, on=date(2027, 3, 5), at=time(0)))
    with desk.text() as (book, who, _):
        found = book.records.of_kinds(who.sugarbush_id, ("sap",), 2027, date(2027, 3, 5))
    assert [one.gallons for one in found] == [2]


def test_the_latest_of_a_kind_goes_by_the_clock_and_can_be_bounded(desk: Desk) -> None:
    desk.write(entry("water_boils", on=date(2027, 3, 9), fahrenheit=211.0))
    desk.write(entry("water_boils", on=date(2027, 3, 6), fahrenheit=210.4))
    with desk.text() as (book, who, _):
        latest = book.records.latest(who.sugarbush_id, "water_boils")
        before = book.records.latest(
            who.sugarbush_id, "water_boils", not_after=datetime.combine(date(2027, 3, 7), time())
        )
    assert latest is not None
    assert latest.fahrenheit == 211.0
    assert before is not None
    assert before.fahrenheit == 210.4


def test_whether_anything_of_a_person_counts(desk: Desk) -> None:
    desk.write(sap(5))
    with desk.text() as (book, who, _):
        assert book.records.any_by(who.sugarbush_id, who.person_id)
        assert not book.records.any_by(who.sugarbush_id, who.person_id, besides=("sap",))
    desk.undo()
    with desk.text() as (book, who, _):
        assert not book.records.any_by(who.sugarbush_id, who.person_id)


def test_a_record_is_of_the_season_of_its_day(desk: Desk) -> None:
    desk.write(sap(4, on=date(2026, 12, 30)), sap(5, on=date(2027, 7, 1)))
    assert (desk.sap(season=2027), desk.sap(season=2028)) == (4, 5)


def _let_ben_in(desk: Desk) -> None:
    with desk.text() as (book, ann, _):
        book.people.invite(ann.sugarbush_id, BEN, ann.person_id, START)
    with desk.text(BEN) as (book, ben, _):
        invitation = book.people.invitation(BEN)
        assert invitation is not None
        book.people.join(ben, invitation, START)


def test_the_record_says_who_wrote_it_and_for_which_text(desk: Desk) -> None:
    with desk.text() as (book, who, writer):
        kept = book.records.add(writer, sap(5))
        assert writer == Writer(who.sugarbush_id, who.person_id, writer.text_id, writer.now_utc)
        assert book.records.of_text(who.sugarbush_id, writer.text_id) == [kept]
