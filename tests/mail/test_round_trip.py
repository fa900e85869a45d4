"""Pailtext between a real postfix and a real dovecot: in, read, and back."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta
from email.message import Message
from functools import partial
from pathlib import Path

import pytest

from bot.channels.channel import NeverError, TryLaterError
from bot.channels.email_imap import Reader, has_copy
from bot.channels.email_proof import proof
from bot.channels.email_smtp import Cover, EmailSmtp
from bot.clock import SystemClock
from bot.messages import SMS_DOOR, Incoming, Outgoing
from bot.wiring import Mail, Parts, build
from bot.wording.household import NEUTRAL
from bot.worker import reading_mail
from tests.channels.test_contract import A_MINUTE_AGO
from tests.mail.letters import letter, resolver, signed
from tests.mail.peers import (
    ANN,
    BEN,
    FULL_FOR_GOOD,
    FULL_LATER,
    FULL_NOW,
    OWN,
    Peers,
    wait_until,
)

PHONE = "+15550100011"


@pytest.fixture
def parts(peers: Peers, tmp_path: Path) -> Iterator[Parts]:
    """Pailtext with these servers, as the settings would have it; Ann's address is linked."""
    mail = Mail(peers.servers(), proof(None, resolver))
    url = f"sqlite:///{tmp_path / 'mail.sqlite'}"
    built = build(url, SystemClock(), mail=mail, public_url="https://sap.example")
    for number, words in enumerate(("I'm in 05673", f"link {ANN}")):
        built.inbox.receive(
            Incoming(SMS_DOOR, str(number), PHONE, words, datetime.now(UTC), "+15550100099")
        )
    built.outbox.deliver_due()
    wait_until(lambda: len(peers.mailbox(ANN)) == 1)
    code = re.search(r"\d{6}", plain(peers.mailbox(ANN)[0]))
    assert code is not None
    built.inbox.receive(Incoming(SMS_DOOR, "code", PHONE, code[0], datetime.now(UTC)))
    yield built
    built.ledger.close()


def plain(mail: Message) -> str:
    """The plain words of a mail."""
    part = next(each for each in mail.walk() if each.get_content_type() == "text/plain")
    payload = part.get_payload(decode=True)
    assert isinstance(payload, bytes)
    return payload.decode()


def channel(peers: Peers) -> EmailSmtp:
    servers = peers.servers()
    return EmailSmtp(servers, SystemClock(), lambda _outgoing: Cover(), partial(has_copy, servers))


def send(peers: Peers, words: str, number: int, *, is_signed: bool = True) -> None:
    raw = letter(words + "\n", ANN, number).as_bytes()
    peers.send(signed(raw) if is_signed else raw)


def test_a_mail_comes_in_is_read_and_its_answer_lies_in_the_thread(
    peers: Peers, parts: Parts
) -> None:
    with reading_mail(parts):
        send(peers, "12 gal at 2.2", 1)
        wait_until(lambda: len(peers.mailbox(ANN)) == 2)
        wait_until(lambda: peers.seen(OWN)[-1])
    answer = peers.mailbox(ANN)[-1]
    assert plain(answer).startswith("12 gal at 2.2, ")
    assert answer["In-Reply-To"] == "<1@maple.example>"
    assert answer["Auto-Submitted"] == "auto-replied"
    assert answer["Subject"] == "Re: sap"


def test_a_forged_mail_gets_the_neutral_answer_once_and_writes_nothing(
    peers: Peers, parts: Parts
) -> None:
    with reading_mail(parts):
        send(peers, "12 gal at 2.2", 1, is_signed=False)
        send(peers, "how much so far", 2, is_signed=False)
        send(peers, "3 gal at 2", 3)
        wait_until(lambda: len(peers.mailbox(ANN)) == 3)
    neutral, answer = (plain(mail) for mail in peers.mailbox(ANN)[1:])
    assert " ".join(neutral.split()) == NEUTRAL
    assert answer.startswith("3 gal at 2, ")
    assert "Season" not in answer


def test_a_mail_that_came_twice_over_imap_is_answered_once(peers: Peers, parts: Parts) -> None:
    with reading_mail(parts):
        send(peers, "12 gal at 2.2", 1)
        send(peers, "12 gal at 2.2", 1)
        send(peers, "3 gal at 2", 2)
        wait_until(lambda: len(peers.mailbox(ANN)) == 3)
    assert "Season 15 gal" in plain(peers.mailbox(ANN)[-1])


def test_what_bounces_off_a_full_mailbox_is_not_answered(peers: Peers, parts: Parts) -> None:
    """It was taken by the server, and comes back to our own mailbox as a report."""
    before = len(peers.mailbox(OWN))
    channel(peers).send(Outgoing(FULL_LATER, "Pailtext: boil today.", "reminder", text_id=77))
    # The copy, and the report.
    wait_until(lambda: len(peers.mailbox(OWN)) == before + 2)
    with reading_mail(parts):
        wait_until(lambda: all(peers.seen(OWN)))
    assert len(peers.mailbox(OWN)) == before + 2
    assert any(mail.get_content_type() == "multipart/report" for mail in peers.mailbox(OWN))


def test_a_mailbox_that_is_full_now_is_tried_later_and_one_for_good_never(peers: Peers) -> None:
    for to, error in ((FULL_NOW, TryLaterError), (FULL_FOR_GOOD, NeverError)):
        with pytest.raises(error):
            channel(peers).send(Outgoing(to, "Pailtext: boil today.", "reminder", text_id=7))


def test_what_was_sent_is_found_in_our_own_mailbox(peers: Peers) -> None:
    mine = Outgoing(BEN, "Pailtext: boil today.", "reminder", text_id=7)
    sent = channel(peers).send(mine)
    wait_until(lambda: channel(peers).find(mine, A_MINUTE_AGO) == sent)
    other = Outgoing(BEN, "Pailtext: boil today.", "reminder", text_id=8)
    assert channel(peers).find(other, A_MINUTE_AGO) is None


@contextmanager
def away(peers: Peers, marks_itself: bool) -> Iterator[Callable[[], int]]:
    """A program that answers whatever comes to Ann, signed; how often it did."""
    answered = 0

    def take(_raw: bytes, _is_whole: bool, _arrived_utc: datetime) -> None:
        nonlocal answered
        answered += 1
        marks = {"Auto-Submitted": "auto-replied"} if marks_itself else {}
        raw = letter(f"I am away, {answered}\n", ANN, 1000 + answered, marks).as_bytes()
        peers.send(signed(raw))

    reader = Reader(peers.servers(ANN), take, first_pause_s=0.1)
    reader.start()
    try:
        yield lambda: answered
    finally:
        reader.stop()


def test_two_programs_that_answer_each_other_end_at_once(peers: Peers, parts: Parts) -> None:
    with away(peers, marks_itself=True) as answered, reading_mail(parts):
        send(peers, "12 gal at 2.2", 1)
        wait_until(lambda: answered() >= 2)
        # It has answered the mail with the code and the reply; neither of those is answered.
        wait_until(lambda: len(peers.mailbox(OWN)) >= 4 and all(peers.seen(OWN)))
        assert answered() == 2


def test_even_a_program_that_does_not_say_so_is_left_alone_in_the_end(
    peers: Peers, parts: Parts, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("bot.mailroom.MOST_AN_HOUR", 4)
    with away(peers, marks_itself=False) as answered, reading_mail(parts):
        send(peers, "12 gal at 2.2", 1)
        wait_until(lambda: answered() >= 4)
        quiet_since = datetime.now(UTC)
        last = answered()
        while datetime.now(UTC) - quiet_since < timedelta(seconds=2):
            if answered() != last:
                last, quiet_since = answered(), datetime.now(UTC)
        assert last <= 6
