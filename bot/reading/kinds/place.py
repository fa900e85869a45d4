"""Where the trees are, in the words of the text."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Place(Reading):
    """Where the trees are, in the words of the text."""

    kind: ClassVar[str] = "place"

    text: str
