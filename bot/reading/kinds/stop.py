"""A carrier's word: no more texts."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import ClassVar

from bot.reading.kinds.base import Reading
from bot.reading.signs import Sought, either

KEYWORDS = frozenset("stop stopall unsubscribe cancel end quit revoke optout".split())
"""The carriers' words, each alone (Twilio, "Advanced opt-out"; CTIA; 47 CFR 64.1200)."""
SAID_OUT = re.compile(
    either(
        (
            "stop texting",
            "stop messaging",
            "stop sending",
            "stop these texts",
            "opt out",
            "opt me out",
            "unsubscribe me",
            "take me off",
            "don't text me",
            "dont text me",
            "no more texts",
            "stop please",
            "stop all texts",
            "remove me from this",
            "quit texting",
        )
    )
)
"""Reasonable words for the same wish, which the FCC's 2024 order asks to honour."""
PLEASE_STOP = Sought(
    "please stop",
    r"\bplease stop(?=$|[.!,]| (?:texting|sending|messaging|contacting|bothering|this|these|it|all"
    r"|now|the (?:texts|messages|alerts))\b)",
)
"""The same; but not `please stop raining`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stop(Reading):
    """A carrier's word: no more texts."""

    kind: ClassVar[str] = "stop"
