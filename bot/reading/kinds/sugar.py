"""Sap sugar alone, in degrees Brix."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Sugar(Reading):
    """Sap sugar alone, in degrees Brix."""

    kind: ClassVar[str] = "sugar"

    brix: float
    on: date
    tree: str | None = None
    lot: str | None = None
