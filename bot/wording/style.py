"""For whom a sentence is said: their units and their day."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal

Units = Literal["us", "metric"]


@dataclass(frozen=True, slots=True)
class Style:
    """units: "us" or "metric". today: the reader's local day."""

    units: Units
    today: date

    @property
    def is_metric(self) -> bool:
        """True for litres and degrees Celsius."""
        return self.units == "metric"
