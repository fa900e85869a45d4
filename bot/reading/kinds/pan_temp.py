"""Temperature of the boiling pan."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class PanTemp(Reading):
    """Temperature of the boiling pan."""

    kind: ClassVar[str] = "pan_temp"

    fahrenheit: float
    on: date
