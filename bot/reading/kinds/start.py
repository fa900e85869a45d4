"""A carrier's word: texts again."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from bot.reading.kinds.base import Reading

KEYWORDS = frozenset(("start", "unstop"))
"""The carriers' words, each alone (Twilio, "Advanced opt-out")."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Start(Reading):
    """A carrier's word: texts again."""

    kind: ClassVar[str] = "start"
