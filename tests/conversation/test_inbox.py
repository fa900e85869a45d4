"""Nothing is lost and nothing doubled, whatever happens on the way. On both databases."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.inbox import MOST_TRIES, Inbox
from bot.ledger import Book, KeptText
from bot.messages import Incoming
from bot.outdoors import Looked, WeatherWantedError
from bot.wiring import Parts
from bot.wording.meeting import TROUBLE
from tests.conversation.stage import ANN, Stage, build

ARRIVED = datetime(2027, 3, 5, 23, tzinfo=UTC)


@pytest.fixture
def parts(store_url: str) -> Iterator[Parts]:
    """Pailtext on an empty store; a test that takes it runs on both databases."""
    built = build(store_url)
    yield built
    built.ledger.close()


def incoming(provider_id: str, words: str, sender: str = ANN, minutes: int = 0) -> Incoming:
    """A text as a door gives it."""
    return Incoming("sms", provider_id, sender, words, ARRIVED + timedelta(minutes=minutes))


def sap_gallons(parts: Parts, sender: str = ANN) -> float:
    """The season's sap of a sender."""
    return float(Stage(parts).totals(sender)["sap_gallons"])


def test_a_repeated_delivery_gets_the_same_reply_and_adds_no_record(parts: Parts) -> None:
    first = parts.inbox.receive(incoming("SM1", "12 gal at 2.2"))
    again = parts.inbox.receive(incoming("SM1", "12 gal at 2.2", minutes=30))
    assert first == again
    assert sap_gallons(parts) == 12


def test_a_repeated_delivery_of_a_text_without_reply_stays_silent(parts: Parts) -> None:
    parts.inbox.receive(incoming("SM1", "hi"))
    assert parts.inbox.receive(incoming("SM2", "STOP")) is None
    assert parts.inbox.receive(incoming("SM2", "STOP")) is None


def test_one_id_delivered_at_once_by_many_threads_records_once(parts: Parts) -> None:
    parts.inbox.receive(incoming("SM0", "hi"))
    with ThreadPoolExecutor(8) as pool:
        replies = list(
            pool.map(lambda _: parts.inbox.receive(incoming("SM1", "12 gal at 2.2")), range(8))
        )
    assert len(set(replies)) == 1
    assert sap_gallons(parts) == 12


def test_first_texts_of_one_person_at_the_same_moment_are_all_recorded(parts: Parts) -> None:
    with ThreadPoolExecutor(6) as pool:
        list(
            pool.map(
                lambda number: parts.inbox.receive(incoming(f"SM{number}", f"{number} gal of sap")),
                range(1, 7),
            )
        )
    assert sap_gallons(parts) == sum(range(1, 7))
    with parts.ledger.reading() as book:
        assert book.inbox.unread(MOST_TRIES) == []


def test_a_text_kept_but_not_read_is_taken_up_at_the_next_start(parts: Parts) -> None:
    parts.ledger.keep(incoming("SM1", "12 gal at 2.2"))
    assert parts.inbox.take_up_unread() == 1
    assert sap_gallons(parts) == 12
    assert parts.inbox.take_up_unread() == 0


def test_a_text_taken_up_late_is_read_as_of_when_it_came(parts: Parts) -> None:
    parts.ledger.keep(incoming("SM1", "12 gal at 2.2"))
    parts.inbox.take_up_unread()
    with parts.ledger.reading() as book:
        found = book.inbox.find("sms", "SM1")
    assert found is not None
    assert found.reply is not None
    assert "Fri" in found.reply


class Broken:
    """A conversation that raises while it is told to."""

    def __init__(self, parts: Parts) -> None:
        self._conversation = parts.conversation
        self.is_broken = True

    def answer(self, book: Book, text: KeptText, looked: Looked | None = None) -> str | None:
        """Record first, then raise: nothing of it may stay."""
        reply = self._conversation.answer(book, text, looked)
        if self.is_broken:
            raise RuntimeError("broken on purpose")
        return reply

    def look(self, wanted: WeatherWantedError) -> Looked:
        """As the conversation does."""
        return self._conversation.look(wanted)


def test_an_error_loses_no_text_keeps_no_half_and_is_admitted(parts: Parts) -> None:
    broken = Broken(parts)
    inbox = Inbox(parts.ledger, broken, parts.clock)
    assert inbox.receive(incoming("SM1", "12 gal at 2.2")) == TROUBLE
    with parts.ledger.reading() as book:
        assert book.people.find(ANN) is None
    broken.is_broken = False
    assert inbox.take_up_unread() == 1
    assert sap_gallons(parts) == 12


def test_a_text_that_always_fails_is_left_for_a_person(parts: Parts) -> None:
    inbox = Inbox(parts.ledger, Broken(parts), parts.clock)
    inbox.receive(incoming("SM1", "12 gal"))
    for _ in range(MOST_TRIES + 2):
        assert inbox.take_up_unread() == 0
    with parts.ledger.reading() as book:
        assert book.inbox.unread(MOST_TRIES) == []
        found = book.inbox.find("sms", "SM1")
    assert found is not None
    assert found.tries == MOST_TRIES


def test_the_late_reply_is_owed_and_the_direct_one_is_not(parts: Parts) -> None:
    parts.ledger.keep(incoming("SM1", "12 gal at 2.2"))
    parts.inbox.take_up_unread()
    parts.inbox.receive(incoming("SM2", "how much so far"))
    with parts.ledger.reading() as book:
        owed = [text.incoming.provider_id for text in book.inbox.owed()]
    assert owed == ["SM1"]


KILLED = """
import sys, os
from tests.conversation.stage import build
from tests.conversation.test_inbox import incoming
parts = build(sys.argv[1])
answer = parts.conversation.answer
def die(book, text, looked):
    answer(book, text, looked)
    os.kill(os.getpid(), 9)
parts.conversation.answer = die
parts.inbox.receive(incoming("SM1", "12 gal at 2.2"))
"""


def test_a_process_killed_after_recording_and_before_its_commit_loses_nothing(
    store_url: str,
) -> None:
    done = subprocess.run([sys.executable, "-c", KILLED, store_url], check=False)
    assert done.returncode == -9
    parts = build(store_url)
    assert parts.inbox.take_up_unread() == 1
    assert sap_gallons(parts) == 12
    parts.ledger.close()


DELIVERS = """
import sys
from tests.conversation.stage import build
from tests.conversation.test_inbox import incoming
parts = build(sys.argv[1])
for number in range(1, 16):
    parts.inbox.receive(incoming(f"SM{number}", f"{number} gal of sap"))
"""


def test_two_processes_that_deliver_the_same_texts_record_each_once(store_url: str) -> None:
    parts = build(store_url)
    parts.inbox.receive(incoming("SM0", "hi"))
    both = [subprocess.Popen([sys.executable, "-c", DELIVERS, store_url]) for _ in range(2)]
    assert [process.wait(timeout=60) for process in both] == [0, 0]
    assert sap_gallons(parts) == sum(range(1, 16))
    parts.ledger.close()


deliveries = st.lists(
    st.tuples(
        st.integers(0, 5),
        st.sampled_from(
            ("12 gal at 2.2", "8 gal", "undo", "no, 9", "lit the fire", "ok", "again", "7", "gal",
             "drew off 1 qt", "STOP", "START", "how much so far")
        ),
    ),
    max_size=14,
)  # fmt: skip


@settings(max_examples=40, deadline=None)
@given(deliveries, st.data())
def test_replaying_deliveries_changes_nothing(
    texts: list[tuple[int, str]], data: st.DataObject
) -> None:
    """Each text may be delivered again at any later point, under its id."""
    once, often = Stage(), Stage()
    for number, (gap, words) in enumerate(texts):
        at = f"2027-03-05T{8 + number // 2:02d}:{(number % 2) * 30 + gap:02d}"
        expected = once.deliver(str(number), words, at)
        assert often.deliver(str(number), words, at) == expected
        for again in data.draw(st.lists(st.integers(0, number), max_size=2)):
            gap_again, words_again = texts[again]
            at_again = f"2027-03-05T{8 + again // 2:02d}:{(again % 2) * 30 + gap_again:02d}"
            often.deliver(str(again), words_again, at_again)
    if texts:
        assert once.totals() == often.totals()
    once.parts.ledger.close()
    often.parts.ledger.close()


def test_the_same_id_at_another_door_is_another_text(parts: Parts) -> None:
    parts.inbox.receive(incoming("1", "12 gal"))
    parts.inbox.receive(replace(incoming("1", "5 gal"), door="email"))
    assert sap_gallons(parts) == 17
