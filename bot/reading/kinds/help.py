"""A carrier's word: who is this."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from bot.reading.kinds.base import Reading

KEYWORDS = frozenset(("help", "info"))
"""The carriers' words, each alone (Twilio, "Advanced opt-out")."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Help(Reading):
    """A carrier's word: who is this."""

    kind: ClassVar[str] = "help"
