"""What is particular to Twilio: its request, its error codes, its list of messages."""

from __future__ import annotations

import re
from datetime import UTC, datetime, timedelta
from importlib import resources

import pytest

from bot.channels.channel import (
    NeverError,
    OptedOutError,
    SendError,
    Sent,
    TryLaterError,
    UnclearError,
)
from bot.channels.twilio_errors import error_of, table
from bot.channels.twilio_rest import MOST_VALID_S, STATUSES
from bot.messages import Outgoing
from tests.channels.twilio_stub import OURS, Loopback, Refuse, Silence, TwilioStub

ANN = "+15550100011"
SERVICE = "MG" + "0" * 32
STATUS_URL = "https://sap.example/in/twilio/status"
A_MINUTE_AGO = datetime.now(UTC) - timedelta(minutes=1)


def text(**more: object) -> Outgoing:
    given: dict[str, object] = {"to": ANN, "text": "Pailtext: boil by Fri.", **more}
    return Outgoing(**given)  # type: ignore[arg-type]


# --- the request --------------------------------------------------------------------------------


def test_a_text_leaves_by_our_number(stub: TwilioStub) -> None:
    stub.channel().send(text())
    assert stub.messages[0].form == {"To": ANN, "From": OURS, "Body": "Pailtext: boil by Fri."}


def test_a_text_leaves_by_the_messaging_service_where_there_is_one(stub: TwilioStub) -> None:
    stub.channel(sender=SERVICE).send(text())
    assert stub.messages[0].form["MessagingServiceSid"] == SERVICE
    assert "From" not in stub.messages[0].form


def test_a_reply_leaves_by_the_number_that_was_texted(stub: TwilioStub) -> None:
    stub.channel(sender=SERVICE).send(text(sent_from="+15550100098"))
    assert stub.messages[0].form["From"] == "+15550100098"


def test_whatsapp_is_answered_by_whatsapp(stub: TwilioStub) -> None:
    stub.channel().send(text(to=f"whatsapp:{ANN}"))
    assert stub.messages[0].form["From"] == f"whatsapp:{OURS}"


def test_the_report_is_asked_for_with_the_number_of_the_text(stub: TwilioStub) -> None:
    stub.channel(status_url=STATUS_URL).send(text(text_id=42))
    assert stub.messages[0].form["StatusCallback"] == f"{STATUS_URL}?text=42"


@pytest.mark.parametrize(
    ("valid_for", "seconds"),
    [
        (timedelta(minutes=90), 5400),
        (timedelta(days=2), MOST_VALID_S),
        (timedelta(milliseconds=10), 1),
    ],
)
def test_twilio_gives_up_when_the_text_is_useless(
    stub: TwilioStub, valid_for: timedelta, seconds: int
) -> None:
    stub.channel().send(text(valid_for=valid_for))
    assert stub.messages[0].form["ValidityPeriod"] == str(seconds)


# --- what goes wrong ----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("manner", "error"),
    [
        (Refuse(400, 21610), OptedOutError),
        (Refuse(400, 21211), NeverError),
        (Refuse(400, 21614), NeverError),
        (Refuse(400, 21408), NeverError),
        (Refuse(400, 29999), NeverError),
        (Refuse(401, 20003), TryLaterError),
        (Refuse(429, 20429), TryLaterError),
        (Refuse(429), TryLaterError),
        (Refuse(429, body="slow down"), TryLaterError),
        (Refuse(500, 20500), UnclearError),
        (Refuse(502, body="<html>bad gateway</html>"), UnclearError),
        (Refuse(503), UnclearError),
        (Refuse(201, body="{"), UnclearError),
        (Refuse(201, body="{}"), UnclearError),
        (Refuse(201, body="[]"), UnclearError),
        (Silence(accepted=False), UnclearError),
    ],
)
def test_what_twilio_says_is_sorted_into_later_never_opted_out_and_unclear(
    stub: TwilioStub, manner: Refuse | Silence, error: type[SendError]
) -> None:
    stub.next_sends.append(manner)
    with pytest.raises(SendError) as caught:
        stub.channel().send(text())
    assert type(caught.value) is error


def test_wrong_credentials_are_the_host_s_to_mend(stub: TwilioStub) -> None:
    with pytest.raises(TryLaterError, match="auth token"):
        stub.channel(token="f" * 32).send(text())


def test_a_twilio_that_cannot_be_reached_was_surely_not_told(stub: TwilioStub) -> None:
    nobody = Loopback("http://127.0.0.1:9")
    with pytest.raises(TryLaterError, match="no connection"):
        stub.channel(http_client=nobody).send(text())


def test_a_text_that_failed_at_once_is_no_sent_one(stub: TwilioStub) -> None:
    body = '{"sid": "SM1", "status": "failed", "error_code": 30006}'
    stub.next_sends.append(Refuse(201, body=body))
    with pytest.raises(NeverError, match="landline"):
        stub.channel().send(text())


# --- looking for a text -------------------------------------------------------------------------


def test_a_list_that_is_not_to_be_had_is_asked_for_later(stub: TwilioStub) -> None:
    for manner in (Refuse(503), Refuse(404, 20404), Silence(accepted=False), Refuse(200, body="x")):
        stub.next_lists.append(manner)
        with pytest.raises(TryLaterError):
            stub.channel().find(text(), A_MINUTE_AGO)


def test_the_same_words_from_before_are_not_the_text(stub: TwilioStub) -> None:
    stub.channel().send(text())
    stub.messages[0].made_utc -= timedelta(hours=1)
    assert stub.channel().find(text(), A_MINUTE_AGO) is None


def test_a_text_that_did_not_arrive_may_be_sent_again(stub: TwilioStub) -> None:
    stub.channel().send(text())
    stub.messages[0].status = "undelivered"
    assert stub.channel().find(text(), A_MINUTE_AGO) is None


def test_the_line_that_a_trial_account_puts_in_front_hides_no_text(stub: TwilioStub) -> None:
    stub.channel().send(text())
    body = stub.messages[0].form["Body"]
    stub.messages[0].form["Body"] = f"Sent from your Twilio trial account - {body}"
    stub.messages[0].status = "delivered"
    assert stub.channel().find(text(), A_MINUTE_AGO) == Sent(stub.messages[0].sid, "delivered")


# --- the table of codes -------------------------------------------------------------------------


def test_every_line_of_the_table_is_a_code_a_kind_and_a_reason() -> None:
    words = resources.files("bot.channels").joinpath("twilio_errors.txt").read_text("utf-8")
    lines = [line for line in words.splitlines() if line and not line.startswith("#")]
    assert len(table()) == len(lines)
    for line in lines:
        assert re.fullmatch(r"\d{5} (later|never|opted_out|unclear) +\S.*\S", line), line


def test_only_one_code_is_an_opt_out() -> None:
    assert [code for code, (kind, _) in table().items() if kind == "opted_out"] == [21610]


def test_a_code_that_is_not_known_is_unclear_in_a_report() -> None:
    assert type(error_of(39999)) is UnclearError
    assert type(error_of(None)) is UnclearError


def test_every_status_of_twilio_s_description_is_known() -> None:
    """The enumeration of its API description, less the two of incoming texts."""
    assert set(STATUSES) == set(
        "queued sending sent failed delivered undelivered accepted scheduled read"
        " partially_delivered canceled".split()
    )
