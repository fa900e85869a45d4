"""Thanks, greetings, small talk: nothing to record."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Chat(Reading):
    """Thanks, greetings, small talk: nothing to record."""

    kind: ClassVar[str] = "chat"
