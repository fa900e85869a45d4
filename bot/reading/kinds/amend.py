"""Put the last record right: the fields that change, or a bare `value`."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from bot.reading.kinds.base import Reading
from bot.reading.kinds.jars import Jar


@dataclass(frozen=True, slots=True, kw_only=True)
class Amend(Reading):
    """Put the last record right: the fields that change, or a bare `value`."""

    kind: ClassVar[str] = "amend"

    value: float | None = None
    gallons: float | None = None
    brix: float | None = None
    count: int | None = None
    hours: float | None = None
    dollars: float | None = None
    fahrenheit: float | None = None
    cords: float | None = None
    propane_lb: float | None = None
    diameter_in: float | None = None
    taps: int | None = None
    jars: tuple[Jar, ...] | None = None
    tree: str | None = None
    lot: str | None = None
    species: str | None = None
    item: str | None = None
    on: date | None = None
