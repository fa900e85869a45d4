"""Open questions, hints and the log of consent. On both databases."""

from __future__ import annotations

from datetime import date, timedelta

from bot.ledger import Asked
from tests.ledger.desk import BEN, START, Desk


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


def test_the_last_word_of_consent_counts(desk: Desk) -> None:
    with desk.text() as (book, who, writer):
        assert book.consents.last(who.person_id) is None
        for at, said in enumerate(("stop", "start", "stop")):
            moment = START + timedelta(minutes=at)
            book.consents.log(who.person_id, said, "test: word", writer.text_id, moment)
        assert book.consents.last(who.person_id) == "stop"
