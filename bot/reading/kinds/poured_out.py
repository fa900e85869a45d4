"""Sap dumped, spilled, spoiled, or frozen and thrown."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class PouredOut(Reading):
    """Sap dumped, spilled, spoiled, or frozen and thrown."""

    kind: ClassVar[str] = "poured_out"

    on: date
    gallons: float | None = None
