"""An invited helper accepts."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Join(Reading):
    """An invited helper accepts."""

    kind: ClassVar[str] = "join"
