"""What comes in and what goes out, whatever door it uses."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime


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


@dataclass(frozen=True, slots=True)
class Outgoing:
    """A text that leaves. `kind` is "reply", "alert" or "reminder"."""

    to: str
    text: str
    kind: str = "reply"
