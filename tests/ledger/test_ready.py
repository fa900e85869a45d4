"""A statement that was made ready once gives what SQLAlchemy gives, on both databases."""

from __future__ import annotations

from datetime import UTC, date, datetime
from typing import Any

import pytest
from sqlalchemy import Connection, bindparam, insert, literal, select, union_all, update
from sqlalchemy.exc import DBAPIError, IntegrityError

from bot.ledger import Ledger
from bot.ledger.ready import Ready
from bot.ledger.tables import InboxText, Pending, Person, Said, table_of

_person, _said, _pending = table_of(Person), table_of(Said), table_of(Pending)
_inbox = table_of(InboxText)
MET = datetime(2027, 3, 4, 22, 5, 6, 789, tzinfo=UTC)
_NEW_PERSON = Ready(insert(_person).returning(_person.c.id))
_NEW_SAID = Ready(insert(_said))


def _person_met(connection: Connection, met_utc: datetime = MET) -> int:
    found: int = _NEW_PERSON.run(connection, {"met_utc": met_utc}).scalar_one()
    return found


def _both_ways(connection: Connection, statement: Any, **given: Any) -> list[tuple[Any, ...]]:
    """The rows, which have to be the same by SQLAlchemy, and the second time."""
    ready = Ready(statement)
    rows = [tuple(row) for row in ready.run(connection, given)]
    assert rows == [tuple(row) for row in connection.execute(statement, given)]
    assert rows == [tuple(row) for row in ready.run(connection, given)]
    return rows


def test_moments_come_back_as_they_went_in(ledger: Ledger) -> None:
    with ledger._store.writing() as connection:
        who = _person_met(connection)
        wanted = select(_person.c.id, _person.c.met_utc, _person.c.units).where(
            _person.c.id == bindparam("who")
        )
        assert _both_ways(connection, wanted, who=who) == [(who, MET, None)]


def test_moments_can_be_looked_for(ledger: Ledger) -> None:
    with ledger._store.writing() as connection:
        who = _person_met(connection)
        later = _person_met(connection, MET.replace(hour=23))
        wanted = select(_person.c.id).where(_person.c.met_utc <= bindparam("until"))
        assert _both_ways(connection, wanted, until=MET) == [(who,)]
        until = MET.replace(day=5)
        assert _both_ways(connection, wanted.order_by("id"), until=until) == [(who,), (later,)]


def test_days_and_what_stands_in_the_statement_itself_are_converted_too(ledger: Ledger) -> None:
    on = date(2027, 3, 4)
    with ledger._store.writing() as connection:
        who = _person_met(connection)
        _NEW_SAID.run(connection, {"person_id": who, "what": "hint", "on": on})
        wanted = select(_said.c.on, literal("told")).where(
            _said.c.person_id == bindparam("who"), _said.c.on == on
        )
        assert _both_ways(connection, wanted, who=who) == [(on, "told")]
        assert _both_ways(connection, wanted.where(_said.c.what == ""), who=who) == []


def test_objects_come_back_as_they_went_in(ledger: Ledger) -> None:
    question = {"kind": "doubt", "choices": ["gal", "taps"], "much": 0.0, "no": None}
    with ledger._store.writing() as connection:
        who = _person_met(connection)
        text = {
            "door": "test", "provider_id": "1", "sender": "a", "to": "b", "text": "12",
            "media": 0, "opt_out": None, "arrived_utc": MET, "tries": 0, "reply_owed": False,
        }  # fmt: skip
        text_id = Ready(insert(_inbox).returning(_inbox.c.id)).run(connection, text).scalar_one()
        asked = {"person_id": who, "text_id": text_id, "question": question, "asked_utc": MET}
        Ready(insert(_pending)).run(connection, asked)
        wanted = select(_pending.c.question).where(_pending.c.person_id == bindparam("who"))
        assert _both_ways(connection, wanted, who=who) == [(question,)]


def test_two_selects_in_one_give_the_columns_of_the_first(ledger: Ledger) -> None:
    with ledger._store.writing() as connection:
        who = _person_met(connection)
        parts = (
            select(literal(what), _person.c.met_utc).where(_person.c.id == bindparam("who"))
            for what in ("one", "two")
        )
        found = _both_ways(connection, union_all(*parts), who=who)
        assert sorted(found) == [("one", MET), ("two", MET)]


def test_it_tells_how_many_rows_were_written(ledger: Ledger) -> None:
    speaks = Ready(
        update(_person)
        .where(_person.c.id == bindparam("who"), _person.c.units.is_(None))
        .values(units=bindparam("spoken"))
    )
    with ledger._store.writing() as connection:
        given = {"who": _person_met(connection), "spoken": "metric"}
        assert speaks.changed(connection, given) == 1
        assert speaks.changed(connection, given) == 0


def test_what_the_database_refuses_is_told_in_sqlalchemys_words(ledger: Ledger) -> None:
    with ledger._store.writing() as connection:
        given = {"person_id": _person_met(connection), "what": "hint", "on": date(2027, 3, 4)}
        _NEW_SAID.run(connection, given)
    with pytest.raises(IntegrityError), ledger._store.writing() as connection:
        _NEW_SAID.run(connection, given)
    broken = Ready(select(literal(1)).where(literal("a").op("no such")(literal("b"))))
    with pytest.raises(DBAPIError), ledger._store.writing() as connection:
        broken.run(connection, {})


def _meet_and_break(ledger: Ledger) -> None:
    with ledger._store.writing() as connection:
        lost = _person_met(connection)
        _NEW_SAID.run(connection, {"person_id": lost, "what": "hint", "on": None})


def test_what_was_refused_is_undone_with_its_part_alone(ledger: Ledger) -> None:
    with ledger._store.writing() as connection:
        kept = _person_met(connection)
    with pytest.raises(IntegrityError):
        _meet_and_break(ledger)
    with ledger._store.reading() as connection:
        assert [*connection.execute(select(_person.c.id)).scalars()] == [kept]


def test_other_values_than_the_first_time_are_refused_on_sqlite(sqlite_ledger: Ledger) -> None:
    wanted = Ready(select(_person.c.id).where(_person.c.id == bindparam("who")))
    with sqlite_ledger._store.writing() as connection:
        wanted.run(connection, {"who": 1})
        for given in ({}, {"whom": 1}, {"who": 1, "whom": 1}):
            with pytest.raises(KeyError, match="who"):
                wanted.run(connection, given)
        with pytest.raises(KeyError, match="who"):
            Ready(wanted._statement).run(connection, {})


def test_a_list_is_refused_on_sqlite(sqlite_ledger: Ledger) -> None:
    wanted = Ready(select(_person.c.id).where(_person.c.id.in_([1, 2])))
    with sqlite_ledger._store.writing() as connection, pytest.raises(TypeError, match="list"):
        wanted.run(connection, {})
