"""A boil: its start, its end, how much went in and how long it took."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, time
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Boil(Reading):
    """A boil: its start, its end, how much went in and how long it took."""

    kind: ClassVar[str] = "boil"

    on: date
    gallons: float | None = None
    hours: float | None = None
    state: str | None = None
    at: time | None = None
