"""A carrier's word: who is this."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from bot.reading.kinds.base import Reading

KEYWORDS = frozenset(("help", "info"))
"""The carriers' words, each alone (Twilio, "Advanced opt-out")."""
SAID_HELP = frozenset(
    (
        "help me", "what can you do", "how does this work", "what do i text you", "what do i text",
        "how do i use this", "what can i text", "what can i ask", "what is this", "who is this",
        "who are you", "what are you", "how do you work",
        "commands", "menu", "options", "instructions",
        "what can i do", "how do i use you", "what does this do", "what commands", "i need help",
    )
)  # fmt: skip
"""The same wish in other words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Help(Reading):
    """A carrier's word: who is this."""

    kind: ClassVar[str] = "help"
