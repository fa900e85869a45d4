"""Taps taken out: a count, or all."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class TapsPulled(Reading):
    """Taps taken out: a count, or all."""

    kind: ClassVar[str] = "taps_pulled"

    on: date
    count: int | None = None
    all: bool | None = None
