"""An amount that is only supposed: "if I get 60 gal at 2.2"."""

from __future__ import annotations

import re
from dataclasses import dataclass

from bot import units

_VOLUME = re.compile(
    r"(?P<amount>\d+(?:\.\d+)?)\s*(?P<unit>gal(?:lon)?s?|l|lit(?:er|re)s?|qts?|quarts?)\b",
    re.IGNORECASE,
)
_BRIX = re.compile(
    r"(?:\bat|@|\bof)\s*(?P<at>\d+(?:\.\d+)?)|(?P<said>\d+(?:\.\d+)?)\s*(?:brix|bx|%|percent)",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Supposed:
    """So many gallons, at so many Brix, or None where none is named."""

    gallons: float
    brix: float | None


def supposed(text: str) -> Supposed | None:
    """The first volume in a question and the Brix beside it, None if it names no volume."""
    found = _VOLUME.search(text)
    if found is None:
        return None
    unit = found["unit"].casefold()
    name = "liter" if unit[0] == "l" else "quart" if unit[0] == "q" else "gallon"
    brix = _BRIX.search(text, found.end()) or _BRIX.search(text[: found.start()])
    value = None if brix is None else float(brix["at"] or brix["said"])
    return Supposed(units.gallons(float(found["amount"]), name), value)
