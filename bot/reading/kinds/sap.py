"""Sap gathered. Zero gallons is a reading: the buckets were dry."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Sap(Reading):
    """Sap gathered. Zero gallons is a reading: the buckets were dry."""

    kind: ClassVar[str] = "sap"

    gallons: float
    on: date
    brix: float | None = None
    tree: str | None = None
    lot: str | None = None
