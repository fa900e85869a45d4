"""A carrier's word: texts again."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from bot.reading.kinds.base import Reading

KEYWORDS = frozenset(("start", "unstop"))
"""The carriers' words, each alone (Twilio, "Advanced opt-out")."""
SAID_IN = frozenset(
    (
        "start texting me again", "start again",
        "start texting again", "turn it back on", "text me again",
        "start me back up", "opt in", "opt me back in",
        "sign me back up", "subscribe", "resubscribe",
        "start sending again", "start please",
        "please start", "turn me back on", "start the texts again",
    )
)  # fmt: skip
"""The same wish in other words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Start(Reading):
    """A carrier's word: texts again."""

    kind: ClassVar[str] = "start"
