"""Links that prove what they are for: to one's own records for a day, and out of unasked mails.

A token is what it says and a signature by the store's own secret, so that it needs no row.
"""

from __future__ import annotations

import base64
import binascii
import hashlib
import hmac
import json
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

from bot.ledger import CollisionError, Ledger

PAGE_PATH, UNSUBSCRIBE_PATH = "/page", "/unsubscribe"
_EXPORT, _UNSUBSCRIBE = "export", "unsubscribe"
_SECRET = "links"


class ExpiredError(Exception):
    """The link was ours, and its time is over."""


@dataclass(frozen=True, slots=True)
class Links:
    """Makes links below the public URL and reads them back."""

    public_url: str
    secret: str

    def export_url(self, person_id: int, until_utc: datetime) -> str:
        """Where a person's records can be fetched up to a moment, aware UTC."""
        until = int(until_utc.timestamp())
        return f"{self.public_url}{PAGE_PATH}/{self._token([_EXPORT, person_id, until])}"

    def exported(self, token: str, now_utc: datetime) -> int | None:
        """The number of the person whose records a token shows, None where it is not ours.
        Raises ExpiredError."""
        told = self._told(token, _EXPORT, 3)
        if told is None:
            return None
        if now_utc >= datetime.fromtimestamp(told[2], UTC):
            raise ExpiredError
        return int(told[1])

    def unsubscribe_url(self, address: str) -> str:
        """Where one click ends unasked mails to an address, for good."""
        return f"{self.public_url}{UNSUBSCRIBE_PATH}/{self._token([_UNSUBSCRIBE, address])}"

    def unsubscribed(self, token: str) -> str | None:
        """The address that a token ends unasked mails to, None where it is not ours."""
        told = self._told(token, _UNSUBSCRIBE, 2)
        return None if told is None else str(told[1])

    def _token(self, told: list[Any]) -> str:
        payload = json.dumps(told, separators=(",", ":")).encode("ascii")
        return f"{_text(payload)}.{_text(self._signature(payload))}"

    def _told(self, token: str, purpose: str, length: int) -> list[Any] | None:
        payload, _, signature = token.partition(".")
        try:
            said, signed = _bytes(payload), _bytes(signature)
        except (binascii.Error, ValueError):
            return None
        if not hmac.compare_digest(self._signature(said), signed):
            return None
        told = json.loads(said)
        return told if told[0] == purpose and len(told) == length else None

    def _signature(self, payload: bytes) -> bytes:
        return hmac.new(self.secret.encode("ascii"), payload, hashlib.sha256).digest()


def links_on(ledger: Ledger, public_url: str) -> Links:
    """The links of a store, with its secret, which is made at the first call."""
    with ledger.reading() as book:
        secret = book.mail.secret(_SECRET)
    if secret is None:
        try:
            with ledger.writing() as book:
                secret = book.mail.make_secret(_SECRET)
        except CollisionError:
            return links_on(ledger, public_url)
    return Links(public_url, secret)


def _text(raw: bytes) -> str:
    return base64.urlsafe_b64encode(raw).decode("ascii").rstrip("=")


def _bytes(text: str) -> bytes:
    return base64.b64decode(text + "=" * (-len(text) % 4), altchars=b"-_", validate=True)
