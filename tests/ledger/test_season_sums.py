"""The kept sums are those of the records that count, whatever was written, amended and undone. On
both databases, and in a store from before they were kept."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlalchemy import create_engine, text

from bot.entry import Entry
from bot.ledger import IN_MEMORY, Book, Ledger
from bot.ledger.schema import migrate
from tests.ledger.desk import ANN, BEN, Desk, entry, sap

KINDS = ("sap", "sugar", "syrup", "cost", "fuel")
SEASONS = (2026, 2027)
LAST_DAY = date(2027, 3, 5)

amount = st.none() | st.integers(0, 999).map(lambda tenths: tenths / 10)
day = st.sampled_from((date(2026, 3, 3), date(2027, 3, 4), LAST_DAY, date(2027, 3, 6)))


@st.composite
def entries(draw: st.DrawFn) -> Entry:
    """Anything that adds up, of few names, so that sums are shared."""
    return entry(
        draw(st.sampled_from(KINDS)),
        on=draw(day),
        gallons=draw(amount),
        brix=draw(st.sampled_from((None, 1.8, 2.2, 2.3000000000000003))),
        dollars=draw(amount),
        cords=draw(amount),
        propane_lb=draw(amount),
        tree=draw(st.sampled_from((None, "1", "2"))),
        lot=draw(st.sampled_from((None, "ridge", "2"))),
    )


steps = st.lists(
    st.tuples(st.sampled_from(("write", "write", "amend", "undo")), entries()), max_size=14
)


def live(book: Book, bush: int, season: int) -> list[Entry]:
    """The records themselves."""
    return book.records.of_kinds(bush, KINDS, season)


def total(values: Iterable[float | None]) -> float | None:
    """A sum as a database has it: of nothing told it is nothing."""
    told = [value for value in values if value is not None]
    return sum(told) if told else None


def about(value: Any) -> Any:
    """Equal but for the last digits of a fraction."""
    return value if value is None else pytest.approx(value, rel=1e-12, abs=1e-9)


def check(book: Book, bush: int) -> None:
    """Every kept sum against the records."""
    for season in SEASONS:
        records = live(book, bush, season)
        groups: dict[tuple[str, float | None], list[Entry]] = {}
        for one in records:
            groups.setdefault((one.kind, one.brix), []).append(one)
        found = {(one.kind, one.brix): one for one in book.sums.season(bush, season)}
        assert found.keys() == groups.keys()
        for key, group in groups.items():
            assert found[key].records == len(group)
            for name in ("gallons", "dollars", "cords", "propane_lb"):
                wanted = total(getattr(one, name) for one in group)
                assert getattr(found[key], name) == about(wanted)
        for kind, sums in book.sums.to_a_day(bush, season, LAST_DAY).items():
            mine = [one for one in records if one.kind == kind]
            assert sums.whole == about(total(one.gallons for one in mine) or 0.0)
            early = total(one.gallons for one in mine if one.on <= LAST_DAY)
            assert sums.to_day == about(early or 0.0)
        for what in ("tree", "lot"):
            check_names(book, bush, season, what, records)


def check_names(book: Book, bush: int, season: int, what: str, records: list[Entry]) -> None:
    """The sums of trees or lots against the records."""
    names = {getattr(one, what) for one in records if one.kind == "sap"} - {None}
    by_name = {one.name: one for one in book.sums.sap_by(bush, season, what)}
    assert by_name.keys() == names
    for name, found in by_name.items():
        mine = [one for one in records if one.kind == "sap" and getattr(one, what) == name]
        assert (found.records, found.last_on) == (len(mine), max(one.on for one in mine))
        assert found.gallons == about(total(one.gallons for one in mine))
        tested = [(one.gallons, one.brix) for one in mine if None not in (one.gallons, one.brix)]
        gallons = sum(amount or 0.0 for amount, _ in tested)
        sugar = sum((amount or 0.0) * (brix or 0.0) for amount, brix in tested)
        assert found.brix == (about(sugar / gallons) if gallons else None)


def live_through(desk: Desk, acts: list[tuple[str, Entry]]) -> None:
    """Write, amend and undo, and look after each."""
    desk.write(sap(1))
    for act, one in acts:
        if act == "write":
            desk.write(one, one)
        elif act == "undo":
            desk.undo()
        else:
            with desk.text() as (book, who, writer):
                last = book.records.last_texts(who.sugarbush_id, who.person_id, 1)
                if last:
                    book.records.amend(writer, last[0][-1], one)
        with desk.text() as (book, who, _):
            check(book, who.sugarbush_id)


@settings(max_examples=60, deadline=None)
@given(steps)
def test_kept_sums_are_those_of_the_records(acts: list[tuple[str, Entry]]) -> None:
    desk = Desk(Ledger.open(IN_MEMORY))
    live_through(desk, acts)
    desk.ledger.close()


@settings(
    max_examples=8, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(steps)
def test_kept_sums_are_those_of_the_records_on_postgresql(
    postgres_url: str, acts: list[tuple[str, Entry]]
) -> None:
    """In one store, in which later examples go on from the earlier ones' records."""
    ledger = Ledger.open(postgres_url)
    live_through(Desk(ledger, _numbers=NUMBERS), acts)
    ledger.close()


NUMBERS = iter(range(1, 1_000_000))


@pytest.mark.parametrize("database", ["sqlite", "postgresql"])
def test_an_old_store_gets_the_sums_of_what_it_holds(
    tmp_path: Path, request: pytest.FixtureRequest, database: str
) -> None:
    if database == "sqlite":
        url = f"sqlite:///{tmp_path / 'old.sqlite'}"
    else:
        url = request.getfixturevalue("postgres_url")
    desk = Desk(Ledger.open(url))
    for sender in (ANN, BEN):
        desk.write(sap(3.1, brix=2.2, tree="1"), sap(4, lot="ridge"), sender=sender)
        desk.write(entry("cost", dollars=12.5, on=date(2026, 3, 3)), sender=sender)
        desk.write(sap(9, brix=1.8, tree="2"), sender=sender)
        desk.amend(sap(8, brix=1.8, tree="1"), sender=sender)
    desk.write(sap(100, tree="9"))
    desk.undo()
    desk.ledger.close()
    engine = create_engine(url.replace("postgresql:", "postgresql+psycopg:"))
    with engine.begin() as connection:
        connection.execute(text("DROP TABLE season_sum"))
        connection.execute(text("DROP TABLE weather_day"))
        connection.execute(text("UPDATE alembic_version SET version_num = '0003'"))
    migrate(engine)
    engine.dispose()
    ledger = Ledger.open(url)
    with ledger.reading() as book:
        for sender in (ANN, BEN):
            who = book.people.find(sender)
            assert who is not None
            check(book, who.sugarbush_id)
            assert [one.gallons for one in book.sums.sap_by(who.sugarbush_id, 2027, "tree")]
    ledger.close()
