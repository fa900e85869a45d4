"""What one bucket holds."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class BucketSize(Reading):
    """What one bucket holds."""

    kind: ClassVar[str] = "bucket_size"

    gallons: float
