"""Mails to test with: invented people, and a domain whose key stands in a stub resolver."""

from __future__ import annotations

import base64
from email.message import EmailMessage
from functools import cache

import dkim  # type: ignore[import-untyped]
from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric import rsa

OWN = "log@pail.example"
ANN, BEN = "ann@maple.example", "ben@maple.example"
SELECTOR = b"spile"


def letter(
    words: str = "12 gal at 2.2\n",
    sender: str = ANN,
    number: int = 1,
    headers: dict[str, str] | None = None,
) -> EmailMessage:
    """A plain mail to us."""
    mail = EmailMessage()
    mail["From"] = sender
    mail["To"] = OWN
    mail["Subject"] = "sap"
    mail["Message-ID"] = f"<{number}@{sender.rpartition('@')[2]}>"
    mail["Date"] = "Fri, 05 Mar 2027 18:00:00 -0500"
    for name, value in (headers or {}).items():
        mail[name] = value
    mail.set_content(words)
    return mail


@cache
def key() -> tuple[bytes, bytes]:
    """A DKIM key made for these tests: the private half as PEM, the TXT record of the other."""
    made = rsa.generate_private_key(65537, 2048)
    private = made.private_bytes(
        serialization.Encoding.PEM,
        serialization.PrivateFormat.TraditionalOpenSSL,
        serialization.NoEncryption(),
    )
    public = made.public_key().public_bytes(
        serialization.Encoding.DER, serialization.PublicFormat.SubjectPublicKeyInfo
    )
    return private, b"v=DKIM1; k=rsa; p=" + base64.b64encode(public)


def resolver(name: bytes | str, timeout: float = 5) -> bytes | None:
    """The only key in the world is that of maple.example."""
    asked = name.decode() if isinstance(name, bytes) else name
    return key()[1] if asked.rstrip(".") == "spile._domainkey.maple.example" else None


def signed(
    raw: bytes,
    domain: bytes = b"maple.example",
    covers: tuple[bytes, ...] = (b"from", b"to", b"subject", b"message-id", b"date"),
    *,
    length: bool = False,
) -> bytes:
    """The mail with a DKIM signature in front."""
    made: bytes = dkim.sign(
        raw, SELECTOR, domain, key()[0], include_headers=list(covers), length=length
    )
    return made + raw
