"""What a step of a conversation file may ask of its reply.

A file in `fixtures/conversations` has one conversation a line: `{"id", "about", "steps",
"final"?}`; a step is `{"at", "from", "text"}` and any of

- `reply`: the whole reply, word for word; `no_reply`: true, nothing may be sent;
- `match`, `no_match`: regular expressions (case ignored) that must, or must not, be found;
- `volume`: [low, high] US gallons, some volume of the reply lies in it; `no_volume`: none does;
- `number`: [low, high], some number of the reply lies in it; `asks`: true, it is a question;
- `segments`: how many SMS segments it may take at most.

`final` holds totals of the first sender's sugarbush for the season of the last step.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from bot.wording.gsm import is_gsm, segments

GALLONS = {
    "gal": 1.0, "qt": 0.25, "pint": 0.125, "fl oz": 1 / 128, "l": 1 / 3.785411784,
    "ml": 0.001 / 3.785411784,
}  # fmt: skip
_NUMBER = r"(?:\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?)"
_VOLUME = re.compile(rf"(?<![\d.])({_NUMBER}) (gal|qt|pint|fl oz|mL|L)s?\b")
MOST_SEGMENTS = 2


def faults(step: Mapping[str, Any], reply: str) -> list[str]:
    """What the reply lacks, in words; empty when all is well."""
    found = _always(reply, int(step.get("segments", MOST_SEGMENTS)))
    if "reply" in step and reply != step["reply"]:
        found.append(f"is not word for word {step['reply']!r}")
    if step.get("no_reply") and reply:
        found.append("says something where nothing may be sent")
    found += [
        f"nothing matches {pattern!r}"
        for pattern in step.get("match", ())
        if not re.search(pattern, reply, re.IGNORECASE)
    ]
    found += [
        f"something matches {pattern!r}"
        for pattern in step.get("no_match", ())
        if re.search(pattern, reply, re.IGNORECASE)
    ]
    if "volume" in step and not _any_in(volumes(reply), step["volume"]):
        found.append(f"no volume in {step['volume']} gal")
    if "no_volume" in step and _any_in(volumes(reply), step["no_volume"]):
        found.append(f"a volume in {step['no_volume']} gal")
    if "number" in step and not _any_in(numbers(reply), step["number"]):
        found.append(f"no number in {step['number']}")
    if step.get("asks") and "?" not in reply:
        found.append("asks nothing")
    return found


def _always(reply: str, most_segments: int) -> list[str]:
    out = []
    if not is_gsm(reply):
        out.append("has a character outside GSM-7")
    if segments(reply) > most_segments:
        out.append(f"takes {segments(reply)} segments")
    if "!" in reply or re.search(r"\b(successful|great|congrat)", reply, re.IGNORECASE):
        out.append("cheers")
    return out


def volumes(reply: str) -> list[float]:
    """Every volume in a reply, in gallons."""
    return [_value(number) * GALLONS[unit.lower()] for number, unit in _VOLUME.findall(reply)]


def numbers(reply: str) -> list[float]:
    """Every number in a reply."""
    return [_value(number) for number in re.findall(rf"(?<![\d.]){_NUMBER}", reply)]


def _value(number: str) -> float:
    total = 0.0
    for part in number.split():
        over, _, under = part.partition("/")
        total += float(over) / float(under) if under else float(over)
    return total


def _any_in(values: list[float], bounds: list[float]) -> bool:
    return any(bounds[0] - 1e-9 <= value <= bounds[1] + 1e-9 for value in values)
