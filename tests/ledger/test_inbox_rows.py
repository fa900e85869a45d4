"""Texts are kept under their provider's id, whatever is in them. On both databases."""

from __future__ import annotations

from datetime import timedelta

import pytest

from bot.ledger import Ledger
from bot.messages import Incoming
from tests.ledger.desk import ANN, START

AWKWARD = {
    "nul": "12 gal\x00 at 2.2",
    "half a pair": "12 gal \ud83d",
    "emoji": "12 gal \U0001f341\u200d\U0001f525",
    "right to left": "\u202e12 gal \u05e9\u05dc\u05d5\u05dd",
    "sql": "'); DROP TABLE record; --",
    "long": "x" * 10_000,
    "empty": "",
}


@pytest.mark.parametrize("words", AWKWARD.values(), ids=AWKWARD.keys())
def test_any_text_is_kept(ledger: Ledger, words: str) -> None:
    kept = ledger.keep(Incoming("test", "1", ANN, words, START))
    with ledger.reading() as book:
        found = book.inbox.find("test", "1")
    assert found == kept
    assert kept.incoming.text == words.replace("\x00", "\ufffd").replace("\ud83d", "?")


def test_the_same_id_is_kept_once_and_comes_back_as_it_was(ledger: Ledger) -> None:
    first = ledger.keep(Incoming("test", "1", ANN, "12 gal", START))
    again = ledger.keep(Incoming("test", "1", ANN, "something else", START))
    assert again == first


def test_two_doors_may_use_the_same_id(ledger: Ledger) -> None:
    first = ledger.keep(Incoming("sms", "1", ANN, "12 gal", START))
    second = ledger.keep(Incoming("email", "1", ANN, "12 gal", START))
    assert first.id != second.id


def test_all_that_a_door_tells_is_kept(ledger: Ledger) -> None:
    told = Incoming("sms", "1", ANN, "STOP", START, to="+15550100000", media=2, opt_out="STOP")
    assert ledger.keep(told).incoming == told


def test_an_answered_text_is_read_and_no_longer_unread(ledger: Ledger) -> None:
    kept = ledger.keep(Incoming("test", "1", ANN, "12 gal", START))
    with ledger.writing() as book:
        assert [text.id for text in book.inbox.unread(5)] == [kept.id]
        book.inbox.answer(kept.id, None, START, owed=False)
        assert book.inbox.unread(5) == []
        claimed = book.inbox.claim(kept.id)
    assert (claimed.is_read, claimed.reply) == (True, None)


def test_a_text_that_failed_too_often_is_left_alone(ledger: Ledger) -> None:
    kept = ledger.keep(Incoming("test", "1", ANN, "12 gal", START))
    with ledger.writing() as book:
        for _ in range(2):
            book.inbox.failed(kept.id)
        assert book.inbox.unread(2) == []
        assert [text.tries for text in book.inbox.unread(3)] == [2]


def test_earlier_texts_of_a_sender_within_a_time(ledger: Ledger) -> None:
    minute = timedelta(minutes=1)
    ids = [
        ledger.keep(Incoming("test", str(at), ANN, "12 gal", START + at * minute)).id
        for at in range(4)
    ]
    ledger.keep(Incoming("test", "other", "+15550100077", "12 gal", START + minute))
    last = ledger.keep(Incoming("test", "last", ANN, "12 gal", START + 4 * minute))
    with ledger.reading() as book:
        found = book.inbox.earlier_from(ANN, last.id, START + minute, START + 2 * minute, "12 gal")
    assert [text.id for text in found] == [ids[2], ids[1]]


@pytest.mark.parametrize(
    ("text", "words", "is_found"),
    [
        ("12 gal at 2.2", "12 gal at 2.2", True),
        (" 12  GAL at 2.2 !", "12 gal at 2.2", True),
        ("12 gal", "12 gal at 2.2", False),
        ("100% full", "100% full", True),
        ("100 and full", "100% full", False),
        ("a_b\\c 3 gal", "a_b\\c 3 gal", True),
        ("axb\\c 3 gal", "a_b\\c 3 gal", False),
        ("À l'érablière 12 L", "à l'érablière 12 l", True),
    ],
)
def test_earlier_texts_hold_the_words(
    ledger: Ledger, text: str, words: str, is_found: bool
) -> None:
    ledger.keep(Incoming("test", "1", ANN, text, START))
    last = ledger.keep(Incoming("test", "2", ANN, "and now", START))
    with ledger.reading() as book:
        found = book.inbox.earlier_from(ANN, last.id, START, START, words)
    assert [one.text for one in found] == ([text] if is_found else [])


def test_when_texts_arrived(ledger: Ledger) -> None:
    kept = ledger.keep(Incoming("test", "1", ANN, "12 gal", START))
    with ledger.reading() as book:
        assert book.inbox.times([kept.id]) == {kept.id: START}
