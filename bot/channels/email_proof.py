"""Who really sent a mail: a From line proves nothing.

Two ways, and the host chooses. Where the receiving provider's name is set, the topmost
Authentication-Results header has to be that provider's and has to tell of a pass for the domain
of the From line (RFC 8601; whatever stands further down may be anybody's). Else the mail's own
DKIM signature is checked (RFC 6376), which has to be of the From line's domain or of one above it
and to cover the whole mail and what tells it from others.
"""

from __future__ import annotations

import logging
import re
from collections.abc import Callable
from email import message_from_bytes
from email.message import Message
from email.utils import getaddresses
from typing import Any

log = logging.getLogger(__name__)

# (name of a DNS record, seconds to wait) -> the text of its TXT record, None where there is none.
Resolver = Callable[..., bytes | None]
# Proves that a mail (its bytes) comes from an address.
Proof = Callable[[bytes, str], bool]

DNS_TIMEOUT_S = 5
# A mail with more signatures than these is not looked through. Our own.
_MOST_SIGNATURES = 5
# Headers that must stand at most once, and be signed: who, which mail, when.
_SIGNED = (b"from", b"message-id", b"date")
# And those that tell how the body is to be read: unsigned but present, they could be swapped.
_SIGNED_IF_THERE = (b"subject",)

_COMMENT = re.compile(r"\((?:[^()\\]|\\.)*\)")
_ID = re.compile(r'\s*("?)([^\s;"]+)\1(?:\s+\d+)?\s*')
_RESULT = re.compile(
    r"\s*([a-z0-9-]+)(?:\s*/\s*\d+)?\s*=\s*([a-z]+)(.*)", re.IGNORECASE | re.DOTALL
)
_PROPERTY = re.compile(r'([a-z]+)\s*\.\s*([a-z0-9._-]+)\s*=\s*("(?:[^"\\]|\\.)*"|[^\s;]+)', re.I)


def proof(authserv_id: str | None, resolver: Resolver | None = None) -> Proof:
    """How mails are proved here: by the provider of this name, else by their DKIM signature.

    resolver: what looks up DNS records; the system's, unless given.
    """
    if authserv_id is not None:
        name = authserv_id
        return lambda raw, sender: provider_says_so(raw, sender, name)
    return lambda raw, sender: signature_says_so(raw, sender, resolver)


def provider_says_so(raw: bytes, sender: str, authserv_id: str) -> bool:
    """True when the topmost Authentication-Results header is the provider's, and says that the
    sender's domain is proved: by DMARC, or by DKIM with a domain that is aligned."""
    message = message_from_bytes(raw)
    if not _has_one_from(message, sender):
        return False
    topmost = message.get("Authentication-Results")
    if topmost is None:
        return False
    told = str(topmost)
    while (bare := _COMMENT.sub(" ", told)) != told:
        told = bare
    name = _ID.match(told)
    if name is None or name[2].casefold() != authserv_id.casefold():
        return False
    return any(_passes(part, _domain(sender)) for part in _split(told[name.end() :]))


def signature_says_so(raw: bytes, sender: str, resolver: Resolver | None = None) -> bool:
    """True when a DKIM signature of the sender's domain, or of one above it, fits the mail."""
    # It takes a while to import, and a host whose provider checks never needs it.
    import dkim  # type: ignore[import-untyped]

    message = message_from_bytes(raw)
    if not _has_one_from(message, sender):
        return False
    if any(len(message.get_all(name.decode(), [])) > 1 for name in (*_SIGNED, *_SIGNED_IF_THERE)):
        return False
    how: dict[str, Any] = {} if resolver is None else {"dnsfunc": resolver}
    signatures = message.get_all("DKIM-Signature", [])[:_MOST_SIGNATURES]
    for number in range(len(signatures)):
        signed = dkim.DKIM(raw, timeout=DNS_TIMEOUT_S)
        try:
            if signed.verify(idx=number, **how) and _covers(signed, message, sender):
                return True
        except (dkim.DKIMException, ValueError, TypeError, LookupError) as error:
            # What a stranger wrote into a header, or a domain without a key: not proved.
            log.info("A signature could not be checked (%s)", type(error).__name__)
        except OSError as error:
            log.warning("DNS did not answer (%s)", type(error).__name__)
    return False


def _covers(signed: Any, message: Message, sender: str) -> bool:
    """True when a signature that fits is of the right domain and leaves nothing open."""
    fields: dict[bytes, bytes] = signed.signature_fields
    covered = {name.strip().lower() for name in fields[b"h"].split(b":")}
    wanted = {
        *_SIGNED,
        *(name for name in _SIGNED_IF_THERE if message.get(name.decode()) is not None),
    }
    signer: str = signed.domain.decode("ascii", "replace").strip(".").casefold()
    # With "l=" anything could stand behind what was signed.
    is_whole = b"l" not in fields and wanted <= covered
    return is_whole and _is_aligned(signer, _domain(sender))


def _is_aligned(signer: str, domain: str) -> bool:
    return "." in signer and (domain == signer or domain.endswith(f".{signer}"))


def _passes(result: str, domain: str) -> bool:
    found = _RESULT.fullmatch(result)
    if found is None or found[2].casefold() != "pass":
        return False
    method = found[1].casefold()
    told: dict[tuple[str, str], str] = {
        (kind.casefold(), name.casefold()): value.strip('"').casefold()
        for kind, name, value in _PROPERTY.findall(found[3])
    }
    if method == "dmarc":
        return told.get(("header", "from"), "").rpartition("@")[2].strip(".") == domain
    if method == "dkim":
        signer = told.get(("header", "d")) or told.get(("header", "i"), "").rpartition("@")[2]
        return _is_aligned(signer.strip("."), domain)
    return False


def _split(results: str) -> list[str]:
    """At the semicolons that are in no quotes."""
    return re.findall(r'(?:"(?:[^"\\]|\\.)*"|[^;"])+', results)


def _has_one_from(message: Message, sender: str) -> bool:
    lines = message.get_all("From", [])
    addresses = [found for _, found in getaddresses(map(str, lines)) if found]
    return bool(sender) and len(lines) == 1 and [a.casefold() for a in addresses] == [sender]


def _domain(address: str) -> str:
    return address.rpartition("@")[2].casefold().strip(".")
