"""What is owed is sent once, if it may go, and while it is of use. Time is moved by hand."""

from __future__ import annotations

from datetime import date, timedelta
from itertools import pairwise

import pytest

from bot.channels.channel import (
    NeverError,
    OptedOutError,
    Report,
    TryLaterError,
    UnclearError,
)
from bot.inbox import IN_HAND
from bot.outbox import LEASE, owe, owe_reply
from tests.outbox.post_office import ANN, BEN, HOUR, MINUTE, NOW_UTC, Office


class KilledError(BaseException):
    """The process dies: nothing after it happens."""


# --- owing --------------------------------------------------------------------------------------


def test_what_is_owed_is_sent_when_it_is_due(office: Office) -> None:
    ann = office.meet()
    office.owe(ann, due_utc=NOW_UTC + HOUR)
    office.go(59 * MINUTE)
    assert office.channel.sent == []
    office.go(MINUTE)
    (sent,) = office.channel.sent
    assert (sent.to, sent.text) == (ANN, "Pailtext: 38 gal waits, boil today.")
    assert sent.valid_for == 3 * HOUR
    row = office.row(ann)
    assert (row.state, row.provider_id, row.status) == ("sent", "SM1", "accepted")
    assert row.sent_utc == NOW_UTC + HOUR


def test_a_person_is_owed_the_same_once_a_local_day(office: Office) -> None:
    ann, ben = office.meet(), office.meet(BEN)
    assert office.owe(ann) == 1
    assert office.owe(ann) == 0
    assert office.owe(ann, local_date=date(2027, 3, 10)) == 1
    assert office.owe(ann, key="gather") == 1
    assert office.owe(ben) == 1
    office.go()
    office.go(MINUTE)
    assert len(office.channel.sent) == 4


def test_what_was_sent_is_not_owed_anew(office: Office) -> None:
    ann = office.meet()
    office.owe(ann)
    office.go()
    assert office.owe(ann) == 0
    office.go(MINUTE)
    assert len(office.channel.sent) == 1


def test_a_text_whose_cause_is_undone_is_not_owed(office: Office) -> None:
    ann = office.meet()

    def owe_and_fail() -> None:
        with office.ledger.writing() as book:
            owe(book, [office.unasked(ann)], NOW_UTC)
            raise RuntimeError

    with pytest.raises(RuntimeError):
        owe_and_fail()
    assert office.rows(ann) == []


def test_a_text_that_is_useless_before_it_is_due_is_refused(office: Office) -> None:
    ann = office.meet()
    with pytest.raises(ValueError, match="boil_by is useless after"):
        office.owe(ann, useless_after_utc=NOW_UTC)


def test_the_segments_are_counted_when_it_is_owed(office: Office) -> None:
    ann = office.meet()
    office.owe(ann, key="a", text="x" * 160)
    office.owe(ann, key="b", text="x" * 161)
    office.owe(ann, key="c", text="\u00bd" + "x" * 70)
    assert [row.segments for row in office.rows(ann)] == [1, 2, 2]


# --- failing, recovering, expiring --------------------------------------------------------------


def test_a_send_that_fails_is_tried_again_and_recovers(office: Office) -> None:
    ann = office.meet()
    office.owe(ann)
    office.channel.next_errors.append(TryLaterError("error 20429: too many requests at once"))
    office.go()
    assert (office.row(ann).state, office.row(ann).reason) == (
        "owed",
        "error 20429: too many requests at once",
    )
    office.go(59 * timedelta(seconds=1))
    assert office.channel.sent == []
    office.go(timedelta(seconds=1))
    assert office.states(ann) == ["sent"]
    assert len(office.channel.sent) == 1
    assert office.channel.looked == 0


def test_the_pauses_grow(office: Office) -> None:
    ann = office.meet()
    office.owe(ann)
    office.channel.next_errors.extend(TryLaterError("down") for _ in range(20))
    tries = []
    for minute in range(180):
        before = len(office.channel.next_errors)
        office.go(MINUTE)
        if len(office.channel.next_errors) < before:
            tries.append(minute)
    gaps = [later - earlier for earlier, later in pairwise(tries)]
    assert gaps[:5] == [1, 2, 5, 10, 20]
    assert set(gaps[5:]) == {30}


def test_it_is_dropped_once_it_is_useless_and_no_later(office: Office) -> None:
    ann = office.meet()
    office.owe(ann, useless_after_utc=NOW_UTC + 4 * MINUTE)
    office.channel.next_errors.extend(TryLaterError("down") for _ in range(9))
    for _ in range(10):
        office.go(MINUTE)
    row = office.row(ann)
    assert (row.state, row.reason) == ("dropped", "down")
    assert office.channel.sent == []


def test_a_worker_that_was_away_sends_nothing_stale(office: Office) -> None:
    ann = office.meet()
    office.owe(ann)
    office.go(3 * HOUR)
    assert office.states(ann) == ["dropped"]
    assert office.channel.sent == []


def test_what_will_never_go_is_not_tried_again(office: Office) -> None:
    ann = office.meet()
    office.owe(ann)
    office.channel.next_errors.append(NeverError("error 21614: no mobile phone"))
    office.go()
    office.go(HOUR)
    assert (office.row(ann).state, office.row(ann).reason) == (
        "failed",
        "error 21614: no mobile phone",
    )
    assert office.channel.sent == []


def test_one_that_fails_holds_up_no_other(office: Office) -> None:
    ann, ben = office.meet(), office.meet(BEN)
    office.owe(ann)
    office.owe(ben)
    office.channel.next_errors.append(NeverError("error 21614: no mobile phone"))
    office.go()
    assert (office.states(ann), office.states(ben)) == (["failed"], ["sent"])


def test_a_text_without_a_channel_waits_for_one(office: Office) -> None:
    ann = office.meet("ann@sap.example")
    office.owe(ann)
    office.go()
    assert (office.row(ann).state, office.row(ann).reason) == (
        "owed",
        "nothing here sends by email",
    )
    office.go(3 * HOUR)
    assert office.states(ann) == ["dropped"]


# --- when nobody knows --------------------------------------------------------------------------


@pytest.mark.parametrize("left", [True, False])
def test_an_answer_that_was_lost_is_looked_for_before_sending_again(
    office: Office, left: bool
) -> None:
    ann = office.meet()
    office.owe(ann)
    office.channel.next_errors.append(UnclearError("no answer"))
    office.channel.loses = left
    office.go()
    assert office.states(ann) == ["unclear"]
    office.go(LEASE - timedelta(seconds=1))
    assert office.channel.looked == 0
    office.go(timedelta(seconds=1))
    assert office.states(ann) == ["sent"]
    assert len(office.channel.sent) == 1
    assert office.channel.asked_since == [NOW_UTC]


@pytest.mark.parametrize("left", [True, False])
def test_a_claim_whose_holder_died_is_looked_for_when_it_runs_out(
    office: Office, left: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    ann = office.meet()
    office.owe(ann)
    send = office.channel.send

    def die(outgoing: object) -> None:
        if left:
            send(outgoing)  # type: ignore[arg-type]
        raise KilledError

    with monkeypatch.context() as patch:
        patch.setattr(office.channel, "send", die)
        with pytest.raises(KilledError):
            office.go()
    assert office.states(ann) == ["trying"]
    office.go(LEASE - timedelta(seconds=1))
    assert len(office.channel.sent) == int(left)
    assert office.channel.looked == 0
    office.go(timedelta(seconds=1))
    assert office.states(ann) == ["sent"]
    assert len(office.channel.sent) == 1
    assert office.channel.looked == 1


def test_a_text_in_doubt_is_not_sent_while_the_provider_does_not_say(office: Office) -> None:
    ann = office.meet()
    office.owe(ann)
    office.channel.next_errors.append(UnclearError("no answer"))
    office.channel.loses = True
    office.channel.finds_errors.extend(TryLaterError("down") for _ in range(3))
    office.go()
    for _ in range(20):
        office.go(MINUTE)
    assert len(office.channel.sent) == 1
    assert office.states(ann) == ["sent"]
    assert office.channel.asked_since == [NOW_UTC] * 4


def test_a_text_in_doubt_that_is_useless_by_now_is_dropped(office: Office) -> None:
    ann = office.meet()
    office.owe(ann, useless_after_utc=NOW_UTC + MINUTE)
    office.channel.next_errors.append(UnclearError("no answer"))
    office.go()
    office.go(LEASE)
    assert office.states(ann) == ["dropped"]
    assert office.channel.sent == []


def test_who_said_stop_while_it_was_in_doubt_gets_nothing(office: Office) -> None:
    ann = office.meet()
    office.owe(ann)
    office.channel.next_errors.append(UnclearError("no answer"))
    office.go()
    office.say(ann, "STOP")
    office.go(LEASE)
    assert (office.row(ann).state, office.row(ann).reason) == ("dropped", "they said stop")
    assert office.channel.sent == []


def test_two_that_deliver_the_same_text_send_it_once(office: Office) -> None:
    ann = office.meet()
    office.owe(ann)
    (due,) = office.outbox.due()
    assert office.outbox.deliver(due.id) == "sent"
    assert office.outbox.deliver(due.id) == "sent"
    assert len(office.channel.sent) == 1


def test_a_text_that_somebody_has_in_hand_is_left_to_them(
    office: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    ann = office.meet()
    office.owe(ann)
    (due,) = office.outbox.due()
    send, seen = office.channel.send, []

    def slow(outgoing: object) -> object:
        seen.append(office.outbox.deliver(due.id))
        return send(outgoing)  # type: ignore[arg-type]

    monkeypatch.setattr(office.channel, "send", slow)
    assert office.outbox.deliver(due.id) == "sent"
    assert seen == ["trying"]
    assert len(office.channel.sent) == 1


# --- what the provider reports ------------------------------------------------------------------


def report(status: str, provider_id: str = "SM1", **more: object) -> Report:
    return Report(provider_id, status, ANN, **more)  # type: ignore[arg-type]


def test_a_report_is_noted_and_never_goes_backwards(office: Office) -> None:
    ann = office.meet()
    office.owe(ann)
    office.go()
    for told, noted in (
        ("sent", "sent"),
        ("accepted", "sent"),
        ("delivered", "delivered"),
        ("sent", "delivered"),
        ("undelivered", "delivered"),
        ("delivered", "delivered"),
    ):
        office.outbox.report(report(told))
        assert office.row(ann).status == noted
        assert office.row(ann).state == "sent"


def test_a_report_on_a_text_that_is_not_known_changes_nothing(office: Office) -> None:
    ann = office.meet()
    office.owe(ann)
    office.go()
    before = office.row(ann)
    office.outbox.report(report("delivered", "SM999"))
    office.outbox.report(report("delivered", "SM999", text_id=before.id))
    office.outbox.report(report("delivered", "SM999", text_id=4711))
    assert office.row(ann) == before


def test_a_report_answers_for_a_provider_whose_answer_was_lost(office: Office) -> None:
    ann = office.meet()
    office.owe(ann)
    office.channel.next_errors.append(UnclearError("no answer"))
    office.channel.loses = True
    office.go()
    office.outbox.report(report("sent", text_id=office.row(ann).id))
    row = office.row(ann)
    assert (row.state, row.provider_id, row.sent_utc) == ("sent", "SM1", NOW_UTC)
    office.go(HOUR)
    assert len(office.channel.sent) == 1
    assert office.channel.looked == 0


def test_a_report_that_is_quicker_than_the_answer_is_kept(
    office: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    ann = office.meet()
    office.owe(ann)
    send = office.channel.send

    def quick(outgoing: object) -> object:
        sent = send(outgoing)  # type: ignore[arg-type]
        office.outbox.report(report("delivered", text_id=office.row(ann).id))
        return sent

    monkeypatch.setattr(office.channel, "send", quick)
    office.go()
    row = office.row(ann)
    assert (row.state, row.status, row.provider_id) == ("sent", "delivered", "SM1")


def test_a_text_that_did_not_reach_the_phone_is_sent_again_while_of_use(office: Office) -> None:
    ann = office.meet()
    office.owe(ann)
    office.go()
    later = TryLaterError("error 30003: the phone cannot be reached")
    office.outbox.report(report("undelivered", error=later))
    office.go(MINUTE)
    assert len(office.channel.sent) == 2
    office.outbox.report(report("undelivered", error=later))
    row = office.row(ann)
    assert (row.state, row.provider_id, row.status) == ("sent", "SM2", "accepted")


@pytest.mark.parametrize(
    ("error", "after"),
    [
        (NeverError("error 30006: a landline"), timedelta(0)),
        (UnclearError("error 30008: unknown error on the way"), timedelta(0)),
        (TryLaterError("error 30003: the phone cannot be reached"), 3 * HOUR),
    ],
)
def test_a_text_that_did_not_arrive_and_will_not_has_failed(
    office: Office, error: NeverError, after: timedelta
) -> None:
    ann = office.meet()
    office.owe(ann)
    office.go()
    office.clock.advance(after)
    office.outbox.report(report("undelivered", error=error))
    office.go(HOUR)
    row = office.row(ann)
    assert (row.state, row.reason, row.status) == ("failed", str(error), "undelivered")
    assert len(office.channel.sent) == 1


# --- opting out ---------------------------------------------------------------------------------

OPTED_OUT = OptedOutError("error 21610: opted out at Twilio")


def test_a_refusal_for_opting_out_silences(office: Office) -> None:
    ann = office.meet()
    office.owe(ann)
    office.owe(ann, key="gather", due_utc=NOW_UTC + MINUTE)
    office.channel.next_errors.append(OPTED_OUT)
    office.go()
    office.go(MINUTE)
    assert office.states(ann) == ["failed", "dropped"]
    assert office.words(ann)[-1] == ("stop", f"twilio_sms: {OPTED_OUT}")
    assert office.channel.sent == []


def test_a_delivery_report_of_opting_out_silences(office: Office) -> None:
    ann = office.meet()
    office.owe(ann)
    office.go()
    office.clock.advance(MINUTE)
    office.outbox.report(report("undelivered", error=OPTED_OUT))
    office.owe(ann, key="gather")
    office.go(MINUTE)
    assert office.states(ann) == ["failed", "dropped"]
    assert office.words(ann)[-1] == ("stop", f"twilio_sms: {OPTED_OUT}")


def test_a_report_of_opting_out_silences_also_where_its_text_is_not_known(office: Office) -> None:
    ann = office.meet()
    office.clock.advance(MINUTE)
    office.outbox.report(report("undelivered", "SM999", error=OPTED_OUT))
    office.owe(ann)
    office.go()
    assert office.states(ann) == ["dropped"]


def test_a_repeated_report_of_opting_out_is_logged_once(office: Office) -> None:
    ann = office.meet()
    office.owe(ann)
    office.go()
    for _ in range(3):
        office.clock.advance(MINUTE)
        office.outbox.report(report("undelivered", error=OPTED_OUT))
    assert [said for said, _ in office.words(ann)] == ["start", "stop"]


def test_a_report_that_comes_after_start_does_not_silence_again(office: Office) -> None:
    ann = office.meet()
    office.owe(ann)
    office.go()
    office.clock.advance(MINUTE)
    office.say(ann, "START")
    office.clock.advance(MINUTE)
    office.outbox.report(report("undelivered", error=OPTED_OUT))
    office.owe(ann, key="gather")
    office.go()
    assert office.states(ann) == ["failed", "sent"]


def test_start_brings_back_for_what_is_owed_from_then_on(office: Office) -> None:
    ann = office.meet()
    office.say(ann, "STOP")
    office.owe(ann)
    office.go(MINUTE)
    office.say(ann, "START")
    office.owe(ann, key="gather")
    office.go()
    assert office.states(ann) == ["dropped", "sent"]


# --- late replies -------------------------------------------------------------------------------


def owe_late(office: Office, words: str = "12 gal, Tue.") -> None:
    kept = office.text(ANN, "12 gal")
    office.clock.advance(IN_HAND)
    with office.ledger.writing() as book:
        owe_reply(book, kept, words, office.now, office.zone)


def test_a_late_reply_goes_at_once_from_the_number_that_was_texted(office: Office) -> None:
    office.meet()
    owe_late(office)
    office.go()
    (sent,) = office.channel.sent
    assert (sent.to, sent.text, sent.kind) == (ANN, "12 gal, Tue.", "reply")


def test_a_late_reply_goes_also_at_night_when_it_was_just_asked_for(office: Office) -> None:
    office.meet()
    office.clock.advance(17 * HOUR)  # 3 in the morning
    owe_late(office)
    office.go()
    assert len(office.channel.sent) == 1


def test_a_reply_that_is_hours_late_wakes_nobody(office: Office) -> None:
    office.meet()
    kept = office.text(ANN, "12 gal")
    office.clock.advance(17 * HOUR)
    with office.ledger.writing() as book:
        owe_reply(book, kept, "12 gal, Tue.", office.now, office.zone)
    office.go(4 * HOUR + 59 * MINUTE)
    assert office.channel.sent == []
    office.go(MINUTE)  # 8 in the morning
    assert len(office.channel.sent) == 1
