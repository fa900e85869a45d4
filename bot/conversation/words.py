"""What can be told from the bare words of a text."""

from __future__ import annotations

import re
from typing import Literal

_LITRES = re.compile(r"\d\s*(?:l|lts?|ltrs?|lit(?:er|re)s?)\b|\blit(?:er|re)s?\b", re.IGNORECASE)
_GALLONS = re.compile(r"\d\s*(?:g|gals?|gallons?|qts?|quarts?)\b|\bgallons?\b", re.IGNORECASE)
_CORRECTS = re.compile(
    r"^\W*(?:no+pe?|no|oops|sorry|wait|actually|i\s+meant?|meant|make\s+(?:that|it))\b[\s,.:;-]*",
    re.IGNORECASE,
)


def units_used(text: str) -> Literal["us", "metric"] | None:
    """The units that a text measures in, None when it names neither or both.

    Millilitres say nothing: jars are sold in them to people who gather in gallons.
    """
    litres, gallons = bool(_LITRES.search(text)), bool(_GALLONS.search(text))
    if litres == gallons:
        return None
    return "metric" if litres else "us"


def same_words(text: str) -> str:
    """A text for comparing: case, spaces and closing marks do not matter."""
    return " ".join(text.casefold().split()).strip(" .!")


def without_correction(text: str) -> str:
    """The text without the "no," or "I meant" that opens a correction."""
    return _CORRECTS.sub("", text, count=1)
