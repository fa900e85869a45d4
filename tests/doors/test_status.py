"""What comes in at `POST /in/twilio/status`: signed delivery reports, and forged ones."""

from __future__ import annotations

import httpx
import pytest

from bot.channels.channel import (
    NeverError,
    OptedOutError,
    Report,
    SendError,
    TryLaterError,
    UnclearError,
)
from bot.web import MOST_BODY_BYTES
from tests.channels.twilio_stub import encoded, report_form
from tests.doors.conftest import Behind, Caller
from tests.doors.twilio_peer import PUBLIC_URL, headers

SID = "SM" + "a" * 32
ANN = "+15550100011"
PATH = "/in/twilio/status"


def post(
    client: Caller, fields: dict[str, str], query: str = "?text=42", signed_for: str | None = None
) -> httpx.Response:
    """A report as Twilio sends it, signed for its address unless for another."""
    signed = headers(fields, signed_for or f"{PUBLIC_URL}{PATH}{query}")
    return client.post(PATH + query, content=encoded(fields), headers=signed)


@pytest.mark.parametrize(
    ("told", "noted"),
    [
        ("queued", "accepted"),
        ("sending", "accepted"),
        ("sent", "sent"),
        ("delivered", "delivered"),
        ("read", "delivered"),
    ],
)
def test_a_signed_report_is_noted_with_the_number_of_its_text(
    client: Caller, behind: Behind, told: str, noted: str
) -> None:
    answer = post(client, report_form(SID, ANN, told))
    assert (answer.status_code, answer.content) == (200, b"")
    assert behind.reports == [Report(SID, noted, ANN, text_id=42)]  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("code", "error"),
    [
        (21610, OptedOutError),
        (30006, NeverError),
        (30003, TryLaterError),
        (30008, UnclearError),
        (39999, UnclearError),
        (None, UnclearError),
    ],
)
@pytest.mark.parametrize("told", ["undelivered", "failed"])
def test_a_report_that_it_did_not_arrive_says_what_to_do(
    client: Caller, behind: Behind, told: str, code: int | None, error: type[SendError]
) -> None:
    assert post(client, report_form(SID, ANN, told, code)).status_code == 200
    (report,) = behind.reports
    assert report.status == "undelivered"
    assert type(report.error) is error


@pytest.mark.parametrize("query", ["", "?text=", "?text=x", "?other=42", "?text=-1"])
def test_a_report_without_the_number_of_a_text_is_noted_too(
    client: Caller, behind: Behind, query: str
) -> None:
    assert post(client, report_form(SID, ANN, "sent"), query).status_code == 200
    assert behind.reports == [Report(SID, "sent", ANN)]


def test_a_forged_report_is_refused(client: Caller, behind: Behind) -> None:
    fields = report_form(SID, ANN, "undelivered", 21610)
    unsigned = client.post(PATH, content=encoded(fields), headers={})
    other_token = client.post(
        PATH, content=encoded(fields), headers=headers(fields, PUBLIC_URL + PATH, "f" * 32)
    )
    assert [unsigned.status_code, other_token.status_code] == [403, 403]
    assert behind.reports == []


def test_a_report_signed_for_one_text_does_not_do_for_another(
    client: Caller, behind: Behind
) -> None:
    signed_for = f"{PUBLIC_URL}{PATH}?text=41"
    answer = post(client, report_form(SID, ANN, "delivered"), "?text=42", signed_for)
    assert answer.status_code == 403
    assert behind.reports == []


def test_a_text_signed_for_the_other_address_is_no_report(client: Caller, behind: Behind) -> None:
    answer = post(client, report_form(SID, ANN, "sent"), "", f"{PUBLIC_URL}/in/twilio")
    assert answer.status_code == 403
    assert behind.reports == []


def test_a_status_that_is_not_known_is_taken_and_left_aside(client: Caller, behind: Behind) -> None:
    assert post(client, report_form(SID, ANN, "brand_new")).status_code == 200
    assert behind.reports == []


def test_a_form_without_an_id_is_refused(client: Caller, behind: Behind) -> None:
    fields = report_form(SID, ANN, "sent")
    del fields["MessageSid"], fields["SmsSid"]
    assert post(client, fields).status_code == 400
    assert behind.reports == []


def test_without_a_token_no_report_is_taken(closed_client: Caller, behind: Behind) -> None:
    answer = post(closed_client, report_form(SID, ANN, "sent"))
    assert (answer.status_code, answer.text) == (503, "No token.\n")
    assert behind.reports == []


def test_a_report_that_is_far_too_long_is_not_read(client: Caller) -> None:
    fields = report_form(SID, ANN, "sent") | {"RawDlrDoneDate": "x" * MOST_BODY_BYTES}
    assert post(client, fields).status_code == 413


def test_a_report_that_cannot_be_noted_is_an_error(client: Caller, behind: Behind) -> None:
    """Twilio's log then shows it to the host."""
    behind.error = RuntimeError("store")
    assert post(client, report_form(SID, ANN, "sent")).status_code == 500
