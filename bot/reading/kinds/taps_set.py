"""Taps put in. `manner` is "add" (put in 6 more) or "total" (we have 16 taps)."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class TapsSet(Reading):
    """Taps put in. `manner` is "add" (put in 6 more) or "total" (we have 16 taps)."""

    kind: ClassVar[str] = "taps_set"

    count: int
    on: date
    lot: str | None = None
    manner: str = "add"
