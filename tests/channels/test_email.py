"""What a mail of ours looks like, and what goes wrong with its server."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from bot.channels.channel import TryLaterError
from bot.channels.email_smtp import Cover, EmailSmtp, Enclosure
from bot.clock import SystemClock
from bot.messages import Outgoing
from tests.channels.smtp_stub import OWN, SmtpStub

ANN = "ann@maple.example"
REPLY = Outgoing(ANN, "12 gal at 2.2, Fri. <Season> 30 gal.", "reply", text_id=7)
ALERT = Outgoing(ANN, "Pailtext: 24F at dawn. Gather by 4.", "alert", text_id=8)


def test_a_reply_stands_in_the_thread_of_the_mail_that_it_answers(post: SmtpStub) -> None:
    cover = Cover("sap", ("<first@maple.example>", "<second@maple.example>"))
    post.channel(lambda _outgoing: cover).send(REPLY)
    mail = post.taken[0].mail
    assert mail["Subject"] == "Re: sap"
    assert mail["In-Reply-To"] == "<second@maple.example>"
    assert mail["References"] == "<first@maple.example> <second@maple.example>"
    assert mail["Auto-Submitted"] == "auto-replied"
    assert mail["Message-ID"].startswith("<7.")


def test_plain_text_comes_first_and_a_small_html_part_after_it(post: SmtpStub) -> None:
    post.channel().send(REPLY)
    plain, html = post.taken[0].mail.iter_parts()
    assert (plain.get_content_type(), html.get_content_type()) == ("text/plain", "text/html")
    assert "&lt;Season&gt; 30 gal" in html.get_content()


def test_a_table_of_the_words_is_one_in_the_html_part(post: SmtpStub) -> None:
    words = "Tree 2 gives most.\n\nTree  | Sap\n2     | 3 gal\n<b>   | 1 gal"
    post.channel().send(replace(REPLY, text=words))
    plain, html = post.taken[0].mail.iter_parts()
    assert "2     | 3 gal" in plain.get_content()
    page = html.get_content()
    assert page.count("<tr>") == 3
    assert page.count("<th ") == 2
    assert re.search(r"<td [^>]*>&lt;b&gt;</td>", page)
    assert "|" not in page


def test_an_unasked_mail_can_be_ended_by_one_click_and_says_a_program_sent_it(
    post: SmtpStub,
) -> None:
    url = "https://sap.example/unsubscribe/abc"
    post.channel(lambda _outgoing: Cover(unsubscribe_url=url)).send(ALERT)
    mail = post.taken[0].mail
    assert mail["List-Unsubscribe"] == f"<{url}>"
    assert mail["List-Unsubscribe-Post"] == "List-Unsubscribe=One-Click"
    assert mail["Auto-Submitted"] == "auto-generated"
    assert mail["Subject"] == "Pailtext: 24F at dawn"


def test_a_subject_cannot_bring_headers_along(post: SmtpStub) -> None:
    cover = Cover("sap\r\nBcc: ben@maple.example")
    post.channel(lambda _outgoing: cover).send(REPLY)
    assert post.taken[0].mail["Bcc"] is None
    assert post.taken[0].to == (ANN, OWN)


def test_a_file_goes_along(post: SmtpStub) -> None:
    cover = Cover("x", (), None, Enclosure("sap.csv", "on,gallons\n2027-03-05,12\n"))
    post.channel(lambda _outgoing: cover).send(REPLY)
    (file,) = post.taken[0].mail.iter_attachments()
    assert file.get_filename() == "sap.csv"
    assert file.get_content_type() == "text/csv"
    assert "2027-03-05,12" in file.get_content()


def test_the_same_text_has_the_same_id_at_every_try_and_another_store_another(
    post: SmtpStub,
) -> None:
    channel = post.channel()
    ids = [channel.send(each).provider_id for each in (REPLY, REPLY, replace(REPLY, text="x"))]
    assert ids[0] == ids[1] != ids[2]


def test_a_mail_whose_copy_is_refused_goes_out_all_the_same(post: SmtpStub) -> None:
    post.refusals.extend((250, 552))
    post.channel().send(REPLY)
    assert post.taken[0].to == (ANN,)


@pytest.mark.parametrize("url", ["smtp://127.0.0.1:1", "smtp://no-such-host.invalid"])
def test_no_connection_is_tried_later(post: SmtpStub, url: str) -> None:
    servers = replace(post.servers, smtp=url)
    channel = EmailSmtp(servers, SystemClock(), lambda _outgoing: Cover(), post.has_copy)
    with pytest.raises(TryLaterError, match="no connection"):
        channel.send(REPLY)


def test_a_server_without_starttls_gets_nothing_where_it_is_wanted(post: SmtpStub) -> None:
    import ssl

    servers = replace(post.servers, tls=ssl.create_default_context())
    channel = EmailSmtp(servers, SystemClock(), lambda _outgoing: Cover(), post.has_copy)
    with pytest.raises(TryLaterError, match="STARTTLS"):
        channel.send(REPLY)
    assert post.taken == []


def test_a_mailbox_that_does_not_answer_is_asked_later(post: SmtpStub) -> None:
    def broken(_message_id: str) -> bool:
        raise ConnectionResetError

    channel = EmailSmtp(post.servers, SystemClock(), lambda _outgoing: Cover(), broken)
    with pytest.raises(TryLaterError, match="ConnectionResetError"):
        channel.find(REPLY, SystemClock().now_utc())
