"""Syrup drawn off or finished."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Syrup(Reading):
    """Syrup drawn off or finished."""

    kind: ClassVar[str] = "syrup"

    gallons: float
    on: date
    brix: float | None = None
