"""What is known of a tree: species, diameter at breast height, taps."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Tree(Reading):
    """What is known of a tree: species, diameter at breast height, taps."""

    kind: ClassVar[str] = "tree"

    tree: str
    species: str | None = None
    diameter_in: float | None = None
    taps: int | None = None
