"""A sign of the season: buds, cloudy_sap, yellow_sap, off_smell or moths."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Sign(Reading):
    """A sign of the season: buds, cloudy_sap, yellow_sap, off_smell or moths."""

    kind: ClassVar[str] = "sign"

    sign: str
    on: date
