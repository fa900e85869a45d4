"""A carrier's word: no more texts."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Stop(Reading):
    """A carrier's word: no more texts."""

    kind: ClassVar[str] = "stop"
