"""What comes in at `POST /in/twilio`, and what is answered."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable, Iterator
from xml.etree import ElementTree

import httpx
import pytest
from fastapi import FastAPI
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from starlette.types import Message

from bot import web
from bot.channels.twilio_sms import MOST_CHARACTERS, Form, Signatures, twiml
from bot.messages import Incoming
from bot.web import MOST_BODY_BYTES, MOST_FIELDS
from tests.doors.conftest import NOW_UTC, Behind, Caller, Post
from tests.doors.twilio_peer import OURS, PUBLIC_URL, SENDER, TOKEN, encoded, form, headers

EMPTY = '<?xml version="1.0" encoding="UTF-8"?><Response></Response>'


def messages(response: httpx.Response) -> list[str]:
    """The texts that a TwiML answer sends."""
    assert response.status_code == 200
    assert response.headers["content-type"] == "text/xml; charset=utf-8"
    root = ElementTree.fromstring(response.content)
    assert root.tag == "Response"
    assert {child.tag for child in root} <= {"Message"}
    return [child.text or "" for child in root]


# --- a text ---------------------------------------------------------------------------------


def test_a_signed_text_is_handed_on_and_answered(post: Post, behind: Behind) -> None:
    fields = form("12 gal at 2.2", MessageSid="SM" + "a" * 32)
    assert messages(post(fields)) == ["12 gal at 2.2, Tue."]
    assert behind.texts == [
        Incoming(
            door="twilio_sms",
            provider_id="SM" + "a" * 32,
            sender=SENDER,
            text="12 gal at 2.2",
            arrived_utc=NOW_UTC,
            to=OURS,
        )
    ]


def test_no_reply_is_an_empty_answer(post: Post, behind: Behind) -> None:
    behind.reply = None
    assert post(form()).text == EMPTY


def test_a_reply_with_markup_and_control_characters_stays_a_text(
    post: Post, behind: Behind
) -> None:
    behind.reply = 'lot <b> & "co": 12 gal\x00\x08\nnext line'
    assert messages(post(form())) == ['lot <b> & "co": 12 gal\ufffd\ufffd\nnext line']


@pytest.mark.parametrize(
    "body",
    [
        "\U0001f341 12 gal \u200f\u05e9\u05dc\u05d5\u05dd",
        "a=b&c=d;e+f%20g",
        "'; DROP TABLE record; --",
        "  12 gal \r\n at 2.2  ",
        "",
        "x" * 10_000,
        "\U0001f341" * 10_000,
    ],
)
def test_any_text_arrives_whole(post: Post, behind: Behind, body: str) -> None:
    assert post(form(body)).status_code == 200
    assert behind.texts[0].text == body


def test_fields_that_are_not_known_are_accepted(post: Post, behind: Behind) -> None:
    assert messages(post(form(BrandNewField="yes", ChannelMetadata='{"a": 1}')))
    assert len(behind.texts) == 1


def test_the_signature_is_that_of_the_public_url_with_its_query(post: Post, behind: Behind) -> None:
    fields = form()
    url = f"{PUBLIC_URL}/in/twilio?farm=1&x=%20y"
    assert post(fields, headers(fields, url), "/in/twilio?farm=1&x=%20y").status_code == 200
    assert len(behind.texts) == 1


def test_a_signature_over_the_url_with_its_port_is_right_too(post: Post) -> None:
    """Twilio's side is known to sign either."""
    fields = form()
    assert post(fields, headers(fields, "https://sap.example:443/in/twilio")).status_code == 200


def test_a_repeated_field_is_signed_once_for_each_value(client: Caller, behind: Behind) -> None:
    class Many(dict[str, str]):
        def getall(self, name: str) -> list[str]:
            return ["a", "b", "a"] if name == "Twice" else [self[name]]

    fields = form()
    signed = headers(Many(fields, Twice=""))
    content = encoded(fields) + b"&Twice=a&Twice=b&Twice=a"
    assert client.post("/in/twilio", content=content, headers=signed).status_code == 200


# --- pictures, other channels, opt-out ------------------------------------------------------


def test_pictures_are_counted(post: Post, behind: Behind) -> None:
    fields = form("", NumMedia="2", MediaUrl0="https://a.example/1", MediaContentType0="image/jpeg")
    assert messages(post(fields)) == ["12 gal at 2.2, Tue."]
    assert (behind.texts[0].text, behind.texts[0].media) == ("", 2)


@pytest.mark.parametrize("count", ["", "two", "-1", "\u0662", "9" * 5000])
def test_a_count_of_pictures_that_is_no_number_is_none(
    post: Post, behind: Behind, count: str
) -> None:
    assert post(form(NumMedia=count)).status_code == 200
    assert behind.texts[0].media == 0


def test_a_whatsapp_sender_keeps_its_prefix_and_is_answered(post: Post, behind: Behind) -> None:
    fields = form(From=f"whatsapp:{SENDER}", To=f"whatsapp:{OURS}", ProfileName="Sam")
    assert messages(post(fields)) == ["12 gal at 2.2, Tue."]
    assert (behind.texts[0].sender, behind.texts[0].to) == (
        f"whatsapp:{SENDER}",
        f"whatsapp:{OURS}",
    )


@pytest.mark.parametrize("word", ["STOP", "START", "HELP"])
def test_a_word_that_twilio_has_answered_is_handed_on_and_not_answered_again(
    post: Post, behind: Behind, word: str
) -> None:
    assert post(form(word, OptOutType=word)).text == EMPTY
    assert behind.texts[0].opt_out == word


def test_an_opt_out_type_that_is_not_known_is_no_opt_out(post: Post, behind: Behind) -> None:
    assert messages(post(form(OptOutType="MAYBE"))) == ["12 gal at 2.2, Tue."]
    assert behind.texts[0].opt_out is None


@pytest.mark.parametrize(
    "sender", ["72345", "SUGARINC", "+0123456789", "anonymous", "+15550100001x"]
)
def test_a_sender_that_is_no_telephone_is_handed_on_and_not_answered(
    post: Post, behind: Behind, sender: str
) -> None:
    assert post(form(From=sender)).text == EMPTY
    assert behind.texts[0].sender == sender


# --- refusals -------------------------------------------------------------------------------


def wrong_signatures() -> dict[str, dict[str, str]]:
    """Headers that are not those of the form `form("12 gal")`, by what is wrong with them."""
    fields = form("12 gal", MessageSid="SM" + "b" * 32)
    right = headers(fields)
    return {
        "no signature": {k: v for k, v in right.items() if k != "X-Twilio-Signature"},
        "empty": right | {"X-Twilio-Signature": ""},
        "rubbish": right | {"X-Twilio-Signature": "A" * 28},
        "not ASCII": right | {"X-Twilio-Signature": "\u00e9" * 28},
        "another token": headers(fields, token="f" * 32),
        "another address": headers(fields, f"{PUBLIC_URL}/in/other"),
        "http for https": headers(fields, "http://sap.example/in/twilio"),
        "another host": headers(fields, "https://evil.example/in/twilio"),
        "another query": headers(fields, f"{PUBLIC_URL}/in/twilio?a=1"),
        "another text": headers(form("120 gal", MessageSid="SM" + "b" * 32)),
        "a field more": headers(fields | {"Extra": ""}),
        "another algorithm": right
        | {"X-Twilio-Webhooks-Signature-Settings": "key=k,algorithm=HMAC_SHA256"},
        "an algorithm that is not known": right
        | {"X-Twilio-Webhooks-Signature-Settings": "key=k,algorithm=none"},
    }


@pytest.mark.parametrize("wrong", wrong_signatures())
def test_what_twilio_did_not_sign_is_refused_and_not_handed_on(
    post: Post, behind: Behind, wrong: str
) -> None:
    signed = wrong_signatures()[wrong]
    raw = {name.encode(): value.encode("latin-1") for name, value in signed.items()}
    response = post(form("12 gal", MessageSid="SM" + "b" * 32), raw)
    assert response.status_code == 403
    assert behind.texts == []


def test_a_host_header_does_not_change_what_is_signed(post: Post, behind: Behind) -> None:
    fields = form()
    signed = headers(fields, "https://evil.example/in/twilio")
    assert post(fields, signed | {"Host": "evil.example"}).status_code == 403
    assert post(fields, headers(fields) | {"Host": "evil.example"}).status_code == 200


@pytest.mark.parametrize(
    ("fields", "reason"),
    [
        ({"From": SENDER, "Body": "12 gal"}, "The form has no MessageSid\n"),
        (form(From=""), "The form has no From\n"),
        ({}, "The form has no MessageSid\n"),
    ],
)
def test_a_signed_form_that_is_no_text_is_refused(
    post: Post, behind: Behind, fields: dict[str, str], reason: str
) -> None:
    response = post(fields)
    assert (response.status_code, response.text) == (400, reason)
    assert behind.texts == []


def test_without_a_token_the_webhook_is_closed_and_says_why(
    closed_client: Caller, behind: Behind
) -> None:
    fields = form()
    response = closed_client.post("/in/twilio", content=encoded(fields), headers=headers(fields))
    assert (response.status_code, response.text) == (503, "No token.\n")
    assert behind.texts == []


def test_a_body_over_the_bound_is_refused(post: Post, behind: Behind) -> None:
    assert post(form("x" * MOST_BODY_BYTES)).status_code == 413
    assert behind.texts == []


def test_a_body_over_the_bound_is_refused_when_its_length_is_not_announced(
    client: Caller, behind: Behind
) -> None:
    fields = form("x" * MOST_BODY_BYTES)
    pieces = (encoded(fields)[at : at + 10_000] for at in range(0, MOST_BODY_BYTES * 2, 10_000))
    response = client.post("/in/twilio", content=pieces, headers=headers(fields))
    assert response.status_code == 413
    assert behind.texts == []


def test_too_many_fields_are_refused(post: Post, behind: Behind) -> None:
    assert post({f"F{n}": "" for n in range(MOST_FIELDS + 1)}).status_code == 400
    assert behind.texts == []


def test_another_method_is_refused(client: Caller) -> None:
    assert client.get("/in/twilio").status_code == 405


def test_an_error_behind_the_door_is_told_to_twilio(post: Post, behind: Behind) -> None:
    behind.error = OSError("disk full")
    assert post(form()).status_code == 500


async def status_of(app: FastAPI, receive: Callable[[], Awaitable[Message]]) -> int:
    """The status that the webhook answers with, its body being what `receive` brings."""
    scope = {
        "type": "http",
        "asgi": {"version": "3.0"},
        "http_version": "1.1",
        "method": "POST",
        "path": "/in/twilio",
        "raw_path": b"/in/twilio",
        "query_string": b"",
        "headers": [],
        "server": ("sap.example", 443),
        "scheme": "https",
    }
    sent: list[Message] = []

    async def send(message: Message) -> None:
        sent.append(message)

    await app(scope, receive, send)
    status: int = sent[0]["status"]
    return status


def test_a_body_that_does_not_come_is_given_up(
    client: Caller, behind: Behind, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(web, "BODY_TIMEOUT_S", 0.01)

    async def never() -> Message:
        await asyncio.sleep(60)
        raise AssertionError("the body was waited for")

    assert asyncio.run(status_of(client.app, never)) == 408
    assert behind.texts == []


def test_a_body_that_breaks_off_is_not_handed_on(client: Caller, behind: Behind) -> None:
    arriving: Iterator[Message] = iter(
        [
            {"type": "http.request", "body": b"MessageSid=SM1&Bo", "more_body": True},
            {"type": "http.disconnect"},
        ]
    )

    async def broken() -> Message:
        return next(arriving)

    assert asyncio.run(status_of(client.app, broken)) == 400
    assert behind.texts == []


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
@given(body=st.binary(max_size=300))
def test_rubbish_is_refused_and_does_no_harm(client: Caller, behind: Behind, body: bytes) -> None:
    response = client.post("/in/twilio", content=body, headers=headers({}))
    assert response.status_code in {400, 403}
    assert behind.texts == []


# --- the answer -----------------------------------------------------------------------------


def test_a_reply_that_is_too_long_for_one_message_goes_in_several() -> None:
    words = " ".join(f"word{n}" for n in range(600))
    parts = [child.text or "" for child in ElementTree.fromstring(twiml(words))]
    assert len(parts) == 3
    assert max(map(len, parts)) <= MOST_CHARACTERS
    assert " ".join(parts) == words


@given(st.text(max_size=4000))
def test_any_reply_makes_an_answer_that_can_be_read(reply: str) -> None:
    ElementTree.fromstring(twiml(reply.encode("utf-8", "replace").decode()))


# --- watching over it -----------------------------------------------------------------------


def test_health_answers(client: Caller) -> None:
    assert client.get("/health").json() == {"status": "ok"}


def test_ready_says_that_the_store_answers_and_the_webhook_is_open(client: Caller) -> None:
    assert client.get("/ready").json() == {"status": "ok", "twilio": "open"}


def test_ready_says_why_the_webhook_is_closed(closed_client: Caller) -> None:
    assert closed_client.get("/ready").json() == {"status": "ok", "twilio": "No token."}


def test_ready_is_unavailable_when_the_store_does_not_answer(
    client: Caller, behind: Behind
) -> None:
    behind.error = OSError("gone")
    assert client.get("/ready").status_code == 503


def test_our_own_signature_is_the_one_that_twilio_makes() -> None:
    fields = form()
    ours = Signatures(TOKEN, PUBLIC_URL).headers("/in/twilio", Form(fields.items()))
    assert ours["X-Twilio-Signature"] == headers(fields)["X-Twilio-Signature"]
