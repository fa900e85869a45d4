"""A carrier's word: texts again."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Start(Reading):
    """A carrier's word: texts again."""

    kind: ClassVar[str] = "start"
