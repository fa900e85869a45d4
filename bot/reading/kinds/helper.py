"""Somebody to let in: a phone number in E.164 or an e-mail address."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from bot.reading.kinds.base import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Helper(Reading):
    """Somebody to let in: a phone number in E.164 or an e-mail address."""

    kind: ClassVar[str] = "helper"

    address: str
