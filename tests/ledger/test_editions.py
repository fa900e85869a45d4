"""An edition tells whether a sugarbush's records are still those seen last."""

from __future__ import annotations

import contextlib

from bot.ledger import Edition, Ledger
from tests.ledger.desk import ANN, BEN, Desk, sap


def edition(desk: Desk, sender: str = ANN) -> Edition | None:
    with desk.text(sender) as (book, who, _):
        return book.edition(who.sugarbush_id)


def test_only_sqlite_tells_it(desk: Desk, store_url: str) -> None:
    assert (edition(desk) is not None) == store_url.startswith("sqlite")


def test_a_transaction_that_only_looks_tells_none(ledger: Ledger) -> None:
    with ledger.reading() as book:
        assert book.edition(1) is None


def test_texts_that_write_no_record_leave_it(sqlite_desk: Desk) -> None:
    sqlite_desk.write(sap(3))
    assert edition(sqlite_desk) == edition(sqlite_desk)


def test_a_record_makes_another(sqlite_desk: Desk) -> None:
    before = edition(sqlite_desk)
    sqlite_desk.write(sap(3))
    assert edition(sqlite_desk) != before


def test_taking_a_record_back_makes_another(sqlite_desk: Desk) -> None:
    sqlite_desk.write(sap(3))
    before = edition(sqlite_desk)
    sqlite_desk.undo()
    assert edition(sqlite_desk) != before


def test_a_record_of_another_sugarbush_leaves_it(sqlite_desk: Desk) -> None:
    before = edition(sqlite_desk)
    sqlite_desk.write(sap(3), sender=BEN)
    assert edition(sqlite_desk) == before


def test_what_another_process_writes_makes_another(sqlite_desk: Desk, sqlite_url: str) -> None:
    before = edition(sqlite_desk)
    other = Ledger.open(sqlite_url)
    with other.writing() as book:
        assert book.people.find(ANN) is not None
        book.hints.say(1, "keep cold", sap(1).on)
    other.close()
    assert edition(sqlite_desk) != before


def test_what_was_forgotten_makes_another(sqlite_desk: Desk) -> None:
    before = edition(sqlite_desk)
    with sqlite_desk.text() as (book, who, writer):
        book.own_data.forget(who.person_id, writer.text_id)
    assert edition(sqlite_desk) != before


def test_what_is_to_follow_waits_for_the_commit(sqlite_desk: Desk) -> None:
    done: list[str] = []
    with sqlite_desk.ledger.writing() as book:
        book.afterwards(lambda: done.append("kept"))
        assert done == []
    assert done == ["kept"]


def test_what_is_to_follow_is_left_when_all_is_undone(sqlite_desk: Desk) -> None:
    done: list[str] = []
    with contextlib.suppress(ZeroDivisionError), sqlite_desk.ledger.writing() as book:
        book.afterwards(lambda: done.append("kept"))
        raise ZeroDivisionError
    assert done == []
