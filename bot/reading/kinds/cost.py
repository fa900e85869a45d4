"""Money spent."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Cost(Reading):
    """Money spent."""

    kind: ClassVar[str] = "cost"

    dollars: float
    on: date
    item: str | None = None
