"""What of a mail are its sender's own words, and which mails are nobody's."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.channels.email_letter import Letter, own_words, read_letter
from tests.mail.letters import ANN, OWN, letter


def read(raw: bytes) -> Letter:
    return read_letter(raw, OWN)


@pytest.mark.parametrize(
    ("written", "own"),
    [
        ("12 gal at 2.2\n", "12 gal at 2.2"),
        ("12 gal at 2.2\n\nOn Fri, Mar 5, 2027 at 7:00 AM Pailtext <log@pail.example> wrote:\n"
         "> 9 gal waits.\n> Boil by Fri.\n", "12 gal at 2.2"),
        ("12 gal\n\nLe ven. 5 mars 2027 à 07:00, Pailtext <log@pail.example> a écrit :\n"
         "> 9 gal\n", "12 gal"),
        ("12 gal\n-- \nAnn Example\n9 Example Road\n", "12 gal"),
        ("12 gal\n\nSent from my iPhone", "12 gal"),
        ("12 gal\n\nThanks,\nAnn", "12 gal"),
        ("12 gal\n________________________________\nFrom: Pailtext\nSent: Fri\n\n9 gal", "12 gal"),
        ("12 gal\n\n-----Original Message-----\nFrom: Pailtext\nSubject: sap\n\n8 gal", "12 gal"),
        ("12 gal\n\n---------- Forwarded message ---------\nFrom: Ben <ben@maple.example>\n"
         "Date: Fri\nSubject: x\n\n30 gal", "12 gal"),
        ("---------- Forwarded message ---------\nFrom: Ben <ben@maple.example>\n\n30 gal", ""),
        ("Begin forwarded message:\n\nFrom: Ben\n\n30 gal", ""),
        ("> 9 gal\n\n12 gal\n", ""),
        ("", ""),
        ("12 gal " * 2000, ""),
    ],
)  # fmt: skip
def test_only_the_senders_own_words_are_read(written: str, own: str) -> None:
    assert own_words(written) == own


def test_a_plain_mail_is_its_words_its_sender_and_its_thread() -> None:
    mail = letter(headers={"References": "<a@x.example> <b@x.example>"})
    mail.replace_header("From", '"Ann, of the Hill" <Ann@Maple.Example>')
    found = read(mail.as_bytes())
    assert (found.words, found.sender, found.subject) == ("12 gal at 2.2", ANN, "sap")
    assert found.references == ("<a@x.example>", "<b@x.example>", "<1@maple.example>")
    assert (found.attachments, found.is_own, found.automatic) == (0, False, None)


def test_a_mail_of_html_alone_is_read_without_what_it_quotes() -> None:
    mail = letter()
    mail.set_content(
        "<html><head><style>p {x: 1}</style></head><body><p>12&nbsp;gal<br>at 2.2</p>"
        '<img src="x"><div class="gmail_quote">On Fri: <blockquote>9 gal</blockquote></div>'
        "</body></html>",
        subtype="html",
    )
    assert read(mail.as_bytes()).words.split() == ["12", "gal", "at", "2.2"]


def test_plain_text_is_taken_before_html() -> None:
    mail = letter()
    mail.add_alternative("<p>99 gal</p>", subtype="html")
    assert read(mail.as_bytes()).words == "12 gal at 2.2"


def test_pictures_calendars_and_forwarded_mails_are_counted_and_not_read() -> None:
    mail = letter()
    mail.add_attachment(b"\xff\xd8", maintype="image", subtype="jpeg", filename="pail.jpg")
    mail.add_attachment("30 gal", filename="notes.txt")
    mail.add_attachment("BEGIN:VCALENDAR", subtype="calendar")
    mail.add_attachment(letter("30 gal"))
    found = read(mail.as_bytes())
    assert (found.words, found.attachments) == ("12 gal at 2.2", 4)


@pytest.mark.parametrize(
    ("charset", "words", "own"),
    [
        (b"iso-8859-1", b"12 gal \xe0 2", "12 gal à 2"),
        (b"no-such-charset", b"12 gal at 2.2", "12 gal at 2.2"),
        (b"hex", b"12 gal at 2.2", "12 gal at 2.2"),
        (b"utf-8", b"12 gal \xe0 2", "12 gal à 2"),
        (b"utf-16", "12 gal à 2".encode("utf-16"), "12 gal à 2"),
    ],
)
def test_odd_encodings_are_read(charset: bytes, words: bytes, own: str) -> None:
    head = b"From: ann@maple.example\r\nContent-Type: text/plain; charset=%s\r\n\r\n" % charset
    assert read(head + words).words == own


def test_lines_that_were_only_broken_are_whole_again() -> None:
    raw = b"From: a@b.example\nContent-Type: text/plain; format=flowed\n\n12 gal \nat 2.2\n-- \nAnn"
    assert read(raw).words == "12 gal at 2.2"


@pytest.mark.parametrize(
    "headers",
    [
        {"Auto-Submitted": "auto-replied"},
        {"Auto-Submitted": "auto-generated; owner-email=x@y.example"},
        {"Return-Path": "<>"},
        {"List-Id": "<sugar.lists.example>"},
        {"Precedence": "bulk"},
        {"X-Autoreply": "yes"},
        {"X-Auto-Response-Suppress": "OOF, AutoReply"},
    ],
)
def test_what_a_program_wrote_is_known(headers: dict[str, str]) -> None:
    assert read(letter(headers=headers).as_bytes()).automatic is not None


@pytest.mark.parametrize(
    "sender",
    ["MAILER-DAEMON@maple.example", "no-reply@maple.example", "bounces+17@maple.example"],
)
def test_addresses_that_nobody_reads_are_known(sender: str) -> None:
    assert read(letter(sender=sender).as_bytes()).automatic is not None


def test_reports_of_delivery_and_of_reading_are_known() -> None:
    for kind in ("delivery-status", "disposition-notification"):
        head = f"From: a@b.example\nContent-Type: multipart/report; report-type={kind}; boundary=x"
        assert read(f"{head}\n\n--x\n\n12 gal\n--x--".encode()).automatic == "it is a report"


def test_a_mail_that_says_no_program_sent_it_is_a_persons() -> None:
    assert read(letter(headers={"Auto-Submitted": "no"}).as_bytes()).automatic is None


def test_our_own_mails_are_known() -> None:
    assert read(letter(sender=OWN).as_bytes()).is_own
    assert read(letter(headers={"X-Pailtext": "1"}).as_bytes()).is_own


@pytest.mark.parametrize(
    "lines",
    [
        b"From: ann@maple.example\nFrom: ben@maple.example\n",
        b"From: ann@maple.example, ben@maple.example\n",
        b"From: ann\n",
        b"From: \n",
        b"",
    ],
)
def test_a_sender_that_is_not_just_one_is_none(lines: bytes) -> None:
    assert read(lines + b"\n12 gal").sender == ""


def test_without_a_message_id_its_bytes_tell_a_mail_from_others() -> None:
    first, again, other = (read(b"From: a@b.example\n\n" + words) for words in (b"1", b"1", b"2"))
    assert first.message_id == again.message_id != other.message_id


@settings(max_examples=60, deadline=None)
@given(st.binary(max_size=400), st.sampled_from([b"", b"From: a@b.example\n", b"Subject: =?x?b?"]))
def test_no_bytes_do_any_harm(rest: bytes, head: bytes) -> None:
    read(head + rest)
