"""The mailbox read from a real server: once, whatever breaks, and marked only when it is safe."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime, timedelta

import pytest
from imap_tools import BaseMailBox

from bot.channels import email_imap
from bot.channels.email_imap import Reader, Take, has_copy
from bot.channels.email_letter import read_letter
from bot.channels.email_servers import Servers
from tests.mail.letters import letter
from tests.mail.peers import OWN, Breaking, Peers, wait_until


@dataclass
class Taken:
    """Takes mails; raises as often as told first."""

    mails: list[tuple[bytes, bool]] = field(default_factory=list)
    raises: int = 0
    tries: int = 0

    def take(self, raw: bytes, is_whole: bool, arrived_utc: datetime) -> None:
        self.tries += 1
        assert abs(datetime.now(UTC) - arrived_utc) < timedelta(minutes=1)
        if self.raises:
            self.raises -= 1
            raise RuntimeError("broken on purpose")
        self.mails.append((raw, is_whole))

    def words(self) -> list[str]:
        return [read_letter(raw, OWN).words for raw, _ in self.mails]


@contextmanager
def reading(servers: Servers, take: Take) -> Iterator[Reader]:
    reader = Reader(servers, take, first_pause_s=0.1)
    reader.start()
    try:
        yield reader
    finally:
        reader.stop()


def test_mails_are_taken_in_order_byte_for_byte_and_marked_as_seen(peers: Peers) -> None:
    taken = Taken()
    # One after the other: the server may deliver two that wait in either order.
    peers.send(letter("1 gal\n", number=1))
    wait_until(lambda: len(peers.mailbox(OWN)) == 1)
    peers.send(letter("2 gal\n", number=2))
    wait_until(lambda: len(peers.mailbox(OWN)) == 2)
    with reading(peers.servers(), taken.take):
        wait_until(lambda: peers.seen() == [True, True])
    assert taken.words() == ["1 gal", "2 gal"]
    assert b"1 gal\r\n" in taken.mails[0][0]


def test_a_mail_that_comes_while_it_waits_is_taken_at_once(peers: Peers) -> None:
    """By IDLE: the mailbox would not be looked at again for minutes."""
    taken = Taken()
    with reading(peers.servers(), taken.take):
        peers.send(letter("1 gal\n"))
        wait_until(lambda: len(taken.mails) == 1)
        peers.send(letter("2 gal\n", number=2))
        wait_until(lambda: len(taken.mails) == 2)
    assert taken.words() == ["1 gal", "2 gal"]


def test_a_mail_that_comes_just_before_the_waiting_is_taken_at_once(
    peers: Peers, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The server tells it together with its go-ahead to wait."""
    taken = Taken()
    waits = Reader._wait

    def wait(reader: Reader, box: BaseMailBox) -> None:
        if not taken.tries:
            peers.send(letter("1 gal\n"))
            wait_until(lambda: peers.delivered() == 1)
        waits(reader, box)

    monkeypatch.setattr(Reader, "_wait", wait)
    with reading(peers.servers(), taken.take):
        wait_until(lambda: taken.words() == ["1 gal"])


def test_a_mail_that_comes_just_before_the_look_is_taken_at_once(
    peers: Peers, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The server looks for what was there before, and tells the news with the answer."""
    taken = Taken()

    def send(*_given: object) -> None:
        peers.send(letter("1 gal\n"))
        wait_until(lambda: peers.delivered() == 1)

    monkeypatch.setattr(email_imap, "_drop_old_copies", send)
    with reading(peers.servers(), taken.take):
        wait_until(lambda: taken.words() == ["1 gal"])


def test_a_server_that_cannot_tell_news_is_asked(
    peers: Peers, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(email_imap, "POLL_S", 0.2)
    monkeypatch.setattr(email_imap, "_STEP_S", 0.1)
    taken = Taken()
    opened = Servers._opened

    def without_idle(servers: Servers) -> BaseMailBox:
        box = opened(servers)
        box.client.capabilities = ("IMAP4REV1",)
        return box

    monkeypatch.setattr(Servers, "_opened", without_idle)
    with reading(peers.servers(), taken.take):
        peers.send(letter("1 gal\n"))
        wait_until(lambda: taken.words() == ["1 gal"])


def test_a_connection_that_drops_in_mid_fetch_loses_and_doubles_nothing(peers: Peers) -> None:
    taken = Taken()
    peers.send(letter("12 gal\n"))
    wait_until(lambda: len(peers.mailbox(OWN)) == 1)
    with (
        Breaking(peers.imap, at=b"Return-Path") as broken,
        reading(peers.servers(imap=broken.port), taken.take),
    ):
        wait_until(lambda: peers.seen() == [True])
        assert broken.cuts == 1
    assert taken.words() == ["12 gal"]


def test_a_connection_that_drops_while_it_waits_is_made_anew(peers: Peers) -> None:
    taken = Taken()
    with (
        Breaking(peers.imap, at=b"EXISTS\r\n* 1 RECENT") as broken,
        reading(peers.servers(imap=broken.port), taken.take),
    ):
        peers.send(letter("12 gal\n"))
        wait_until(lambda: taken.words() == ["12 gal"])


def test_a_mail_that_was_not_taken_stays_unseen_and_comes_again(peers: Peers) -> None:
    taken = Taken(raises=1)
    peers.send(letter("12 gal\n"))
    with reading(peers.servers(), taken.take) as reader:
        wait_until(lambda: taken.tries == 1)
        assert peers.seen() == [False]
        # The next mail makes the mailbox be looked at again.
        peers.send(letter("3 gal\n", number=2))
        wait_until(lambda: len(taken.mails) == 2)
        assert reader.is_alive()
    assert sorted(taken.words()) == ["12 gal", "3 gal"]


def test_a_mail_that_always_fails_keeps_no_other_waiting(
    peers: Peers, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(email_imap, "POLL_S", 0.2)
    monkeypatch.setattr(email_imap, "_STEP_S", 0.1)
    tries = []

    def take(raw: bytes, _is_whole: bool, _arrived_utc: datetime) -> None:
        tries.append(read_letter(raw, OWN).words)
        if tries[-1] == "poison":
            raise RuntimeError("broken on purpose")

    peers.send(letter("poison\n"))
    wait_until(lambda: len(peers.mailbox(OWN)) == 1)
    with reading(peers.servers(), take):
        wait_until(lambda: tries.count("poison") == email_imap.MOST_TRIES)
        peers.send(letter("3 gal\n", number=2))
        wait_until(lambda: "3 gal" in tries)
        wait_until(lambda: peers.seen() == [False, True])
    assert tries.count("poison") == email_imap.MOST_TRIES


def test_a_mailbox_that_is_numbered_anew_gives_each_mail_once_and_failed_ones_again(
    peers: Peers, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A number (UID) means another mail then: none may be passed over for one that had failed."""
    monkeypatch.setattr(email_imap, "POLL_S", 0.2)
    monkeypatch.setattr(email_imap, "_STEP_S", 0.1)
    tries: list[str] = []
    is_mended = False

    def take(raw: bytes, _is_whole: bool, _arrived_utc: datetime) -> None:
        tries.append(read_letter(raw, OWN).words)
        if tries[-1] == "poison" and not is_mended:
            raise RuntimeError("broken on purpose")

    peers.send(letter("poison\n"))
    peers.send(letter("1 gal\n", number=2))
    with reading(peers.servers(), take):
        wait_until(lambda: tries.count("poison") == email_imap.MOST_TRIES)
        wait_until(lambda: sorted(peers.seen()) == [False, True])
        before = peers.numbering()
        is_mended = True
        peers.renumber()
        peers.send(letter("3 gal\n", number=3))
        wait_until(lambda: peers.seen() == [True, True, True])
    assert peers.numbering() != before
    assert tries.count("poison") == email_imap.MOST_TRIES + 1
    assert [words for words in tries if words != "poison"] == ["1 gal", "3 gal"]


def test_of_a_mail_over_the_bound_only_the_headers_are_fetched(
    peers: Peers, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(email_imap, "MOST_BYTES", 20_000)
    taken = Taken()
    mail = letter("12 gal\n")
    mail.add_attachment(bytes(30_000), maintype="image", subtype="jpeg", filename="pail.jpg")
    peers.send(mail)
    with reading(peers.servers(), taken.take):
        wait_until(lambda: peers.seen() == [True])
    ((raw, is_whole),) = taken.mails
    assert not is_whole
    assert len(raw) < 5_000
    assert read_letter(raw, OWN).sender == "ann@maple.example"


def test_a_mail_of_ten_megabytes_is_read(peers: Peers) -> None:
    taken = Taken()
    mail = letter("12 gal\n")
    mail.add_attachment(bytes(7_000_000), maintype="image", subtype="jpeg", filename="pail.jpg")
    peers.send(mail)
    with reading(peers.servers(), taken.take):
        wait_until(lambda: peers.seen() == [True])
    assert taken.words() == ["12 gal"]


def test_a_wrong_password_never_ends_the_thread(peers: Peers) -> None:
    taken = Taken()
    with reading(replace(peers.servers(), password="wrong"), taken.take) as reader:
        peers.send(letter())
        wait_until(lambda: len(peers.mailbox(OWN)) == 1)
        assert reader.is_alive()
    assert taken.tries == 0


def test_a_copy_of_our_own_mail_is_found_by_its_id(peers: Peers) -> None:
    peers.send(letter(sender=OWN, number=9), sender=OWN)
    wait_until(lambda: has_copy(peers.servers(), "<9@pail.example>"))
    assert not has_copy(peers.servers(), "<8@pail.example>")
