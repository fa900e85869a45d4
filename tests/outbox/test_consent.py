"""Whether a text may go: STOP and START, the hours by the receiver's clock, the daily cap."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from bot.clock import local_time
from bot.consent import MOST_UNASKED_A_DAY, Consent, WhyNot, next_open
from bot.messages import Kind
from tests.outbox.post_office import ANN, EASTERN, HOUR, MINUTE, NOW_UTC, Office

# From east to west, with half hours and a place without summer time.
ZONES = (
    "America/St_Johns",
    "America/Halifax",
    "America/New_York",
    "America/Chicago",
    "America/Phoenix",
    "America/Anchorage",
)


def local(text: str, zone: str = EASTERN) -> datetime:
    """A wall clock as a moment, aware UTC."""
    return datetime.fromisoformat(text).replace(tzinfo=ZoneInfo(zone)).astimezone(UTC)


def why_not(office: Office, kind: Kind, at_utc: datetime, zone: str = EASTERN) -> WhyNot | None:
    with office.ledger.reading() as book:
        who = book.people.find(ANN)
        assert who is not None
        return Consent(book).may_send(who.person_id, kind, at_utc, zone)


# --- the log ------------------------------------------------------------------------------------


def test_the_first_text_is_logged_as_consent_with_who_when_and_how(office: Office) -> None:
    ann = office.meet()
    with office.ledger.reading() as book:
        (word,) = book.consents.of_person(ann.person_id)
    assert (word.said, word.how, word.address, word.at_utc) == (
        "start",
        "twilio_sms: first text",
        ANN,
        NOW_UTC,
    )
    assert word.text_id is not None


def test_every_stop_and_start_is_added_to_the_log(office: Office) -> None:
    ann = office.meet()
    for word in ("STOP", "START", "STOP"):
        office.clock.advance(MINUTE)
        office.say(ann, word)
    assert office.words(ann) == [
        ("start", "twilio_sms: first text"),
        ("stop", "twilio_sms: STOP"),
        ("start", "twilio_sms: START"),
        ("stop", "twilio_sms: STOP"),
    ]


@pytest.mark.parametrize("kind", ["reply", "alert", "reminder", "notice"])
def test_nothing_at_all_may_go_after_stop(office: Office, kind: Kind) -> None:
    ann = office.meet()
    assert why_not(office, kind, NOW_UTC) is None
    office.say(ann, "STOP")
    assert why_not(office, kind, NOW_UTC) == WhyNot("they said stop")
    office.clock.advance(MINUTE)
    office.say(ann, "START")
    assert why_not(office, kind, NOW_UTC) is None


# --- hours --------------------------------------------------------------------------------------


@pytest.mark.parametrize("zone", ZONES)
@pytest.mark.parametrize(
    ("kind", "opens", "closes"),
    [("alert", "05:00", "21:00"), ("reminder", "08:00", "21:00"), ("notice", "08:00", "21:00")],
)
def test_each_kind_has_its_hours_by_the_clock_of_the_receiver(
    zone: str, kind: Kind, opens: str, closes: str
) -> None:
    opening, closing = local(f"2027-03-09T{opens}", zone), local(f"2027-03-09T{closes}", zone)
    second = timedelta(seconds=1)
    assert next_open(kind, opening - second, zone) == opening
    assert next_open(kind, opening, zone) == opening
    assert next_open(kind, closing - second, zone) == closing - second
    assert next_open(kind, closing, zone) == local(f"2027-03-10T{opens}", zone)


@pytest.mark.parametrize("zone", ZONES)
def test_a_reply_may_go_at_any_hour(zone: str) -> None:
    for hour in range(24):
        moment = local(f"2027-03-09T{hour:02d}:30", zone)
        assert next_open("reply", moment, zone) == moment


def test_outside_its_hours_a_text_may_not_go_until_they_open(office: Office) -> None:
    office.meet()
    opening = local("2027-03-09T08:00")
    assert why_not(office, "reminder", opening - MINUTE) == WhyNot("not at this hour", opening)
    assert why_not(office, "reminder", opening) is None
    assert why_not(office, "reply", opening - MINUTE) is None


@pytest.mark.parametrize("zone", ["America/St_Johns", "America/New_York", "America/Anchorage"])
@pytest.mark.parametrize("eve", ["2027-03-13", "2027-11-06"])
def test_the_morning_opens_by_the_wall_clock_through_both_changes(zone: str, eve: str) -> None:
    """On the night of 14 March 2027 the clocks go forward, on that of 7 November back."""
    evening = local(f"{eve}T22:00", zone)
    opens = next_open("reminder", evening, zone)
    assert local_time(opens, zone).time().isoformat() == "08:00:00"
    assert opens - evening == timedelta(hours=9 if eve == "2027-03-13" else 11)


def test_a_reminder_that_comes_due_at_night_waits_for_the_morning(office: Office) -> None:
    ann = office.meet()
    night = local("2027-03-09T22:00")
    office.owe(ann, due_utc=night, useless_after_utc=night + 12 * HOUR)
    office.clock.set(night)
    office.go()
    assert (office.row(ann).state, office.row(ann).reason) == ("owed", "not at this hour")
    office.go(10 * HOUR - MINUTE)
    assert office.channel.sent == []
    office.go(MINUTE)
    assert len(office.channel.sent) == 1


def test_a_reminder_that_is_useless_by_the_morning_is_dropped_at_night(office: Office) -> None:
    ann = office.meet()
    night = local("2027-03-09T22:00")
    office.owe(ann, due_utc=night)
    office.clock.set(night)
    office.go()
    assert (office.row(ann).state, office.row(ann).reason) == ("dropped", "not at this hour")


def test_the_hours_are_those_where_the_trees_are(office: Office) -> None:
    """15:00 UTC is 10 in New York, but 6 in Anchorage."""
    ann = office.meet(place="America/Anchorage")
    office.owe(ann, useless_after_utc=NOW_UTC + 12 * HOUR)
    office.go()
    assert office.channel.sent == []
    office.go(2 * HOUR)
    assert len(office.channel.sent) == 1


# --- the cap ------------------------------------------------------------------------------------


def test_unasked_texts_are_capped_by_the_local_day(office: Office) -> None:
    ann = office.meet()
    for number in range(MOST_UNASKED_A_DAY + 2):
        office.owe(ann, key=f"k{number}", useless_after_utc=NOW_UTC + 36 * HOUR)
    office.go()
    assert len(office.channel.sent) == MOST_UNASKED_A_DAY
    assert [row.reason for row in office.rows(ann) if row.state == "owed"] == [
        "enough for one day"
    ] * 2
    office.clock.set(local("2027-03-10T07:59"))
    office.go()
    assert len(office.channel.sent) == MOST_UNASKED_A_DAY
    office.go(MINUTE)
    assert len(office.channel.sent) == MOST_UNASKED_A_DAY + 2


def test_the_cap_counts_no_replies_and_stops_none(office: Office) -> None:
    ann = office.meet()
    for number in range(MOST_UNASKED_A_DAY + 3):
        office.owe(ann, key=f"r{number}", kind="reply")
    office.owe(ann)
    office.go()
    assert set(office.states(ann)) == {"sent"}


def test_the_day_that_lost_an_hour_is_still_one_day(office: Office) -> None:
    """14 March 2027 has 23 hours in New York."""
    ann = office.meet()
    office.clock.set(local("2027-03-14T20:00"))
    for number in range(MOST_UNASKED_A_DAY):
        office.owe(ann, key=f"k{number}")
    office.go()
    assert why_not(office, "alert", local("2027-03-14T20:30")) == WhyNot(
        "enough for one day", local("2027-03-15T05:00")
    )
    assert why_not(office, "alert", local("2027-03-15T05:00")) is None
