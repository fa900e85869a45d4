"""How many SMS segments a text takes, and how to keep it in the alphabet that is cheapest.

One character outside the GSM-7 alphabet turns the whole text into UCS-2, which holds 70
characters a segment instead of 160 (3GPP TS 23.038 and 23.040).
"""

from __future__ import annotations

import unicodedata
from functools import lru_cache

# gsm0338 comes without types.
from gsm0338.charset import (  # type: ignore[import-untyped]
    BASIC_CHARACTER_SET,
    BASIC_CHARACTER_SET_EXTENSION,
)

SINGLE_SEPTETS = 160
JOINED_SEPTETS = 153
SINGLE_UCS2 = 70
JOINED_UCS2 = 67

_ESCAPE = 0x1B
_BASIC = frozenset(
    unicodedata.lookup(name) for code, name in BASIC_CHARACTER_SET.items() if code != _ESCAPE
)
_EXTENDED = frozenset(unicodedata.lookup(name) for name in BASIC_CHARACTER_SET_EXTENSION.values())
_ALL = _BASIC | _EXTENDED

# The two cedillas differ between printed tables of the alphabet; texts of ours do without.
_UNSURE = frozenset("\u00c7\u00e7")
_LIKENESS = str.maketrans(
    {
        "\u2018": "'",
        "\u2019": "'",
        "\u201c": '"',
        "\u201d": '"',
        "\u2013": "-",
        "\u2014": "-",
        "\u2026": "...",
        "\u00a0": " ",
        "\u00b0": "",
        "\u00bd": " 1/2",
        "\u00bc": " 1/4",
        "\u00be": " 3/4",
    }
)


def is_gsm(text: str) -> bool:
    """True when every character is in the GSM-7 alphabet, extension included."""
    return _ALL.issuperset(text)


def segments(text: str) -> int:
    """How many SMS segments the text takes; the empty text takes none."""
    if not text:
        return 0
    if is_gsm(text):
        costs = [2 if char in _EXTENDED else 1 for char in text]
        return _cut(costs, SINGLE_SEPTETS, JOINED_SEPTETS)
    return _cut([len(char.encode("utf-16-le")) // 2 for char in text], SINGLE_UCS2, JOINED_UCS2)


def _cut(costs: list[int], single: int, joined: int) -> int:
    if sum(costs) <= single:
        return 1
    count, used = 1, 0
    for cost in costs:
        # A character of two units may not straddle a cut.
        if used + cost > joined:
            count, used = count + 1, 0
        used += cost
    return count


@lru_cache(maxsize=512)
def plain(words: str, most: int = 40) -> str:
    """Somebody's own words made fit to be said back: GSM-7, on one line, not overlong."""
    said = " ".join(in_gsm(words).split())
    return said if len(said) <= most else said[: most - 3].rstrip() + "..."


def in_gsm(text: str) -> str:
    """The text within GSM-7: accents outside the alphabet are dropped, what has no likeness
    becomes "?"."""
    if is_gsm(text) and not _UNSURE & set(text):
        return text
    return "".join(_nearest(char) for char in text.translate(_LIKENESS))


def _nearest(char: str) -> str:
    if char in _BASIC and char not in _UNSURE:
        return char
    if char.isspace():
        return " "
    parts = unicodedata.normalize("NFKD", char)
    return "".join(part for part in parts if part in _BASIC and part not in _UNSURE) or "?"
