"""Take the last record back."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Undo(Reading):
    """Take the last record back."""

    kind: ClassVar[str] = "undo"
