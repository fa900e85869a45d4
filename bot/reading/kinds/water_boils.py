"""Where plain water boils, by this thermometer, here."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterBoils(Reading):
    """Where plain water boils, by this thermometer, here."""

    kind: ClassVar[str] = "water_boils"

    fahrenheit: float
    on: date
