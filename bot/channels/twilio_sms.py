"""Texts by SMS, MMS or WhatsApp through Twilio: its webhook's form read, its signature checked,
its answer (TwiML) written.

Twilio's pages: "Webhook request" (docs/messaging/guides/webhook-request), "Webhooks security"
(docs/usage/webhooks/webhooks-security), "Advanced Opt-Out" (docs/messaging/tutorials/
advanced-opt-out), "TwiML for Programmable Messaging" (docs/messaging/twiml).
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from datetime import datetime
from xml.sax.saxutils import escape

# The package carries no types.
from twilio.request_validator import (  # type: ignore[import-untyped]
    SIGNATURE_HEADER,
    SIGNATURE_SETTINGS_HEADER,
    RequestValidator,
    get_signature_algorithm,
)

from bot.channels.channel import Report
from bot.channels.twilio_errors import error_of
from bot.channels.twilio_rest import STATUSES
from bot.messages import SMS_DOOR, Incoming

DOOR = SMS_DOOR
# Characters in one message that Twilio sends on; it refuses a longer one (error 21617).
MOST_CHARACTERS = 1600

_OPT_OUTS = frozenset({"STOP", "START", "HELP"})
# ITU-T E.164, with the prefix of the channel where it is not SMS ("whatsapp:").
_CAN_BE_ANSWERED = re.compile(r"(?:[a-z]+:)?\+[1-9]\d{6,14}")
# What XML 1.0 (section 2.2) has no place for.
_NOT_IN_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


class UnreadableFormError(Exception):
    """The form lacks what makes it a text: who sent it, or the id that tells it from others."""


class Form:
    """The fields of a form, in which a name may stand more than once."""

    def __init__(self, pairs: Iterable[tuple[str, str]]) -> None:
        self._values: dict[str, list[str]] = {}
        for name, value in pairs:
            self._values.setdefault(name, []).append(value)

    def get(self, name: str) -> str:
        """The first value of a field, "" where there is none."""
        return self._values.get(name, [""])[0]

    def getall(self, name: str) -> list[str]:
        """All values of a field: what Twilio's validator asks for."""
        return self._values[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._values)

    def __len__(self) -> int:
        return len(self._values)


class Signatures:
    """Tells Twilio's requests from anybody else's."""

    def __init__(self, auth_token: str, public_url: str) -> None:
        """`public_url`: the address that Twilio was told, up to the path of the webhook. It is
        what Twilio signs, whatever a proxy makes of it."""
        self._validator = RequestValidator(auth_token)
        self._public_url = public_url

    def are_right(self, path: str, query: str, form: Form, headers: Mapping[str, str]) -> bool:
        """True when the request's signature is that of our account.

        path: from the root, like "/in/twilio". query: as it came, without "?". headers: by
        their names in small letters.
        """
        given = headers.get(SIGNATURE_HEADER.lower(), "")
        algorithm = get_signature_algorithm(headers.get(SIGNATURE_SETTINGS_HEADER.lower(), ""))
        url = self._public_url + path + (f"?{query}" if query else "")
        return bool(given) and bool(self._validator.validate(url, form, given, algorithm))

    def headers(self, path: str, form: Form) -> dict[str, str]:
        """The headers with which Twilio would sign a form."""
        signature: str = self._validator.compute_signature(self._public_url + path, form)
        return {SIGNATURE_HEADER: signature}


def incoming(form: Form, arrived_utc: datetime) -> Incoming:
    """The text that a form brings, with fields that we do not know left aside.

    An address keeps the prefix of its channel ("whatsapp:+15550100001"): a reply has to go
    back by it. Raises UnreadableFormError.
    """
    provider_id = form.get("MessageSid") or form.get("SmsMessageSid") or form.get("SmsSid")
    sender = form.get("From").strip()
    if not provider_id or not sender:
        missing = "From" if provider_id else "MessageSid"
        raise UnreadableFormError(f"The form has no {missing}")
    opt_out = form.get("OptOutType").strip().upper()
    return Incoming(
        door=DOOR,
        provider_id=provider_id,
        sender=sender,
        text=form.get("Body"),
        arrived_utc=arrived_utc,
        to=form.get("To").strip(),
        media=_count(form.get("NumMedia")),
        opt_out=opt_out if opt_out in _OPT_OUTS else None,
    )


def report(form: Form, query: str) -> Report | None:
    """The delivery report that a form brings, None where its status is none of ours to note.

    query: that of the address it was sent to, with the number that the text has in our outbox.
    Raises UnreadableFormError.
    """
    provider_id = form.get("MessageSid") or form.get("SmsSid")
    if not provider_id:
        raise UnreadableFormError("The form has no MessageSid")
    status = STATUSES.get(form.get("MessageStatus") or form.get("SmsStatus"))
    if status is None:
        return None
    text_id = re.fullmatch(r"(?:.*&)?text=([0-9]{1,18})(?:&.*)?", query)
    code = re.fullmatch(r"[0-9]{1,6}", form.get("ErrorCode"))
    return Report(
        provider_id=provider_id,
        status=status,
        address=form.get("To").strip(),
        text_id=None if text_id is None else int(text_id[1]),
        error=error_of(None if code is None else int(code[0])) if status == "undelivered" else None,
    )


def may_be_answered(text: Incoming) -> bool:
    """False for senders that are no telephone (short codes, names), and where Twilio has
    answered a STOP, START or HELP by itself."""
    return text.opt_out is None and _CAN_BE_ANSWERED.fullmatch(text.sender) is not None


def twiml(reply: str | None) -> str:
    """Twilio's answer to a webhook: the reply goes to the sender; None sends nothing."""
    messages = "".join(f"<Message>{escape(part)}</Message>" for part in _parts(reply or ""))
    return f'<?xml version="1.0" encoding="UTF-8"?><Response>{messages}</Response>'


def _parts(reply: str) -> Iterator[str]:
    """The reply in pieces that Twilio takes, cut between lines or words where that is possible."""
    rest = _NOT_IN_XML.sub("\ufffd", reply).strip()
    while len(rest) > MOST_CHARACTERS:
        cut = max(rest.rfind("\n", 0, MOST_CHARACTERS), rest.rfind(" ", 0, MOST_CHARACTERS))
        cut = cut if cut > 0 else MOST_CHARACTERS
        yield rest[:cut].rstrip()
        rest = rest[cut:].lstrip()
    if rest:
        yield rest


def _count(digits: str) -> int:
    return int(digits) if re.fullmatch(r"[0-9]{1,3}", digits) else 0
