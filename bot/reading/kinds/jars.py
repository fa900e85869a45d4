"""Syrup bottled: how many jars of which size."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True)
class Jar:
    """`count` jars that hold `gallons_each` US gallons."""

    count: int
    gallons_each: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Jars(Reading):
    """Syrup bottled: how many jars of which size."""

    kind: ClassVar[str] = "jars"

    jars: tuple[Jar, ...]
    on: date
