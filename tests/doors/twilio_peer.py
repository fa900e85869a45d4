"""Texts as Twilio sends them: the fields of its webhook, signed by its own library."""

from __future__ import annotations

from itertools import count
from urllib.parse import urlencode

from twilio.request_validator import RequestValidator  # type: ignore[import-untyped]

# Invented, like every number here.
TOKEN = "0123456789abcdef0123456789abcdef"
PUBLIC_URL = "https://sap.example"
SENDER = "+15550100001"
OURS = "+15550100099"

_NUMBERS = count(1)


def form(body: str = "12 gal at 2.2", **fields: str) -> dict[str, str]:
    """The form of one text, each with an id of its own unless `MessageSid` is given."""
    sid = fields.get("MessageSid", f"SM{next(_NUMBERS):032x}")
    return {
        "ToCountry": "US",
        "ToState": "VT",
        "SmsMessageSid": sid,
        "NumMedia": "0",
        "ToCity": "",
        "FromZip": "",
        "SmsSid": sid,
        "FromState": "VT",
        "SmsStatus": "received",
        "FromCity": "",
        "Body": body,
        "FromCountry": "US",
        "To": OURS,
        "MessagingServiceSid": "MG" + "0" * 32,
        "ToZip": "",
        "NumSegments": "1",
        "MessageSid": sid,
        "AccountSid": "AC" + "0" * 32,
        "From": SENDER,
        "ApiVersion": "2010-04-01",
    } | fields


def headers(
    fields: dict[str, str], url: str = f"{PUBLIC_URL}/in/twilio", token: str = TOKEN
) -> dict[str, str]:
    """The headers of a request with this form, signed for `url` with `token`."""
    signature = RequestValidator(token).compute_signature(url, fields)
    return {
        "X-Twilio-Signature": signature,
        "I-Twilio-Idempotency-Token": "00000000-0000-4000-8000-000000000000",
        "Content-Type": "application/x-www-form-urlencoded; charset=UTF-8",
        "User-Agent": "TwilioProxy/1.1",
    }


def encoded(fields: dict[str, str]) -> bytes:
    """The form as it goes over the wire."""
    return urlencode(fields).encode("ascii")
