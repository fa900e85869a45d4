"""One's own data: out as a file, and gone when it is to be."""

from __future__ import annotations

import asyncio
import csv
import io
from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import httpx
import pytest
from fastapi import FastAPI
from sqlalchemy import text as sql

from bot.conversation.reach import EXPORT_FOR
from bot.links import Links
from bot.pages import Pages, add_pages
from bot.wording import household as wording
from tests.mail.letters import ANN
from tests.mail.stage import OTHER_PHONE, PHONE, PUBLIC_URL, House


def call(house: House, url: str, method: str = "GET") -> httpx.Response:
    """Ask the web door for one of its pages."""
    app = FastAPI()
    add_pages(app, Pages(house.ledger, house.links, house.clock))

    async def ask() -> httpx.Response:
        transport = httpx.ASGITransport(app)
        async with httpx.AsyncClient(transport=transport, base_url=PUBLIC_URL) as client:
            return await client.request(method, url)

    return asyncio.run(ask())


def rows(file: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(file)))


def exported(house: House, phone: str = PHONE) -> str:
    """The address that a text asking for one's data is answered with."""
    return house.text("export my data", phone).rpartition(" ")[2]


# --- export --------------------------------------------------------------------------------------


def test_a_text_is_answered_with_a_link_to_the_file(house: House) -> None:
    house.text("12 gal at 2.2 from tree 7")
    house.text("10 gal at 2")
    house.text("scratch that")
    found = call(house, exported(house))
    assert found.status_code == 200
    assert found.headers["content-disposition"] == 'attachment; filename="pailtext.csv"'
    assert found.headers["cache-control"] == "no-store"
    (sap,) = [row for row in rows(found.text) if row["kind"] == "sap"]
    assert (sap["on"], sap["gallons"], sap["brix"]) == ("2027-03-05", "12.0", "2.2")
    assert (sap["tree"], sap["logged_by"]) == ("7", "me")


def test_the_link_is_over_after_a_day(house: House) -> None:
    url = exported(house)
    house.clock.advance(EXPORT_FOR - timedelta(minutes=1))
    assert call(house, url).status_code == 200
    house.clock.advance(timedelta(minutes=1))
    assert call(house, url).status_code == 410


def test_a_link_that_was_altered_or_made_elsewhere_shows_nothing(house: House) -> None:
    url = exported(house)
    forged = Links(PUBLIC_URL, "f" * 64).export_url(1, house.clock.now_utc() + EXPORT_FOR)
    other = house.links.unsubscribe_url(ANN).replace("unsubscribe", "page")
    for wrong in (url[:-1], url + "x", url.replace("/page/", "/page/W"), forged, other):
        assert call(house, wrong).status_code == 404


def test_a_mail_is_answered_with_the_file(house: House) -> None:
    house.link()
    house.text("12 gal at 2.2")
    assert house.mail("export my data") == wording.ATTACHED
    _, cover = house.mails.sent[-1]
    assert cover.enclosure is not None
    assert cover.enclosure.name == "pailtext.csv"
    (sap,) = [row for row in rows(cover.enclosure.text) if row["kind"] == "sap"]
    assert sap["gallons"] == "12.0"


def test_the_file_names_who_logged_what_and_holds_no_formulas(house: House) -> None:
    house.text(f"add {OTHER_PHONE}")
    house.text("join", OTHER_PHONE)
    house.text("12 gal at 2", OTHER_PHONE)
    file = call(house, exported(house)).text
    by = {row["logged_by"] for row in rows(file) if row["kind"] == "sap"}
    assert by == {f"'{OTHER_PHONE}"}


def test_nobody_gets_anothers_records(house: House) -> None:
    house.text("12 gal at 2.2")
    house.text("3 gal at 2", OTHER_PHONE)
    file = call(house, exported(house, OTHER_PHONE)).text
    assert [row["gallons"] for row in rows(file) if row["kind"] == "sap"] == ["3.0"]


# --- unsubscribing -------------------------------------------------------------------------------


def test_one_post_unsubscribes_and_a_look_does_not(house: House) -> None:
    house.link()
    url = house.links.unsubscribe_url(ANN)
    assert "<form method=post>" in call(house, url).text
    with house.ledger.reading() as book:
        assert not book.mail.is_muted(ANN)
    assert call(house, url, "POST").status_code == 200
    with house.ledger.reading() as book:
        assert book.mail.is_muted(ANN)


def test_a_forged_unsubscribe_link_does_nothing(house: House) -> None:
    house.link()
    forged = Links(PUBLIC_URL, "f" * 64).unsubscribe_url(ANN)
    assert call(house, forged, "POST").status_code == 404
    assert call(house, forged).status_code == 404
    with house.ledger.reading() as book:
        assert not book.mail.is_muted(ANN)


# --- forgetting ----------------------------------------------------------------------------------


@pytest.fixture
def on_disk(store_url: str, tmp_path: Path) -> Iterator[House]:
    """The same on SQLite and on PostgreSQL."""
    built = House(store_url)
    built.text("I'm in 05673")
    yield built
    built.close()


def contents(house: House) -> str:
    """All that stands in the store, as text."""
    from sqlmodel import SQLModel

    with house.ledger._store.reading() as connection:
        tables = [table.name for table in SQLModel.metadata.sorted_tables]
        return "\n".join(
            f"{name}: {connection.execute(sql(f'SELECT * FROM {name}')).all()}" for name in tables
        )


def test_forget_me_asks_once_and_then_nothing_of_the_person_is_left(on_disk: House) -> None:
    house = on_disk
    house.link()
    house.text("12 gal at 2.2")
    house.text("no, 14.25")
    house.mail("3 gal at 2")
    assert house.text("forget me") == wording.FORGET_SURE
    assert house.sap() == 17.25
    assert house.text("forget") == wording.FORGOTTEN
    left = contents(house)
    for trace in (PHONE, ANN, "12 gal", "14.25", "Waitsfield", "05673"):
        assert trace not in left, trace
    assert "Pailtext here" in house.text("hi")


def test_forgetting_can_be_left_alone(house: House) -> None:
    house.text("12 gal at 2.2")
    house.text("forget me")
    house.text("keep")
    assert house.sap() == 12
    house.text("forget me")
    house.text("3 gal at 2")
    house.text("forget")
    assert house.sap() == 15


def test_a_repeated_delivery_of_the_word_gets_the_same_answer(house: House) -> None:
    from bot.messages import SMS_DOOR, Incoming

    house.text("forget me")
    word = Incoming(SMS_DOOR, "SM-x", PHONE, "forget", house.clock.now_utc(), "+15550100099")
    assert [house.inbox.receive(word) for _ in range(2)] == [wording.FORGOTTEN] * 2


def test_a_mail_that_asks_to_be_forgotten_is_answered_a_last_time(house: House) -> None:
    house.link()
    assert house.mail("forget me") == wording.FORGET_SURE
    assert house.mail("forget") == wording.FORGOTTEN
    assert house.mail("12 gal") == wording.NEUTRAL


def test_a_shared_sugarbush_keeps_its_totals_without_the_name(on_disk: House) -> None:
    house = on_disk
    house.text(f"add {OTHER_PHONE}")
    house.text("join", OTHER_PHONE)
    house.text("12 gal at 2", OTHER_PHONE)
    house.text("10 gal at 2")
    assert house.text("forget me", OTHER_PHONE) == wording.FORGET_SHARED
    assert house.text("forget", OTHER_PHONE) == wording.FORGOTTEN
    assert house.sap() == 22
    assert "Season 22 gal" in house.text("how much so far")
    assert OTHER_PHONE not in contents(house)


def test_the_helper_runs_the_sugarbush_when_its_owner_is_forgotten(on_disk: House) -> None:
    house = on_disk
    house.text(f"add {OTHER_PHONE}")
    house.text("join", OTHER_PHONE)
    house.text("10 gal at 2")
    house.text("forget me")
    house.text("forget")
    assert house.phones.texts(OTHER_PHONE)[-1] == wording.NOW_OWNER
    assert house.sap(OTHER_PHONE) == 10
    assert PHONE not in contents(house)
    assert "may join" in house.text("add +1 555 010 0013", OTHER_PHONE)
