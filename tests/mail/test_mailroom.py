"""Which mails count, which are answered, and that nothing else changes anything."""

from __future__ import annotations

from datetime import timedelta

import pytest

from bot.mailroom import MOST_AN_HOUR
from bot.wording.household import NEUTRAL, NOT_OWN_WORDS
from tests.mail.letters import ANN, BEN, OWN, letter, signed
from tests.mail.stage import OTHER_PHONE, PHONE, House


def test_a_proved_mail_from_a_linked_address_counts_like_a_text(house: House) -> None:
    house.link()
    house.text("10 gal at 2")
    reply = house.mail("12 gal at 2.2")
    assert reply.startswith("12 gal at 2.2, Fri. Season 22 gal")
    assert house.sap() == 22


def test_the_answer_stands_in_the_thread_and_says_no_way_out(house: House) -> None:
    house.link()
    house.mail("12 gal at 2.2", headers={"References": "<a@maple.example>"})
    _, cover = house.mails.sent[-1]
    assert cover.subject == "sap"
    assert cover.message_ids[0] == "<a@maple.example>"
    assert cover.message_ids[-1].endswith("@maple.example>")
    assert cover.unsubscribe_url is None


def test_the_same_mail_again_records_and_answers_nothing(house: House) -> None:
    house.link()
    raw = signed(letter().as_bytes())
    assert house.deliver(raw)
    assert house.deliver(raw) == ""
    assert house.sap() == 12


def test_a_forged_mail_changes_nothing_and_tells_nothing(house: House) -> None:
    """Whoever writes Ann's address into a From line gets what any stranger gets."""
    house.link()
    house.text("10 gal at 2")
    before = house.sap()
    assert house.mail("12 gal at 2.2", is_signed=False) == NEUTRAL
    assert house.mail("how much so far", is_signed=False) == ""
    assert house.mail("forget me", is_signed=False) == ""
    assert house.sap() == before


def test_a_proved_mail_from_an_address_that_nobody_linked_gets_the_same_answer(
    house: House,
) -> None:
    assert house.mail("12 gal at 2.2") == NEUTRAL
    with house.ledger.reading() as book:
        assert book.people.find(ANN) is None


def test_a_stranger_is_answered_once_a_day(house: House) -> None:
    assert house.mail("hello") == NEUTRAL
    assert house.mail("hello?") == ""
    house.clock.advance(timedelta(days=1))
    assert house.mail("hello again") == NEUTRAL


@pytest.mark.parametrize(
    "headers",
    [
        {"Auto-Submitted": "auto-replied"},
        {"Return-Path": "<>"},
        {"List-Id": "<sugar.lists.example>"},
        {"Precedence": "bulk"},
    ],
)
def test_what_a_program_wrote_is_neither_read_nor_answered(
    house: House, headers: dict[str, str]
) -> None:
    house.link()
    assert house.mail("12 gal at 2.2", headers=headers) == ""
    assert house.sap() == 0


def test_our_own_mails_are_not_answered(house: House) -> None:
    assert house.deliver(signed(letter(sender=OWN).as_bytes()), OWN) == ""


def test_two_programs_that_answer_each_other_fall_silent(house: House) -> None:
    house.link()
    replies = [house.mail(f"I am away, number {n}") for n in range(MOST_AN_HOUR + 5)]
    assert all(replies[: MOST_AN_HOUR - 1])
    assert not any(replies[MOST_AN_HOUR + 1 :])


def test_a_mail_without_own_words_is_asked_about(house: House) -> None:
    house.link()
    assert house.mail("> 12 gal at 2.2\n\nyes") == NOT_OWN_WORDS
    assert house.sap() == 0


def test_of_a_mail_that_is_too_large_it_is_said_that_nothing_was_read(house: House) -> None:
    """Where the provider proves it: a signature cannot be checked by the headers alone."""
    from dataclasses import replace

    house.link()
    room = replace(house.mailroom, proof=lambda _raw, _sender: True)
    room.take(letter("").as_bytes(), False, house.clock.now_utc())
    assert "only words" in house.mails.texts(ANN)[-1]


def test_a_mail_is_answered_at_length_where_a_text_has_to_ask_for_more(house: House) -> None:
    house.link()
    question = "how deep do I drill"
    texted = house.text(question)
    rest = house.text("more")
    mailed = house.mail(question)
    assert 'ext "more"' in texted
    assert 'ext "more"' not in mailed
    assert len(mailed) > len(texted)
    assert rest.split(".")[0] in mailed


# --- linking -------------------------------------------------------------------------------------


def test_a_code_that_was_mailed_links_when_it_is_texted_back(house: House) -> None:
    assert house.text(f"link {ANN}").startswith(f"I mailed a code to {ANN}.")
    assert house.text(house.code()).startswith(f"{ANN} is linked")
    with house.ledger.reading() as book:
        who = book.people.find(ANN)
        assert who is not None
        assert book.people.addresses(who.person_id) == [PHONE, ANN]


def test_a_code_that_was_texted_links_the_address_that_mails_it(house: House) -> None:
    told = house.text("email code")
    code = told.split("mail ")[1].split(" to ")[0]
    assert house.mail(f"here it is: {code.lower()}").startswith("Pailtext: this mail address is")
    house.mail("12 gal at 2.2")
    assert house.sap() == 12


def test_a_code_from_a_forged_mail_links_nothing(house: House) -> None:
    code = house.text("email code").split("mail ")[1].split(" to ")[0]
    assert house.mail(code, is_signed=False) == NEUTRAL
    with house.ledger.reading() as book:
        assert book.people.find(ANN) is None


def test_a_code_is_good_for_a_quarter_of_an_hour(house: House) -> None:
    house.text(f"link {ANN}")
    house.clock.advance(timedelta(minutes=15))
    assert "no good any more" in house.text(house.code())
    code = house.text("email code").split("mail ")[1].split(" to ")[0]
    house.clock.advance(timedelta(minutes=15))
    assert house.mail(code) == NEUTRAL


def test_three_wrong_tries_spend_a_code(house: House) -> None:
    house.text(f"link {ANN}")
    right = house.code()
    wrong = f"{(int(right) + 1) % 10**6:06}"
    said = [house.text(wrong) for _ in range(3)]
    assert ["no good" in one for one in said] == [False, False, True]
    house.text(right)
    with house.ledger.reading() as book:
        assert book.people.find(ANN) is None


def test_a_stranger_may_guess_three_codes_a_day(house: House) -> None:
    code = house.text("email code").split("mail ")[1].split(" to ")[0]
    for _ in range(3):
        house.mail("ABCD-EFGH")
    assert house.mail(code) == ""
    with house.ledger.reading() as book:
        assert book.people.find(ANN) is None


def test_nobody_can_take_anothers_address_or_have_them_flooded_with_codes(house: House) -> None:
    house.link()
    house.text("hi", OTHER_PHONE)
    house.text(f"link {ANN}", OTHER_PHONE)
    assert "linked to somebody already" in house.text(house.code(), OTHER_PHONE)
    said = [house.text(f"link {BEN}", OTHER_PHONE) for _ in range(6)]
    assert "enough codes" in said[-1]
    assert len(house.mails.texts(BEN)) == 4


def test_a_number_of_six_digits_is_no_code_when_none_was_mailed(house: House) -> None:
    assert "code" not in house.text("482913")


def test_an_address_can_be_taken_off_again(house: House) -> None:
    house.link()
    assert house.text(f"unlink {ANN}") == f"{ANN} is not linked any more."
    assert house.mail("12 gal") == NEUTRAL
