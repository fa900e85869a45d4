"""Wood or propane burned. A cord is 128 cubic feet."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Fuel(Reading):
    """Wood or propane burned. A cord is 128 cubic feet."""

    kind: ClassVar[str] = "fuel"

    on: date
    cords: float | None = None
    propane_lb: float | None = None
