"""What comes in and what goes out, whatever door it uses."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, timedelta
from typing import Literal


@dataclass(frozen=True, slots=True)
class Incoming:
    """A text as it arrived.

    door: the channel's name ("twilio_sms", "email", "console").
    provider_id: the provider's own id of this text, unique within the door.
    sender: the address that it came from (E.164, e-mail, or a console name).
    to: the address it was sent to, which replies come from.
    arrived_utc: aware, UTC.
    media: how many pictures or the like came with it.
    opt_out: "STOP", "START" or "HELP" when the provider has already answered that
    word itself, else None.
    """

    door: str
    provider_id: str
    sender: str
    text: str
    arrived_utc: datetime
    to: str = ""
    media: int = 0
    opt_out: str | None = None


# Why a text leaves. A reply was asked for; an alert comes at the hour that the person was told; a
# reminder is owed to a record, and a notice to something that somebody else did.
Kind = Literal["reply", "alert", "reminder", "notice"]

SMS_DOOR, EMAIL_DOOR, CONSOLE_DOOR = "twilio_sms", "email", "console"
# Below the public URL: where Twilio brings texts, and where it reports deliveries.
TWILIO_PATH, TWILIO_STATUS_PATH = "/in/twilio", "/in/twilio/status"


@dataclass(frozen=True, slots=True)
class Outgoing:
    """A text that leaves.

    to: the address it goes to. sent_from: the address it has to leave by, "" for the usual one.
    text_id: its number in the outbox, so that the provider can report on it.
    valid_for: how long it is of use; the provider gives up after that. None for ever.
    """

    to: str
    text: str
    kind: Kind = "reply"
    sent_from: str = ""
    text_id: int | None = None
    valid_for: timedelta | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Unasked:
    """A text that nobody asked for, as the morning plans it and the outbox owes it.

    to: an address of the person. kind: "alert" (the morning's, at the hour that the person was
    told) or "reminder" (between 8 and 21 local). key: what it is owed for ("morning",
    "boil_by"); with `local_date` it is owed a person once. local_date: the day of the matter, so
    that the same matter planned on two days is owed once: the boil-by day, 1 January of the
    season for what comes once a season. due_utc: not before; useless_after_utc: not any more.
    """

    person_id: int
    to: str
    kind: Kind
    key: str
    local_date: date
    text: str
    due_utc: datetime
    useless_after_utc: datetime


def door_of(address: str) -> str:
    """The door by which an address is reached: a number by SMS (or WhatsApp), a mail address by
    e-mail, any other name at the console."""
    if address.removeprefix("whatsapp:").startswith("+"):
        return SMS_DOOR
    return EMAIL_DOOR if "@" in address else CONSOLE_DOOR
