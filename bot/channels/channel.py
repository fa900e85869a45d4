"""What every channel does: send a text, look whether it went, and say what went wrong.

The contract suite in tests/channels runs over all of them.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Literal, Protocol

from bot.messages import Outgoing

# How far a text has come, as every provider's own words are told: taken, handed to the carrier,
# and then one of two ends.
Status = Literal["accepted", "sent", "delivered", "undelivered"]
_STEPS = {"accepted": 1, "sent": 2, "delivered": 3, "undelivered": 3}


class SendError(Exception):
    """A text was not sent, or nobody knows. The message says why, for the host's eyes: it names
    no person and none of their words."""


class TryLaterError(SendError):
    """It was surely not sent, and may well be later."""


class NeverError(SendError):
    """It was surely not sent, and never will be."""


class OptedOutError(SendError):
    """It was not sent, since the receiver has opted out at the provider."""


class UnclearError(SendError):
    """It may have been sent. Look for it before sending again."""


@dataclass(frozen=True, slots=True)
class Sent:
    """The provider took it: its id there, and how far it had come."""

    provider_id: str
    status: Status = "accepted"


@dataclass(frozen=True, slots=True)
class Report:
    """What a provider reports on a text afterwards.

    text_id: its number in the outbox, None where the report does not tell. address: whom it was
    sent to. error: what sending would have raised, with "undelivered".
    """

    provider_id: str
    status: Status
    address: str
    text_id: int | None = None
    error: SendError | None = None


class Channel(Protocol):
    """A way out. Safe in threads. Both methods raise SendErrors only."""

    def send(self, outgoing: Outgoing) -> Sent:
        """Hand a text to the provider."""
        ...

    def find(self, outgoing: Outgoing, since_utc: datetime) -> Sent | None:
        """What became of a text that was perhaps sent since a moment; None when it was not."""
        ...


def is_further(status: str, than: str | None) -> bool:
    """True when `status` is further on than another: reports do not come in order."""
    return _STEPS[status] > (0 if than is None else _STEPS[than])
