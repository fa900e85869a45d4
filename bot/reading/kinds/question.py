"""Something asked. `howto` only where the topic is "howto"."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Question(Reading):
    """Something asked. `howto` only where the topic is "howto"; `also` is the how-to that is
    nearly as likely, where the words leave it open, which the contract does not know."""

    kind: ClassVar[str] = "question"

    topic: str
    howto: str | None = None
    also: str | None = None
