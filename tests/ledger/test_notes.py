"""Open questions, hints and the log of consent. On both databases."""

from __future__ import annotations

from datetime import date, timedelta

from bot.ledger import Asked, Word, Writer
from tests.ledger.desk import ANN, BEN, START, Desk


def test_the_last_question_is_the_open_one(desk: Desk) -> None:
    with desk.text() as (book, who, writer):
        for words in ("first", "second"):
            asked = Asked({"question": words}, writer.text_id, START)
            book.questions.ask(who.person_id, asked)
    with desk.text() as (book, who, _):
        assert book.questions.open(who.person_id) == asked


def test_a_dropped_question_is_gone_and_others_stay(desk: Desk) -> None:
    for sender in ("+15550100011", BEN):
        with desk.text(sender) as (book, who, writer):
            book.questions.ask(who.person_id, Asked({}, writer.text_id, START))
    with desk.text() as (book, who, _):
        book.questions.drop(who.person_id)
        assert book.questions.open(who.person_id) is None
    with desk.text(BEN) as (book, who, _):
        assert book.questions.open(who.person_id) is not None


def test_a_hint_is_remembered_by_the_day_it_was_said_last(desk: Desk) -> None:
    with desk.text() as (book, who, _):
        assert book.hints.said_on(who.person_id, "keep cold") is None
        book.hints.say(who.person_id, "keep cold", date(2027, 3, 4))
        book.hints.say(who.person_id, "keep cold", date(2027, 3, 5))
    with desk.text() as (book, who, _):
        assert book.hints.said_on(who.person_id, "keep cold") == date(2027, 3, 5)
        assert book.hints.said_on(who.person_id, "where") is None


def word(said: str, writer: Writer, at: int) -> Word:
    return Word(said, "test: word", ANN, writer.text_id, START + timedelta(minutes=at))


def test_the_last_word_of_consent_counts(desk: Desk) -> None:
    with desk.text() as (book, who, writer):
        assert book.consents.last(who.person_id) is None
        for at, said in enumerate(("stop", "start", "stop")):
            book.consents.log(who.person_id, word(said, writer, at))
        assert book.consents.last(who.person_id) == "stop"


def test_a_word_that_was_read_late_does_not_outdo_a_later_one(desk: Desk) -> None:
    with desk.text() as (book, who, writer):
        book.consents.log(who.person_id, word("stop", writer, 5))
        book.consents.log(who.person_id, word("start", writer, 3))
        assert book.consents.last(who.person_id) == "stop"
        assert book.consents.last_at(who.person_id) == START + timedelta(minutes=5)


def test_the_log_of_consent_keeps_every_word_with_who_when_and_how(desk: Desk) -> None:
    with desk.text() as (book, who, writer):
        words = [word("start", writer, 0), word("stop", writer, 1)]
        for each in words:
            book.consents.log(who.person_id, each)
        assert book.consents.of_person(who.person_id) == words
