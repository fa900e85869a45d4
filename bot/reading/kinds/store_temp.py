"""Temperature of the stored sap."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class StoreTemp(Reading):
    """Temperature of the stored sap."""

    kind: ClassVar[str] = "store_temp"

    fahrenheit: float
    on: date
