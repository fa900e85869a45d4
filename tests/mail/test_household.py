"""Helpers on one sugarbush, several addresses of one person, and how alerts come."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.channels.channel import OptedOutError
from bot.helper_lines import HelperLines
from bot.messages import Unasked
from bot.outbox import owe
from bot.wiring import DEFAULT_ZONE
from bot.wording import household as wording
from tests.mail.letters import ANN, BEN
from tests.mail.stage import OTHER_PHONE, PHONE, House


def join(house: House, phone: str = OTHER_PHONE) -> None:
    """The other one helps on Ann's sugarbush."""
    house.text(f"add {phone}")
    house.text("join", phone)


def unasked(house: House, key: str = "boil_by") -> Unasked:
    with house.ledger.reading() as book:
        who = book.people.find(PHONE)
        assert who is not None
    now_utc = house.clock.now_utc()
    return Unasked(
        person_id=who.person_id,
        to=PHONE,
        kind="reminder",
        key=key,
        local_date=date(2027, 3, 5),
        text="Pailtext: boil today.",
        due_utc=now_utc,
        useless_after_utc=now_utc + timedelta(hours=1),
    )


def remind(house: House, key: str = "boil_by") -> None:
    """A reminder is owed to Ann, as the morning plans it, and delivered."""
    text = unasked(house, key)
    with house.ledger.writing() as book:
        owe(book, [text], house.clock.now_utc())
    house.outbox.deliver_due()


# --- who keeps a tally together ------------------------------------------------------------------


def test_the_invited_one_gets_one_message_however_often_they_are_added(house: House) -> None:
    for _ in range(2):
        house.text(f"add {OTHER_PHONE}")
    (told,) = house.phones.texts(OTHER_PHONE)
    assert told.startswith(f"Pailtext: {PHONE} asks you to log sap")


def test_one_who_has_joined_or_is_not_asked_any_more_gets_no_invitation(house: House) -> None:
    """It is night: the invitation waits for the morning."""
    house.clock.advance(timedelta(hours=5))
    house.text(f"add {OTHER_PHONE}")
    house.text("join", OTHER_PHONE)
    house.text("add +15550100013")
    house.text("scratch that")
    house.clock.advance(timedelta(hours=10))
    house.outbox.deliver_due()
    assert house.phones.texts(OTHER_PHONE) == house.phones.texts("+15550100013") == []


def test_an_invited_mail_address_joins_by_a_proved_mail(house: House) -> None:
    house.text("10 gal at 2")
    house.text(f"add {BEN}")
    assert "join" in house.mails.texts(BEN)[0]
    assert house.mail("12 gal at 2", BEN) == wording.NEUTRAL
    assert "You are in" in house.mail("join", BEN)
    assert "Season 22 gal" in house.mail("12 gal at 2", BEN)


def test_a_forged_join_joins_nobody(house: House) -> None:
    house.text(f"add {BEN}")
    house.mail("join", BEN, is_signed=False)
    with house.ledger.reading() as book:
        assert book.people.find(BEN) is None


def test_one_who_said_stop_is_not_invited(house: House) -> None:
    house.text("hi", OTHER_PHONE)
    house.text("STOP", OTHER_PHONE)
    house.text(f"add {OTHER_PHONE}")
    assert house.phones.texts(OTHER_PHONE) == []


def test_an_invitation_that_the_carrier_refuses_silences_only_the_invited(house: House) -> None:
    def refuse(_outgoing: object) -> None:
        raise OptedOutError("error 21610")

    house.phones.send = refuse  # type: ignore[assignment,method-assign]
    house.text(f"add {OTHER_PHONE}")
    assert house.text("12 gal at 2.2")


def test_who_logged_what_is_told_to_each(house: House) -> None:
    join(house)
    house.text("10 gal at 2")
    house.text("12 gal at 2", OTHER_PHONE)
    mine, theirs = "1 record, 10 gal sap", "1 record, 12 gal sap"
    assert house.text("who logged what") == f"You {mine}; {OTHER_PHONE} {theirs}."
    assert house.text("who logged what", OTHER_PHONE).startswith(f"{PHONE} 1 record, 10 gal")


def test_the_owner_removes_a_helper_and_what_they_logged_stays(house: House) -> None:
    join(house)
    house.text("12 gal at 2", OTHER_PHONE)
    assert "off your sugarbush" in house.text(f"remove {OTHER_PHONE}")
    assert house.phones.texts(OTHER_PHONE)[-1].startswith(f"Pailtext: {PHONE} took you off")
    assert (house.sap(PHONE), house.sap(OTHER_PHONE)) == (12, 0)
    house.text("5 gal at 2", OTHER_PHONE)
    assert (house.sap(PHONE), house.sap(OTHER_PHONE)) == (12, 5)


def test_a_helper_removes_nobody_and_nobody_removes_themselves(house: House) -> None:
    join(house)
    assert house.text(f"remove {PHONE}", OTHER_PHONE) == wording.OWNER_ONLY
    assert house.text(f"remove {PHONE}") == wording.YOURSELF
    assert house.text("remove +1 555 010 0077") == wording.NOT_IN


def test_an_invitation_is_taken_back_by_removing(house: House) -> None:
    house.text(f"add {OTHER_PHONE}")
    assert "not asked in any more" in house.text(f"remove {OTHER_PHONE}")
    house.text("join", OTHER_PHONE)
    house.text("5 gal at 2", OTHER_PHONE)
    assert house.sap(PHONE) == 0


def test_a_helper_leaves_and_an_owner_does_not(house: House) -> None:
    join(house)
    house.text("12 gal at 2", OTHER_PHONE)
    assert house.text("leave", OTHER_PHONE).startswith("You have left.")
    assert (house.sap(PHONE), house.sap(OTHER_PHONE)) == (12, 0)
    assert house.text("leave") == wording.OWNER_STAYS


@settings(max_examples=12, deadline=None)
@given(
    st.lists(
        st.tuples(
            st.sampled_from([PHONE, OTHER_PHONE, "+15550100013"]),
            st.sampled_from(
                [
                    *("7 gal at 2", "add +15550100012", "add +15550100013", "join", "leave"),
                    *("remove +15550100012", "remove +15550100013", "who logged what", "export"),
                ]
            ),
        ),
        max_size=12,
    )
)
def test_strangers_data_never_mixes(steps: list[tuple[str, str]]) -> None:
    """Whatever is texted, each gallon stands in one sugarbush, and only its members see it."""
    house = House()
    try:
        logged = 0.0
        for phone, words in steps:
            before = {phone: house.sap(phone)}
            house.text(words, phone)
            if words == "7 gal at 2" and house.sap(phone) == before[phone] + 7:
                logged += 7
            mates = {}
            with house.ledger.reading() as book:
                for each in (PHONE, OTHER_PHONE, "+15550100013"):
                    who = book.people.find(each)
                    if who is not None:
                        mates[each] = who.sugarbush_id
            shared = {each: house.sap(each) for each in mates}
            for one, bush in mates.items():
                assert all(shared[one] == shared[two] for two in mates if mates[two] == bush)
            assert sum({mates[each]: shared[each] for each in mates}.values()) <= logged
    finally:
        house.close()


# --- the owner's line ----------------------------------------------------------------------------


def evening(house: House) -> list[str]:
    """The lines of the evening of 5 March, 19:30 in New York."""
    lines = HelperLines(house.ledger, DEFAULT_ZONE)
    at_utc = datetime(2027, 3, 6, 0, 30, tzinfo=UTC)
    return [text.text for text in lines.plan(at_utc - timedelta(minutes=15), at_utc)]


def test_the_owner_hears_what_helpers_logged_if_they_wish(house: House) -> None:
    join(house)
    house.text("10 gal at 2")
    house.text("12 gal at 2", OTHER_PHONE)
    assert evening(house) == []
    assert house.text("tell me what my helpers log") == wording.HEARS
    (line,) = evening(house)
    assert line.startswith(f"Pailtext: today {OTHER_PHONE} 1 record, 12 gal sap. Season 22 gal")
    house.text("stop telling me what my helpers log")
    assert evening(house) == []


def test_there_is_no_line_where_helpers_logged_nothing(house: House) -> None:
    join(house)
    house.text("tell me what my helpers log")
    house.text("10 gal at 2")
    assert evening(house) == []


# --- how alerts come -----------------------------------------------------------------------------


def test_alerts_come_as_the_person_says(house: House) -> None:
    assert house.text("alerts by mail") == wording.NO_MAIL_LINKED
    house.link()
    seen = []
    for number, way in enumerate(("", "alerts by mail", "alerts by both", "alerts by text")):
        if way:
            house.text(way)
        before = len(house.phones.sent), len(house.mails.sent)
        remind(house, f"boil_by:{number}")
        seen.append((len(house.phones.sent) - before[0], len(house.mails.sent) - before[1]))
    assert seen == [(1, 0), (0, 1), (1, 1), (1, 0)]


def test_an_unasked_mail_names_the_way_out_and_an_answer_does_not(house: House) -> None:
    house.link()
    house.text("alerts by mail")
    remind(house)
    _, cover = house.mails.sent[-1]
    assert cover.unsubscribe_url is not None
    assert cover.unsubscribe_url.startswith("https://sap.example/unsubscribe/")


def test_one_click_ends_unasked_mails_and_nothing_else(house: House) -> None:
    house.link()
    house.text("alerts by both")
    with house.ledger.writing() as book:
        book.mail.mute(ANN, house.clock.now_utc())
    before = len(house.mails.sent)
    remind(house)
    assert len(house.mails.sent) == before
    assert len(house.phones.sent) == 1
    assert house.mail("how much so far")


@pytest.mark.parametrize("back", ["alerts by mail", "START"])
def test_unasked_mails_come_back_when_they_are_asked_for(house: House, back: str) -> None:
    house.link()
    house.text("alerts by mail")
    with house.ledger.writing() as book:
        book.mail.mute(ANN, house.clock.now_utc())
    if back == "START":
        house.mail(back)
    else:
        house.text(back)
    before = len(house.mails.sent)
    remind(house)
    assert len(house.mails.sent) == before + 1


def test_a_planned_text_goes_once_a_way_however_often_it_is_planned(house: House) -> None:
    house.link()
    house.text("alerts by both")
    text = unasked(house)
    with house.ledger.writing() as book:
        new = [owe(book, [text], house.clock.now_utc()) for _ in range(2)]
    assert new == [2, 0]
